package org.voltdocket.secondmodel;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.voltdocket.diagnosis.BatteryTest;
import org.voltdocket.diagnosis.Channel;
import org.voltdocket.diagnosis.ChargingTest;
import org.voltdocket.diagnosis.EvidenceKind;
import org.voltdocket.diagnosis.Reading;
import org.voltdocket.diagnosis.Recording;
import org.voltdocket.diagnosis.Regime;

/** Generated cases are repeatable, well formed, and show what their truth says. */
class SecondModelTest {

    private final SecondModel model = new SecondModel();

    private static Recording drive(Labelled made) {
        return (Recording) made.input().evidence().stream()
                .filter(e -> e.reading().kind() == EvidenceKind.DRIVE_RECORDING)
                .findFirst()
                .orElseThrow()
                .reading();
    }

    @ParameterizedTest
    @EnumSource
    void theSameSeedGivesTheSameCaseAndAnotherSeedAnother(Scenario scenario) {
        Labelled one = model.make(scenario.id, 11);
        Labelled again = model.make(scenario.id, 11);
        Labelled other = model.make(scenario.id, 12);
        assertThat(drive(one).timeS()).isEqualTo(drive(again).timeS());
        assertThat(drive(one).channel(Channel.MEASURED_V))
                .isEqualTo(drive(again).channel(Channel.MEASURED_V))
                .isNotEqualTo(drive(other).channel(Channel.MEASURED_V));
        assertThat(one.input().facts()).isEqualTo(again.input().facts());
    }

    @ParameterizedTest
    @EnumSource
    void recordingsAreWhatADoorWouldAccept(Scenario scenario) {
        for (long seed = 1; seed <= 3; seed++) {
            Labelled made = model.make(scenario.id, seed);
            made.input().evidence().forEach(item -> {
                if (item.reading() instanceof Recording recording) {
                    double[] at = recording.timeS();
                    assertThat(at.length).isGreaterThan(20);
                    for (int i = 1; i < at.length; i++) {
                        assertThat(at[i]).isGreaterThan(at[i - 1]);
                    }
                    for (float v : recording.channel(Channel.MEASURED_V)) {
                        assertThat(v).isBetween(-2f, 24f);
                    }
                    assertThat(made.regimes().get(item.id())).hasSize(at.length);
                }
            });
            Recording drive = drive(made);
            double hertz = drive.rows() / drive.durationS();
            assertThat(hertz).isBetween(1.7, 21.0);
            assertThat(drive.durationS()).isBetween(500.0, 5400.0);
        }
    }

    @Test
    void aSensorThatReadsHighShowsItsOffsetAgainstTheClamp() {
        int compared = 0;
        for (long seed = 1; seed <= 20; seed++) {
            Labelled made = model.make("sensor-high", seed);
            Recording drive = drive(made);
            if (!drive.has(Channel.MEASURED_A)) {
                continue;
            }
            float[] clamp = drive.channel(Channel.MEASURED_A);
            float[] said = drive.channel(Channel.REPORTED_A);
            double[] gap = java.util.stream.IntStream.range(0, clamp.length)
                    .filter(i -> !Float.isNaN(said[i]))
                    .mapToDouble(i -> said[i] - clamp[i])
                    .sorted()
                    .toArray();
            assertThat(gap[gap.length / 2]).as("seed %d", seed).isCloseTo(made.sensorOffsetA(), within(0.4));
            compared++;
        }
        assertThat(compared).isPositive();
    }

    @Test
    void aDeadSourceNeverChargesAndAnOverchargingOneDoes() {
        for (long seed = 1; seed <= 6; seed++) {
            assertThat(labels(model.make("source-dead", seed), Regime.CHARGING)).isZero();
            assertThat(labels(model.make("source-over", seed), Regime.CHARGING)).isPositive();
            float[] over = drive(model.make("source-over", seed))
                    .channel(Channel.MEASURED_V)
                    .clone();
            Arrays.sort(over);
            assertThat(over[over.length / 2]).isGreaterThan(15.0f);
        }
    }

    private static long labels(Labelled made, Regime regime) {
        return made.regimes().values().stream()
                .flatMap(Arrays::stream)
                .filter(r -> r == regime)
                .count();
    }

    @Test
    void aBatteryWithAFaultFailsAfterRechargeAndASoundOnePasses() {
        for (long seed = 1; seed <= 12; seed++) {
            assertThat(share(model.make("worn", seed))).as("worn %d", seed).isLessThan(0.8);
            assertThat(share(model.make("defect", seed))).as("defect %d", seed).isLessThan(0.62);
            for (String sound : new String[] {"healthy-managed", "sensor-high", "drain", "wiring"}) {
                assertThat(share(model.make(sound, seed)))
                        .as("%s %d", sound, seed)
                        .isGreaterThan(0.85);
            }
        }
    }

    private static double share(Labelled made) {
        Double rated = made.input().facts().battery().ratedCrankingA();
        return made.input().evidence().stream()
                .map(e -> e.reading())
                .filter(r -> r instanceof BatteryTest t && t.chargedBefore())
                .mapToDouble(r -> ((BatteryTest) r).crankingCurrentA() / rated)
                .findFirst()
                .orElseThrow();
    }

    @Test
    void aSoundConventionalCarChargesInTheUsualWindow() {
        int tests = 0;
        for (long seed = 1; seed <= 12; seed++) {
            for (var item : model.make("healthy-conventional", seed).input().evidence()) {
                Reading reading = item.reading();
                if (reading instanceof ChargingTest test) {
                    assertThat(test.idleVoltageV()).as("seed %d", seed).isBetween(13.7, 15.0);
                    tests++;
                }
            }
        }
        assertThat(tests).isPositive();
    }
}
