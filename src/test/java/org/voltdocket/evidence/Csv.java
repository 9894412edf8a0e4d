package org.voltdocket.evidence;

import static org.junit.jupiter.api.Assertions.fail;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.function.UnaryOperator;
import org.voltdocket.diagnosis.Recording;

/** Small recordings for tests. */
final class Csv {

    private Csv() {}

    /** Thirty rows, one a second, with the voltage given. */
    static String steady(double volts) {
        StringBuilder text = new StringBuilder("time_s,measured_v\n");
        for (int i = 0; i < 30; i++) {
            text.append(i).append(',').append(volts).append('\n');
        }
        return text.toString();
    }

    /** {@link #steady} with one line, from 1, changed. */
    static String with(int line, UnaryOperator<String> change) {
        String[] lines = steady(12.5).split("\n");
        lines[line - 1] = change.apply(lines[line - 1]);
        return String.join("\n", lines) + "\n";
    }

    static Outcome read(byte[] bytes) {
        try {
            return new RecordingReader(() -> new ByteArrayInputStream(bytes), false, size -> {}).read();
        } catch (IOException e) {
            throw new java.io.UncheckedIOException(e);
        }
    }

    static Outcome read(String text) {
        return read(text.getBytes(StandardCharsets.UTF_8));
    }

    static Parsed parsed(String text) {
        return parsed(text.getBytes(StandardCharsets.UTF_8));
    }

    static Parsed parsed(byte[] bytes) {
        Outcome outcome = read(bytes);
        return outcome instanceof Parsed parsed ? parsed : fail("refused: " + outcome);
    }

    static Recording recording(String text) {
        return (Recording) parsed(text).reading();
    }

    static Refused refused(String text) {
        return refused(text.getBytes(StandardCharsets.UTF_8));
    }

    static Refused refused(byte[] bytes) {
        Outcome outcome = read(bytes);
        return outcome instanceof Refused refused ? refused : fail("taken");
    }
}
