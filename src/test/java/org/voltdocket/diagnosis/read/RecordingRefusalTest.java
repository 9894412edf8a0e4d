package org.voltdocket.diagnosis.read;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.StandardCharsets;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.voltdocket.diagnosis.read.RejectedFile.Reason;

/** Every refusal names its place. */
class RecordingRefusalTest {

    private static void refusedAt(String text, long line, int column, String word) {
        RejectedFile refused = Csv.refused(text);
        assertThat(refused.errors()).isNotEmpty();
        FileError first = refused.errors().get(0);
        assertThat(first.line()).as(first.message()).isEqualTo(line);
        assertThat(first.column()).as(first.message()).isEqualTo(column);
        assertThat(first.message()).contains(word);
    }

    @Test
    void aCellThatIsNoNumber() {
        refusedAt(Csv.with(7, line -> "5,12.x"), 7, 3, "measured_v: '12.x' is not a number");
        refusedAt(Csv.with(7, line -> "5, 0x1p3"), 7, 3, "not a number");
        refusedAt(Csv.with(7, line -> "5,12.5d"), 7, 3, "not a number");
        refusedAt(Csv.with(7, line -> "5,--1"), 7, 3, "not a number");
        refusedAt(Csv.with(7, line -> "5,1e"), 7, 3, "not a number");
        refusedAt(Csv.with(7, line -> "abc,12.5"), 7, 1, "'abc' is not a number");
    }

    @ParameterizedTest
    @ValueSource(strings = {"NaN", "nan", "Infinity", "-inf", "INF"})
    void notANumberAndInfinite(String text) {
        refusedAt(Csv.with(7, line -> "5," + text), 7, 3, "no measured value");
    }

    @Test
    void aNumberTooLargeForAnyInstrument() {
        refusedAt(Csv.with(7, line -> "5,1e999"), 7, 3, "outside −2 to 40 V");
    }

    @Test
    void aVoltageOutside() {
        refusedAt(Csv.with(9, line -> "7,40.01"), 9, 3, "outside −2 to 40 V");
        refusedAt(Csv.with(9, line -> "7,-2.001"), 9, 3, "outside −2 to 40 V");
        Csv.parsed(Csv.with(9, line -> "7,40"));
        Csv.parsed(Csv.with(9, line -> "7,-2"));
    }

    @Test
    void timeThatDoesNotIncrease() {
        refusedAt(Csv.with(9, line -> "6,12.5"), 9, 1, "Time does not increase: 6 comes after 6.0 s");
        refusedAt(Csv.with(9, line -> "5.5,12.5"), 9, 1, "does not increase");
        refusedAt(Csv.with(2, line -> "-1,12.5"), 2, 1, "not within 0");
        refusedAt(Csv.with(9, line -> ",12.5"), 9, 1, "blank");
    }

    @Test
    void aRowWithTooFewOrTooManyCells() {
        refusedAt(Csv.with(9, line -> "7"), 9, 1, "has 1 cells, the header has 2");
        refusedAt(Csv.with(9, line -> "7,12.5,1"), 9, 8, "has 3 cells, the header has 2");
    }

    @Test
    void anEmptyLineAmongRows() {
        refusedAt(Csv.with(9, line -> ""), 9, 1, "empty");
    }

    @Test
    void noHeader() {
        refusedAt("0,12.5\n1,12.5\n", 1, 1, "not a header");
        refusedAt("\n\n", 1, 1, "not a header");
    }

    @Test
    void aRequiredColumnMissing() {
        refusedAt(Csv.steady(12.5).replace("measured_v", "volts"), 1, 1, "no measured_v");
        refusedAt(Csv.steady(12.5).replace("time_s", "seconds"), 1, 1, "neither time_s");
    }

    @Test
    void bothTimes() {
        refusedAt("time_s,time,measured_v\n", 1, 8, "Both time_s and time");
    }

    @Test
    void aKnownColumnTwice() {
        refusedAt("time_s,measured_v, Measured_V \n", 1, 19, "measured_v appears twice");
    }

    @Test
    void tooFewRowsOrTooShort() {
        String nineteen = Csv.steady(12.5).lines().limit(20).reduce("", (a, b) -> a + b + "\n");
        refusedAt(nineteen, 20, 1, "after 19 rows");
        StringBuilder quick = new StringBuilder("time_s,measured_v\n");
        for (int i = 0; i < 100; i++) {
            quick.append(i * 0.1).append(",12.5\n");
        }
        refusedAt(quick.toString(), 101, 1, "it needs 10 s");
    }

    @Test
    void noVoltageAtAll() {
        refusedAt(Csv.steady(12.5).replace(",12.5", ","), 1, 1, "holds no value");
    }

