package org.voltdocket.mail;

import org.springframework.beans.factory.annotation.Value;
import org.springframework.stereotype.Component;

/** How mail is sent; {@code spring.mail.*} names the server. */
@Component
class MailSettings {

    private final String host;
    private final String from;
    private final String address;

    /**
     * @param host of the SMTP server; blank turns mail off
     * @param from address of the sender
     * @param address under which people reach this server
     */
    MailSettings(
            @Value("${spring.mail.host:}") String host,
            @Value("${voltdocket.mail.from:}") String from,
            @Value("${voltdocket.address:http://localhost:${server.port:8080}}") String address) {
        if (!host.isBlank() && from.isBlank()) {
            throw new IllegalArgumentException(
                    "spring.mail.host is set, so mail is on, but voltdocket.mail.from is not: set it to the sender's address");
        }
        this.host = host;
        this.from = from;
        this.address = address.replaceAll("/+$", "");
    }

    boolean isOn() {
        return !host.isBlank();
    }

    String from() {
        return from;
    }

    String address() {
        return address;
    }
}
