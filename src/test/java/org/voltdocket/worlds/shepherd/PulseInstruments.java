package org.voltdocket.worlds.shepherd;

import java.time.OffsetDateTime;
import org.voltdocket.diagnosis.BatteryTest;
import org.voltdocket.diagnosis.ChargingTest;
import org.voltdocket.diagnosis.CrankingStandard;
import org.voltdocket.diagnosis.CrankingTest;
import org.voltdocket.worlds.BatteryModel;
import org.voltdocket.worlds.Chance;
import org.voltdocket.worlds.Instruments;
import org.voltdocket.worlds.Setup;
import org.voltdocket.worlds.Trace;

/** A pulse instrument that gives the cranking current by EN or SAE, and a multimeter of its own error. */
final class PulseInstruments implements Instruments {

    /** SAE against EN cranking current (rough; EN is about 0.92 of SAE). */
    private static final double SAE = 1 / 0.92;
    /** Cranking current times resistance of a new battery, V (ours). */
    private static final double VOLTS = 2.85;

    @Override
    public BatteryTest battery(
            OffsetDateTime at, BatteryModel resting, Setup setup, double hoursStill, boolean charged, Chance chance) {
        double celsius = setup.ambientC() + 2 + 2 * chance.normal();
        double rest = resting.voltage(-0.05) + 0.015 * chance.normal();
        double ohm = (resting.voltage(-50) - resting.voltage(-200)) / 150 * (1 + 0.04 * chance.normal());
        double warm = ohm / (1 + 0.010 * Math.max(0, 25 - celsius));
        double low = Math.max(0.3, 1 - 0.35 * Math.max(0, 12.5 - rest));
        boolean sae = chance.happens(0.25);
        return new BatteryTest(
                at,
                rounded(rest, 0.01),
                StrictMath.rint(celsius),
                rounded(Math.min(2500, VOLTS / warm * low * (sae ? SAE : 1)), 1),
                sae ? CrankingStandard.SAE : CrankingStandard.EN,
                chance.happens(0.45) ? rounded(1000 * warm, 0.01) : null,
                chance.happens(0.6) ? rounded(hoursStill, 0.1) : null,
                charged ? Boolean.TRUE : chance.happens(0.4) ? Boolean.FALSE : null,
                new BatteryTest.Instrument("P-" + (100 + chance.below(400)), null));
    }

    @Override
    public CrankingTest cranking(OffsetDateTime at, Trace start, double crankS, Setup setup, Chance chance) {
        double gain = 1 + 0.004 * chance.normal();
        return new CrankingTest(
                at,
                rounded(gain * start.settledMinimum(), 0.01),
                rounded(crankS, 0.1),
                StrictMath.rint(setup.ambientC() + 2),
                null);
    }

    @Override
    public ChargingTest charging(OffsetDateTime at, Trace idle, Trace loaded, Setup setup, Chance chance) {
        double gain = 1 + 0.002 * chance.normal();
        double ripple = loaded.at(Trace.Of.RIPPLE_V, loaded.endS()) * chance.between(0.9, 1.1);
        return new ChargingTest(
                at,
                chance.happens(0.9) ? rounded(gain * idle.at(Trace.Of.POST_V, idle.endS()), 0.01) : null,
                rounded(gain * loaded.at(Trace.Of.POST_V, loaded.endS()), 0.01),
                chance.happens(0.5) ? rounded(ripple, 0.001) : null,
                StrictMath.rint(setup.ambientC() + 10),
                null);
    }

    private static double rounded(double value, double resolution) {
        return StrictMath.rint(value / resolution) * resolution;
    }
}
