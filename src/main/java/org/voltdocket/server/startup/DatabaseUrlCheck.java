package org.voltdocket.server.startup;

import java.util.Arrays;
import org.springframework.beans.factory.config.BeanFactoryPostProcessor;
import org.springframework.boot.jdbc.autoconfigure.JdbcConnectionDetails;
import org.springframework.context.annotation.Bean;
import org.springframework.context.annotation.Configuration;
import org.springframework.core.env.Environment;

/** Refuses to start without the URL of a database, unless a bean supplies the connection, as in the demo. */
@Configuration(proxyBeanMethods = false)
class DatabaseUrlCheck {

    @Bean
    static BeanFactoryPostProcessor databaseIsNamed(Environment environment) {
        return beans -> {
            boolean given = Arrays.stream(beans.getBeanNamesForType(JdbcConnectionDetails.class, true, false))
                    .anyMatch(name -> !name.equals("jdbcConnectionDetails"));
            String url = environment.getProperty("spring.datasource.url", "");
            if (!given && url.isBlank()) {
                throw new StartupException(
                        "No database is named.",
                        "Set SPRING_DATASOURCE_URL (jdbc:postgresql://host:5432/voltdocket), SPRING_DATASOURCE_USERNAME and"
                                + " SPRING_DATASOURCE_PASSWORD. To look around without one, start the demo from the sources: mvn spring-boot:run"
                                + " -Dspring-boot.run.profiles=demo");
            }
        };
    }
}
