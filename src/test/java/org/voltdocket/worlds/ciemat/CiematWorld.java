package org.voltdocket.worlds.ciemat;

import org.voltdocket.worlds.Alternator;
import org.voltdocket.worlds.BatteryModel;
import org.voltdocket.worlds.Chance;
import org.voltdocket.worlds.ChargeController;
import org.voltdocket.worlds.Setup;
import org.voltdocket.worlds.World;
import org.voltdocket.worlds.ciemat.CiematBattery.Make;

/** The CIEMAT model in cars of random traffic, watched by a slow logger that holds polled values. */
public final class CiematWorld extends World {

    /** Capacity in 20 h against that in 10 h, by the model's own equation. */
    private static final double TWENTY_HOURS = 1.23;
    /** Ohmic terms of the published model with full charge, V per cell and share of C10. */
    private static final double PUBLISHED_OHMIC = 0.29;

    public CiematWorld() {
        super("ciemat", new TrafficCycle(), new LoadInstruments(), SlowLogger::new);
    }

    @Override
    public BatteryModel battery(Setup setup, double charge, double celsius) {
        Chance make = setup.chance().of("make");
        double c10 = setup.fittedAh() / TWENTY_HOURS * make.between(0.95, 1.06);
        double ohm = make.between(2.7, 3.1) / setup.ratedA() * setup.effects().resistanceFactor();
        double shift = switch (setup.chemistry()) {
            case FLOODED -> 0.022;
            case EFB -> 0.032;
            case AGM, GEL -> 0.050;
        };
        return new CiematBattery(
                c10,
                Make.starter(
                        shift + 0.003 * make.normal(),
                        ohm * c10 / (6 * PUBLISHED_OHMIC),
                        setup.effects().capacityFactor()),
                6 - setup.effects().lostCells(),
                celsius,
                charge);
    }

    @Override
    protected Alternator alternator(Setup setup) {
        Chance chance = setup.chance().of("alternator");
        return new SaturatingAlternator(chance.between(95, 160), chance.between(150, 600), chance.between(0.05, 0.20));
    }

    @Override
    protected ChargeController controller(Setup setup) {
        Chance chance = setup.chance().of("controller");
        return setup.managed()
                ? new EconomyController(
                        chance.between(14.0, 14.6), chance.between(12.7, 13.1), chance.between(0.78, 0.85))
                : new SteppedController(chance.between(14.2, 14.6));
    }
}
