package org.voltdocket.secondmodel;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;

/** A short run of the evaluation; the long one is the command {@link Evaluation}. */
class EvaluationTest {

    private static Tally tally;

    @BeforeAll
    static void judge() {
        SecondModel model = new SecondModel();
        tally = new Evaluation(model, Evaluation.rulebook(), false, true)
                .run(model.scenarios(), 1001, Thresholds.SEEDS);
    }

    @Test
    void noCaseFails() {
        assertThat(tally.failures).isEmpty();
    }

    @Test
    void theFirstCauseIsMostlyRight() {
        assertThat(tally.accuracy()).isGreaterThanOrEqualTo(Thresholds.FIRST_CAUSE_RIGHT);
        assertThat(tally.brier()).isLessThanOrEqualTo(Thresholds.BRIER_AT_MOST);
    }

    @Test
    void nobodyIsBlamedForAHealthyCar() {
        assertThat(tally.healthyBlamed()).isLessThanOrEqualTo(Thresholds.HEALTHY_BLAMED_AT_MOST);
    }

    @Test
    void faultsOfTheVehicleLeanToTheVehicle() {
        assertThat(tally.vehicleFound()).isGreaterThanOrEqualTo(Thresholds.VEHICLE_FAULTS_FOUND);
    }

    @Test
    void regimesAreNamedRightly() {
        assertThat(tally.regimesRight(false)).isGreaterThanOrEqualTo(Thresholds.REGIMES_RIGHT);
        assertThat(tally.regimesRight(true)).isGreaterThanOrEqualTo(Thresholds.REGIMES_RIGHT_FROM_VOLTAGE);
    }

    @Test
    void theIntervalOfTheSensorOffsetCoversTheTruth() {
        assertThat(tally.withOffset()).isNotEmpty();
        assertThat(tally.offsetCoverage()).isGreaterThanOrEqualTo(Thresholds.OFFSET_COVERED);
    }
}
