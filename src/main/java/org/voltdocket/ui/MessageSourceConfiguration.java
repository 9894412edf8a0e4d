package org.voltdocket.ui;

import java.io.IOException;
import java.util.Arrays;
import java.util.Locale;
import org.springframework.context.MessageSource;
import org.springframework.context.annotation.Bean;
import org.springframework.context.annotation.Configuration;
import org.springframework.context.support.ReloadableResourceBundleMessageSource;
import org.springframework.core.io.support.PathMatchingResourcePatternResolver;

/** Finds every bundle under {@code messages/}, so that a room adds its words by adding a file. */
@Configuration(proxyBeanMethods = false)
class MessageSourceConfiguration {

    @Bean
    MessageSource messageSource() throws IOException {
        String[] names = Arrays.stream(
                        new PathMatchingResourcePatternResolver().getResources("classpath*:messages/*.properties"))
                .map(found -> "classpath:messages/" + found.getFilename().replaceAll("(_[a-z]{2})?\\.properties$", ""))
                .distinct()
                .sorted()
                .toArray(String[]::new);
        // it merges all bundles into one table when it is first asked; the other kind walks through them for every word
        ReloadableResourceBundleMessageSource source = new ReloadableResourceBundleMessageSource();
        source.setBasenames(names);
        source.setDefaultEncoding("UTF-8");
        source.setFallbackToSystemLocale(false);
        source.setDefaultLocale(Locale.ENGLISH);
        return source;
    }
}
