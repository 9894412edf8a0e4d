package org.voltdocket.demo.model;

import java.time.OffsetDateTime;
import org.voltdocket.diagnosis.BatteryTest;
import org.voltdocket.diagnosis.ChargingTest;
import org.voltdocket.diagnosis.CrankingStandard;
import org.voltdocket.diagnosis.CrankingTest;

/** Readings of a workshop's instruments for a vehicle of the model. */
public final class Workshop {

    private static final double STEP_S = 0.1;

    private final ModelSettings setup;
    private final SeededRandom chance;
    private final BatteryTest.Instrument instrument;

    public Workshop(ModelSettings setup, SeededRandom chance, BatteryTest.Instrument instrument) {
        this.setup = setup;
        this.chance = chance;
        this.instrument = instrument;
    }

    /**
     * A test of the rested battery.
     *
     * @param charge 0 to 1 of what it can hold
     * @param surfaceV left at the surface by an earlier charge, V
     * @param ratedA rating of the battery, A; the instrument compares resistances, so its cranking current is the
     *     rating times new over present resistance
     */
    public BatteryTest battery(
            OffsetDateTime at,
            double charge,
            double surfaceV,
            double hoursRested,
            boolean chargedBefore,
            double temperatureC,
            double ratedA,
            CrankingStandard standard) {
        ModelSettings then = setup.copy();
        then.charge = charge;
        then.temperatureC = temperatureC;
        BatteryModel now = new BatteryModel(then);
        ModelSettings fresh = then.copy();
        fresh.charge = 1;
        fresh.resistanceFactor = 1;
        fresh.strapOhm = 0;
        double share = new BatteryModel(fresh).ohmic() / now.ohmic();
        double cell = setup.missingCellV > 1 ? 0.5 : 1 - 0.3 * setup.missingCellV;
        double low = Math.min(1, 0.6 + 0.5 * charge);
        double cranking = ratedA * 1.04 * share * cell * low * (1 + chance.normal(0.03));
        double rest = now.openCircuit() + surfaceV + chance.normal(0.008);
        return new BatteryTest(
                at,
                round(rest, 100),
                Math.round(temperatureC),
                (double) Math.round(cranking / 5) * 5,
                standard,
                round(now.ohmic() * 1000 * (1.04 + chance.normal(0.03)), 10),
                round(hoursRested, 2),
                chargedBefore,
                instrument);
    }

    /** A start watched with a voltmeter that holds its least value. */
    public CrankingTest cranking(OffsetDateTime at, double charge, double temperatureC) {
        ModelSettings then = setup.copy();
        then.charge = charge;
        then.temperatureC = temperatureC;
        then.rateHz = 100;
        CrankingRun.Start start = CrankingRun.record(then, chance.split(), at);
        double least = start.leastV() + chance.normal(0.03);
        return new CrankingTest(
                at, round(least, 100), round(start.turnedS(), 10), Math.round(temperatureC), instrument);
    }

    /**
     * Voltages at the posts with the engine running.
     *
     * @param idleV what the source is commanded to at idle, V
     * @param loadedV what it is commanded to with lamps, blower and screen on, V
     */
    public ChargingTest charging(
            OffsetDateTime at, double charge, double temperatureC, double idleV, double loadedV, boolean ripple) {
        Alternator alternator = new Alternator(setup, chance.split());
        double base = setup.baseLoadA + 4;
        double loaded = base + 12 + 10 + Math.max(8, 0.6 * setup.heatedScreenA);
        double idle = settle(charge, temperatureC, alternator.held(idleV), alternator.capability(800, 0), base, 60);
        double strong = alternator.capability(1900, 110);
        double much = settle(charge, temperatureC, alternator.held(loadedV), strong, loaded, 60);
        double waves = 2 * alternator.ripple(Math.min(strong, loaded)) * (1 + chance.normal(0.08));
        return new ChargingTest(
                at,
                round(idle + chance.normal(0.015), 100),
                round(much + chance.normal(0.015), 100),
                ripple ? round(waves, 100) : null,
                Math.round(temperatureC),
                instrument);
    }

    private double settle(double charge, double temperatureC, double heldV, double mostA, double load, double forS) {
        ModelSettings then = setup.copy();
        then.charge = charge;
        then.temperatureC = temperatureC;
        BatteryModel battery = new BatteryModel(then);
        battery.prepare(STEP_S);
        double atPosts = load * (1 - setup.loadsAtSource);
        double current = 0;
        for (double t = 0; t < forS; t += STEP_S) {
            boolean charging = heldV - setup.cableOhm * atPosts > battery.emf();
            double wanted =
                    (heldV - battery.emf() - setup.cableOhm * atPosts) / (battery.ohm(charging) + setup.cableOhm);
            current = Math.max(0, Math.min(wanted + load, mostA)) - load;
            battery.advance(current, STEP_S);
        }
        return battery.terminal(current);
    }

    private static double round(double value, double parts) {
        return Math.round(value * parts) / parts;
    }
}
