package org.voltdocket.outside;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** Every file of reference data states its origin and its licence before the data. */
class ReferenceHeadersTest {

    static List<Path> files() throws IOException {
        try (Stream<Path> files = Files.walk(Path.of("shared/reference"))) {
            return files.filter(Files::isRegularFile)
                    .filter(file -> !file.endsWith("LICENSE"))
                    .sorted()
                    .toList();
        }
    }

    @ParameterizedTest
    @MethodSource("files")
    void theHeaderStatesOriginAndLicence(Path file) throws IOException {
        boolean data = file.toString().endsWith(".csv");
        List<String> header = Files.readAllLines(file).stream()
                .takeWhile(line -> !data || line.startsWith("# "))
                .map(line -> data ? line.substring(2) : line)
                .toList();
        assertThat(header).anyMatch(line -> line.matches("Origin: \\S.{10,}"));
        assertThat(header).anyMatch(line -> line.matches("Licence: \\S.{5,}"));
    }

    @ParameterizedTest
    @MethodSource("files")
    void aLicenceThatIsNamedInAnotherFileIsThere(Path file) throws IOException {
        if (Files.readString(file).contains("see LICENSE")) {
            assertThat(file.resolveSibling("LICENSE")).exists();
        }
    }
}
