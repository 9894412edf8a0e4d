package org.voltdocket.diagnosis.quantity.drive;

import java.util.Optional;
import java.util.function.DoubleUnaryOperator;
import org.voltdocket.diagnosis.Channel;
import org.voltdocket.diagnosis.ChargingControl;
import org.voltdocket.diagnosis.Chemistry;
import org.voltdocket.diagnosis.Facts;
import org.voltdocket.diagnosis.Made;
import org.voltdocket.diagnosis.quantity.Measurement;
import org.voltdocket.diagnosis.quantity.MeasurementContext;
import org.voltdocket.kernel.Interval;

/** Drives made by hand: a minute at rest, one second of cranking, then the engine runs; under way from 70 s on. */
final class Driven {

    static final int SECONDS = 1200;

    private Driven() {}

    /** An AGM battery, rated 700 A. */
    static Facts facts(double capacityAh, ChargingControl control) {
        return new Facts(
                new Facts.BatteryFacts(Chemistry.AGM, capacityAh, 700.0, null, null, null, null, null),
                new Facts.VehicleFacts(control, null, null, null, null),
                null,
                null);
    }

    static MeasurementContext reference(double capacityAh, double celsius) {
        return new MeasurementContext(facts(capacityAh, ChargingControl.CONVENTIONAL), celsius);
    }

    /** Volts only, two samples a second, at 60 km/h. */
    static Made volts(double rest, DoubleUnaryOperator volts) {
        return Made.at(2, SECONDS)
                .with(Channel.MEASURED_V, t -> t < 60 ? rest : t < 61 ? 9.7 : volts.applyAsDouble(t))
                .with(Channel.ENGINE_RPM, t -> t < 61 ? 0 : 1800)
                .with(Channel.SPEED, t -> t < 70 ? 0 : 60);
    }

    /** The same with a clamp. */
    static Made clamped(double rest, DoubleUnaryOperator volts, DoubleUnaryOperator amperes) {
        return volts(rest, volts).with(Channel.MEASURED_A, t -> t < 60 ? -0.02 : amperes.applyAsDouble(t));
    }

    /** What is measured of a conventional vehicle with 70 Ah at 20 °C. */
    static DriveQuantities measured(Made made) {
        return measured(made, reference(70, 20));
    }

    static DriveQuantities measured(Made made, MeasurementContext reference) {
        return DriveQuantities.of(made.evidence(), reference);
    }

    static Optional<Interval> find(DriveQuantities all, String quantity) {
        return all.measurements().stream()
                .filter(m -> m.quantity().equals(quantity))
                .map(Measurement::value)
                .findFirst();
    }

    static double value(DriveQuantities all, String quantity) {
        return find(all, quantity).orElseThrow().value();
    }
}
