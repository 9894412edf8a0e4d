package org.voltdocket.returned.lot;

import java.util.List;
import java.util.Optional;
import org.voltdocket.returned.BenchOutcome;
import org.voltdocket.returned.sampling.SamplingPlan;

/** Selects the sample from the order drawn, and decides the lot. */
final class LotSample {

    private LotSample() {}

    /**
     * Whether each battery, in the order drawn, is in the sample. The next battery replaces one that could not be
     * tested.
     *
     * @param outcomes in the order drawn; empty where there is none yet
     */
    static List<Boolean> members(int sampleSize, List<Optional<BenchOutcome>> outcomes) {
        Boolean[] in = new Boolean[outcomes.size()];
        int taken = 0;
        for (int i = 0; i < in.length; i++) {
            boolean testable =
                    outcomes.get(i).filter(BenchOutcome.NOT_TESTED::equals).isEmpty();
            in[i] = testable && taken < sampleSize;
            taken += in[i] ? 1 : 0;
        }
        return List.of(in);
    }

    /** A lot is not accepted as soon as too many are nonconforming, and accepted once its whole sample is tested. */
    static Lot.Progress progress(Lot.Scope scope, SamplingPlan plan, List<Optional<BenchOutcome>> outcomes) {
        List<Boolean> in = members(plan.sampleSize(), outcomes);
        int tested = 0;
        int against = 0;
        int replaced = 0;
        int members = 0;
        for (int i = 0; i < outcomes.size(); i++) {
            Optional<BenchOutcome> outcome = outcomes.get(i);
            if (in.get(i)) {
                members++;
                tested += outcome.isPresent() ? 1 : 0;
                against += outcome.filter(scope::counts).isPresent() ? 1 : 0;
            } else if (outcome.filter(BenchOutcome.NOT_TESTED::equals).isPresent() && members < plan.sampleSize()) {
                replaced++;
            }
        }
        Lot.Disposition disposition = against > plan.acceptance()
                ? Lot.Disposition.NOT_ACCEPTED
                : tested == members && members > 0 ? Lot.Disposition.ACCEPTED : Lot.Disposition.OPEN;
        return new Lot.Progress(tested, against, replaced, disposition);
    }
}
