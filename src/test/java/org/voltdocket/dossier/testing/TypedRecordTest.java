package org.voltdocket.dossier.testing;

import static org.assertj.core.api.Assertions.assertThat;

import java.math.BigDecimal;
import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.util.HashMap;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.voltdocket.diagnosis.CrankingTest;
import org.voltdocket.diagnosis.read.ParsedFile;
import org.voltdocket.diagnosis.read.TestNumber;
import org.voltdocket.diagnosis.read.TestRecordReader;
import org.voltdocket.kernel.Actor;
import org.voltdocket.kernel.Role;

class TypedRecordTest {

    private static final Instant NOW = Instant.parse("2026-03-05T00:00:00Z");
    private static final Actor ANNA = new Actor("anna", Role.WORKSHOP, Optional.of(new UUID(0, 1)));

    @ParameterizedTest
    @CsvSource({"'12,6',12.6", "12.60,12.60", "' 9 ',9", "−4,-4", "'.5',.5", "'1 200',1200"})
    void readsPointAndComma(String text, BigDecimal number) {
        assertThat(TypedRecord.number(text)).contains(number);
    }

    @ParameterizedTest
    @ValueSource(strings = {"", "twelve", "1,2,3", "1.200,5", "12,6 V", "1e3", "NaN", "--1"})
    void takesNothingElse(String text) {
        assertThat(TypedRecord.number(text)).isEmpty();
    }

    @Test
    void makesTheRecordThatAFileWouldBe() {
        TypedRecord record = TypedRecord.of(TestForm.CRANKING, cranking("9,90"), ANNA, NOW);
        assertThat(record.errors()).isEmpty();
        assertThat(new String(record.content(), StandardCharsets.UTF_8))
                .isEqualTo(
                        "{\"kind\":\"cranking-test\",\"takenAt\":\"2026-03-04T08:45:00+01:00\",\"minimumVoltageV\":9.9,"
                                + "\"temperatureC\":12,\"instrument\":{\"serial\":\"T-100\"},\"origin\":\"typed\",\"enteredBy\":\"anna\"}");
        assertThat(record.fileName()).isEqualTo("cranking-test-2026-03-04-0845.json");
        ParsedFile read = (ParsedFile) new TestRecordReader(NOW).read(record.content());
        assertThat(read.ignored()).isEmpty();
        assertThat(((CrankingTest) read.reading()).minimumVoltageV()).isEqualTo(9.9);
    }

    @Test
    void theSameValuesGiveTheSameBytes() {
        assertThat(TypedRecord.of(TestForm.CRANKING, cranking("9.9"), ANNA, NOW).content())
                .isEqualTo(TypedRecord.of(TestForm.CRANKING, cranking("9,900"), ANNA, NOW)
                        .content());
    }

    @Test
    void namesEachFieldThatIsWrong() {
        Map<String, String> given = cranking("99");
        given.put("durationS", "long");
        given.put("temperatureC", "");
        given.put("takenAt", "yesterday");
        assertThat(TypedRecord.of(TestForm.CRANKING, given, ANNA, NOW).errors())
                .containsOnlyKeys("takenAt", "minimumVoltageV", "durationS", "temperatureC");
    }

    @Test
    void aTimeAheadIsAnErrorOfItsField() {
        Map<String, String> given = cranking("9.9");
        given.put("takenAt", "2027-03-04T08:45");
        assertThat(TypedRecord.of(TestForm.CRANKING, given, ANNA, NOW).errors()).containsOnlyKeys("takenAt");
    }

    @Test
    void aChargingTestNeedsOneOfItsVoltages() {
        Map<String, String> given = cranking("9.9");
        assertThat(TypedRecord.of(TestForm.CHARGING, given, ANNA, NOW).errors()).containsOnlyKeys("idleVoltageV");
        given.put("loadedVoltageV", "13,9");
        assertThat(TypedRecord.of(TestForm.CHARGING, given, ANNA, NOW).errors()).isEmpty();
    }

    @Test
    void everyNumberOfARecordHasAField() {
        for (TestNumber number : TestNumber.values()) {
            assertThat(TestForm.values())
                    .as(number.name())
                    .anySatisfy(form -> assertThat(form.fields()).anySatisfy(field -> {
                        assertThat(field.name()).isEqualTo(number.id());
                        assertThat(field.range()).isEqualTo(number.range());
                    }));
        }
    }

    private static Map<String, String> cranking(String minimum) {
        Map<String, String> given = new HashMap<>();
        given.put("takenAt", "2026-03-04T08:45");
        given.put("offset", "+01:00");
        given.put("minimumVoltageV", minimum);
        given.put("temperatureC", "12");
        given.put("instrument.serial", "T-100");
        return given;
    }
}
