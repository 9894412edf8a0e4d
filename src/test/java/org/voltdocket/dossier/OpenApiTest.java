package org.voltdocket.dossier;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.voltdocket.support.Answer;
import org.voltdocket.support.Server;
import org.voltdocket.support.ServerTest;
import tools.jackson.databind.JsonNode;

/** The description that outside readers rely on is the one the server gives, and it leaves nothing out. */
@ServerTest
class OpenApiTest {

    private static final Path FILE = Path.of("shared", "openapi.yaml");

    @Autowired
    private Server server;

    @Test
    void theFileIsWhatTheServerSays() throws Exception {
        Answer answer = server.anonymous().get("/v3/api-docs.yaml");
        assertThat(answer.status()).isEqualTo(200);
        if (Boolean.getBoolean("voltdocket.regenerate")) {
            Files.writeString(FILE, answer.text());
        }
        assertThat(Files.readString(FILE, StandardCharsets.UTF_8))
                .as(
                        "if the change is meant: mvn -Dtest=OpenApiTest -Dvoltdocket.regenerate=true test, then read the"
                                + " difference of %s",
                        FILE)
                .isEqualTo(answer.text());
    }

    @Test
    void everyOperationSaysWhatItDoesWhatItAnswersAndWhoMayCall() {
        JsonNode api = server.anonymous().get("/v3/api-docs").json();
        List<String> lacking = new ArrayList<>();
        api.get("paths")
                .properties()
                .forEach(path -> path.getValue().properties().forEach(operation -> {
                    String name = operation.getKey() + " " + path.getKey();
                    JsonNode said = operation.getValue();
                    if (!said.has("summary")) {
                        lacking.add(name + ": summary");
                    }
                    if (!said.get("responses").has("401")) {
                        lacking.add(name + ": 401");
                    }
                    said.get("responses").properties().forEach(response -> {
                        boolean problem = response.getKey().startsWith("4");
                        JsonNode content = response.getValue().get("content");
                        if (problem && (content == null || !content.has("application/problem+json"))) {
                            lacking.add(name + ": problem of " + response.getKey());
                        }
                        if (!problem
                                && content == null
                                && !List.of("204", "304").contains(response.getKey())) {
                            lacking.add(name + ": schema of " + response.getKey());
                        }
                    });
                }));
        assertThat(lacking).isEmpty();
        assertThat(api.get("security").toString()).isEqualTo("[{\"bearer\":[]}]");
        assertThat(api.at("/paths/~1api~1v1~1tokens/post/security").toString()).isEqualTo("[{\"basic\":[]}]");
        assertThat(api.at("/components/securitySchemes").propertyNames()).containsExactly("basic", "bearer");
        assertThat(api.get("paths").propertyNames())
                .contains(
                        "/api/v1/tokens",
                        "/api/v1/cases",
                        "/api/v1/cases/{number}",
                        "/api/v1/cases/{number}/evidence",
                        "/api/v1/evidence/{id}",
                        "/api/v1/evidence/{id}/content",
                        "/api/v1/evidence/{id}/series");
        assertThat(api.toString()).doesNotContain("\"actor\"", "JsonNode");
    }
}
