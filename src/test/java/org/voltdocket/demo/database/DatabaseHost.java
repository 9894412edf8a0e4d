package org.voltdocket.demo.database;

import org.springframework.boot.SpringApplication;
import org.springframework.boot.WebApplicationType;
import org.springframework.boot.builder.SpringApplicationBuilder;
import org.springframework.boot.flyway.autoconfigure.FlywayConnectionDetails;
import org.springframework.context.ConfigurableApplicationContext;
import org.springframework.context.annotation.Import;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.jdbc.datasource.DriverManagerDataSource;

/**
 * The demo's database in a process of its own, without the rest of the server: as its owner adds a row at every start, prints
 * what it sees and waits for its end.
 */
@Import(EmbeddedDatabase.class)
class DatabaseHost {

    public static void main(String[] args) throws InterruptedException {
        SpringApplication host = new SpringApplicationBuilder(DatabaseHost.class)
                .web(WebApplicationType.NONE)
                .profiles("demo")
                .build();
        ConfigurableApplicationContext context = host.run("--voltdocket.data=" + args[0]);
        FlywayConnectionDetails owner = context.getBean(FlywayConnectionDetails.class);
        JdbcClient jdbc = JdbcClient.create(
                new DriverManagerDataSource(owner.getJdbcUrl(), owner.getUsername(), owner.getPassword()));
        jdbc.sql("create table if not exists start (at timestamptz not null)").update();
        jdbc.sql("insert into start values (now())").update();
        System.out.println("ROWS "
                + jdbc.sql("select count(*) from start").query(Long.class).single());
        for (String setting : new String[] {"fsync", "synchronous_commit", "password_encryption"}) {
            System.out.println(setting.toUpperCase(java.util.Locale.ROOT) + " "
                    + jdbc.sql("show " + setting).query(String.class).single());
        }
        System.out.println("READY");
        Thread.sleep(120_000);
        context.close();
    }
}
