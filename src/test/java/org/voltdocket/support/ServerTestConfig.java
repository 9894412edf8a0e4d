package org.voltdocket.support;

import com.icegreen.greenmail.util.GreenMail;
import com.icegreen.greenmail.util.ServerSetup;
import org.springframework.boot.flyway.autoconfigure.FlywayConnectionDetails;
import org.springframework.boot.jdbc.autoconfigure.JdbcConnectionDetails;
import org.springframework.boot.test.context.TestConfiguration;
import org.springframework.context.annotation.Bean;
import org.springframework.core.env.Environment;
import org.springframework.test.context.DynamicPropertyRegistrar;
import org.voltdocket.access.AccountService;

/** What {@link ServerTest} adds to the server. */
@TestConfiguration(proxyBeanMethods = false)
class ServerTestConfig {

    @Bean
    JdbcConnectionDetails testDatabase() {
        return TestDatabase.shared();
    }

    @Bean
    FlywayConnectionDetails testDatabaseOwner() {
        return TestDatabase.shared().owner();
    }

    @Bean
    Server server(AccountService accounts, Environment environment) {
        return new Server(accounts, environment);
    }

    /** Receives what the server mails. */
    @Bean(destroyMethod = "stop")
    static GreenMail mailServer() {
        GreenMail server = new GreenMail(ServerSetup.SMTP.dynamicPort());
        server.start();
        return server;
    }

    @Bean
    static DynamicPropertyRegistrar mailPort(GreenMail mailServer) {
        return registry ->
                registry.add("spring.mail.port", () -> mailServer.getSmtp().getPort());
    }
}
