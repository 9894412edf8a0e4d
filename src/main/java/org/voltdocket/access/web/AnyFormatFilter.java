package org.voltdocket.access.web;

import jakarta.servlet.FilterChain;
import jakarta.servlet.ServletException;
import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletRequestWrapper;
import jakarta.servlet.http.HttpServletResponse;
import java.io.IOException;
import java.util.Collections;
import java.util.Enumeration;
import java.util.List;
import org.springframework.http.HttpHeaders;
import org.springframework.web.filter.OncePerRequestFilter;

/** Ignores the {@code Accept} header: health is JSON for browsers and probes alike. */
class AnyFormatFilter extends OncePerRequestFilter {

    @Override
    protected void doFilterInternal(HttpServletRequest request, HttpServletResponse response, FilterChain chain)
            throws ServletException, IOException {
        chain.doFilter(
                new HttpServletRequestWrapper(request) {
                    @Override
                    public String getHeader(String name) {
                        return HttpHeaders.ACCEPT.equalsIgnoreCase(name) ? "*/*" : super.getHeader(name);
                    }

                    @Override
                    public Enumeration<String> getHeaders(String name) {
                        return HttpHeaders.ACCEPT.equalsIgnoreCase(name)
                                ? Collections.enumeration(List.of("*/*"))
                                : super.getHeaders(name);
                    }
                },
                response);
    }
}
