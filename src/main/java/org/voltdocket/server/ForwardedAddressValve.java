package org.voltdocket.server;

import jakarta.servlet.ServletException;
import java.io.IOException;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import java.util.stream.Collectors;
import org.apache.catalina.connector.Request;
import org.apache.catalina.connector.Response;
import org.apache.catalina.valves.ValveBase;
import org.springframework.beans.factory.annotation.Value;
import org.springframework.boot.tomcat.servlet.TomcatServletWebServerFactory;
import org.springframework.boot.web.server.WebServerFactoryCustomizer;
import org.springframework.context.annotation.Configuration;
import org.springframework.core.Ordered;
import org.springframework.security.web.util.matcher.IpAddressMatcher;

/**
 * Takes the client's address and scheme from {@code X-Forwarded-For} and {@code X-Forwarded-Proto}, but only from reverse
 * proxies that are configured: anybody can send these headers.
 */
final class ForwardedAddressValve extends ValveBase {

    private static final int HTTPS_PORT = 443;

    private final List<IpAddressMatcher> proxies;

    /** @param proxies networks in CIDR notation, such as {@code 10.0.0.0/8} */
    ForwardedAddressValve(List<String> proxies) {
        super(true);
        this.proxies = proxies.stream().map(IpAddressMatcher::new).toList();
    }

    @Override
    public void invoke(Request request, Response response) throws IOException, ServletException {
        if (isProxy(request.getRemoteAddr())) {
            String client = client(Collections.list(request.getHeaders("X-Forwarded-For")), request.getRemoteAddr());
            request.setRemoteAddr(client);
            request.setRemoteHost(client);
            if ("https".equalsIgnoreCase(request.getHeader("X-Forwarded-Proto"))) {
                request.setSecure(true);
                request.getCoyoteRequest().scheme().setString("https");
                request.setServerPort(HTTPS_PORT);
            }
        }
        getNext().invoke(request, response);
    }

    /** The last address that is no proxy of ours: those before it were sent by the client and may be invented. */
    String client(List<String> headers, String peer) {
        List<String> hops = Arrays.stream(
                        headers.stream().collect(Collectors.joining(",")).split(","))
                .map(String::strip)
                .filter(hop -> hop.matches("[0-9A-Fa-f.:]{2,45}"))
                .collect(Collectors.toList());
        Collections.reverse(hops);
        return hops.stream()
                .filter(hop -> !isProxy(hop))
                .findFirst()
                .orElse(hops.isEmpty() ? peer : hops.get(hops.size() - 1));
    }

    private boolean isProxy(String address) {
        return proxies.stream().anyMatch(proxy -> proxy.matches(address));
    }

    /** Puts the valve before all others, where proxies are configured. */
    @Configuration(proxyBeanMethods = false)
    static class Registration implements WebServerFactoryCustomizer<TomcatServletWebServerFactory>, Ordered {

        private final List<String> proxies;

        Registration(@Value("${voltdocket.proxies:}") List<String> proxies) {
            this.proxies = proxies;
        }

        @Override
        public void customize(TomcatServletWebServerFactory factory) {
            if (!proxies.isEmpty()) {
                factory.addEngineValves(new ForwardedAddressValve(proxies));
            }
        }

        @Override
        public int getOrder() {
            return Ordered.HIGHEST_PRECEDENCE;
        }
    }
}
