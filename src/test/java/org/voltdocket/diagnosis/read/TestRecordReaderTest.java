package org.voltdocket.diagnosis.read;

import static org.assertj.core.api.Assertions.assertThat;

import com.networknt.schema.InputFormat;
import com.networknt.schema.Schema;
import com.networknt.schema.SchemaLocation;
import com.networknt.schema.SchemaRegistry;
import com.networknt.schema.SpecificationVersion;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.time.LocalDate;
import java.time.OffsetDateTime;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.voltdocket.diagnosis.BatteryTest;
import org.voltdocket.diagnosis.ChargingTest;
import org.voltdocket.diagnosis.CrankingStandard;
import org.voltdocket.diagnosis.Reading;
import org.voltdocket.diagnosis.read.RejectedFile.Reason;
import org.voltdocket.evidence.storage.TestRecordWriter;

class TestRecordReaderTest {

    private static final Instant NOW = Instant.parse("2026-11-20T12:00:00Z");
    private static final String SCHEMAS = "https://voltdocket.example/schemas/";
    private static final String WHOLE = """
            {"kind":"battery-test","takenAt":"2026-03-04T08:40:00+01:00",
             "restVoltageV":12.61,"temperatureC":18,
             "crankingCurrentA":612,"crankingStandard":"EN",
             "internalResistanceMilliohm":5.1,"hoursSinceEngineStop":12,
             "chargedBefore":true,"instrument":{"serial":"T-100","calibratedOn":"2025-11-01"}}
            """;

    private static ReadResult read(String text) {
        return new TestRecordReader(NOW).read(text.getBytes(StandardCharsets.UTF_8));
    }

    private static void refusedAt(String text, long line, int column, String word) {
        ReadResult outcome = read(text);
        assertThat(outcome).isInstanceOf(RejectedFile.class);
        RejectedFile refused = (RejectedFile) outcome;
        assertThat(refused.reason()).isEqualTo(Reason.TEST_RECORD);
        FileError first = refused.errors().get(0);
        assertThat(first.message()).contains(word);
        assertThat(first.line()).as(first.message()).isEqualTo(line);
        assertThat(first.column()).as(first.message()).isEqualTo(column);
    }

    @Test
    void readsEveryMember() {
        assertThat(((ParsedFile) read(WHOLE)).reading())
                .isEqualTo(new BatteryTest(
                        OffsetDateTime.parse("2026-03-04T08:40:00+01:00"),
                        12.61,
                        18,
                        612.0,
                        CrankingStandard.EN,
                        5.1,
                        12.0,
                        true,
                        new BatteryTest.Instrument("T-100", LocalDate.of(2025, 11, 1))));
    }

    @ParameterizedTest
    @ValueSource(strings = {"battery-test", "cranking-test", "charging-test"})
    void samplesFitTheirSchemaAndComeBackFromTheCanonicalForm(String kind) throws IOException {
        String sample = Files.readString(Path.of("shared/samples", kind + ".json"));
        Map<String, String> schemas = new HashMap<>();
        for (String one : List.of("battery-test", "cranking-test", "charging-test")) {
            schemas.put(SCHEMAS + one + ".json", Files.readString(Path.of("shared/schemas", one + ".json")));
        }
        SchemaRegistry registry = SchemaRegistry.withDefaultDialect(
                SpecificationVersion.DRAFT_2020_12, builder -> builder.schemas(schemas));
        Schema schema = registry.getSchema(SchemaLocation.of(SCHEMAS + kind + ".json"));
        assertThat(schema.validate(sample, InputFormat.JSON)).isEmpty();
        assertThat(schema.validate(sample.replace("\"temperatureC\"", "\"t\""), InputFormat.JSON))
                .isNotEmpty();
        Reading reading = ((ParsedFile) read(sample)).reading();
        String canonical = TestRecordWriter.write(reading);
        assertThat(((ParsedFile) read(canonical)).reading()).isEqualTo(reading);
        assertThat(schema.validate(canonical, InputFormat.JSON)).isEmpty();
    }

