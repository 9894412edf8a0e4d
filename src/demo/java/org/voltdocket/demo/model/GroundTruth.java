package org.voltdocket.demo.model;

import java.util.List;
import org.voltdocket.diagnosis.Regime;

/**
 * The true values of a run.
 *
 * @param sensorOffsetA error of the vehicle's current sensor, A
 * @param chargeStart charge at the start, 0 to 1 of what the battery can hold
 * @param chargeEnd at the end
 * @param netAh charge that went into the battery, Ah
 * @param cableOhm between charging source and posts, Ω
 * @param ohmic the battery's ohmic resistance at the start, Ω
 * @param spans what the battery and the vehicle were doing, without gap
 */
public record GroundTruth(
        double sensorOffsetA,
        double chargeStart,
        double chargeEnd,
        double netAh,
        double cableOhm,
        double ohmic,
        List<Span> spans) {

    /** From and to, s. */
    public record Span(double fromS, double toS, Regime regime) {}

    public GroundTruth {
        spans = List.copyOf(spans);
    }
}
