package org.voltdocket.assessment.edition;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.concurrent.atomic.AtomicInteger;

/** Editions for tests: 2026.1 under a name of its own, with something changed. */
public final class EditionTexts {

    private static final AtomicInteger COUNTER = new AtomicInteger();

    private EditionTexts() {}

    /** A name nobody has. */
    public static String name() {
        return "2090." + COUNTER.incrementAndGet();
    }

    /** 2026.1 under another name. */
    public static String text(String name) {
        try {
            return Files.readString(Path.of("shared/rulebook/2026.1.yaml"))
                    .replace("edition: \"2026.1\"", "edition: \"" + name + "\"");
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** One that holds every case for a misfit until evidence says otherwise. */
    public static String tilted(String name) {
        return text(name)
                .replaceFirst(
                        "odds: \\{[^}]*}",
                        "odds: {battery-defect: 0.01, battery-worn: 0.01, charging-source: 0.01, current-sensor: 0.01,"
                                + " charge-control: 0.01, wiring: 0.01, standing-drain: 0.01, duty: 0.01, misfit: 0.91,"
                                + " none: 0.01}");
    }

    /** The same, in the making. */
    public static String draft(String text) {
        return text.replaceFirst("(edition: \"[^\"]*\"\n)", "$1inTheMaking: true\n");
    }

    public static byte[] bytes(String text) {
        return text.getBytes(StandardCharsets.UTF_8);
    }
}
