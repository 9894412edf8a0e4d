package org.voltdocket.diagnosis.regime;

import java.util.Arrays;
import java.util.List;
import org.voltdocket.diagnosis.Channel;
import org.voltdocket.diagnosis.signal.Grid;
import org.voltdocket.diagnosis.signal.Robust;

/**
 * What level of voltage, battery current and road speed tell of a running engine at each step, as a log-likelihood ratio of
 * running against parked, nats. Neighbouring steps tell nearly the same, so that a step counts little and minutes count.
 */
final class RunningEvidence {

    /** A vehicle that stands, nats per second: halts in traffic last half a minute (ours). */
    private static final double STANDS = -0.03;

    private static final double STANDING_KMH = 2;
    /** A current into the battery, A, and what it tells, nats per second: only a source gives one (ours). */
    private static final double INTO_A = 1.5;

    private static final double INTO = 0.5;
    /** A vehicle asleep, A, and what such a current tells, nats per second (ours). */
    private static final double ASLEEP_A = 0.35;

    private static final double ASLEEP = -0.04;
    /** Where the source was seen at charging voltage, a level of rest, nats per second (ours). */
    private static final double RESTS = -0.03;

    private static final double REST_BELOW_V = 12.95;
    private static final double CHARGING_V = 13.3;
    /** Least share of the time at charging voltage that shows a source (ours). */
    private static final double CHARGING_SHARE = 0.1;
    /** Nothing tells more in a step, nats. */
    private static final double MOST = 1;

    /** A battery that was charged rests above its rest voltage before; this far below it, V, it supplies a load (ours). */
    private static final double LOADED_V = 0.08;
    /** Surface charge keeps a parked battery above this for some minutes only, V, and what it tells, nats per second (ours). */
    private static final double SURFACE_V = 13.05;

    private static final double SURFACE = 0.005;
    /** The rest before is taken from the beginning of the recording, s: a start may have been missed. */
    private static final double FIRST_S = 60;
    /** Fewest steps of a rest before the first start. */
    private static final int FEWEST = 5;

    private RunningEvidence() {}

    /** Rest voltage before the first start, V; as if very low where it is not known. */
    private static double restBefore(Grid grid, double[] level, List<EngineStart> starts) {
        int first = starts.isEmpty() ? 0 : grid.stepOf(starts.get(0).fromS()) - 1;
        int end = Math.min(first, FEWEST + (int) (FIRST_S / grid.stepS()));
        double rest = end < FEWEST ? Double.NaN : Robust.median(Arrays.copyOf(level, end));
        return rest < REST_BELOW_V ? rest : Double.NEGATIVE_INFINITY;
    }

    /**
     * @param level voltage by step, V
     * @param starts the starts found
     */
    static double[] of(Grid grid, double[] level, List<EngineStart> starts) {
        double[] out = new double[grid.steps()];
        double[] speed = grid.held(Channel.SPEED, 0);
        double[] amperes = grid.mean(Channel.MEASURED_A);
        double rest = restBefore(grid, level, starts);
        boolean charged = Robust.quantile(level, 1 - CHARGING_SHARE) > CHARGING_V;
        for (int k = 0; k < out.length; k++) {
            double nats = 0;
            if (speed != null && speed[k] <= STANDING_KMH) {
                nats += STANDS;
            }
            if (amperes != null && !Double.isNaN(amperes[k])) {
                nats += amperes[k] > INTO_A ? INTO : Math.abs(amperes[k]) < ASLEEP_A ? ASLEEP : 0;
            }
            if (charged && level[k] < REST_BELOW_V) {
                nats += level[k] < rest - LOADED_V ? -RESTS : level[k] < rest ? 0 : RESTS;
            }
            if (level[k] > SURFACE_V && level[k] < CHARGING_V) {
                nats += SURFACE;
            }
            out[k] = Math.max(-MOST, Math.min(MOST, nats * grid.stepS()));
        }
        return out;
    }
}
