package org.voltdocket.diagnosis.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.springframework.beans.factory.annotation.Autowired;
import org.voltdocket.kernel.Role;
import org.voltdocket.support.Answer;
import org.voltdocket.support.Client;
import org.voltdocket.support.Server;
import org.voltdocket.support.ServerTest;
import tools.jackson.databind.DeserializationFeature;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;
import tools.jackson.databind.node.ObjectNode;

/** The command and the server give the same assessment of every sample case, to the last digit. */
@ServerTest
class SameAsServerTest {

    /** Keeps every digit of a number. */
    private static final JsonMapper DIGITS = JsonMapper.builder()
            .enable(DeserializationFeature.USE_BIG_DECIMAL_FOR_FLOATS)
            .build();

    @Autowired
    private Server server;

    static List<Path> samples() throws IOException {
        try (Stream<Path> folders = Files.list(Path.of("shared/samples"))) {
            return folders.filter(Files::isDirectory).sorted().toList();
        }
    }

    @ParameterizedTest
    @MethodSource("samples")
    void theCommandAndTheServerAgree(Path sample) throws IOException {
        Client workshop = server.as(server.newUser(Role.WORKSHOP));
        Answer opened = workshop.postJson("/api/v1/cases", Files.readString(sample.resolve(CaseFolder.REQUEST)));
        assertThat(opened.status()).as(opened.text()).isEqualTo(201);
        String address = "/api/v1/cases/" + opened.json().get("number").asString();
        try (Stream<Path> files = Files.list(sample)) {
            for (Path file : files.filter(one -> !one.endsWith(CaseFolder.REQUEST))
                    .sorted()
                    .toList()) {
                Answer stored = workshop.upload(
                        address + "/evidence", file.getFileName().toString(), Files.readAllBytes(file), null);
                assertThat(stored.status()).as(stored.text()).isEqualTo(201);
            }
        }
        JsonNode byServer = DIGITS.readTree(workshop.get(address).text()).get("assessment");
        assertThat(withoutTime(DIGITS.readTree(command(sample)))).isEqualTo(withoutTime(byServer));
    }

    private static String command(Path sample) {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        PrintStream lines = new PrintStream(out, true, StandardCharsets.UTF_8);
        int code = JudgeCommand.run(List.of("--json", sample.toString()), lines, System.err, Clock.systemUTC());
        assertThat(code).isEqualTo(JudgeCommand.DONE);
        return out.toString(StandardCharsets.UTF_8);
    }

    private static String withoutTime(JsonNode assessment) {
        assertThat(((ObjectNode) assessment).remove("assessedAt")).isNotNull();
        return assessment.toString();
    }
}
