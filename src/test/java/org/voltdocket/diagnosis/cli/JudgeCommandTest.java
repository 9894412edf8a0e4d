package org.voltdocket.diagnosis.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;

class JudgeCommandTest {

    private static final Path SAMPLES = Path.of("shared/samples");
    private static final Clock CLOCK = Clock.fixed(Instant.parse("2026-11-27T12:00:00Z"), ZoneOffset.UTC);
    private static final String REQUEST = """
            {"batterySerial":"TRY-0001","vin":"1M8GDM9AXKP042788",
             "battery":{"capacityAh":70,
                        "chemistry":"agm"}}
            """;

    @TempDir
    private Path folder;

    private final ByteArrayOutputStream out = new ByteArrayOutputStream();
    private final ByteArrayOutputStream err = new ByteArrayOutputStream();

    private int run(Object... arguments) {
        return JudgeCommand.run(
                List.of(arguments).stream().map(Object::toString).toList(),
                new PrintStream(out, true, StandardCharsets.UTF_8),
                new PrintStream(err, true, StandardCharsets.UTF_8),
                CLOCK);
    }

    private String out() {
        return out.toString(StandardCharsets.UTF_8);
    }

    private String err() {
        return err.toString(StandardCharsets.UTF_8);
    }

    @Test
    void printsTheAssessmentOfAFolderAsText() {
        assertThat(run(SAMPLES.resolve("wiring"))).isEqualTo(JudgeCommand.DONE);
        assertThat(out()).contains("vehicle-side", "%  wiring", "Findings", "rule book  2026.1");
        assertThat(err()).isEmpty();
    }

    @Test
    void printsOneLineOfJsonPerFolderInTheOrderOfTheArguments() {
        assertThat(run("--json", SAMPLES.resolve("wiring"), SAMPLES.resolve("duty"), SAMPLES.resolve("none")))
                .isEqualTo(JudgeCommand.DONE);
        List<String> causes = out().lines()
                .map(line -> JsonMapper.shared().readTree(line))
                .map(json -> json.get("causes").get(0).get("cause").asString())
                .toList();
        assertThat(causes).containsExactly("wiring", "duty", "none");
        assertThat(err().lines()).last().isEqualTo("assessed 3 of 3");
    }

    @Test
    void namesThePlaceInARefusedFileAndAssessesTheOtherFolders() throws IOException {
        Files.writeString(folder.resolve("case-request.json"), REQUEST);
        Files.writeString(
                folder.resolve("test.json"),
                "{\"kind\":\"charging-test\",\n \"takenAt\":\"2026-03-04T08:40:00Z\",\n \"idleVoltageV\":99}");
        assertThat(run("--json", folder, SAMPLES.resolve("none"))).isEqualTo(JudgeCommand.REFUSED);
        assertThat(out().lines().toList()).hasSize(2).startsWith("null");
        assertThat(err()).contains(folder.resolve("test.json") + ", line 3, column 2: idleVoltageV is 99.0");
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "\"agm\"|\"wet\"|, line 3, column 13: battery.chemistry: 'wet' is none of",
                ":70|:\"70\"|, line 2, column 13: 'battery.capacityAh' is a number, 1 to 400 Ah; read \"70\".",
                "\"vin\":\"1M8GDM9AXKP042788\"|\"vin\":\"1M8\"|, line 1, column 29: ",
                "\"agm\"}}|\"agm\"|: This is not valid JSON",
                "\"agm\"}}|\"agm\",\"soldOn\":\"2026-12-24\"}}|'battery.soldOn' is in the future"
            })
    void namesThePlaceOfAWrongFact(String change) throws IOException {
        String[] parts = change.split("\\|");
        Files.writeString(folder.resolve("case-request.json"), REQUEST.replace(parts[0], parts[1]));
        assertThat(run(folder)).isEqualTo(JudgeCommand.REFUSED);
        assertThat(err())
                .startsWith(folder.resolve("case-request.json").toString())
                .contains(parts[2]);
        assertThat(out()).isEmpty();
    }

    @Test
    void aFolderWithoutARequestIsRefused() {
        assertThat(run(folder)).isEqualTo(JudgeCommand.REFUSED);
        assertThat(err()).contains("case-request.json: the file is missing");
    }

    @Test
    void skipsDocumentsHiddenFilesAndSubfolders() throws IOException {
        Files.writeString(folder.resolve("case-request.json"), REQUEST);
        Files.writeString(folder.resolve(".notes"), "\u0000");
        Files.createDirectory(folder.resolve("photos"));
        assertThat(run("--json", folder)).isEqualTo(JudgeCommand.DONE);
        JsonNode json = JsonMapper.shared().readTree(out());
        assertThat(json.get("batteryVerdict")).isNotNull();
        assertThat(json.get("missing")).isNotEmpty();
    }

    @Test
    void wrongUsageIsExplained() {
        assertThat(run()).isEqualTo(JudgeCommand.USAGE);
        assertThat(run("--yaml", folder)).isEqualTo(JudgeCommand.USAGE);
        assertThat(run(folder.resolve("absent"))).isEqualTo(JudgeCommand.USAGE);
        assertThat(err()).contains("Name at least one folder.", "There is no option --yaml.", "is not a folder.");
        assertThat(out()).isEmpty();
    }

    @Test
    void helpIsNoError() {
        assertThat(run("--help")).isEqualTo(JudgeCommand.DONE);
        assertThat(out()).isEqualTo(JudgeCommand.HELP);
    }
}
