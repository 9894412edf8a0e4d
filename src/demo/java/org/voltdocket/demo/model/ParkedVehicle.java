package org.voltdocket.demo.model;

import java.time.OffsetDateTime;
import java.util.List;
import org.voltdocket.diagnosis.EvidenceKind;
import org.voltdocket.diagnosis.Regime;

/** A vehicle parked overnight: control units go to sleep one after the other; the remaining current drains the battery. */
public final class ParkedVehicle {

    private static final double STEP_S = 1;

    private ParkedVehicle() {}

    /**
     * Records a parked vehicle.
     *
     * @param setup its {@code durationS} and {@code rateHz} (0.1 to 1) hold for this recording
     * @param awakeS how long control units stay awake, s
     * @param surfaceV what an earlier charge left at the surface, V
     */
    public static VehicleRun.Outcome record(
            ModelSettings setup, SeededRandom chance, OffsetDateTime startedAt, double awakeS, double surfaceV) {
        BatteryModel battery = new BatteryModel(setup);
        battery.surface(surfaceV);
        battery.prepare(STEP_S);
        Logger logger = new Logger(setup, chance.split());
        double first = battery.charge();
        double ohmic = battery.ohmic();
        double netAh = 0;
        double wakeS = chance.between(1200, 4000);
        for (int i = 0; i < setup.durationS; i++) {
            double awake = i < awakeS ? 2.2 * (1 - 0.6 * i / awakeS) : 0;
            double knock = i % (int) wakeS < 12 ? 0.8 : 0;
            double a = -(setup.standingDrainA + awake + knock);
            double v = battery.terminal(a);
            battery.advance(a, STEP_S);
            netAh += a * STEP_S / 3600;
            if (logger.due(i)) {
                logger.row(i, v, a, 0);
            }
        }
        GroundTruth truth = new GroundTruth(
                setup.sensorOffsetA,
                first,
                battery.charge(),
                netAh,
                setup.cableOhm,
                ohmic,
                List.of(new GroundTruth.Span(0, setup.durationS, Regime.REST)));
        return new VehicleRun.Outcome(logger.done(EvidenceKind.STANDING_RECORDING, startedAt), truth);
    }
}
