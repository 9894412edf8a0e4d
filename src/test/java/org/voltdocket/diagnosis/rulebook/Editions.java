package org.voltdocket.diagnosis.rulebook;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;

/** The editions that the project publishes. */
public final class Editions {

    private static final Path FOLDER = Path.of("shared/rulebook");

    private Editions() {}

    /** File of each edition, oldest first. */
    public static List<Path> files() {
        try (Stream<Path> files = Files.list(FOLDER)) {
            return files.filter(f -> f.toString().endsWith(".yaml")).sorted().toList();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** Every edition, oldest first. */
    public static List<Rulebook> all() {
        return files().stream().map(Editions::read).toList();
    }

    public static Rulebook read(Path file) {
        return RulebookParser.parse(text(file).getBytes(StandardCharsets.UTF_8));
    }

    public static String text(Path file) {
        try {
            return Files.readString(file);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** An edition by its name. */
    public static Rulebook of(String edition) {
        return read(FOLDER.resolve(edition + ".yaml"));
    }
}
