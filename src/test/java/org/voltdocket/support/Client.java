package org.voltdocket.support;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.net.CookieManager;
import java.net.URI;
import java.net.URLEncoder;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpRequest.BodyPublisher;
import java.net.http.HttpRequest.BodyPublishers;
import java.net.http.HttpResponse;
import java.net.http.HttpResponse.BodyHandlers;
import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;

/** A plain HTTP client with cookies of its own; follows no redirect, so that tests see it. */
public final class Client {

    private static final Pattern CSRF = Pattern.compile("name=\"_csrf\"[^>]*value=\"([^\"]+)\"");
    private static final Pattern CSRF_META = Pattern.compile("<meta name=\"csrf-token\" content=\"([^\"]+)\"");
    private static final String BOUNDARY = "voltdocket-test-boundary-7d1f";

    private final String base;
    private final HttpClient http;
    private final Map<String, String> headers;

    public Client(String base) {
        this(
                base,
                HttpClient.newBuilder()
                        .version(HttpClient.Version.HTTP_1_1)
                        .cookieHandler(new CookieManager())
                        .connectTimeout(Duration.ofSeconds(10))
                        .build(),
                Map.of());
    }

    private Client(String base, HttpClient http, Map<String, String> headers) {
        this.base = base;
        this.http = http;
        this.headers = headers;
    }

    /** The same client (cookies too) with one header more. */
    public Client header(String name, String value) {
        Map<String, String> more = new LinkedHashMap<>(headers);
        more.put(name, value);
        return new Client(base, http, more);
    }

    /** The same client, cookies too, at another server. */
    public Client at(Client other) {
        return new Client(other.base, http, headers);
    }

    /** The same client with HTTP Basic. */
    public Client basic(String user, String password) {
        return header("Authorization", Server.basic(user, password));
    }

    /** Address of the server, such as {@code http://localhost:40123}. */
    public String base() {
        return base;
    }

    public Answer get(String path) {
        return send("GET", path, BodyPublishers.noBody(), null);
    }

    public Answer delete(String path) {
        return send("DELETE", path, BodyPublishers.noBody(), null);
    }

    public Answer postJson(String path, String json) {
        return send("POST", path, BodyPublishers.ofString(json), "application/json");
    }

    public Answer patchJson(String path, String json) {
        return send("PATCH", path, BodyPublishers.ofString(json), "application/merge-patch+json");
    }

    /** Posts a form as a page would: fetches a CSRF token of the session first. */
    public Answer postForm(String path, Map<String, String> fields) {
        Map<String, String> all = new LinkedHashMap<>(fields);
        all.put("_csrf", csrf());
        return postFormWithoutCsrf(path, all);
    }

    public Answer postFormWithoutCsrf(String path, Map<String, String> fields) {
        String body = fields.entrySet().stream()
                .map(e -> encoded(e.getKey()) + "=" + encoded(e.getValue()))
                .collect(Collectors.joining("&"));
        return send("POST", path, BodyPublishers.ofString(body), "application/x-www-form-urlencoded");
    }

    /** Uploads one file as the part {@code file}, and a note where there is one. */
    public Answer upload(String path, String fileName, byte[] content, String note) {
        String noted = note == null
                ? ""
                : "--" + BOUNDARY + "\r\nContent-Disposition: form-data; name=\"note\"\r\n"
                        + "Content-Type: text/plain; charset=utf-8\r\n\r\n" + note + "\r\n";
        String head = noted + "--" + BOUNDARY + "\r\nContent-Disposition: form-data; name=\"file\"; filename=\""
                + fileName + "\"\r\nContent-Type: application/octet-stream\r\n\r\n";
        BodyPublisher body = BodyPublishers.concat(
                BodyPublishers.ofString(head),
                BodyPublishers.ofByteArray(content),
                BodyPublishers.ofString("\r\n--" + BOUNDARY + "--\r\n"));
        return send("POST", path, body, "multipart/form-data; boundary=" + BOUNDARY);
    }

    /** Sends a form with fields and, where there is a name, one file as the part {@code file}. */
    public Answer multipart(String path, Map<String, String> fields, String fileName, byte[] content) {
        StringBuilder head = new StringBuilder();
        fields.forEach((name, value) -> head.append("--" + BOUNDARY + "\r\nContent-Disposition: form-data; name=\"")
                .append(name)
                .append("\"\r\nContent-Type: text/plain; charset=utf-8\r\n\r\n")
                .append(value)
                .append("\r\n"));
        if (fileName != null) {
            head.append("--" + BOUNDARY + "\r\nContent-Disposition: form-data; name=\"file\"; filename=\"")
                    .append(fileName)
                    .append("\"\r\nContent-Type: application/octet-stream\r\n\r\n");
        }
        BodyPublisher body = BodyPublishers.concat(
                BodyPublishers.ofString(head.toString()),
                BodyPublishers.ofByteArray(fileName == null ? new byte[0] : content),
                BodyPublishers.ofString((fileName == null ? "" : "\r\n") + "--" + BOUNDARY + "--\r\n"));
        return send("POST", path, body, "multipart/form-data; boundary=" + BOUNDARY);
    }

    /** A CSRF token of this session, read off a page as a browser would. */
    public String csrf() {
        String page = send("GET", "/sign-in", BodyPublishers.noBody(), null).text();
        for (Pattern pattern : new Pattern[] {CSRF, CSRF_META}) {
            Matcher found = pattern.matcher(page);
            if (found.find()) {
                return found.group(1);
            }
        }
        throw new AssertionError("no CSRF token on the sign-in page: " + page);
    }

    /** Any other call. */
    public Answer send(String method, String path, BodyPublisher body, String contentType) {
        HttpRequest.Builder request = HttpRequest.newBuilder(URI.create(base + path))
                .timeout(Duration.ofSeconds(120))
                .method(method, body);
        headers.forEach(request::setHeader);
        if (contentType != null) {
            request.setHeader("Content-Type", contentType);
        }
        try {
            HttpResponse<byte[]> response = http.send(request.build(), BodyHandlers.ofByteArray());
            return new Answer(response.statusCode(), response.headers(), response.body());
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw new IllegalStateException(e);
        }
    }

    private static String encoded(String text) {
        return URLEncoder.encode(text, StandardCharsets.UTF_8);
    }
}
