package org.voltdocket.support;

import java.net.http.HttpHeaders;
import java.nio.charset.StandardCharsets;
import java.util.Optional;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;

/** What the server answered. */
public record Answer(int status, HttpHeaders headers, byte[] body) {

    /** The body as text. */
    public String text() {
        return new String(body, StandardCharsets.UTF_8);
    }

    /** The body as JSON; fails where it is none. */
    public JsonNode json() {
        return JsonMapper.shared().readTree(body);
    }

    public Optional<String> header(String name) {
        return headers.firstValue(name);
    }

    @Override
    public String toString() {
        String text = text();
        return status + " " + headers.map() + " " + (text.length() > 2000 ? text.substring(0, 2000) + "…" : text);
    }
}
