package org.voltdocket.demo;

import static java.nio.charset.StandardCharsets.UTF_8;

import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.voltdocket.diagnosis.Channel;
import org.voltdocket.diagnosis.Recording;

/** A recording as a CSV file (RFC 4180), in one of the dialects that loggers write. */
final class RecordingFile {

    private RecordingFile() {}

    /**
     * Writes a recording.
     *
     * @param delimiter comma, semicolon or tab; with a semicolon or a tab, decimals carry a comma
     */
    static byte[] csv(Recording recording, char delimiter) {
        boolean decimalComma = delimiter != ',';
        boolean clock = recording.startedAt().isPresent();
        List<Channel> channels = new ArrayList<>();
        for (Channel channel : Channel.values()) {
            if (recording.has(channel)) {
                channels.add(channel);
            }
        }
        boolean marked = !recording.marks().isEmpty();
        Map<Double, String> marks = recording.marks().stream()
                .collect(Collectors.toMap(Recording.Mark::atS, Recording.Mark::text, (a, b) -> a + "; " + b));
        StringBuilder out = new StringBuilder(recording.rows() * 40);
        out.append(clock ? "time" : "time_s");
        channels.forEach(c -> out.append(delimiter).append(c.id()));
        out.append(marked ? delimiter + "mark\r\n" : "\r\n");
        Function<Double, String> stamp = stamps(recording, clock, decimalComma);
        for (int row = 0; row < recording.rows(); row++) {
            double t = recording.timeS()[row];
            out.append(stamp.apply(t));
            for (Channel channel : channels) {
                out.append(delimiter);
                float value = recording.channel(channel)[row];
                if (!Float.isNaN(value)) {
                    decimal(out, Math.round(value * 1000.0), decimalComma);
                }
            }
            if (marked) {
                out.append(delimiter).append(quoted(marks.getOrDefault(t, "")));
            }
            out.append("\r\n");
        }
        return out.toString().getBytes(UTF_8);
    }

    private static Function<Double, String> stamps(Recording recording, boolean clock, boolean decimalComma) {
        if (!clock) {
            return t -> decimal(new StringBuilder(), Math.round(t * 1000), decimalComma)
                    .toString();
        }
        DateTimeFormatter form = DateTimeFormatter.ofPattern("yyyy-MM-dd'T'HH:mm:ss.SSSxxx");
        var start = recording.startedAt().get();
        return t -> form.format(start.plusNanos(Math.round(t * 1000) * 1_000_000));
    }

    private static StringBuilder decimal(StringBuilder out, long thousandths, boolean decimalComma) {
        if (thousandths < 0) {
            out.append('-');
        }
        long size = Math.abs(thousandths);
        out.append(size / 1000);
        int rest = (int) (size % 1000);
        if (rest != 0) {
            out.append(decimalComma ? ',' : '.').append((char) ('0' + rest / 100));
            if (rest % 100 != 0) {
                out.append((char) ('0' + rest / 10 % 10));
                if (rest % 10 != 0) {
                    out.append((char) ('0' + rest % 10));
                }
            }
        }
        return out;
    }

    private static String quoted(String text) {
        return text.matches(".*[,;\t\"].*") ? '"' + text.replace("\"", "\"\"") + '"' : text;
    }
}
