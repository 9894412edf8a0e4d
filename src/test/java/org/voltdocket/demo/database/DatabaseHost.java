package org.voltdocket.demo.database;

import org.springframework.boot.SpringApplication;
import org.springframework.boot.WebApplicationType;
import org.springframework.boot.autoconfigure.ImportAutoConfiguration;
import org.springframework.boot.builder.SpringApplicationBuilder;
import org.springframework.boot.jdbc.autoconfigure.DataSourceAutoConfiguration;
import org.springframework.boot.jdbc.autoconfigure.JdbcClientAutoConfiguration;
import org.springframework.boot.jdbc.autoconfigure.JdbcTemplateAutoConfiguration;
import org.springframework.context.ConfigurableApplicationContext;
import org.springframework.context.annotation.Import;
import org.springframework.jdbc.core.simple.JdbcClient;

/**
 * The demo's database in a process of its own, without the rest of the server: keeps one row more at every start, prints
 * what it sees and waits for its end.
 */
@Import(EmbeddedDatabase.class)
@ImportAutoConfiguration({
    DataSourceAutoConfiguration.class,
    JdbcTemplateAutoConfiguration.class,
    JdbcClientAutoConfiguration.class
})
class DatabaseHost {

    public static void main(String[] args) throws InterruptedException {
        SpringApplication host = new SpringApplicationBuilder(DatabaseHost.class)
                .web(WebApplicationType.NONE)
                .profiles("demo")
                .build();
        ConfigurableApplicationContext context = host.run("--voltdocket.data=" + args[0]);
        JdbcClient jdbc = context.getBean(JdbcClient.class);
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
