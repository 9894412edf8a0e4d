package org.voltdocket.secondmodel;

import java.util.List;
import java.util.Map;
import org.voltdocket.diagnosis.CaseInput;
import org.voltdocket.diagnosis.Cause;
import org.voltdocket.diagnosis.Leaning;
import org.voltdocket.diagnosis.Regime;

/**
 * A case with its truth.
 *
 * @param leanings leanings that are right
 * @param sensorOffsetA what the vehicle's sensor reads above the truth, A
 * @param socStart true state of charge at the start of the drive, 0 to 1, of the capacity the battery has
 * @param socEnd the same at its end
 * @param regimes by evidence id, one label a row of the recording; null where a row is too near a border to be called
 */
public record Labelled(
        String scenario,
        long seed,
        CaseInput input,
        Cause cause,
        List<Leaning> leanings,
        double sensorOffsetA,
        double socStart,
        double socEnd,
        Map<String, Regime[]> regimes) {}
