package org.voltdocket.returned.lot;

import static org.assertj.core.api.Assertions.assertThat;
import static org.voltdocket.returned.BenchOutcome.DAMAGED_BY_USE;
import static org.voltdocket.returned.BenchOutcome.DEFECT_CONFIRMED;
import static org.voltdocket.returned.BenchOutcome.NOT_TESTED;
import static org.voltdocket.returned.BenchOutcome.NO_FAULT_FOUND;
import static org.voltdocket.returned.BenchOutcome.WEAR_CONFIRMED;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.voltdocket.returned.BenchOutcome;
import org.voltdocket.returned.sampling.SamplingPlan;

/** Which drawn batteries form the sample, and when the sample decides the lot. */
class LotSampleTest {

    private static final SamplingPlan THREE_ACCEPT_ONE = new SamplingPlan('B', 3, 1);

    private static List<Optional<BenchOutcome>> outcomes(BenchOutcome... outcomes) {
        return Arrays.stream(outcomes).map(Optional::ofNullable).toList();
    }

    private static Lot.Progress progress(Lot.Scope scope, BenchOutcome... outcomes) {
        return LotSample.progress(scope, THREE_ACCEPT_ONE, outcomes(outcomes));
    }

    @Test
    void theFirstBatteriesInTheOrderDrawnFormTheSample() {
        assertThat(LotSample.members(3, outcomes(null, null, null, null, null)))
                .containsExactly(true, true, true, false, false);
    }

    @Test
    void theNextBatteryReplacesOneThatCouldNotBeTested() {
        assertThat(LotSample.members(3, outcomes(null, NOT_TESTED, null, null, null)))
                .containsExactly(true, false, true, true, false);
        assertThat(progress(Lot.Scope.BATCH, null, NOT_TESTED, null, null, null).replaced())
                .isEqualTo(1);
    }

    @Test
    void aLotIsOpenUntilItsSampleIsTested() {
        assertThat(progress(Lot.Scope.BATCH, DEFECT_CONFIRMED, WEAR_CONFIRMED, null, null))
                .isEqualTo(new Lot.Progress(2, 1, 0, Lot.Disposition.OPEN));
        assertThat(progress(Lot.Scope.BATCH, DEFECT_CONFIRMED, WEAR_CONFIRMED, NO_FAULT_FOUND, null))
                .isEqualTo(new Lot.Progress(3, 1, 0, Lot.Disposition.ACCEPTED));
    }

    @Test
    void tooManyNonconformingBatteriesDecideEarly() {
        assertThat(progress(Lot.Scope.BATCH, DEFECT_CONFIRMED, DEFECT_CONFIRMED, null, null))
                .isEqualTo(new Lot.Progress(2, 2, 0, Lot.Disposition.NOT_ACCEPTED));
    }

    @Test
    void theScopeDecidesWhatIsNonconforming() {
        assertThat(progress(Lot.Scope.WORKSHOP, NO_FAULT_FOUND, DAMAGED_BY_USE, DEFECT_CONFIRMED)
                        .nonconforming())
                .isEqualTo(2);
        assertThat(progress(Lot.Scope.BATCH, NO_FAULT_FOUND, DAMAGED_BY_USE, DEFECT_CONFIRMED)
                        .nonconforming())
                .isEqualTo(1);
    }

    @Test
    void outcomesBeyondTheSampleDoNotCount() {
        assertThat(progress(Lot.Scope.BATCH, null, null, null, DEFECT_CONFIRMED, DEFECT_CONFIRMED))
                .isEqualTo(new Lot.Progress(0, 0, 0, Lot.Disposition.OPEN));
    }

    @Test
    void aLotOfWhichNothingCanBeTestedStaysOpen() {
        assertThat(progress(Lot.Scope.BATCH, NOT_TESTED, NOT_TESTED).disposition())
                .isEqualTo(Lot.Disposition.OPEN);
    }
}
