package org.voltdocket.dossier;

import static org.assertj.core.api.Assertions.assertThat;

import com.networknt.schema.InputFormat;
import com.networknt.schema.Schema;
import com.networknt.schema.SchemaLocation;
import com.networknt.schema.SchemaRegistry;
import com.networknt.schema.SpecificationVersion;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.voltdocket.kernel.Role;
import org.voltdocket.support.Answer;
import org.voltdocket.support.Client;
import org.voltdocket.support.Server;
import org.voltdocket.support.ServerTest;
import tools.jackson.databind.JsonNode;

/** What the server really answers fits the published schemas (JSON Schema 2020-12). */
@ServerTest
class SchemaTest {

    private static final String BASE = "https://voltdocket.example/schemas/";
    private static final Path SHARED = Path.of("shared");

    @Autowired
    private Server server;

    private Client workshop;
    private String number;

    @BeforeEach
    void openCase() throws IOException {
        workshop = server.as(server.newUser(Role.WORKSHOP));
        String request = Files.readString(SHARED.resolve("samples/case-request.json"), StandardCharsets.UTF_8);
        assertFits("case-request", request);
        Answer opened = workshop.postJson("/api/v1/cases", request.replace("KX4-2291-077", Pairs.serial()));
        assertThat(opened.status()).as(opened.toString()).isEqualTo(201);
        number = opened.json().get("number").stringValue();
    }

    @Test
    void assessmentAndEveryKindOfEvidenceFit() throws IOException {
        for (String sample :
                List.of("battery-test.json", "cranking-test.json", "charging-test.json", "standing-comma.csv")) {
            Answer kept =
                    upload(sample, Files.readAllBytes(SHARED.resolve("samples").resolve(sample)));
            assertThat(kept.status()).as(kept.toString()).isEqualTo(201);
            assertFits("evidence-item", kept.text());
            String id = kept.json().get("id").stringValue();
            assertThat(kept.header("location")).contains("/api/v1/evidence/" + id);
            assertThat(workshop.get("/api/v1/evidence/" + id).json()).isEqualTo(kept.json());
        }
        JsonNode read = workshop.get("/api/v1/cases/" + number).json();
        assertFits("assessment", read.get("assessment").toString());
        assertThat(read.get("evidence").size()).isEqualTo(4);
        read.get("evidence").forEach(item -> assertFits("evidence-item", item.toString()));
    }

    @Test
    void regimesCoverARecordingWithoutGap() throws IOException {
        JsonNode item = upload("s.csv", Files.readAllBytes(SHARED.resolve("samples/standing-comma.csv")))
                .json();
        JsonNode regimes = item.get("regimes");
        assertThat(regimes.isEmpty()).isFalse();
        for (int i = 1; i < regimes.size(); i++) {
            assertThat(regimes.get(i).get("from")).isEqualTo(regimes.get(i - 1).get("to"));
        }
        double length = regimes.get(regimes.size() - 1).get("to").doubleValue()
                - regimes.get(0).get("from").doubleValue();
        assertThat(length).isEqualTo(item.get("durationS").doubleValue());
    }

    @Test
    void everyKindOfProblemFits() {
        byte[] text = "time_s,measured_v\n0,abc\n1,12.6\n".getBytes(StandardCharsets.UTF_8);
        Answer refused = upload("r.csv", text);
        assertThat(refused.status()).as(refused.toString()).isEqualTo(422);
        assertThat(refused.json().get("errors").get(0).get("line").intValue()).isEqualTo(2);
        List<Answer> problems = List.of(
                refused,
                upload("program.bin", new byte[] {0x7f, 'E', 'L', 'F', 0, 0, 0, 0, 1, 2, 3, 4}),
                workshop.postJson("/api/v1/cases", "{}"),
                workshop.postJson("/api/v1/cases", "{"),
                workshop.get("/api/v1/cases/nonsense"),
                workshop.get("/api/v1/cases?limit=0"),
                workshop.send("DELETE", "/api/v1/cases", java.net.http.HttpRequest.BodyPublishers.noBody(), null),
                workshop.postJson("/api/v1/cases/" + number + "/evidence", "{}"),
                server.anonymous().get("/api/v1/cases"),
                workshop.header("If-Match", "\"7-0000000000000000\"").patchJson("/api/v1/cases/" + number, "{}"));
        for (Answer problem : problems) {
            assertThat(problem.status()).isBetween(400, 499);
            assertThat(problem.header("content-type").orElse("")).startsWith("application/problem+json");
            assertFits("problem", problem.text());
            assertThat(problem.json().get("status").intValue()).isEqualTo(problem.status());
        }
        assertThat(problems.stream().map(Answer::status))
                .containsExactly(422, 415, 400, 400, 404, 400, 405, 415, 401, 412);
        JsonNode evidence = workshop.get("/api/v1/cases/" + number).json().get("evidence");
        assertThat(evidence.isEmpty()).as("nothing of a refused file is kept").isTrue();
    }

