package org.voltdocket.server;

import static org.assertj.core.api.Assertions.assertThat;

import java.net.URLEncoder;
import java.net.http.HttpRequest.BodyPublishers;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.voltdocket.dossier.Pairs;
import org.voltdocket.kernel.Role;
import org.voltdocket.support.Answer;
import org.voltdocket.support.Client;
import org.voltdocket.support.Server;
import org.voltdocket.support.ServerTest;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;
import tools.jackson.databind.node.ObjectNode;

/**
 * Sends extreme values for every parameter and every member of every body in the API description: none may be answered by
 * 500 or more.
 */
@ServerTest
class ApiFuzzTest {

    private static final JsonMapper JSON = JsonMapper.shared();
    private static final String LONG = "x".repeat(5000);

    private static final List<String> TEXTS = List.of(
            "",
            "a\u0000b",
            LONG,
            "9".repeat(1000),
            "1e999999999",
            "1e400",
            "-1e400",
            "NaN",
            "9223372036854775808",
            "2026-02-30",
            "+999999999-12-31T23:59:59Z",
            "%_\\'\";--",
            "\ud83d\ude00\u202e");

    /** As JSON text: also what no string of Java can be sent as. */
    private static final List<String> VALUES = List.of(
            "null",
            "{}",
            "[null]",
            "-9223372036854775809",
            "1e-999999999",
            "1e400",
            "-1e400",
            "1e308",
            "4.9e-324",
            "2147483648",
            "true",
            "9".repeat(1000),
            "\"a\\u0000b\"",
            "\"\\ud83d\"",
            "\"\\udc00\\ud83d\"",
            "{\"\\ud83d\":1}",
            "\"\\u202e\\u0007\"",
            "\"" + LONG + "\"",
            "\"1e999999999\"",
            "\"+999999999-12-31T23:59:59Z\"",
            "\"0001-01-01\"",
            "[".repeat(60) + "]".repeat(60),
            "[".repeat(70) + "]".repeat(70),
            "[".repeat(100_000),
            "{\"a\":".repeat(60) + "1" + "}".repeat(60),
            "[" + "0,".repeat(50_000) + "0]",
            "[" + "\"charging-test\",".repeat(5000) + "\"charging-test\"]",
            "[" + "{},".repeat(20_000) + "{}]");

    @Autowired
    private Server server;

    private JsonNode api;
    private Client client;
    private Map<String, String> known;
    private int calls;
    private final List<String> failures = new ArrayList<>();

    @Test
    void noInputIsAnsweredByAServerError() {
        api = server.anonymous().get("/v3/api-docs").json();
        client = server.as(server.newUser(Role.ADMIN));
        known = known();
        for (Map.Entry<String, JsonNode> path : api.get("paths").properties()) {
            for (Map.Entry<String, JsonNode> operation : path.getValue().properties()) {
                fuzz(operation.getKey().toUpperCase(java.util.Locale.ROOT), path.getKey(), operation.getValue());
            }
        }
        assertThat(failures).as("of " + calls + " calls").isEmpty();
        assertThat(calls).isGreaterThan(2000);
    }

    private Map<String, String> known() {
        Answer opened = server.as(Role.CLERK)
                .postJson(
                        "/api/v1/cases",
                        "{\"batterySerial\":\"" + Pairs.serial() + "\",\"vin\":\"" + Pairs.vin() + "\"}");
        assertThat(opened.status()).as(opened.toString()).isEqualTo(201);
        return Map.of("number", opened.json().get("number").asString());
    }

    private void fuzz(String method, String path, JsonNode operation) {
        Map<String, String> in = new LinkedHashMap<>();
        for (JsonNode parameter : operation.path("parameters")) {
            in.put(parameter.get("name").asString(), parameter.get("in").asString());
        }
        JsonNode content = operation.path("requestBody").path("content");
        String type = content.isMissingNode() || content.isEmpty()
                ? null
                : content.propertyNames().iterator().next();
        String body = type != null && type.endsWith("json") ? "{}" : null;
        for (Map.Entry<String, String> one : in.entrySet()) {
            for (String value : TEXTS) {
                call(method, path, in, one.getKey(), value, type, body);
            }
        }
        if (type == null) {
            call(method, path, in, null, null, null, null);
        } else if (body == null) {
            for (String value : TEXTS) {
                upload(path, in, value);
            }
        } else {
            JsonNode schema = resolve(content.get(type).get("schema"));
            for (String value : VALUES) {
                call(method, path, in, null, null, type, value);
            }
            for (Map.Entry<String, JsonNode> member : schema.path("properties").properties()) {
                for (String value : VALUES) {
                    call(method, path, in, null, null, type, body(schema, member.getKey(), value));
                }
            }
        }
    }