    @Test
    void valuesThatNoInstrumentShows() {
        refusedAt(WHOLE.replace("12.61", "20.5"), 2, 2, "restVoltageV is 20.5");
        refusedAt(WHOLE.replace("12.61", "25.2"), 2, 2, "only 12 V systems");
        refusedAt(WHOLE.replace(":18", ":-41"), 2, 23, "temperatureC is -41.0");
        refusedAt(WHOLE.replace("612", "1e999"), 3, 2, "crankingCurrentA");
        refusedAt(WHOLE.replace("5.1", "0"), 4, 2, "internalResistanceMilliohm");
    }

    @Test
    void wrongTypes() {
        refusedAt(WHOLE.replace("12.61", "\"12.61\""), 2, 2, "restVoltageV must be a number");
        refusedAt(WHOLE.replace("true", "\"yes\""), 5, 2, "chargedBefore must be true or false");
        refusedAt(WHOLE.replace("\"EN\"", "\"XY\""), 3, 25, "known are EN, SAE");
        refusedAt(WHOLE.replace("{\"serial\":\"T-100\",\"calibratedOn\":\"2025-11-01\"}", "5"), 5, 23, "object");
        refusedAt(WHOLE.replace("2025-11-01", "1.11.2025"), 5, 54, "instrument.calibratedOn is not a date");
    }

    @Test
    void membersThatAreMissingOrTwice() {
        refusedAt(WHOLE.replace("restVoltageV", "volts"), 1, 1, "restVoltageV is missing");
        refusedAt(WHOLE.replace("takenAt", "at"), 1, 1, "takenAt is missing");
        refusedAt(WHOLE.replace("crankingCurrentA", "temperatureC"), 3, 16, "temperatureC");
    }

    @Test
    void times() {
        refusedAt(WHOLE.replace("08:40:00+01:00", "08:40:00"), 1, 24, "not a date and time with offset");
        refusedAt(WHOLE.replace("2026-03-04", "2026-11-22"), 1, 24, "in the future");
        refusedAt(WHOLE.replace("2026-03-04", "1970-01-01"), 1, 24, "before the year 2000");
        assertThat(read(WHOLE.replace("2026-03-04T08", "2026-11-21T08"))).isInstanceOf(ParsedFile.class);
    }

    @Test
    void namesWhatItIgnores() {
        String text = WHOLE.replace("\"chargedBefore\"", "\"operator\":{\"a\":[1,2]},\"x\":null,\"chargedBefore\"")
                .replace("\"serial\"", "\"colour\":1,\"serial\"");
        assertThat(((ParsedFile) read(text)).ignored()).containsExactly("operator", "x", "instrument.colour");
    }

    @Test
    void aDottedNameIsNoMemberOfTheInstrument() {
        ParsedFile parsed = (ParsedFile) read(WHOLE.replace("\"chargedBefore\":true", "\"instrument.serial\":\"X\""));
        assertThat(parsed.ignored()).containsExactly("\"instrument.serial\"");
        assertThat(((BatteryTest) parsed.reading()).instrument().serial()).isEqualTo("T-100");
    }

    @Test
    void aKindThatIsNotKnown() {
        RejectedFile refused = (RejectedFile) read(WHOLE.replace("battery-test", "load-test"));
        assertThat(refused.reason()).isEqualTo(Reason.KIND_UNKNOWN);
        assertThat(refused.detail()).contains("'load-test'", "battery-test, cranking-test, charging-test");
    }

    @Test
    void brokenJson() {
        refusedAt(WHOLE.replace("18,", "18;"), 2, 40, "not valid JSON");
        refusedAt("{\"kind\":\"battery-test\"", 1, 23, "not valid JSON");
        refusedAt(WHOLE + "{}", 6, 1, "follows the object");
        refusedAt("{}", 1, 1, "kind is missing");
    }

    @Test
    void aChargingTestNeedsOneVoltage() {
        String text = "{\"kind\":\"charging-test\",\"takenAt\":\"2026-03-04T08:40:00Z\",\"loadedVoltageV\":13.9,"
                + "\"temperatureC\":18}";
        assertThat(((ChargingTest) ((ParsedFile) read(text)).reading()).idleVoltageV())
                .isNull();
        refusedAt(text.replace("13.9", "null"), 1, 1, "idleVoltageV or loadedVoltageV is missing");
    }
}
