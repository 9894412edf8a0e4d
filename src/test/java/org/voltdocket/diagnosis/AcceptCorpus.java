package org.voltdocket.diagnosis;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.voltdocket.diagnosis.assess.Diagnosis;
import org.voltdocket.diagnosis.rulebook.Editions;
import org.voltdocket.diagnosis.rulebook.Rulebook;

/**
 * Takes what the judge says now of the samples for what is expected, and prints what that changes. A person reads it
 * before it is committed. Without arguments for every edition, else for those named.
 */
public final class AcceptCorpus {

    /** What to run, from the top of the project. */
    static final String COMMAND = "mvn -q -Paccept-corpus test-compile exec:java";

    private AcceptCorpus() {}

    public static void main(String[] editions) throws IOException {
        for (Path file : Editions.files()) {
            Rulebook book = Editions.read(file);
            if (editions.length == 0 || List.of(editions).contains(book.edition())) {
                accept(book);
            }
        }
    }

    private static void accept(Rulebook book) throws IOException {
        Files.createDirectories(Corpus.digest(book.edition()).getParent());
        if (book.released()) {
            Files.writeString(Corpus.digest(book.edition()), book.sha256().hex() + "\n");
        }
        for (String channels : Corpus.CHANNELS) {
            for (String name : Corpus.names()) {
                accept(book, channels, name);
            }
        }
    }

    private static void accept(Rulebook book, String channels, String name) throws IOException {
        Path file = Corpus.expected(book.edition(), channels, name);
        String before = Files.exists(file) ? Corpus.text(file) : "";
        String now = CorpusText.of(Diagnosis.assess(Corpus.input(name, channels), book));
        List<String> difference = CorpusText.difference(before, now);
        System.out.printf("%s %s %s: %d lines differ%n", book.edition(), channels, name, difference.size());
        if (!before.isEmpty()) {
            difference.forEach(line -> System.out.println("    " + line));
        }
        Files.createDirectories(file.getParent());
        Files.writeString(file, now);
    }
}
