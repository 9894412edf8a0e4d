package org.voltdocket.access.web;

import java.util.List;
import org.springframework.security.config.annotation.web.builders.HttpSecurity;
import org.springframework.security.config.annotation.web.configurers.AbstractHttpConfigurer;
import org.voltdocket.access.signin.SignInOption;

/** Adds all ways to sign in to a filter chain. */
class SignInOptionsConfigurer extends AbstractHttpConfigurer<SignInOptionsConfigurer, HttpSecurity> {

    private final List<SignInOption> options;

    SignInOptionsConfigurer(List<SignInOption> options) {
        this.options = options;
    }

    @Override
    public void configure(HttpSecurity http) {
        options.forEach(option -> option.configure(http));
    }
}
