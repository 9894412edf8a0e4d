package org.voltdocket.diagnosis;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assertions.fail;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;
import org.voltdocket.diagnosis.assess.Diagnosis;
import org.voltdocket.diagnosis.rulebook.Editions;
import org.voltdocket.diagnosis.rulebook.Rulebook;

/** What each edition says of the sample cases stays as a person accepted it. */
class CorpusTest {

    private static final long MOST_BYTES = 4_000_000;

    static Stream<Arguments> editionsAndSamples() {
        List<String> names = Corpus.names();
        return Editions.files().stream()
                .map(Editions::read)
                .flatMap(book -> Corpus.CHANNELS.stream()
                        .flatMap(channels ->
                                names.stream().map(name -> Arguments.of(book.edition(), channels, name, book))));
    }

    @ParameterizedTest(name = "{0} {1} {2}")
    @MethodSource("editionsAndSamples")
    void theAssessmentIsTheOneAccepted(String edition, String channels, String name, Rulebook book) {
        Path file = Corpus.expected(edition, channels, name);
        assertThat(file).as("accept with: " + AcceptCorpus.COMMAND).exists();
        String now = CorpusText.of(Diagnosis.assess(Corpus.input(name, channels), book));
        String accepted = Corpus.text(file);
        List<String> difference = book.released()
                ? CorpusText.difference(accepted, now)
                : CorpusText.difference(CorpusText.conclusion(accepted), CorpusText.conclusion(now));
        if (!difference.isEmpty()) {
            fail(String.format(
                    "Edition %s now says of shared/samples/%s, %s (- accepted, + now):%n%s%nIf that is right, accept it: %s",
                    edition, name, channels, String.join(System.lineSeparator(), difference), AcceptCorpus.COMMAND));
        }
    }

    /** While an edition is in the making only its conclusions are held; numbers are once it is released. */
    @Test
    void theConclusionIsTheVerdictTheLeaningAndTheFirstCause() {
        String text =
                "{\n \"batteryVerdict\": \"sound\",\n \"leaning\": \"open\",\n \"causes\": {\n \"none\": 0.7000,\n \"duty\": 0.3\n}}";
        assertThat(CorpusText.conclusion(text).lines().map(String::strip))
                .containsExactly("\"batteryVerdict\": \"sound\",", "\"leaning\": \"open\",", "none");
    }

    static List<Path> releasedEditions() {
        return Editions.files().stream()
                .filter(file -> Editions.read(file).released())
                .toList();
    }

    @ParameterizedTest
    @MethodSource("releasedEditions")
    void anEditionIsTheOneThatWasAccepted(Path file) {
        Rulebook book = Editions.read(file);
        assertThat(book.sha256().hex())
                .as(
                        "%s changed. Decisions rest on a released edition: copy it under a new name. On its release: %s",
                        file, AcceptCorpus.COMMAND)
                .isEqualTo(Corpus.text(Corpus.digest(book.edition())).strip());
    }

    @Test
    void thereIsASampleOfEveryCauseAndItsCauseIsFound() {
        assertThat(Corpus.names())
                .containsExactlyInAnyOrderElementsOf(
                        Stream.of(Cause.values()).map(Cause::id).toList());
        List<Path> editions = Editions.files();
        Rulebook newest = Editions.read(editions.get(editions.size() - 1));
        for (String name : Corpus.names()) {
            Assessment said = Diagnosis.assess(Corpus.input(name), newest);
            assertThat(said.causes().get(0).cause().id()).isEqualTo(name);
        }
    }

    @Test
    void nothingIsExpectedOfSamplesThatAreNotThere() throws IOException {
        for (Path edition : Corpus.list(Path.of("shared/expected"))) {
            String name = edition.getFileName().toString().replace(".sha256", "");
            assertThat(Editions.files()).anyMatch(f -> f.endsWith(name + ".yaml"));
            for (Path file : Files.isDirectory(edition) ? filesUnder(edition) : List.<Path>of()) {
                assertThat(Corpus.names())
                        .contains(file.getFileName().toString().replace(".json", ""));
            }
        }
    }

    private static List<Path> filesUnder(Path folder) throws IOException {
        try (Stream<Path> files = Files.walk(folder)) {
            return files.filter(Files::isRegularFile).toList();
        }
    }

    @Test
    void theSamplesStaySmall() throws IOException {
        try (Stream<Path> files = Files.walk(Corpus.SAMPLES)) {
            assertThat(files.filter(Files::isRegularFile)
                            .mapToLong(f -> f.toFile().length())
                            .sum())
                    .isLessThan(MOST_BYTES);
        }
    }

    @Test
    void aDifferenceNamesBothSides() {
        assertThat(CorpusText.difference("a\n  b\nc\n", "a\n  d\nc\n")).containsExactly("- b", "+ d");
        assertThat(CorpusText.difference("a\nb\n", "a\nb\n")).isEmpty();
    }
}
