package org.voltdocket.diagnosis.quantity.sensor;

import java.util.Optional;
import org.voltdocket.diagnosis.Facts;
import org.voltdocket.diagnosis.Recording;
import org.voltdocket.diagnosis.quantity.DriveSignals;
import org.voltdocket.diagnosis.quantity.MeasurementContext;
import org.voltdocket.diagnosis.quantity.RestVoltage;
import org.voltdocket.kernel.Interval;

/**
 * Cramér–Rao bound on the width of the 95 % interval of the sensor offset found by {@link CircuitFit}, from its Fisher
 * information at the parameters it finds when started at the true offset.
 *
 * @param dataA from the measured voltage alone, A
 * @param fitA with the model error of the circuit, A
 * @param pulledA with the model error and with the prior counted as information (van Trees), A
 */
public record OffsetBound(double dataA, double fitA, double pulledA) {

    private static final double ROOM_C = 20;

    /**
     * @param offsetA what the sensor truly reads too high, A
     * @return empty where the fit has nothing to go by
     */
    public static Optional<OffsetBound> of(Recording recording, Facts facts, double offsetA) {
        MeasurementContext reference = new MeasurementContext(facts, ROOM_C);
        double slope = RestVoltage.slope(reference.chemistry(), 60);
        double own = OffsetWithoutClamp.MODEL_A * reference.size();
        return OffsetFitData.of(new DriveSignals(recording, ROOM_C), slope, reference.capacityAh())
                .map(blocks -> new CircuitFit(blocks.circuit(), offsetA))
                .map(fit -> new OffsetBound(
                        2 * Interval.Z95 * fit.boundSe(false),
                        2 * Interval.Z95 * Math.hypot(own, fit.boundSe(false)),
                        2 * Interval.Z95 * Math.hypot(own, fit.boundSe(true))));
    }
}