    @Test
    void a24VoltSystem() {
        RejectedFile refused = Csv.refused(Csv.steady(25.2));
        assertThat(refused.reason()).isEqualTo(Reason.SYSTEM_24V);
        assertThat(refused.detail()).contains("24 V system");
        Csv.parsed(Csv.steady(17.9));
    }

    @Test
    void bytesThatAreNoUtf8() {
        byte[] bytes = Csv.steady(12.5)
                .replace("measured_v\n", "measured_v,mark\n")
                .replace(".5\n", ".5,ä ö\n")
                .getBytes(StandardCharsets.ISO_8859_1);
        RejectedFile refused = Csv.refused(bytes);
        assertThat(refused.total()).isEqualTo(30);
        assertThat(refused.errors().get(0))
                .isEqualTo(new FileError(2, 8, "The byte E4 is not valid UTF-8. Save the file as UTF-8."));
    }

    @Test
    void columnsCountCharactersNotBytes() {
        String text = Csv.steady(12.5).replace("time_s,", "mark,time_s,").replaceAll("(?m)^(\\d)", "\"Öl, ß€\",$1");
        refusedAt(text.replace(",7,12.5", ",7,x"), 9, 12, "'x' is not a number");
    }

    @Test
    void linesCountInsideQuotedCells() {
        String text = Csv.steady(12.5)
                .replace("time_s,", "mark,time_s,")
                .replaceAll("(?m)^(\\d)", ",$1")
                .replace(",3,12.5", "\"one\ntwo\",3,12.5");
        refusedAt(text.replace(",3,12.5", ",3,x"), 6, 8, "'x' is not a number");
        refusedAt(text.replace(",7,12.5", ",7,x"), 10, 4, "'x' is not a number");
    }

    @Test
    void quotesThatBreakTheRules() {
        refusedAt(Csv.with(5, line -> "3,\"12.5"), 5, 3, "never closed");
        refusedAt(Csv.with(5, line -> "3,\"12.5\"x"), 5, 9, "follows the closing quote");
        refusedAt(Csv.with(5, line -> "3,1\"2.5"), 5, 4, "inside a cell");
    }

    @Test
    void linesThatEndInCrAlone() {
        refusedAt(Csv.steady(12.5).replace('\n', '\r'), 1, 1, "CR alone");
    }

    @Test
    void aClockTimeWithoutOffset() {
        String text = clock();
        refusedAt(text.replace("08:40:05Z", "08:40:05"), 7, 1, "not a date and time with offset");
        refusedAt(text.replace("2026-03-04T08:40:05Z", "2026-02-30T08:40:05Z"), 7, 1, "not a date and time");
        refusedAt(text.replace("08:40:05Z", "08:40:04Z"), 7, 1, "does not increase");
    }

    @Test
    void aFileThatMixesDecimalMarks() {
        String text = Csv.steady(12.5).replace(',', ';');
        refusedAt(text.replace("5;12.5", "5;12,5"), 7, 3, "decimals with '.'");
        refusedAt(text.replace("5;12.5", "5;1.012,5"), 7, 3, "cannot be told");
    }

    @Test
    void aDecimalCommaBesideCommas() {
        refusedAt(Csv.with(7, line -> "5,\"12,5\""), 7, 3, "decimals take a point");
    }

    @Test
    void countsWhatItDoesNotShow() {
        RejectedFile refused = Csv.refused(Csv.steady(12.5).replace(",12.5", ",x"));
        assertThat(refused.errors()).hasSize(20);
        assertThat(refused.total()).isEqualTo(30);
        assertThat(refused.more()).isEqualTo(10);
        assertThat(refused.errors().get(19).line()).isEqualTo(21);
    }

    @Test
    void otherChannelsThatNoInstrumentShows() {
        for (String wrong : new String[] {
            "measured_a:3001",
            "reported_a:-3001",
            "engine_rpm:-1",
            "engine_rpm:20001",
            "speed_kmh:501",
            "coolant_c:-61",
            "ambient_c:251",
            "reported_soc_pct:111",
            "reported_v:41"
        }) {
            String[] part = wrong.split(":");
            String text = Csv.steady(12.5)
                    .replace("measured_v\n", "measured_v," + part[0] + "\n")
                    .replace(".5\n", ".5,\n");
            refusedAt(text.replace("7,12.5,", "7,12.5," + part[1]), 9, 8, "outside");
        }
    }

    static String clock() {
        StringBuilder text = new StringBuilder("time,measured_v\n");
        for (int i = 0; i < 30; i++) {
            text.append(String.format("2026-03-04T08:40:%02dZ,12.5%n", i));
        }
        return text.toString().replace("\r\n", "\n");
    }
}
