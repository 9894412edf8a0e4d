package org.voltdocket.ui;

import org.springframework.boot.jackson.autoconfigure.JsonMapperBuilderCustomizer;
import org.springframework.context.annotation.Bean;
import org.springframework.context.annotation.Configuration;
import tools.jackson.core.StreamWriteFeature;

/** Answers write decimal numbers as assessments keep them: plainly, 0.00000012 and not 1.2E-7. */
@Configuration(proxyBeanMethods = false)
class PlainNumberSerializer {

    @Bean
    JsonMapperBuilderCustomizer plainNumbersInAnswers() {
        return builder -> builder.enable(StreamWriteFeature.WRITE_BIGDECIMAL_AS_PLAIN);
    }
}
