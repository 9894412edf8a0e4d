package org.voltdocket.access.signin;

import org.springframework.security.config.annotation.web.builders.HttpSecurity;
import org.springframework.security.web.authentication.AbstractAuthenticationProcessingFilter;
import org.springframework.security.web.authentication.SavedRequestAwareAuthenticationSuccessHandler;
import org.springframework.security.web.authentication.session.SessionAuthenticationStrategy;
import org.springframework.security.web.context.HttpSessionSecurityContextRepository;
import org.springframework.security.web.savedrequest.RequestCache;

/** A way to sign in, or a step of one, beside the form for name and password. Added to the filter chain of the pages. */
public interface SignInOption {

    /** Adds filters and settings before the chain is built. */
    default void prepare(HttpSecurity http) throws Exception {}

    /** Adds filters once the shared objects of the chain are known. */
    default void configure(HttpSecurity http) {}

    /** Lets a filter start sessions like the form does. */
    static void startsSession(AbstractAuthenticationProcessingFilter filter, HttpSecurity http) {
        filter.setSessionAuthenticationStrategy(http.getSharedObject(SessionAuthenticationStrategy.class));
        filter.setSecurityContextRepository(new HttpSessionSecurityContextRepository());
    }

    /** Leads to the page that was asked for before the sign-in, else to the first page. */
    static SavedRequestAwareAuthenticationSuccessHandler toSavedPage(HttpSecurity http) {
        SavedRequestAwareAuthenticationSuccessHandler handler = new SavedRequestAwareAuthenticationSuccessHandler();
        handler.setRequestCache(http.getSharedObject(RequestCache.class));
        return handler;
    }
}
