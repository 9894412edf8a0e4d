package org.voltdocket.worlds.shepherd;

import org.voltdocket.worlds.Alternator;
import org.voltdocket.worlds.BatteryModel;
import org.voltdocket.worlds.Chance;
import org.voltdocket.worlds.ChargeController;
import org.voltdocket.worlds.Setup;
import org.voltdocket.worlds.World;

/** Shepherd's equation in commuters' cars, watched by an adapter at the diagnostic socket. */
public final class ShepherdWorld extends World {

    public ShepherdWorld() {
        super("shepherd", new CommuterCycle(), new PulseInstruments(), SocketLogger::new);
    }

    @Override
    public BatteryModel battery(Setup setup, double charge, double celsius) {
        Chance make = setup.chance().of("make");
        double capacity =
                setup.fittedAh() * make.between(0.98, 1.08) * setup.effects().capacityFactor();
        double ohm = make.between(2.6, 3.0) / setup.ratedA() * setup.effects().resistanceFactor();
        double e0 = switch (setup.chemistry()) {
            case FLOODED -> 12.62;
            case EFB -> 12.68;
            case AGM, GEL -> 12.80;
        };
        return new ShepherdBattery(
                ShepherdBattery.Constants.PUBLISHED.of(capacity, e0 + 0.02 * make.normal(), ohm),
                1 - setup.effects().lostCells() / 6,
                celsius,
                charge);
    }

    @Override
    protected Alternator alternator(Setup setup) {
        Chance chance = setup.chance().of("alternator");
        return new HyperbolicAlternator(chance.between(110, 190), chance.between(30, 120), chance.between(0.02, 0.12));
    }

    @Override
    protected ChargeController controller(Setup setup) {
        Chance chance = setup.chance().of("controller");
        return setup.managed()
                ? new ProportionalController(chance.between(0.78, 0.86), chance.between(9, 16))
                : new PlainController(chance.between(14.0, 14.4), chance.between(0.003, 0.012));
    }
}
