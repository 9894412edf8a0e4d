package org.voltdocket.server.limits;

import com.zaxxer.hikari.HikariDataSource;
import jakarta.servlet.Filter;
import jakarta.servlet.http.HttpServletRequest;
import java.sql.Connection;
import java.sql.SQLException;
import javax.sql.DataSource;
import org.springframework.beans.factory.config.BeanPostProcessor;
import org.springframework.beans.factory.support.DefaultListableBeanFactory;
import org.springframework.boot.jdbc.health.DataSourceHealthIndicator;
import org.springframework.boot.web.servlet.FilterRegistrationBean;
import org.springframework.context.annotation.Bean;
import org.springframework.context.annotation.Configuration;
import org.springframework.core.Ordered;
import org.springframework.core.env.Environment;
import org.springframework.http.HttpMethod;
import org.springframework.jdbc.datasource.DelegatingDataSource;

/**
 * A second, small connection pool for requests that only read (GET and HEAD), so that pages and lists are not kept waiting
 * while uploads and background work use all connections of the other.
 */
@Configuration(proxyBeanMethods = false)
class ReadingPool {

    static final String NAME = "reading";

    private static final ThreadLocal<Boolean> READS = ThreadLocal.withInitial(() -> false);

    /** Splits the pool that Spring Boot configures; the second has the same settings but its size. */
    @Bean
    static PoolSplitter splitPool(Environment environment, DefaultListableBeanFactory beans) {
        return new PoolSplitter(environment, beans);
    }

    /** Ordered, so that it sees the pool before other post-processors wrap it. */
    record PoolSplitter(Environment environment, DefaultListableBeanFactory beans)
            implements BeanPostProcessor, Ordered {

        @Override
        public Object postProcessAfterInitialization(Object bean, String name) {
            if (!(bean instanceof HikariDataSource pool) || !name.equals("dataSource")) {
                return bean;
            }
            HikariDataSource reading = new HikariDataSource();
            pool.copyStateTo(reading);
            reading.setPoolName(NAME);
            reading.setMaximumPoolSize(
                    environment.getRequiredProperty("voltdocket.reading-connections", Integer.class));
            beans.registerDisposableBean(NAME + "Pool", reading::close);
            return new Split(pool, reading);
        }

        @Override
        public int getOrder() {
            return HIGHEST_PRECEDENCE;
        }
    }

    /** Marks the thread of a reading request, before anything takes a connection for it. */
    @Bean
    FilterRegistrationBean<Filter> readingRequestFilter() {
        FilterRegistrationBean<Filter> filter = new FilterRegistrationBean<>((request, response, chain) -> {
            String method = ((HttpServletRequest) request).getMethod();
            READS.set(method.equals(HttpMethod.GET.name()) || method.equals(HttpMethod.HEAD.name()));
            try {
                chain.doFilter(request, response);
            } finally {
                READS.remove();
            }
        });
        filter.setOrder(Ordered.HIGHEST_PRECEDENCE + 5);
        return filter;
    }

    /** Whether the database answers, over the pool for reading: a busy server is still ready. */
    @Bean
    DataSourceHealthIndicator dbHealthIndicator(DataSource dataSource) throws SQLException {
        return new DataSourceHealthIndicator(
                dataSource.isWrapperFor(Split.class) ? dataSource.unwrap(Split.class).reading : dataSource);
    }

    private static final class Split extends DelegatingDataSource {

        private final DataSource reading;

        Split(DataSource writing, DataSource reading) {
            super(writing);
            this.reading = reading;
        }

        @Override
        public Connection getConnection() throws SQLException {
            return READS.get() ? reading.getConnection() : super.getConnection();
        }
    }
}
