package org.voltdocket.worlds.ceraolo;

import org.voltdocket.worlds.Alternator;
import org.voltdocket.worlds.BatteryModel;
import org.voltdocket.worlds.Chance;
import org.voltdocket.worlds.ChargeController;
import org.voltdocket.worlds.Setup;
import org.voltdocket.worlds.World;
import org.voltdocket.worlds.ceraolo.CeraoloBattery.Parameters;

/**
 * Ceraolo's network in cars that drive the urban and extra-urban cycle, watched by a fast logger.
 *
 * <p>Starter batteries differ from the published one: their ohmic resistance follows from the cranking current, their voltage
 * when full is that of their chemistry (12.65 V flooded, 12.9 V AGM; common practice), and half empty they take about as many
 * amperes as they have ampere hours (ours; as published the current would have no limit).
 */
public final class CeraoloWorld extends World {

    /** Capacity of the published parameters at the 20 h current and 25 °C, Ah, by their own equation. */
    private static final double PUBLISHED_AH = 45.5;

    /** Gives about 1 A for each Ah at half charge and 14.4 V. */
    private static final double FLOOR = 0.06;

    public CeraoloWorld() {
        super("ceraolo", new RegulatoryCycle(), new ConductanceInstruments(), FastLogger::new);
    }

    @Override
    public BatteryModel battery(Setup setup, double charge, double celsius) {
        Chance make = setup.chance().of("make");
        double capacity =
                setup.fittedAh() * make.between(0.96, 1.05) * setup.effects().capacityFactor();
        double ohm = make.between(2.75, 3.1) / setup.ratedA() * setup.effects().resistanceFactor();
        double full = switch (setup.chemistry()) {
            case FLOODED -> 2.108;
            case EFB -> 2.118;
            case AGM, GEL -> 2.150;
        };
        return new CeraoloBattery(
                new Parameters(full + 0.003 * make.normal(), ohm / 6, FLOOR),
                capacity / PUBLISHED_AH,
                6 - setup.effects().lostCells(),
                celsius,
                charge);
    }

    @Override
    protected Alternator alternator(Setup setup) {
        Chance chance = setup.chance().of("alternator");
        return new ExponentialAlternator(chance.between(100, 165), chance.between(60, 300), chance.between(0.03, 0.15));
    }

    @Override
    protected ChargeController controller(Setup setup) {
        Chance chance = setup.chance().of("controller");
        return setup.managed()
                ? new WindowController(
                        chance.between(14.5, 15.0), chance.between(12.7, 13.1), chance.between(0.76, 0.84))
                : new RegulatedController(chance.between(14.1, 14.5));
    }
}
