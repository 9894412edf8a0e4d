package org.voltdocket.demo.model;

import java.time.OffsetDateTime;
import java.util.List;
import org.voltdocket.diagnosis.EvidenceKind;
import org.voltdocket.diagnosis.Regime;

/** A bench discharge at a twentieth of the nominal capacity until 10.50 V, one row a minute. */
public final class CapacityRun {

    private static final double END_V = 10.50;
    private static final double STEP_S = 1;
    private static final double LONGEST_S = 30 * 3600;

    private CapacityRun() {}

    /** Takes the battery down from where {@code setup} has it. */
    public static VehicleRun.Outcome record(ModelSettings setup, SeededRandom chance, OffsetDateTime startedAt) {
        ModelSettings bench = setup.copy();
        bench.rateHz = 1.0 / 60;
        bench.measuredA = true;
        bench.smallClamp = true;
        bench.gap = false;
        BatteryModel battery = new BatteryModel(bench);
        battery.prepare(STEP_S);
        Logger logger = new Logger(bench, chance.split());
        double first = battery.charge();
        double ohmic = battery.ohmic();
        double current = -setup.capacityAh / 20;
        double t = 0;
        double volts = battery.terminal(current);
        while (volts > END_V && t < LONGEST_S) {
            if (logger.due(t)) {
                logger.row(t, volts, current, 0);
            }
            battery.advance(current, STEP_S);
            volts = battery.terminal(current);
            t += STEP_S;
        }
        logger.row(t, volts, current, 0);
        GroundTruth truth = new GroundTruth(
                setup.sensorOffsetA,
                first,
                battery.charge(),
                current * t / 3600,
                setup.cableOhm,
                ohmic,
                List.of(new GroundTruth.Span(0, t + STEP_S, Regime.DISCHARGING)));
        return new VehicleRun.Outcome(logger.done(EvidenceKind.DISCHARGE_RECORDING, startedAt), truth);
    }
}
