package org.voltdocket.support;

import java.lang.annotation.Documented;
import java.lang.annotation.ElementType;
import java.lang.annotation.Inherited;
import java.lang.annotation.Retention;
import java.lang.annotation.RetentionPolicy;
import java.lang.annotation.Target;
import org.springframework.boot.test.context.SpringBootTest;
import org.springframework.boot.test.context.SpringBootTest.WebEnvironment;
import org.springframework.context.annotation.Import;

/**
 * A test against the whole running server on a real PostgreSQL.
 *
 * <p>All such tests share one server and one database: make workshops, accounts and cases of your own (see
 * {@link Server}), and never count on an empty table. Add no property, bean or profile to a single test class, or the
 * server starts once more.
 */
@Target(ElementType.TYPE)
@Retention(RetentionPolicy.RUNTIME)
@Documented
@Inherited
@SpringBootTest(
        webEnvironment = WebEnvironment.RANDOM_PORT,
        properties = {
            "voltdocket.admin.user=" + Server.FIRST_ADMIN,
            "voltdocket.admin.password=" + Server.PASSWORD,
            "server.shutdown=immediate",
            // tests share accounts
            "voltdocket.quota.uploads-per-day=5000",
            "voltdocket.quota.assessments-per-day=20000",
            "voltdocket.quota.tokens=30",
            "voltdocket.privacy.master-key=" + Server.MASTER_KEY,
            // all tests together have one address
            "voltdocket.sign-in.tries-per-address=100000",
            "spring.mail.host=localhost",
            "voltdocket.mail.from=voltdocket@distributor.example",
            "voltdocket.address=https://voltdocket.example/"
        })
@Import(ServerTestConfig.class)
public @interface ServerTest {}
