package org.voltdocket.assessment;

import jakarta.persistence.EntityManagerFactory;
import org.springframework.context.annotation.Bean;
import org.springframework.context.annotation.Configuration;

/** Puts the transaction manager in place that lets assessments follow. */
@Configuration(proxyBeanMethods = false)
class AfterwardsSetup {

    @Bean
    Afterwards transactionManager(EntityManagerFactory entities) {
        Afterwards manager = new Afterwards();
        manager.setEntityManagerFactory(entities);
        return manager;
    }
}
