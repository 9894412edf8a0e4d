package org.voltdocket.diagnosis;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.voltdocket.diagnosis.assess.Diagnosis;
import org.voltdocket.diagnosis.rulebook.Editions;

/** A battery of five cells: about 2 V less at rest, before and after a drive that charges it. */
class LostCellTest {

    private static final OffsetDateTime AT = OffsetDateTime.parse("2026-03-04T08:40:00+01:00");
    private static final Facts FACTS = new Facts(
            new Facts.BatteryFacts(Chemistry.EFB, 70.0, 560.0, CrankingStandard.EN, null, null, null, null),
            new Facts.VehicleFacts(ChargingControl.MANAGED, true, Chemistry.EFB, 70.0, null),
            null,
            null);

    private static Assessment assess(Evidence... evidence) {
        return Diagnosis.assess(new CaseInput(FACTS, History.NONE, List.of(evidence)), Editions.of("2026.1"));
    }

    private static Evidence test(double volts, OffsetDateTime at) {
        return Made.evidence(
                "test" + at, new BatteryTest(at, volts, 18, 113.0, CrankingStandard.EN, 21.0, 6.0, null, null));
    }

    /** Rest at {@code before}, a start, half an hour at charging voltage, rest at {@code after}; the sensor agrees. */
    private static Evidence drive(double before, double after) {
        double[] load = Made.steps(new java.util.Random(3), 2200, -0.15, 0.1, 5, 40);
        Recording made = Made.at(10, 2100)
                .with(
                        Channel.MEASURED_V,
                        t -> t < 60
                                ? before
                                : t < 61
                                        ? before - 4
                                        : t < 1900 ? 14.0 + load[(int) t] : after + 0.3 * Math.exp(-(t - 1900) / 40))
                .with(Channel.ENGINE_RPM, 10, t -> t < 61 || t >= 1900 ? 0 : 1800)
                .with(Channel.REPORTED_SOC, 10, t -> 70)
                .recording();
        Map<Channel, float[]> channels = new java.util.EnumMap<>(Channel.class);
        for (Channel channel : Channel.values()) {
            if (made.has(channel)) {
                channels.put(channel, made.channel(channel));
            }
        }
        return Made.evidence(
                "drive" + before,
                new Recording(EvidenceKind.DRIVE_RECORDING, AT.plusHours(1), made.timeS(), channels, List.of()));
    }

    @Test
    void aDeficitThatStaysAfterADriveIsADefect() {
        Assessment said = assess(test(10.5, AT), drive(10.5, 10.6));
        assertThat(said.causes().get(0).cause()).isEqualTo(Cause.BATTERY_DEFECT);
        assertThat(said.batteryVerdict()).isEqualTo(BatteryVerdict.FAILED);
        assertThat(said.batteryReason()).isEqualTo(BatteryReason.DEFECT);
        assertThat(said.leaning()).isEqualTo(Leaning.BATTERY_SIDE);
    }

    @Test
    void aSecondTestOfTheSameDayShowsItToo() {
        Assessment said = assess(test(10.5, AT), drive(10.5, 12.0), test(10.6, AT.plusHours(9)));
        assertThat(said.causes().get(0).cause()).isEqualTo(Cause.BATTERY_DEFECT);
        assertThat(said.leaning()).isEqualTo(Leaning.BATTERY_SIDE);
    }

    /** On arrival alone it may be a deep discharge: nobody is named, and the battery is charged and tested. */
    @Test
    void onArrivalAloneTheCaseStaysOpen() {
        Assessment said = assess(test(10.5, AT));
        assertThat(said.leaning()).isEqualTo(Leaning.OPEN);
        assertThat(said.batteryReason()).isEqualTo(BatteryReason.TOO_DISCHARGED);
        assertThat(said.findings()).anyMatch(f -> f.rule().equals("arrival-voltage") && f.result() == Result.OUTSIDE);
        assertThat(said.findings()).noneMatch(f -> f.rule().equals("arrival-charge"));
    }

    /** A deep discharge is lifted into the table by half an hour of charge. */
    @ParameterizedTest
    @ValueSource(doubles = {12.0, 12.3, 12.6})
    void aDeepDischargeThatTakesChargeIsNoDefect(double after) {
        Assessment said = assess(test(10.9, AT), drive(10.9, after));
        assertThat(said.batteryVerdict()).isEqualTo(BatteryVerdict.NOT_JUDGED);
        assertThat(said.leaning()).isEqualTo(Leaning.OPEN);
    }

    /** Out of range is not an empty battery: there is no estimate of its charge, and no interval without width. */
    @Test
    void belowTheTableThereIsNoStateOfCharge() {
        assertThat(assess(drive(10.5, 10.6)).estimates()).doesNotContainKey("socStartPct");
        Assessment empty = assess(drive(11.75, 12.2));
        Assessment.Estimate soc = empty.estimates().get("socStartPct");
        assertThat(soc.high()).isGreaterThan(soc.low());
        List<Assessment.Estimate> all = new ArrayList<>(empty.estimates().values());
        assertThat(all).allMatch(e -> e.high() > e.low());
    }
}
