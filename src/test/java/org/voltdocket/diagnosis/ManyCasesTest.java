package org.voltdocket.diagnosis;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.Collections;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.function.DoubleUnaryOperator;
import org.junit.jupiter.api.Test;
import org.voltdocket.diagnosis.assess.Diagnosis;
import org.voltdocket.diagnosis.rulebook.Editions;
import org.voltdocket.diagnosis.rulebook.Rulebook;
import org.voltdocket.diagnosis.rulebook.Sentences;

/** What holds for every case, tried on thousands of random ones. */
class ManyCasesTest {

    private static final Rulebook BOOK = Editions.of("2026.1");
    private static final OffsetDateTime DAY = OffsetDateTime.parse("2026-03-04T08:40:00+01:00");
    private static final double RATED_A = 700;

    /** A case as a workshop may have it, drawn from a seed. */
    private static final class Drawn {

        private final Random chance;
        private final double level;
        private final double health;
        private final double offsetA;
        private final boolean managed;

        Drawn(long seed) {
            chance = new Random(seed);
            managed = chance.nextBoolean();
            health = chance.nextInt(3) == 0 ? between(0.3, 0.8) : between(0.9, 1.1);
            level = chance.nextInt(4) == 0 ? between(11.8, 13) : between(13.8, 14.6);
            offsetA = chance.nextInt(3) == 0 ? between(-6, 6) : 0;
        }

        double between(double low, double high) {
            return low + (high - low) * chance.nextDouble();
        }

        private <T> T known(T fact) {
            return chance.nextInt(4) == 0 ? null : fact;
        }

        Facts facts() {
            return new Facts(
                    new Facts.BatteryFacts(
                            known(Chemistry.EFB),
                            known(70.0),
                            known(RATED_A),
                            known(CrankingStandard.EN),
                            known(DAY.toLocalDate().minusDays(100 + chance.nextInt(2500))),
                            null,
                            known(DAY.toLocalDate().minusDays(90)),
                            known(50_000.0)),
                    new Facts.VehicleFacts(
                            known(managed ? ChargingControl.MANAGED : ChargingControl.CONVENTIONAL),
                            known(managed),
                            known(Chemistry.EFB),
                            known(70.0),
                            known(50_000.0 + chance.nextInt(6000))),
                    null,
                    known(chance.nextInt(2)));
        }

        List<Evidence> tests() {
            List<Evidence> out = new ArrayList<>();
            if (chance.nextInt(4) > 0) {
                out.add(Made.evidence("charged", charged(health, 0)));
            }
            if (chance.nextBoolean()) {
                out.add(Made.evidence(
                        "arrival",
                        new BatteryTest(
                                DAY.minusDays(1), between(11.6, 12.8), 18, null, null, null, 10.0, false, null)));
            }
            if (chance.nextBoolean()) {
                out.add(Made.evidence(
                        "charging", new ChargingTest(DAY.minusHours(3), level, level - 0.2, 0.05, 20, null)));
            }
            return out;
        }

        BatteryTest charged(double share, int days) {
            return new BatteryTest(
                    DAY.plusDays(days), 12.72, 20, share * RATED_A, CrankingStandard.EN, null, 14.0, true, null);
        }

        /** A quarter of an hour: half a minute of rest, the start, then loads that change. */
        Recording drive(double addedReportedV, double addedReportedA) {
            double[] loads = Made.steps(chance, 901, 8, 40, 20, 60);
            double[] noise = Made.noise(chance, 901, 0.01, 0);
            DoubleUnaryOperator amperes = t -> t < 30 ? -0.8 : t < 31 ? -180 : (level - 13) * 9 - loads[(int) t] / 20;
            DoubleUnaryOperator volts =
                    t -> t < 30 ? 12.5 : t < 31 ? 10.4 : level - loads[(int) t] / 400 + noise[(int) t];
            return Made.at(1, 900)
                    .with(Channel.MEASURED_V, volts)
                    .with(Channel.MEASURED_A, amperes)
                    .with(Channel.REPORTED_V, t -> volts.applyAsDouble(t) - noise[(int) t] - 0.02 + addedReportedV)
                    .with(Channel.REPORTED_A, t -> amperes.applyAsDouble(t) + offsetA + addedReportedA)
                    .with(Channel.ENGINE_RPM, t -> t < 30 ? 0 : t < 31 ? 200 : 1500)
                    .recording();
        }
    }

    private static Assessment assess(Facts facts, List<Evidence> evidence) {
        return Diagnosis.assess(new CaseInput(facts, History.NONE, evidence), BOOK);
    }

    private static boolean firm(Assessment said) {
        return said.leaning() != Leaning.OPEN && said.leaning() != Leaning.CONTRADICTORY;
    }

