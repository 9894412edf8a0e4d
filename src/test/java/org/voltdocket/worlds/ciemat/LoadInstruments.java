package org.voltdocket.worlds.ciemat;

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

/** A resistor that loads the battery for some seconds, and a voltmeter; the cranking current is worked out to 7.5 V. */
final class LoadInstruments implements Instruments {

    private static final BatteryTest.Instrument SELF = new BatteryTest.Instrument("LR-8", null);
    private static final double LOAD_A = 150;
    /** Cranking current times the resistance it sees in a new battery, V (set on new batteries of this world). */
    private static final double VOLTS = 2.5;

    @Override
    public BatteryTest battery(
            OffsetDateTime at, BatteryModel resting, Setup setup, double hoursStill, boolean charged, Chance chance) {
        double celsius = setup.ambientC() + 3 + chance.normal();
        double rest = resting.voltage(-0.02) + 0.02 * chance.normal();
        double bias = 0.04 * chance.normal();
        double loaded = resting.voltage(-LOAD_A) + bias;
        double ohm = (resting.voltage(-LOAD_A / 4) + bias + 0.02 * chance.normal() - loaded) / (0.75 * LOAD_A);
        double warm = Math.max(1e-4, ohm / (1 + 0.007 * Math.max(0, 25 - celsius)));
        double estimate = VOLTS / warm * Math.max(0.1, Math.min(1.1, (rest - 7.5) / 5.1));
        return new BatteryTest(
                at,
                rounded(rest, chance.one(0.01, 0.05)),
                StrictMath.rint(celsius),
                chance.happens(0.85) ? rounded(Math.min(2500, estimate), 10) : null,
                CrankingStandard.EN,
                chance.happens(0.3) ? rounded(1000 * warm, 0.1) : null,
                chance.happens(0.5) ? StrictMath.rint(hoursStill) : null,
                charged ? Boolean.TRUE : chance.happens(0.6) ? Boolean.FALSE : null,
                SELF);
    }

    @Override
    public CrankingTest cranking(OffsetDateTime at, Trace start, double crankS, Setup setup, Chance chance) {
        return new CrankingTest(
                at,
                rounded(start.settledMinimum() + 0.06 * chance.normal(), 0.05),
                chance.happens(0.4) ? rounded(crankS, 0.5) : null,
                StrictMath.rint(setup.ambientC() + 3),
                null);
    }

    @Override
    public ChargingTest charging(OffsetDateTime at, Trace idle, Trace loaded, Setup setup, Chance chance) {
        double bias = 0.025 * chance.normal();
        boolean both = chance.happens(0.75);
        return new ChargingTest(
                at,
                rounded(idle.at(Trace.Of.POST_V, idle.endS()) + bias, 0.05),
                both ? rounded(loaded.at(Trace.Of.POST_V, loaded.endS()) + bias, 0.05) : null,
                chance.happens(0.3)
                        ? rounded(loaded.at(Trace.Of.RIPPLE_V, loaded.endS()) * chance.between(0.85, 1.15), 0.05)
                        : null,
                StrictMath.rint(setup.ambientC()),
                null);
    }

    private static double rounded(double value, double resolution) {
        return StrictMath.rint(value / resolution) * resolution;
    }
}
