package org.voltdocket.diagnosis.quantity.drive;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.voltdocket.diagnosis.Channel;
import org.voltdocket.diagnosis.Made;
import org.voltdocket.diagnosis.Regime;
import org.voltdocket.diagnosis.quantity.DriveSignals;
import org.voltdocket.diagnosis.quantity.MeasurementContext;
import org.voltdocket.kernel.Interval;

/** Which way the current flows, just on either side of each limit. */
class CurrentFlowTest {

    private static final int SECOND = 600;

    private static CurrentFlow flow(Made made, double capacityAh, Interval offset, double restV) {
        MeasurementContext reference = Driven.reference(capacityAh, 20);
        return CurrentFlow.of(new DriveSignals(made.recording(), 20), reference, Optional.ofNullable(offset), restV);
    }

    /** About none is 1.25 A either way for 70 Ah, and grows with the battery. */
    @ParameterizedTest
    @CsvSource({
        "70, 1.3, CHARGING",
        "70, 1.2, HOLDING",
        "70, -1.2, HOLDING",
        "70, -1.3, DISCHARGING",
        "140, 2.4, HOLDING",
        "140, 2.6, CHARGING",
        "35, -0.7, DISCHARGING"
    })
    void aClampTellsItByTheCurrent(double capacityAh, double amperes, Regime expected) {
        Made made = Driven.clamped(12.5, t -> 13, t -> amperes).with(Channel.REPORTED_A, t -> -20);
        CurrentFlow found = flow(made, capacityAh, Interval.exact(0), 12.5);
        assertThat(found.regimes()[SECOND]).isEqualTo(expected);
        assertThat(found.current()[SECOND]).isCloseTo(amperes, within(1e-6));
        assertThat(found.currentSe()).isEqualTo(0.2);
    }

    /** The offset is what the sensor reads too high, so it comes off; known no better than 2 A it makes nothing true. */
    @Test
    void theReportedCurrentCountsLessAKnownOffset() {
        Made made = Driven.volts(12.5, t -> 14).with(Channel.REPORTED_A, t -> 3);
        CurrentFlow known = flow(made, 70, Interval.ofStandardError(4.5, 1.9), 12.5);
        assertThat(known.current()[SECOND]).isCloseTo(-1.5, within(1e-6));
        assertThat(known.currentSe()).isCloseTo(1.9, within(1e-9));
        assertThat(known.regimes()[SECOND]).isEqualTo(Regime.DISCHARGING);
        CurrentFlow vague = flow(made, 70, Interval.ofStandardError(4.5, 2.1), 12.5);
        assertThat(vague.current()).isNull();
        assertThat(vague.regimes()[SECOND]).as("by the voltage").isEqualTo(Regime.CHARGING);
        assertThat(flow(made, 70, null, 12.5).current()).isNull();
    }

    /** By voltage alone: charged from 0.40 V above the rest, supplying from 0.03 V below it. */
    @ParameterizedTest
    @CsvSource({"12.92, CHARGING", "12.88, HOLDING", "12.48, HOLDING", "12.46, DISCHARGING"})
    void withoutACurrentTheRestVoltageTellsIt(double volts, Regime expected) {
        CurrentFlow found = flow(Driven.volts(12.5, t -> volts), 70, null, 12.5);
        assertThat(found.regimes()[SECOND]).isEqualTo(expected);
    }

    /** Where no rest was seen, an AGM battery at three quarters stands for it: 12.6 V, and a little less in the cold. */
    @ParameterizedTest
    @CsvSource({"13.05, CHARGING", "12.95, HOLDING", "12.52, DISCHARGING"})
    void withoutARestThreeQuartersOfTheChargeStandForIt(double volts, Regime expected) {
        CurrentFlow found = flow(Driven.volts(12.5, t -> volts), 70, null, Double.NaN);
        assertThat(found.regimes()[SECOND]).isEqualTo(expected);
    }

    @Test
    void whatIsNotRecordedIsNotKnown() {
        Made gap = Driven.volts(12.5, t -> t > 500 && t < 700 ? Double.NaN : 14);
        assertThat(flow(gap, 70, null, 12.5).regimes()[SECOND]).isEqualTo(Regime.UNKNOWN);
    }
}