    @Test
    void stepsAgreeWithTheVerdictAndOrderDoesNotMatter() {
        for (long seed = 1; seed <= 1500; seed++) {
            Drawn drawn = new Drawn(seed);
            Facts facts = drawn.facts();
            List<Evidence> evidence = drawn.tests();
            if (seed % 10 == 0) {
                evidence.add(Made.evidence("drive", drawn.drive(0, 0)));
            }
            Assessment said = assess(facts, evidence);
            String which = "case " + seed + ": " + said.said() + " " + said.nextSteps();
            assertThat(said.nextSteps()).as(which).isNotEmpty().doesNotHaveDuplicates();
            assertThat(says(said, "next.battery-defect") || says(said, "next.battery-worn"))
                    .as(which)
                    .isEqualTo(said.leaning() == Leaning.BATTERY_SIDE);
            assertThat(says(said, "next.none")).as(which).isEqualTo(said.leaning() == Leaning.NO_FAULT_SEEN);
            if (said.leaning() == Leaning.VEHICLE_SIDE || said.leaning() == Leaning.NO_FAULT_SEEN) {
                assertThat(said.batteryVerdict()).as(which).isEqualTo(BatteryVerdict.SOUND);
            }
            if (said.leaning() == Leaning.BATTERY_SIDE) {
                assertThat(said.batteryVerdict()).as(which).isEqualTo(BatteryVerdict.FAILED);
            }
            assertThat(said.leaning() != Leaning.OPEN || !said.missing().isEmpty())
                    .as(which)
                    .isTrue();
            Collections.shuffle(evidence, new Random(seed));
            assertThat(assess(facts, evidence)).isEqualTo(said);
        }
    }

    private static boolean says(Assessment said, String key) {
        return said.nextSteps().contains(Sentences.plain(key));
    }

    /** Another test a day later, within the error of the instrument: it may settle a case or open it, but not turn it. */
    @Test
    void moreOfTheSameDoesNotReverseAFirmVerdict() {
        for (long seed = 5001; seed <= 6000; seed++) {
            Drawn drawn = new Drawn(seed);
            Facts facts = drawn.facts();
            List<Evidence> evidence = drawn.tests();
            evidence.add(Made.evidence("first", drawn.charged(drawn.health, 0)));
            Assessment before = assess(facts, evidence);
            evidence.add(Made.evidence("second", drawn.charged(drawn.health * (1 + 0.02 * drawn.between(-1, 1)), 1)));
            Assessment after = assess(facts, evidence);
            if (firm(before) && firm(after)) {
                assertThat(after.leaning()).as("case %d", seed).isEqualTo(before.leaning());
            }
            assertThat(before.batteryVerdict() == BatteryVerdict.SOUND
                                    && after.batteryVerdict() == BatteryVerdict.FAILED
                            || before.batteryVerdict() == BatteryVerdict.FAILED
                                    && after.batteryVerdict() == BatteryVerdict.SOUND)
                    .as("case %d", seed)
                    .isFalse();
        }
    }

    /** What is added to one instrument all the time, engine off included, is found in that instrument and nowhere else. */
    @Test
    void aConstantAddedToOneInstrumentIsThatInstruments() {
        Facts facts =
                new Facts(null, new Facts.VehicleFacts(ChargingControl.MANAGED, null, null, null, null), null, null);
        for (long seed = 9001; seed <= 9100; seed++) {
            Assessment plain = assess(facts, List.of(Made.evidence("drive", new Drawn(seed).drive(0, 0))));
            Assessment volts = assess(facts, List.of(Made.evidence("drive", new Drawn(seed).drive(0.5, 0))));
            Assessment amperes = assess(facts, List.of(Made.evidence("drive", new Drawn(seed).drive(0, 4))));
            String which = "case " + seed;
            assertThat(of(volts, Cause.WIRING)).as(which).isLessThan(of(plain, Cause.WIRING) + 0.05);
            assertThat(volts.estimates().get("sensorOffsetA"))
                    .isEqualTo(plain.estimates().get("sensorOffsetA"));
            assertThat(amperes.estimates().get("sensorOffsetA").value()
                            - plain.estimates().get("sensorOffsetA").value())
                    .as(which)
                    .isCloseTo(4, within(0.2));
            Map<Cause, Double> others = new EnumMap<>(Cause.class);
            amperes.causes().stream()
                    .filter(c -> c.cause() != Cause.CURRENT_SENSOR)
                    .forEach(c -> others.put(c.cause(), c.probability()));
            if (Math.abs(new Drawn(seed).offsetA + 4) > 2) {
                assertThat(of(amperes, Cause.CURRENT_SENSOR)).as(which).isGreaterThan(Collections.max(others.values()));
            }
        }
    }

    private static double of(Assessment said, Cause cause) {
        return said.causes().stream()
                .filter(c -> c.cause() == cause)
                .mapToDouble(Assessment.RankedCause::probability)
                .sum();
    }
}
