package org.voltdocket.evidence.comparison;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.voltdocket.demo.Generator;
import org.voltdocket.demo.Scenario;
import org.voltdocket.diagnosis.Recording;

/** Copies are found, whatever was done to them; other recordings are not taken for copies. */
class CurveSimilarityTest {

    @ParameterizedTest(name = "every {0} s, from {1} to {2} s, to {3} V")
    @CsvSource({
        "0,    0,   1199, 0.01",
        "0,    0,   1199, 0.1",
        "0.2,  0,   1199, 0.01",
        "1,    0,   1199, 0.01",
        "0,    300, 1199, 0.01",
        "0,    301, 1000, 0.01",
        "0.5,  300.7, 1000, 0.1"
    })
    void aCopyIsFoundThinnedCutAndRounded(double every, double from, double to, double round) {
        for (long seed = 1; seed <= 5; seed++) {
            Recording original = Copies.drive(seed);
            Optional<CurveSimilarity> found = Copies.alike(original, Copies.of(original, every, from, to, round));
            assertThat(found).as("seed " + seed).isPresent();
            assertThat(found.get().laterS()).isCloseTo(from, within(1.0));
            assertThat(found.get().correlation()).isLessThan(1 + 1e-9);
        }
    }

    @Test
    void itDoesNotMatterWhichCameFirst() {
        Recording original = Copies.drive(3);
        Recording copy = Copies.of(original, 0.5, 100, 900, 0.01);
        for (VoltageOutline a : VoltageOutline.of(original)) {
            for (VoltageOutline b : VoltageOutline.of(copy)) {
                List<CurveSimilarity.Vote> votes = Copies.votes(a, b);
                assertThat(CurveSimilarity.turned(Copies.votes(b, a))).containsExactlyInAnyOrderElementsOf(votes);
            }
        }
    }

    @Test
    void otherDrivesAreNotTakenForCopies() {
        List<Recording> all = new ArrayList<>();
        for (long seed = 1; seed <= 8; seed++) {
            all.add(Copies.drive(seed));
        }
        for (Scenario scenario : Scenario.values()) {
            Generator.generate(scenario, 1).items().forEach(item -> {
                if (item.reading() instanceof Recording recording) {
                    all.add(recording);
                }
            });
        }
        for (int i = 0; i < all.size(); i++) {
            for (int j = i + 1; j < all.size(); j++) {
                assertThat(Copies.alike(all.get(i), all.get(j)))
                        .as(i + " and " + j)
                        .isEmpty();
            }
        }
    }

    /**
     * The false-alarm rate is stated as one in a million pairs. 7140 pairs cannot show that by counting, so the significance
     * of all compared pairs is extrapolated: one in a million lies 4.75 standard deviations above the mean of a normal
     * distribution. Pairs without common landmarks are never compared.
     */
    @Test
    void unrelatedDrivesStayBelowTheLimitAtTheStatedRate() {
        List<VoltageOutline> drives = new ArrayList<>();
        for (long seed = 1; seed <= 120; seed++) {
            drives.addAll(Copies.kept(Copies.drive(seed)));
        }
        List<Double> significances = new ArrayList<>();
        for (int i = 0; i < drives.size(); i++) {
            for (int j = i + 1; j < drives.size(); j++) {
                VoltageOutline one = drives.get(i);
                VoltageOutline other = drives.get(j);
                CurveSimilarity.closest(one, other, Copies.votes(one, other)).ifPresent(found -> {
                    assertThat(CopyCriterion.isCopy(one, other, found)).isFalse();
                    significances.add(CopyCriterion.significance(one, other, found));
                });
            }
        }
        double mean = significances.stream().mapToDouble(s -> s).average().orElseThrow();
        double variance = significances.stream()
                .mapToDouble(s -> (s - mean) * (s - mean))
                .average()
                .orElseThrow();
        assertThat(significances).hasSizeGreaterThan(100);
        assertThat(mean + 4.75 * Math.sqrt(variance)).isLessThan(CopyCriterion.QUANTILE);
    }

    /** The voltages of different vehicles on one route correlate, but less than copies of the same resolution. */
    @ParameterizedTest
    @ValueSource(doubles = {0.25, 0.5, 1})
    void vehiclesOnOneRouteAreNotTakenForCopies(double share) {
        for (long vehicle = 1; vehicle <= 12; vehicle++) {
            assertThat(Copies.alike(Copies.onRoute(5, vehicle, share), Copies.onRoute(5, vehicle + 50, share)))
                    .as("vehicle " + vehicle)
                    .isEmpty();
        }
    }

    /** A voltage that lies still has no landmarks: copies of it cannot be told from others, so nobody is accused. */
    @Test
    void aVoltageThatLiesStillIsLikeNothing() {
        Recording still = Copies.of(Copies.drive(1), 0, 0, 1199, 100);
        assertThat(Copies.alike(still, still)).isEmpty();
    }

    @Test
    void anOutlineComesBackFromTheStoreToTheMillivolt() {
        for (VoltageOutline outline : VoltageOutline.of(Copies.drive(2))) {
            VoltageOutline back = VoltageOutline.unpacked(outline.scale(), outline.packed());
            for (int k = 0; k < outline.volts().length; k++) {
                assertThat(back.volts()[k]).isCloseTo(outline.volts()[k], within(0.0005));
            }
        }
    }
}
