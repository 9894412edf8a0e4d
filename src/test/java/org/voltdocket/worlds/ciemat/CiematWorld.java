package org.voltdocket.worlds.ciemat;

import java.time.OffsetDateTime;
import org.voltdocket.diagnosis.EvidenceKind;
import org.voltdocket.worlds.Alternator;
import org.voltdocket.worlds.BatteryModel;
import org.voltdocket.worlds.Chance;
import org.voltdocket.worlds.ChargeController;
import org.voltdocket.worlds.DriveCycle;
import org.voltdocket.worlds.Instruments;
import org.voltdocket.worlds.Setup;
import org.voltdocket.worlds.Trace;
import org.voltdocket.worlds.World;
import org.voltdocket.worlds.ciemat.CiematBattery.Make;

/** The CIEMAT model in cars of random traffic, watched by a slow logger that holds polled values. */
public final class CiematWorld implements World {

    /** Capacity in 20 h against that in 10 h, by the model's own equation. */
    private static final double TWENTY_HOURS = 1.23;
    /** Ohmic terms of the published model with full charge, V per cell and share of C10. */
    private static final double PUBLISHED_OHMIC = 0.29;

    private final Instruments instruments = new LoadInstruments();
    private final DriveCycle cycle = new TrafficCycle();

    @Override
    public String name() {
        return "ciemat";
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
    public Alternator alternator(Setup setup) {
        Chance chance = setup.chance().of("alternator");
        return new SaturatingAlternator(chance.between(95, 160), chance.between(150, 600), chance.between(0.05, 0.20));
    }

    @Override
    public ChargeController controller(Setup setup) {
        Chance chance = setup.chance().of("controller");
        return setup.managed()
                ? new EconomyController(
                        chance.between(14.0, 14.6), chance.between(12.7, 13.1), chance.between(0.78, 0.85))
                : new SteppedController(chance.between(14.2, 14.6));
    }

    @Override
    public DriveCycle cycle() {
        return cycle;
    }

    @Override
    public Instruments instruments() {
        return instruments;
    }

    @Override
    public Logged log(Trace trace, EvidenceKind kind, OffsetDateTime startedAt, Setup setup, Chance chance) {
        return new SlowLogger(trace, kind, startedAt, setup, chance).take();
    }
}