    /** A body with a plausible value for each member but one. */
    private String body(JsonNode schema, String member, String value) {
        StringBuilder text = new StringBuilder("{");
        for (Map.Entry<String, JsonNode> one : schema.get("properties").properties()) {
            text.append(text.length() > 1 ? "," : "")
                    .append(JSON.writeValueAsString(one.getKey()))
                    .append(':')
                    .append(one.getKey().equals(member) ? value : plausible(one.getKey(), resolve(one.getValue()), 0));
        }
        return text.append('}').toString();
    }

    private String plausible(String name, JsonNode schema, int depth) {
        if (name.equals("batterySerial") || name.equals("serial")) {
            return "\"" + Pairs.serial() + "\"";
        }
        if (name.equals("vin")) {
            return "\"" + Pairs.vin() + "\"";
        }
        if (schema.has("enum")) {
            return schema.get("enum").get(0).toString();
        }
        JsonNode type = schema.path("type").isArray() ? schema.get("type").get(0) : schema.path("type");
        String format = schema.path("format").asString("");
        switch (type.asString("")) {
            case "integer", "number":
                return "1";
            case "boolean":
                return "true";
            case "array":
                return "[]";
            case "object":
                ObjectNode none = JSON.createObjectNode();
                return depth > 3 || !schema.has("properties") ? none.toString() : body(schema, "", "");
            default:
                return switch (format) {
                    case "date" -> "\"2026-03-04\"";
                    case "date-time" -> "\"2026-03-04T08:40:00Z\"";
                    case "uuid" -> "\"" + UUID.randomUUID() + "\"";
                    default -> "\"a reason of more than twenty characters\"";
                };
        }
    }

    private JsonNode resolve(JsonNode schema) {
        JsonNode now = schema;
        while (now.has("$ref")) {
            now = api.at(now.get("$ref").asString().substring(1));
        }
        return now;
    }

    private String filled(String path, Map<String, String> in, String name, String value) {
        String filled = path;
        StringBuilder query = new StringBuilder();
        for (Map.Entry<String, String> one : in.entrySet()) {
            String text = one.getKey().equals(name)
                    ? value
                    : known.getOrDefault(
                            one.getKey(), UUID.nameUUIDFromBytes(new byte[1]).toString());
            String encoded = URLEncoder.encode(text, StandardCharsets.UTF_8).replace("+", "%20");
            if (one.getValue().equals("path")) {
                filled = filled.replace("{" + one.getKey() + "}", encoded.isEmpty() ? "%20" : encoded);
            } else if (one.getValue().equals("query") && one.getKey().equals(name)) {
                query.append("?").append(one.getKey()).append("=").append(encoded);
            }
        }
        return filled.replaceAll("\\{\\w+}", "x") + query;
    }

    private void call(
            String method, String path, Map<String, String> in, String name, String value, String type, String body) {
        String target = filled(path, in, name, value);
        Client sender = "header".equals(in.get(name)) && Pattern.matches("[\\x20-\\x7e]*", value)
                ? client.header(name, value)
                : client;
        Answer answer = sender.send(
                method, target, body == null ? BodyPublishers.noBody() : BodyPublishers.ofString(body), type);
        note(method + " " + path, name + "=" + value + " " + body, answer);
    }

    private void upload(String path, Map<String, String> in, String content) {
        Answer answer = client.multipart(
                filled(path, in, null, null),
                Map.of("note", content, "reason", content),
                "file.csv",
                content.getBytes(StandardCharsets.UTF_8));
        note("POST " + path, "file " + content, answer);
    }

    private void note(String route, String sent, Answer answer) {
        calls++;
        if (answer.status() >= 500) {
            failures.add(route + " " + sent.substring(0, Math.min(300, sent.length())) + " -> " + answer.status());
        }
    }
}
