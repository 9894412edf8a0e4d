package org.voltdocket.diagnosis;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import java.util.concurrent.TimeUnit;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.voltdocket.diagnosis.assess.Diagnosis;
import org.voltdocket.diagnosis.rulebook.Editions;
import org.voltdocket.diagnosis.rulebook.Rulebook;

/** The same evidence, facts and rule book give the same assessment, to the last digit, in any order and anywhere. */
class DeterminismTest {

    private static final int ORDERS = 20;

    private final Rulebook newest =
            Editions.read(Editions.files().get(Editions.files().size() - 1));

    static List<String> samples() {
        return Corpus.names();
    }

    @ParameterizedTest
    @MethodSource("samples")
    void judgedAgainAndInAnyOrderItIsTheSame(String name) {
        CaseInput input = Corpus.input(name);
        Assessment first = Diagnosis.assess(input, newest);
        String digest = CorpusDigest.of(first);
        assertThat(Diagnosis.assess(Corpus.input(name), newest)).isEqualTo(first);
        List<Evidence> evidence = new ArrayList<>(input.evidence());
        for (int order = 1; order <= ORDERS; order++) {
            Collections.shuffle(evidence, new Random(order));
            Assessment now = Diagnosis.assess(new CaseInput(input.facts(), input.history(), evidence), newest);
            assertThat(now).isEqualTo(first);
            assertThat(CorpusDigest.of(now)).isEqualTo(digest);
        }
    }

    /** Turkish writes I and i otherwise, Kathmandu lies 5:45 off; a process of its own also has other hash seeds. */
    @Test
    void anotherProcessLanguageAndTimeZoneSayTheSame() throws IOException, InterruptedException {
        String here = Editions.files().stream()
                .map(file -> CorpusDigest.lines(Editions.read(file)))
                .collect(Collectors.joining());
        Process there = new ProcessBuilder(
                        Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                        "-Xmx512m",
                        "-Duser.language=tr",
                        "-Duser.country=TR",
                        "-Duser.timezone=Asia/Kathmandu",
                        "-Dfile.encoding=ISO-8859-9",
                        "-cp",
                        System.getProperty("java.class.path"),
                        CorpusDigest.class.getName())
                .redirectError(ProcessBuilder.Redirect.INHERIT)
                .start();
        String said = new String(there.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
        assertThat(there.waitFor(60, TimeUnit.SECONDS)).isTrue();
        assertThat(said).isEqualTo(here);
    }
}
