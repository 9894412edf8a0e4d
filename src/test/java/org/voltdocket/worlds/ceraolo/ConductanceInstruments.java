package org.voltdocket.worlds.ceraolo;

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

/** An instrument that takes the resistance from two pulses of current and the cranking current from the resistance. */
final class ConductanceInstruments implements Instruments {

    private static final BatteryTest.Instrument SELF = new BatteryTest.Instrument("CI-31", null);
    /** Cranking current times resistance of a new battery, V (common practice: 2.8 to 3.2). */
    private static final double VOLTS = 3.0;

    @Override
    public BatteryTest battery(
            OffsetDateTime at, BatteryModel resting, Setup setup, double hoursStill, boolean charged, Chance chance) {
        double celsius = setup.ambientC() + chance.between(0, 5);
        double rest = resting.voltage(-0.02) + 0.012 * chance.normal();
        double ohm = (resting.voltage(-40) - resting.voltage(-80)) / 40 * (1 + 0.03 * chance.normal());
        double warm = ohm / (1 + 0.008 * Math.max(0, 25 - celsius));
        double low = Math.max(0.2, 1 - 0.5 * Math.max(0, 12.4 - rest));
        boolean resistance = chance.happens(0.6);
        return new BatteryTest(
                at,
                rounded(rest, 0.01),
                StrictMath.rint(celsius),
                rounded(VOLTS / warm * low, 5),
                CrankingStandard.EN,
                resistance ? rounded(1000 * warm, 0.1) : null,
                chance.happens(0.7) ? rounded(hoursStill, 0.5) : null,
                charged ? Boolean.TRUE : chance.happens(0.5) ? Boolean.FALSE : null,
                SELF);
    }

    @Override
    public CrankingTest cranking(OffsetDateTime at, Trace start, double crankS, Setup setup, Chance chance) {
        return new CrankingTest(
                at,
                rounded(start.settledMinimum() + 0.04 * chance.normal(), 0.01),
                chance.happens(0.8) ? rounded(crankS, 0.1) : null,
                StrictMath.rint(setup.ambientC() + chance.between(0, 5)),
                SELF);
    }

    @Override
    public ChargingTest charging(OffsetDateTime at, Trace idle, Trace loaded, Setup setup, Chance chance) {
        double rippleV = loaded.at(Trace.Of.RIPPLE_V, loaded.endS()) * (1 + 0.1 * chance.normal());
        return new ChargingTest(
                at,
                rounded(idle.at(Trace.Of.POST_V, idle.endS()) + 0.012 * chance.normal(), 0.01),
                rounded(loaded.at(Trace.Of.POST_V, loaded.endS()) + 0.012 * chance.normal(), 0.01),
                chance.happens(0.7) ? rounded(Math.max(0, rippleV), 0.01) : null,
                StrictMath.rint(setup.ambientC() + chance.between(0, 15)),
                SELF);
    }

    private static double rounded(double value, double resolution) {
        return StrictMath.rint(value / resolution) * resolution;
    }
}
