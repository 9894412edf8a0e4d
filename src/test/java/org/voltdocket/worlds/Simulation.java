package org.voltdocket.worlds;

import java.util.List;
import org.voltdocket.worlds.Leg.Kind;

/** Runs the car of a case. */
final class Simulation {

    private final World world;
    private final Setup setup;
    private final Car car;

    Simulation(World world, Setup setup, Car car) {
        this.world = world;
        this.setup = setup;
        this.car = car;
    }

    /** The battery after a long rest. */
    BatteryModel battery(double charge) {
        return world.battery(setup, charge, setup.ambientC() + 3);
    }

    /** The battery after some hours of rest; off a charger it still has surface charge. */
    BatteryModel rested(double charge, double hours, boolean charged) {
        BatteryModel battery = battery(charge);
        double amperes = 0.04 * setup.fittedAh();
        for (int i = 0; charged && i < 60; i++) {
            battery.step(amperes, 10);
        }
        double asleep = charged ? 0.003 : car.asleepA();
        for (double t = 0; t < hours * 3600; t += 60) {
            battery.step(-asleep, 60);
        }
        return battery;
    }

    /** How long the starter turns, s: longer where it gets less. */
    double crankS(double charge) {
        BatteryModel battery = battery(charge);
        double amperes = 0.5 * setup.ratedA() / setup.effects().sizeFactor();
        double volts = Math.max(3, battery.voltage(-amperes) - amperes * car.mainOhm());
        double cold = 1 + 0.012 * Math.max(0, 20 - setup.ambientC());
        return Math.min(3.5, 0.7 * cold * (10.8 / volts) * (10.8 / volts));
    }

    /** A start alone. */
    Trace start(double charge, double crankS) {
        return run(
                charge,
                List.of(
                        new Leg(Kind.AWAKE, 4, 0, 6),
                        new Leg(Kind.CRANK, crankS, 0, 0),
                        new Leg(Kind.DRIVE, 4, 0, 12)));
    }

    /** The legs one after the other, with a battery that has rested before. */
    Trace run(double charge, List<Leg> legs) {
        return new Circuit(setup, car, world, battery(charge)).run(legs);
    }
}
