package org.voltdocket.ui;

import org.springframework.boot.web.servlet.FilterRegistrationBean;
import org.springframework.context.annotation.Bean;
import org.springframework.context.annotation.Configuration;
import org.springframework.web.servlet.resource.ResourceUrlEncodingFilter;

/** Links of pages stay as the templates write them. */
@Configuration(proxyBeanMethods = false)
class TemplateLinkBuilder {

    /**
     * Turned off: the filter looks for every link of a page in every jar, in case it is a file of theirs with a version in its
     * name. There is none, and it took two fifths of a page's time.
     */
    @Bean
    FilterRegistrationBean<ResourceUrlEncodingFilter> resourceUrlEncodingFilter() {
        FilterRegistrationBean<ResourceUrlEncodingFilter> filter =
                new FilterRegistrationBean<>(new ResourceUrlEncodingFilter());
        filter.setEnabled(false);
        return filter;
    }
}
