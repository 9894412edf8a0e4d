package org.voltdocket.access.web;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.time.ZoneOffset;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.mock.web.MockFilterChain;
import org.springframework.mock.web.MockHttpServletRequest;
import org.springframework.mock.web.MockHttpServletResponse;
import org.springframework.mock.web.MockHttpSession;
import org.springframework.security.core.context.SecurityContextHolder;
import org.voltdocket.access.AccountPrincipal;
import org.voltdocket.access.AccountService;
import org.voltdocket.access.PasswordVerifier;
import org.voltdocket.access.signin.SignedIn;
import org.voltdocket.kernel.Role;
import org.voltdocket.support.Server;
import org.voltdocket.support.ServerTest;

@ServerTest
class SessionValidityFilterTest {

    @Autowired
    private Server server;

    @Autowired
    private AccountService accounts;

    @Autowired
    private PasswordVerifier passwords;

    @AfterEach
    void signOut() {
        SecurityContextHolder.clearContext();
    }

    @Test
    void aSessionEndsAfterItsLifetimeEvenWhenItIsUsed() throws Exception {
        AccountPrincipal who = passwords
                .check(server.newUser(Role.CLERK).name(), Server.PASSWORD)
                .orElseThrow();
        assertThat(isSignedInAfter(Duration.ofHours(11), who)).isTrue();
        assertThat(isSignedInAfter(Duration.ofHours(13), who)).isFalse();
    }

    private boolean isSignedInAfter(Duration age, AccountPrincipal who) throws Exception {
        MockHttpServletRequest request = new MockHttpServletRequest();
        MockHttpSession session = new MockHttpSession();
        request.setSession(session);
        SecurityContextHolder.getContext().setAuthentication(SignedIn.authentication(who));
        Clock clock =
                Clock.fixed(Instant.ofEpochMilli(session.getCreationTime()).plus(age), ZoneOffset.UTC);
        new SessionValidityFilter(accounts, Duration.ofHours(12), clock)
                .doFilter(request, new MockHttpServletResponse(), new MockFilterChain());
        boolean signedIn = SecurityContextHolder.getContext().getAuthentication() != null;
        assertThat(session.isInvalid()).isEqualTo(!signedIn);
        return signedIn;
    }
}
