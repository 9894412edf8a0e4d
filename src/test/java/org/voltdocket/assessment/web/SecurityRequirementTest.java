package org.voltdocket.assessment.web;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/** The table of security requirements names tests that exist, and leaves nothing unexplained. */
class SecurityRequirementTest {

    private final List<SecurityRequirement> all = SecurityRequirement.all();

    @Test
    void everyTestNamedExists() throws IOException {
        Set<String> tests;
        try (Stream<Path> files = Files.walk(Path.of("src/test/java"))) {
            tests = files.map(file -> file.getFileName().toString())
                    .filter(name -> name.endsWith(".java"))
                    .map(name -> name.replace(".java", ""))
                    .collect(Collectors.toSet());
        }
        assertThat(all).allSatisfy(one -> assertThat(tests).as(one.number()).containsAll(one.tests()));
    }

    @Test
    void everyRequirementIsMetOrExplained() {
        assertThat(all)
                .extracting(SecurityRequirement::number)
                .doesNotHaveDuplicates()
                .hasSizeGreaterThan(200);
        for (SecurityRequirement one : all) {
            assertThat(one.state()).as(one.number()).isIn("met", "partly", "open", "operator", "none");
            assertThat(one.text()).as(one.number()).isNotBlank();
            boolean incomplete = one.state().equals("open") || one.state().equals("partly");
            assertThat(incomplete ? one.open() : one.where()).as(one.number()).isNotBlank();
        }
    }
}
