package org.voltdocket.ui;

import jakarta.servlet.http.HttpServletRequest;
import java.net.URI;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Pattern;
import org.springframework.beans.factory.annotation.Value;
import org.springframework.http.HttpHeaders;
import org.springframework.stereotype.Component;

/**
 * The address under which people reach this server, for links in pages and on labels, and the host names that requests may
 * have. Links never take the {@code Host} header of a request.
 */
@Component
public class PublicAddress {

    private static final Set<String> LOOPBACK = Set.of("localhost", "127.0.0.1", "[::1]");
    private static final Pattern IP_ADDRESS = Pattern.compile("[0-9]{1,3}(\\.[0-9]{1,3}){3}|\\[[0-9a-f:.]+]");

    private final String base;
    private final Set<String> hosts = new TreeSet<>(LOOPBACK);
    private final boolean configured;

    /**
     * @param address such as {@code https://claims.example.com}; blank for {@code http://localhost} and the port
     * @param further host names without port that requests may have besides that of the address
     */
    PublicAddress(
            @Value("${voltdocket.address:}") String address,
            @Value("${voltdocket.hosts:}") List<String> further,
            @Value("${server.port:8080}") int port) {
        configured = !address.isBlank();
        base = configured ? address.strip().replaceAll("/+$", "") : "http://localhost:" + port;
        String host = URI.create(base).getHost();
        if (host == null) {
            throw new IllegalArgumentException(
                    "voltdocket.address is no address such as https://claims.example.com: " + address);
        }
        hosts.add(host.toLowerCase(Locale.ROOT));
        further.stream()
                .map(one -> one.strip().toLowerCase(Locale.ROOT))
                .filter(one -> !one.isEmpty())
                .forEach(hosts::add);
    }

    /** @param path with a leading slash */
    public String of(String path) {
        return base + path;
    }

    /**
     * Whether the request names a host of this server: a configured one or this machine. Without a configured address also
     * any IP address, which no foreign name can stand for.
     */
    boolean accepts(HttpServletRequest request) {
        String sent = request.getHeader(HttpHeaders.HOST);
        if (sent == null || sent.isBlank()) {
            return true; // HTTP/1.0
        }
        String host = sent.strip().toLowerCase(Locale.ROOT).replaceFirst(":\\d*$", "");
        return hosts.contains(host) || !configured && IP_ADDRESS.matcher(host).matches();
    }
}
