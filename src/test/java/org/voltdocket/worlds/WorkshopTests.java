package org.voltdocket.worlds;

import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.List;
import org.voltdocket.diagnosis.Reading;
import org.voltdocket.worlds.Leg.Kind;

/** The tests that a workshop takes in a case: some on arrival, some after charging, any of them may be missing. */
final class WorkshopTests {

    private final World world;
    private final Setup setup;
    private final Simulation simulation;
    private final OffsetDateTime day;
    private final Chance plan;
    private final List<Reading> readings = new ArrayList<>();

    WorkshopTests(World world, Setup setup, Simulation simulation, OffsetDateTime day, Chance plan) {
        this.world = world;
        this.setup = setup;
        this.simulation = simulation;
        this.day = day;
        this.plan = plan;
    }

    /** All of them, in the order in which they were taken. */
    List<Reading> take() {
        Chance tests = setup.chance().of("tests");
        Instruments with = world.instruments();
        double still = tests.between(1, 16);
        double charged = tests.between(0.955, 1);
        double off = tests.between(2, 20);
        OffsetDateTime late = day.plusHours(26 + plan.below(30));
        if (plan.happens(0.70)) {
            readings.add(with.battery(
                    day, simulation.rested(setup.charge(), still, false), setup, still, false, tests.of("arrival")));
        }
        if (plan.happens(0.50)) {
            double crankS = simulation.crankS(setup.charge());
            readings.add(with.cranking(
                    day.plusMinutes(plan.below(90)),
                    simulation.start(setup.charge(), crankS),
                    crankS,
                    setup,
                    tests.of("cranking")));
        }
        if (plan.happens(0.60)) {
            charging(with, tests.of("charging"));
        }
        if (plan.happens(0.72)) {
            readings.add(
                    with.battery(late, simulation.rested(charged, off, true), setup, off, true, tests.of("charged")));
        }
        if (plan.happens(0.15)) {
            OffsetDateTime again = late.plusHours(14 + plan.below(70));
            readings.add(with.battery(
                    again, simulation.rested(charged - 0.02, 40, true), setup, 40, true, tests.of("again")));
        }
        return readings;
    }

    private void charging(Instruments with, Chance chance) {
        double load = chance.between(12, 22);
        double heavy = load + chance.between(25, 50);
        double crankS = simulation.crankS(setup.charge());
        Leg ready = new Leg(Kind.AWAKE, 4, 0, 6);
        Leg crank = new Leg(Kind.CRANK, crankS, 0, 0);
        Leg idle = new Leg(Kind.DRIVE, 60, 0, load);
        Leg raised = new Leg(Kind.DRIVE, 60, 40, heavy);
        Trace idling = simulation.run(setup.charge(), List.of(ready, crank, idle));
        Trace loaded = simulation.run(setup.charge(), List.of(ready, crank, idle, raised));
        readings.add(with.charging(day.plusMinutes(30 + plan.below(90)), idling, loaded, setup, chance));
    }
}
