package org.voltdocket.diagnosis.read;

import static org.junit.jupiter.api.Assertions.fail;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.function.UnaryOperator;
import org.voltdocket.diagnosis.Recording;

/** Small recordings for tests. */
public final class Csv {

    private Csv() {}

    /** Thirty rows, one a second, with the voltage given. */
    public static String steady(double volts) {
        StringBuilder text = new StringBuilder("time_s,measured_v\n");
        for (int i = 0; i < 30; i++) {
            text.append(i).append(',').append(volts).append('\n');
        }
        return text.toString();
    }

    /** {@link #steady} with one line, from 1, changed. */
    public static String with(int line, UnaryOperator<String> change) {
        String[] lines = steady(12.5).split("\n");
        lines[line - 1] = change.apply(lines[line - 1]);
        return String.join("\n", lines) + "\n";
    }

    public static ReadResult read(byte[] bytes) {
        try {
            return new RecordingReader(() -> new ByteArrayInputStream(bytes), false, size -> {}).read();
        } catch (IOException e) {
            throw new java.io.UncheckedIOException(e);
        }
    }

    public static ReadResult read(String text) {
        return read(text.getBytes(StandardCharsets.UTF_8));
    }

    public static ParsedFile parsed(String text) {
        return parsed(text.getBytes(StandardCharsets.UTF_8));
    }

    public static ParsedFile parsed(byte[] bytes) {
        ReadResult outcome = read(bytes);
        return outcome instanceof ParsedFile parsed ? parsed : fail("refused: " + outcome);
    }

    public static Recording recording(String text) {
        return (Recording) parsed(text).reading();
    }

    public static RejectedFile refused(String text) {
        return refused(text.getBytes(StandardCharsets.UTF_8));
    }

    public static RejectedFile refused(byte[] bytes) {
        ReadResult outcome = read(bytes);
        return outcome instanceof RejectedFile refused ? refused : fail("taken");
    }
}
