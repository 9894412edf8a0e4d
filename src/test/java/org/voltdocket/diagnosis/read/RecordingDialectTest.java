package org.voltdocket.diagnosis.read;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.zip.GZIPInputStream;
import java.util.zip.GZIPOutputStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.voltdocket.diagnosis.Channel;
import org.voltdocket.diagnosis.Recording;
import org.voltdocket.diagnosis.Recording.Mark;

/** The same columns come out of every dialect. */
class RecordingDialectTest {

    record Dialect(char delimiter, char mark, String lineEnd, boolean bom, boolean quoted, boolean gzip) {}

    static List<Dialect> dialects() {
        List<Dialect> all = new ArrayList<>();
        for (char delimiter : new char[] {',', ';', '\t'}) {
            for (char mark : delimiter == ',' ? new char[] {'.'} : new char[] {'.', ','}) {
                for (String end : new String[] {"\n", "\r\n"}) {
                    for (int bits = 0; bits < 8; bits++) {
                        all.add(new Dialect(delimiter, mark, end, (bits & 1) > 0, (bits & 2) > 0, (bits & 4) > 0));
                    }
                }
            }
        }
        return all;
    }

    @ParameterizedTest
    @MethodSource("dialects")
    void givesBackTheColumnsThatWereWritten(Dialect dialect) throws IOException {
        Random random = new Random(20260304);
        for (int turn = 0; turn < 4; turn++) {
            int rows = 20 + random.nextInt(3000);
            double[] time = new double[rows];
            float[][] values = new float[Channel.values().length][rows];
            double at = random.nextDouble() * 10;
            for (int i = 0; i < rows; i++) {
                time[i] = at;
                at += 0.5 + random.nextDouble();
                for (Channel channel : Channel.values()) {
                    PlausibleRange range = PlausibleRange.of(channel);
                    boolean blank = i > 0 && random.nextInt(4) == 0;
                    double value = range.low() + random.nextDouble() * (Math.min(range.high(), 17) - range.low());
                    values[channel.ordinal()][i] = blank ? Float.NaN : (float) value;
                }
            }
            Recording read =
                    (Recording) parsed(write(dialect, time, values), dialect).reading();
            assertThat(read.timeS()).isEqualTo(time);
            for (Channel channel : Channel.values()) {
                assertThat(read.channel(channel)).as(channel.id()).isEqualTo(values[channel.ordinal()]);
            }
            assertThat(read.marks()).containsExactly(new Mark(time[3], "he said \"stop\"; then, left\nfor home"));
        }
    }

    private static byte[] write(Dialect d, double[] time, float[][] values) throws IOException {
        StringBuilder text = new StringBuilder(d.bom() ? "\uFEFF" : "");
        text.append(cell(d, "mark"));
        for (Channel channel : Channel.values()) {
            text.append(d.delimiter()).append(cell(d, " " + channel.id().toUpperCase(java.util.Locale.ROOT)));
        }
        text.append(d.delimiter()).append(cell(d, "Time_s")).append(d.lineEnd());
        for (int i = 0; i < time.length; i++) {
            text.append(i == 3 ? "\"he said \"\"stop\"\"; then, left\nfor home\"" : "");
            for (float[] column : values) {
                String number =
                        Float.isNaN(column[i]) ? "" : String.valueOf(column[i]).replace('.', d.mark());
                text.append(d.delimiter()).append(cell(d, number));
            }
            text.append(d.delimiter()).append(cell(d, String.valueOf(time[i]).replace('.', d.mark())));
            text.append(d.lineEnd());
        }
        text.append(d.lineEnd());
        byte[] bytes = text.toString().getBytes(StandardCharsets.UTF_8);
        if (!d.gzip()) {
            return bytes;
        }
        ByteArrayOutputStream packed = new ByteArrayOutputStream();
        try (GZIPOutputStream out = new GZIPOutputStream(packed)) {
            out.write(bytes);
        }
        return packed.toByteArray();
    }