    @Test
    void aSchemaRefusesWhatTheServerRefuses() {
        assertThat(schema("case-request").validate("{\"batterySerial\":\"KX4-2291-077\"}", InputFormat.JSON))
                .isNotEmpty();
        assertThat(schema("assessment").validate("{}", InputFormat.JSON)).isNotEmpty();
        assertThat(schema("evidence-item").validate("{}", InputFormat.JSON)).isNotEmpty();
        assertThat(schema("problem").validate("{\"type\":\"about:blank\"}", InputFormat.JSON))
                .isNotEmpty();
    }

    @Test
    void theClaimFitsAtEveryStep() {
        Client clerk = server.as(Role.CLERK);
        String claim = "/api/v1/cases/" + number + "/claim";
        String reason = "\"reason\":\"The workshop showed us both sheets at the counter.\"";
        List<Answer> answers = List.of(
                workshop.postJson(claim, "{\"amount\":\"129\",\"currency\":\"ISK\"}"),
                workshop.postJson(claim + "/submit", "{}"),
                clerk.postJson(claim + "/take", "{}"),
                clerk.postJson(claim + "/ask", "{\"items\":[\"charging-test\"],\"others\":[\"A photograph\"]}"),
                workshop.multipart(claim + "/requested-items/2", Map.of("words", "The label is gone."), null, null),
                workshop.postJson(claim + "/answer", "{}"),
                limited(() -> clerk.postJson(claim + "/goodwill", "{" + reason + "}")),
                server.as(Role.ADMIN).postJson(claim + "/confirm", "{}"),
                clerk.postJson(claim + "/settle", "{}"));
        for (Answer answer : answers) {
            assertThat(answer.status()).as(answer.toString()).isBetween(200, 202);
            assertFits("claim", answer.text());
        }
        upload(
                "late.json",
                "{\"kind\":\"battery-test\",\"takenAt\":\"2026-03-04T08:40:00+01:00\",\"restVoltageV\":11.2,\"temperatureC\":18}"
                        .getBytes(StandardCharsets.UTF_8));
        JsonNode after = workshop.get("/api/v1/cases/" + number).json().get("claim");
        assertThat(after.at("/decision").has("basisChange")).isTrue();
        assertFits("claim", after.toString());
        assertThat(schema("claim").validate("{\"state\":\"dancing\"}", InputFormat.JSON))
                .isNotEmpty();
    }

    /** With a limit of its own currency, lifted afterwards. */
    private Answer limited(java.util.function.Supplier<Answer> step) {
        limit("100");
        try {
            return step.get();
        } finally {
            limit("");
        }
    }

    private void limit(String amount) {
        server.as(Role.ADMIN)
                .send(
                        "PUT",
                        "/api/v1/claim-limits/ISK",
                        java.net.http.HttpRequest.BodyPublishers.ofString(
                                "{\"amount\":\"" + amount + "\",\"reason\":\"for a test\"}"),
                        "application/json");
    }

    private Answer upload(String name, byte[] content) {
        return workshop.upload("/api/v1/cases/" + number + "/evidence", name, content, null);
    }

    private static void assertFits(String schema, String json) {
        assertThat(schema(schema).validate(json, InputFormat.JSON)).as(json).isEmpty();
    }

    private static Schema schema(String name) {
        Map<String, String> all = new HashMap<>();
        try (Stream<Path> files = Files.list(SHARED.resolve("schemas"))) {
            for (Path file : files.toList()) {
                all.put(BASE + file.getFileName().toString().toLowerCase(Locale.ROOT), Files.readString(file));
            }
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return SchemaRegistry.withDefaultDialect(SpecificationVersion.DRAFT_2020_12, registry -> registry.schemas(all))
                .getSchema(SchemaLocation.of(BASE + name + ".json"));
    }
}
