package org.voltdocket.diagnosis.quantity.drive;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.voltdocket.diagnosis.Channel;
import org.voltdocket.diagnosis.Made;
import org.voltdocket.diagnosis.quantity.DriveSignals;
import org.voltdocket.kernel.Interval;

/** What a rest has still to go, against published rests and on rests that were made. */
class RelaxationTest {

    /** After a charge at 14.95 V, 100 Ah (vmehra813/lead_acid_battery_data): the first hour tells where 160 min will be. */
    @Test
    void thePublishedRestAfterACharge() {
        List<String[]> rows = org.voltdocket.outside.Reference.rows("rest-after-charge.csv");
        double[] s =
                rows.stream().mapToDouble(r -> 60 * Double.parseDouble(r[0])).toArray();
        double[] v = rows.stream().mapToDouble(r -> Double.parseDouble(r[1])).toArray();
        Interval rested = Relaxation.rested(java.util.Arrays.copyOf(s, 3), java.util.Arrays.copyOf(v, 3));
        assertThat(rested.low()).isLessThan(v[3]);
        assertThat(rested.high()).isGreaterThan(v[3]);
        assertThat(rested.value()).isCloseTo(v[3], within(0.15));
        assertThat((v[0] - v[1])).isCloseTo(Relaxation.PER_DECADE_V, within(0.06));
    }

    /** The same data after a discharge to 10.45 V: 11.025, 11.284, 11.476, 11.546 V after 1, 10, 60, 280 min. */
    @Test
    void thePublishedRestAfterADischarge() {
        Interval rested = Relaxation.rested(new double[] {60, 600, 3600}, new double[] {11.025, 11.284, 11.476});
        assertThat(rested.low()).isLessThan(11.546);
        assertThat(rested.high()).isGreaterThan(11.546);
        assertThat(rested.value()).isCloseTo(11.546, within(0.15));
    }

    /** A drive whose engine stops at 300 s, then {@code rest} of the seconds since. */
    private static DriveSignals driven(java.util.function.DoubleUnaryOperator rest) {
        Made made = Made.at(4, 1500)
                .with(
                        Channel.MEASURED_V,
                        t -> t < 20 ? 12.4 : t < 21.5 ? 9.8 : t < 300 ? 14.2 : rest.applyAsDouble(t - 300))
                .with(Channel.ENGINE_RPM, t -> t < 21.5 || t > 300 ? 0 : 1500)
                .with(Channel.MEASURED_A, t -> t < 20 || t > 310 ? -0.03 : 12);
        return new DriveSignals(made.recording(), 20);
    }

    @Test
    void aRestAfterADriveIsCarriedOnToADay() {
        Optional<Relaxation.Rested> rested =
                Relaxation.after(driven(s -> 13.1 - 0.18 * StrictMath.log10(Math.max(s, 1))));
        // after 1200 s 1.86 decades are left of a day: 0 to 0.37 V of the usual 0.2 V a decade
        assertThat(rested).isPresent();
        assertThat(rested.get().left().high())
                .isCloseTo(Relaxation.PER_DECADE_V * StrictMath.log10(86_400 / 1200.0), within(0.03));
        assertThat(rested.get().voltage().low()).isLessThan(13.1 - 0.18 * StrictMath.log10(86_400));
        assertThat(rested.get().voltage().high()).isGreaterThan(13.1 - 0.18 * StrictMath.log10(1200));
    }

    @Test
    void aVoltageThatStaysIsRested() {
        Optional<Relaxation.Rested> rested = Relaxation.after(driven(s -> 12.62));
        assertThat(rested).isPresent();
        assertThat(rested.get().voltage().value()).isCloseTo(12.62, within(0.01));
        assertThat(Math.abs(rested.get().left().value())).isLessThan(0.01);
    }

    @Test
    void aDriveThatEndsRunningTellsNoRest() {
        Made made = Made.at(2, 400).with(Channel.MEASURED_V, t -> t < 20 ? 12.4 : t < 22 ? 9.8 : 14.2);
        assertThat(Relaxation.after(new DriveSignals(made.recording(), 20))).isEmpty();
    }

