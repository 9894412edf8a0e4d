package org.voltdocket.demo.model;

import java.time.OffsetDateTime;
import org.voltdocket.diagnosis.EvidenceKind;
import org.voltdocket.diagnosis.Regime;

/** A recording of one start at 100 to 500 Hz, from 2 s before to 8 s after it. */
public final class CrankingRun {

    private static final double STEP_S = 0.002;
    private static final double FROM_S = 2.5;
    private static final double TOTAL_S = 12;

    private CrankingRun() {}

    /**
     * What a start shows.
     *
     * @param outcome the recording and the truth
     * @param leastV least voltage at the posts once the inrush of 50 ms is over, V
     * @param turnedS how long the starter turned, s
     */
    public record Start(VehicleRun.Outcome outcome, double leastV, double turnedS) {}

    /** Watches one start; {@code setup.rateHz} holds for this recording. */
    public static Start record(ModelSettings setup, SeededRandom chance, OffsetDateTime startedAt) {
        BatteryModel battery = new BatteryModel(setup);
        battery.prepare(STEP_S);
        Starter starter = new Starter(setup, chance.split());
        Logger logger = new Logger(setup, chance.split());
        RegimeRecorder spans = new RegimeRecorder();
        double stiff = battery.openCircuit() - setup.starterA * battery.ohmic() * 1.6;
        double turn = chance.between(0.6, 1.3) * (stiff < 10 ? 1 + (10 - stiff) * 0.6 : 1);
        double first = battery.charge();
        double ohmic = battery.ohmic();
        double netAh = 0;
        double least = battery.openCircuit();
        for (int i = 0; i < TOTAL_S / STEP_S; i++) {
            double t = i * STEP_S;
            if (i == (int) (FROM_S / STEP_S)) {
                starter.engage(t, turn);
                logger.mark(t, "start");
            }
            double load = t < FROM_S ? 5 : 14;
            double a = -load;
            if (starter.turning(t)) {
                a -= starter.currentA(t, battery.emf(), battery.ohm(false));
                spans.set(t, Regime.CRANKING);
            } else if (starter.done(t)) {
                a = runningCurrent(setup, battery, load);
                spans.engineRuns(t, a, STEP_S);
            } else {
                spans.set(t, Regime.REST);
            }
            double v = battery.terminal(a);
            battery.advance(a, STEP_S);
            netAh += a * STEP_S / 3600;
            if (starter.turning(t) && t > FROM_S + 0.05) {
                least = Math.min(least, v);
            }
            if (logger.due(t)) {
                logger.row(t, v, a, 0);
            }
        }
        GroundTruth truth = new GroundTruth(
                setup.sensorOffsetA, first, battery.charge(), netAh, setup.cableOhm, ohmic, spans.done(TOTAL_S));
        VehicleRun.Outcome outcome =
                new VehicleRun.Outcome(logger.done(EvidenceKind.CRANKING_RECORDING, startedAt), truth);
        return new Start(outcome, least, turn);
    }

    private static double runningCurrent(ModelSettings setup, BatteryModel battery, double load) {
        if (setup.sourceFault == ModelSettings.SourceFault.DEAD) {
            return -load;
        }
        double held = setup.stuckAtV > 0 ? setup.stuckAtV : 14.2;
        double a = (held - battery.emf()) / (battery.ohm(held > battery.emf()) + setup.cableOhm);
        return Math.max(-load, Math.min(a, 0.35 * setup.alternatorA - load));
    }
}
