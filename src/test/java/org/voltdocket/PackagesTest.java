package org.voltdocket;

import static com.tngtech.archunit.core.domain.JavaClass.Predicates.resideInAPackage;
import static com.tngtech.archunit.core.domain.JavaClass.Predicates.resideInAnyPackage;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.classes;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;
import static com.tngtech.archunit.library.dependencies.SlicesRuleDefinition.slices;
import static org.assertj.core.api.Assertions.assertThat;

import com.tngtech.archunit.core.domain.JavaClasses;
import com.tngtech.archunit.core.domain.JavaModifier;
import com.tngtech.archunit.core.importer.ClassFileImporter;
import com.tngtech.archunit.core.importer.ImportOption;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;

/** Holds the directions between rooms: a room imports rooms of lower levels only. */
class PackagesTest {

    /** Every room and its level; a new room is entered here first. */
    private static final Map<String, Integer> LEVELS = Map.ofEntries(
            Map.entry("kernel", 0),
            Map.entry("diagnosis", 1),
            Map.entry("access", 1),
            Map.entry("trail", 1),
            Map.entry("ui", 1),
            Map.entry("paper", 1),
            Map.entry("mail", 1),
            Map.entry("casefile", 2),
            Map.entry("catalogue", 2),
            Map.entry("quota", 2),
            Map.entry("evidence", 3),
            Map.entry("assessment", 4),
            Map.entry("warranty", 5),
            Map.entry("claim", 6),
            Map.entry("returned", 6),
            Map.entry("notice", 7),
            Map.entry("recovery", 7),
            Map.entry("desk", 8),
            Map.entry("dossier", 9),
            Map.entry("insight", 9),
            Map.entry("privacy", 10),
            Map.entry("server", 10));

    private static final String ROOT = "org.voltdocket.";

    private static final JavaClasses SERVER = new ClassFileImporter()
            .withImportOption(ImportOption.Predefined.DO_NOT_INCLUDE_TESTS)
            .importPackages("org.voltdocket");

    @Test
    void everyRoomHasALevelAndSaysWhatItOffers() {
        Set<String> rooms = SERVER.stream()
                .map(type -> type.getPackageName())
                .filter(name -> name.startsWith(ROOT))
                .map(name -> name.substring(ROOT.length()).replaceFirst("\\..*", ""))
                .collect(Collectors.toCollection(TreeSet::new));
        assertThat(LEVELS.keySet()).containsAll(rooms);
        assertThat(rooms).contains("kernel", "diagnosis", "access", "trail", "ui", "casefile", "evidence");
        for (String room : rooms) {
            assertThat(java.nio.file.Path.of("src/main/java/org/voltdocket", room, "package-info.java"))
                    .exists();
        }
    }

    @Test
    void importsGoToLowerRoomsOnly() {
        LEVELS.forEach((room, level) -> {
            String[] forbidden = LEVELS.entrySet().stream()
                    .filter(other -> !other.getKey().equals(room) && other.getValue() >= level)
                    .map(other -> ROOT + other.getKey() + "..")
                    .toArray(String[]::new);
            if (forbidden.length > 0) {
                noClasses()
                        .that(resideInAPackage(ROOT + room + ".."))
                        .should()
                        .dependOnClassesThat(resideInAnyPackage(forbidden))
                        .allowEmptyShould(true)
                        .because(room + " has level " + level)
                        .check(SERVER);
            }
        });
    }

    /** Slices are single packages, subpackages included. */
    @Test
    void packagesHaveNoCycles() {
        slices().matching(ROOT + "(**)").should().beFreeOfCycles().check(SERVER);
    }

    @Test
    void theKernelNeedsJavaOnly() {
        classes()
                .that(resideInAPackage(ROOT + "kernel.."))
                .should()
                .onlyDependOnClassesThat(resideInAnyPackage("java..", ROOT + "kernel.."))
                .check(SERVER);
    }

    @Test
    void theJudgeIsArithmetic() {
        classes()
                .that(resideInAPackage(ROOT + "diagnosis.."))
                .should()
                .onlyDependOnClassesThat(resideInAnyPackage(
                        "java..",
                        ROOT + "kernel..",
                        ROOT + "diagnosis..",
                        "org.hipparchus..",
                        "org.yaml.snakeyaml..",
                        "tools.jackson.core.."))
                .check(SERVER);
        noClasses()
                .that(resideInAPackage(ROOT + "diagnosis.."))
                .should()
                .dependOnClassesThat(resideInAnyPackage("java.sql..", "java.net.."))
                .because("time, files, database and chance stay outside")
                .check(SERVER);
    }

    @Test
    void theInsideOfARoomIsItsOwn() {
        classes()
                .that()
                .areAnnotatedWith("jakarta.persistence.Entity")
                .or()
                .areAnnotatedWith("org.springframework.stereotype.Repository")
                .or()
                .areAnnotatedWith("org.springframework.stereotype.Controller")
                .or()
                .areAnnotatedWith("org.springframework.web.bind.annotation.RestController")
                .or()
                .areAssignableTo("org.springframework.data.repository.Repository")
                .should()
                .notHaveModifier(JavaModifier.PUBLIC)
                .check(SERVER);
    }
}
