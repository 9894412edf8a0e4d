package org.voltdocket.diagnosis;

import static java.nio.charset.StandardCharsets.UTF_8;

import org.voltdocket.diagnosis.assess.Diagnosis;
import org.voltdocket.diagnosis.rulebook.Editions;
import org.voltdocket.diagnosis.rulebook.Rulebook;
import org.voltdocket.kernel.Sha256;
import tools.jackson.databind.json.JsonMapper;

/** Prints the digest of what each edition says of each sample, every digit of it: run in other surroundings it is the same. */
final class CorpusDigest {

    private CorpusDigest() {}

    public static void main(String[] none) {
        Editions.files().forEach(file -> System.out.print(lines(Editions.read(file))));
    }

    static String lines(Rulebook book) {
        StringBuilder out = new StringBuilder();
        for (String name : Corpus.names()) {
            out.append(book.edition())
                    .append(' ')
                    .append(name)
                    .append(' ')
                    .append(of(Diagnosis.assess(Corpus.input(name), book)))
                    .append('\n');
        }
        return out.toString();
    }

    static String of(Assessment said) {
        return Sha256.of(JsonMapper.shared().writeValueAsString(said).getBytes(UTF_8))
                .hex();
    }
}