    private static final double FULL_V = 12.8;

    /** Before a start at 300 s, a rest by the seconds since the recording began; asleep by a clamp, or with none. */
    private static Relaxation.Rested before(
            java.util.function.DoubleUnaryOperator rest, boolean clamp, double highest) {
        Made made = Made.at(4, 900)
                .with(Channel.MEASURED_V, t -> t < 300 ? rest.applyAsDouble(t) : t < 301 ? 9.8 : 14.2)
                .with(Channel.ENGINE_RPM, t -> t < 301 ? 0 : 1500);
        Made all = clamp ? made.with(Channel.MEASURED_A, t -> t < 300 ? -0.03 : 12) : made;
        DriveSignals drive = new DriveSignals(all.recording(), 20);
        return Relaxation.before(drive, Optional.of(Interval.ofStandardError(highest, 0.03)), 299, FULL_V)
                .orElseThrow();
    }

    /** Switched off ten minutes ago it falls on: at most 0.2 V for each decade until a day, which the rest lies lower. */
    @Test
    void aVoltageThatStillSinksRestsLower() {
        Relaxation.Rested rested = before(t -> 12.55 - 0.2 * StrictMath.log10((t + 600) / 600), true, 12.54);
        double most = 0.2 * StrictMath.log10(86_400 / 750.0);
        assertThat(rested.left().high()).isCloseTo(most, within(0.03));
        assertThat(rested.left().low()).isZero();
        assertThat(rested.voltage().value()).isCloseTo(12.54 - most / 2, within(0.02));
        assertThat(rested.hidden()).isZero();
    }

    /** After a load it rises on: it rests higher than it was seen. */
    @Test
    void aVoltageThatStillRisesRestsHigher() {
        Relaxation.Rested rested = before(t -> 12.1 + 0.2 * StrictMath.log10((t + 600) / 600), true, 12.12);
        assertThat(rested.left().low()).isCloseTo(-0.2 * StrictMath.log10(86_400 / 750.0), within(0.03));
        assertThat(rested.left().high()).isZero();
        assertThat(rested.voltage().value()).isGreaterThan(12.2);
    }

    /** One that stays is as it was seen, and hides the less the longer it stays; without a clamp a load may hold it down. */
    @Test
    void aVoltageThatStaysHidesLittleAndOneUnderALoadTheUsual() {
        Relaxation.Rested calm = before(t -> 12.5, true, 12.5);
        assertThat(calm.left()).isEqualTo(Interval.exact(0));
        assertThat(calm.voltage().value()).isEqualTo(12.5);
        assertThat(calm.hidden()).isLessThan(0.02);
        Relaxation.Rested loaded = before(t -> 12.55 - 0.2 * StrictMath.log10((t + 600) / 600), false, 12.54);
        assertThat(loaded.left()).isEqualTo(Interval.exact(0));
        assertThat(loaded.hidden()).isEqualTo(0.08);
        Relaxation.Rested above = before(t -> 13.0 - 0.2 * StrictMath.log10((t + 600) / 600), false, 12.99);
        assertThat(above.left().high())
                .as("no load holds it above a full battery")
                .isGreaterThan(0.3);
    }

    /** After a drive the loads must be off: a clamp that shows an ampere or more shows no rest. */
    @Test
    void aRestUnderLoadsIsNone() {
        Made base = Made.at(4, 1500)
                .with(Channel.MEASURED_V, t -> t < 20 ? 12.4 : t < 21.5 ? 9.8 : t < 300 ? 14.2 : 12.5)
                .with(Channel.ENGINE_RPM, t -> t < 21.5 || t > 300 ? 0 : 1500);
        for (double amperes : new double[] {-0.9, -1.1, 1.1, -4}) {
            Made loaded = base.with(Channel.MEASURED_A, t -> t < 20 ? -0.03 : t > 300 ? amperes : 12);
            assertThat(Relaxation.after(new DriveSignals(loaded.recording(), 20))
                            .isPresent())
                    .as("%s A", amperes)
                    .isEqualTo(Math.abs(amperes) < 1);
        }
    }
}
