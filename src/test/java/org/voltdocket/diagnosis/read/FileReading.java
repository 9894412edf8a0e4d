package org.voltdocket.diagnosis.read;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Path;
import java.time.Instant;
import org.voltdocket.diagnosis.Reading;

/** Reads a file of evidence as the intake does, without an archive. */
public final class FileReading {

    /** Later than any sample: the reader refuses tests from the future. */
    private static final Instant NOW = Instant.parse("2100-01-01T00:00:00Z");

    private FileReading() {}

    /**
     * What the file says.
     *
     * @throws IllegalArgumentException if the intake would refuse it
     */
    public static Reading of(Path file) {
        try {
            ReadResult outcome = new FileReader(file, NOW, size -> {}).read();
            if (outcome instanceof ParsedFile parsed && parsed.reading() != null) {
                return parsed.reading();
            }
            throw new IllegalArgumentException(file + " is no evidence that can be judged: " + outcome);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