    private static String cell(Dialect d, String text) {
        return d.quoted() ? "\"" + text + "\"" : text;
    }

    private static ParsedFile parsed(byte[] bytes, Dialect d) throws IOException {
        ByteSource source = () -> {
            InputStream in = new ByteArrayInputStream(bytes);
            return d.gzip() ? new GZIPInputStream(in) : in;
        };
        ReadResult outcome = new RecordingReader(source, d.gzip(), size -> {}).read();
        assertThat(outcome).isInstanceOf(ParsedFile.class);
        return (ParsedFile) outcome;
    }

    @ParameterizedTest
    @ValueSource(strings = {"standing-comma.csv", "standing-semicolon.csv", "standing-tab.csv"})
    void readsTheSamples(String name) throws IOException {
        ParsedFile parsed = Csv.parsed(Files.readAllBytes(Path.of("shared/samples", name)));
        Recording first = (Recording) Csv.parsed(Files.readAllBytes(Path.of("shared/samples/standing-comma.csv")))
                .reading();
        Recording read = (Recording) parsed.reading();
        assertThat(parsed.ignored()).containsExactly("cabin_c");
        assertThat(read.rows()).isEqualTo(24);
        assertThat(read.timeS()).isEqualTo(first.timeS());
        assertThat(read.marks()).isEqualTo(first.marks());
        assertThat(read.marks().get(1)).isEqualTo(new Mark(100, "said \"fine\", left"));
        for (Channel channel : Channel.values()) {
            assertThat(read.channel(channel)).isEqualTo(first.channel(channel));
        }
    }

    @Test
    void keepsTheClockOfTheFirstRow() {
        String text = RecordingRefusalTest.clock()
                .replace("Z,", ".25+01:00,")
                .replace("2026-03-04T08:40:00.25+01:00", "2026-03-04 07:40:00Z");
        Recording read = Csv.recording(text);
        assertThat(read.startedAt()).contains(OffsetDateTime.parse("2026-03-04T07:40:00Z"));
        assertThat(read.timeS()).startsWith(0, 1.25, 2.25).endsWith(29.25);
    }

    @Test
    void acrossAChangeOfTheClocks() {
        String text = RecordingRefusalTest.clock().replace("2026-03-04T08:40:29Z", "2026-03-04T09:40:29.5+0100");
        assertThat(Csv.recording(text).timeS()).endsWith(29.5);
    }

    @Test
    void takesBlankCellsAsNotSampled() {
        Recording read = Csv.recording(Csv.with(5, line -> "3,  "));
        assertThat(read.channel(Channel.MEASURED_V)[3]).isNaN();
        assertThat(read.channel(Channel.MEASURED_V)[4]).isEqualTo(12.5f);
    }

    @Test
    void leavesOutAChannelWithoutAnyValue() {
        String text = Csv.steady(12.5)
                .replace("measured_v\n", "measured_v,measured_a\n")
                .replace(".5\n", ".5,\n");
        assertThat(Csv.recording(text).has(Channel.MEASURED_A)).isFalse();
    }

    @Test
    void needsNoLineEndAfterTheLastRow() {
        assertThat(Csv.recording(Csv.steady(12.5).strip()).rows()).isEqualTo(30);
        assertThat(Csv.recording(Csv.steady(12.5) + "\r\n\n\n").rows()).isEqualTo(30);
        assertThat(Csv.recording(Csv.steady(12.5).strip() + "\r").rows()).isEqualTo(30);
        assertThat(Csv.refused("time_s,measured_v").errors().get(0).message()).contains("after 0 rows");
        assertThat(Csv.refused("time_s,measured_v\n").errors().get(0).message()).contains("after 0 rows");
    }

    @Test
    void namesUnknownColumns() {
        String text =
                Csv.steady(12.5).replace("measured_v\n", "measured_v,b,,A Ω\n").replace(".5\n", ".5,x,NaN,\n");
        assertThat(Csv.parsed(text).ignored()).containsExactly("A Ω", "b", "column 4 without a name");
    }
}
