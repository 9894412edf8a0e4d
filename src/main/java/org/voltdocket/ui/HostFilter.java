package org.voltdocket.ui;

import jakarta.servlet.FilterChain;
import jakarta.servlet.ServletException;
import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletResponse;
import java.io.IOException;
import org.springframework.core.Ordered;
import org.springframework.core.annotation.Order;
import org.springframework.stereotype.Component;
import org.springframework.web.filter.OncePerRequestFilter;
import org.voltdocket.kernel.RequestException;

/** Refuses requests whose {@code Host} header names another server. */
@Component
@Order(Ordered.HIGHEST_PRECEDENCE + 25)
class HostFilter extends OncePerRequestFilter {

    private final PublicAddress address;

    HostFilter(PublicAddress address) {
        this.address = address;
    }

    @Override
    protected void doFilterInternal(HttpServletRequest request, HttpServletResponse response, FilterChain chain)
            throws ServletException, IOException {
        if (!address.accepts(request)) {
            throw RequestException.of(
                    421,
                    "host-unknown",
                    "This server is not known by the host name of the request. Use the address that you were given. The"
                            + " administrator sets it as VOLTDOCKET_ADDRESS, and further names as VOLTDOCKET_HOSTS.");
        }
        chain.doFilter(request, response);
    }
}
