package org.voltdocket.worlds;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.voltdocket.diagnosis.Cause;
import org.voltdocket.diagnosis.Leaning;
import org.voltdocket.worlds.Assessor.Battery;
import org.voltdocket.worlds.WorldEvaluation.Outcome;
import org.voltdocket.worlds.WorldTally.Count;

/** The evaluation's own counting, on cases written by hand. */
class WorldTallyTest {

    private static Outcome said(Fault fault, Cause first, double stated, Battery battery, Leaning leaning) {
        Cause second = first == Cause.NONE ? Cause.DUTY : Cause.NONE;
        return EvaluatedCases.of(fault, Map.of(first, stated, second, 1 - stated), battery, leaning);
    }

    @Test
    void sharesAreThoseCountedByHand() {
        WorldTally tally = new WorldTally(List.of(
                said(Fault.HEALTHY_OLD, Cause.NONE, 0.96, Battery.SOUND, Leaning.NO_FAULT_SEEN),
                said(Fault.HEALTHY_COLD, Cause.WIRING, 0.97, Battery.FAILED, Leaning.VEHICLE_SIDE),
                said(Fault.WORN, Cause.BATTERY_WORN, 0.7, Battery.FAILED, Leaning.BATTERY_SIDE),
                said(Fault.CELL_LOST, Cause.DUTY, 0.6, Battery.SOUND, Leaning.USAGE_SIDE),
                said(Fault.MAIN_CABLE, Cause.WIRING, 0.9, Battery.NOT_JUDGED, Leaning.VEHICLE_SIDE),
                said(Fault.DRAIN, Cause.NONE, 0.55, Battery.SOUND, Leaning.OPEN)));
        assertThat(tally.firstCause()).isEqualTo(new Count(3, 6));
        assertThat(tally.firmStatements()).isEqualTo(new Count(1, 2));
        assertThat(tally.healthyBlamed()).isEqualTo(new Count(1, 2));
        assertThat(tally.verdictRight()).isEqualTo(new Count(3, 5));
        assertThat(tally.failedCalledSound()).isEqualTo(new Count(1, 2));
        assertThat(tally.goodCalledFailed()).isEqualTo(new Count(1, 4));
        assertThat(tally.unjudgedVehicleSide()).isEqualTo(new Count(1, 1));
        assertThat(tally.vehicleFaultsVehicleSide()).isEqualTo(new Count(1, 2));
        assertThat(tally.leaningsRight()).isEqualTo(new Count(3, 5));
        assertThat(tally.open()).isEqualTo(new Count(1, 6));
        assertThat(tally.coverage().get("sensorOffsetA")).isEqualTo(new Count(6, 6));
    }

    @Test
    void calibrationComparesWhatIsStatedWithWhatIsRight() {
        WorldTally tally = new WorldTally(List.of(
                said(Fault.WORN, Cause.BATTERY_WORN, 0.62, Battery.FAILED, Leaning.BATTERY_SIDE),
                said(Fault.DRAIN, Cause.WIRING, 0.66, Battery.SOUND, Leaning.OPEN)));
        double[] tenth = tally.calibration().get(6);
        assertThat(tenth[0]).isEqualTo(2);
        assertThat(tenth[1] / 2).isCloseTo(0.64, within(1e-9));
        assertThat(tenth[2] / 2).isCloseTo(0.5, within(1e-9));
    }
}
