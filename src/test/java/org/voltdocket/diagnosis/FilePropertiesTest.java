package org.voltdocket.diagnosis;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.function.UnaryOperator;
import java.util.stream.Collectors;
import java.util.zip.GZIPInputStream;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.voltdocket.diagnosis.assess.Diagnosis;
import org.voltdocket.diagnosis.read.FileReading;
import org.voltdocket.diagnosis.rulebook.Editions;
import org.voltdocket.diagnosis.rulebook.Rulebook;

/** What no change of a file's form may do to an assessment, on the recordings of every sample case. */
class FilePropertiesTest {

    private static final Rulebook NEWEST = Editions.all().get(Editions.all().size() - 1);

    @TempDir
    private Path folder;

    static List<String> names() {
        return Corpus.names();
    }

    /** Unknown columns are kept in the original and named; the judge sees the others, in whatever order they stand. */
    @ParameterizedTest
    @MethodSource("names")
    void unknownColumnsAndAnotherOrderOfTheColumnsChangeNothing(String name) {
        same(name, line -> {
            List<String> cells = new ArrayList<>(Arrays.asList(line.split(",", -1)));
            boolean header = line.startsWith("time");
            java.util.Collections.reverse(cells);
            cells.add(1, header ? "oil_c" : "88.5");
            cells.add(header ? "remark" : "none");
            return String.join(",", cells);
        });
    }

    /** A zero more behind the last decimal is the same number. */
    @ParameterizedTest
    @MethodSource("names")
    void oneMoreDecimalThatIsZeroChangesNothing(String name) {
        same(
                name,
                line -> Arrays.stream(line.split(",", -1))
                        .map(cell -> cell.matches("-?[0-9]+[.][0-9]+") ? cell + "0" : cell)
                        .collect(Collectors.joining(",")));
    }

    @ParameterizedTest
    @MethodSource("names")
    void semicolonsAndDecimalCommasChangeNothing(String name) {
        same(name, line -> line.replace(',', ';').replace('.', ','));
    }

    private void same(String name, UnaryOperator<String> change) {
        CaseInput input = Corpus.input(name);
        CaseInput changed = changed(name, input, change);
        assertThat(Diagnosis.assess(changed, NEWEST)).isEqualTo(Diagnosis.assess(input, NEWEST));
    }

    /** The case with each line of its recordings changed; evidence keeps its id and digest, for both are in the assessment. */
    private CaseInput changed(String name, CaseInput input, UnaryOperator<String> change) {
        List<Evidence> out = new ArrayList<>();
        List<Path> files = Corpus.list(Corpus.SAMPLES.resolve(name)).stream()
                .filter(f -> !f.endsWith(Corpus.REQUEST))
                .toList();
        for (int i = 0; i < files.size(); i++) {
            Evidence item = input.evidence().get(i);
            boolean recording = item.reading() instanceof Recording;
            Reading reading = recording ? FileReading.of(rewritten(files.get(i), change)) : item.reading();
            out.add(new Evidence(item.id(), item.sha256(), item.origin(), reading));
        }
        return new CaseInput(input.facts(), input.history(), out);
    }

    private Path rewritten(Path gzip, UnaryOperator<String> change) {
        try {
            byte[] plain = new GZIPInputStream(new ByteArrayInputStream(Files.readAllBytes(gzip))).readAllBytes();
            String original = new String(plain, StandardCharsets.UTF_8);
            boolean semicolons = original.lines().findFirst().orElseThrow().contains(";");
            String text = (semicolons ? original.replace(',', '.').replace(';', ',') : original)
                    .lines()
                    .map(change)
                    .collect(Collectors.joining("\n", "", "\n"));
            return Files.writeString(folder.resolve("rewritten.csv"), text);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
