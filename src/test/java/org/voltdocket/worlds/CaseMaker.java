package org.voltdocket.worlds;

import java.nio.charset.StandardCharsets;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.voltdocket.diagnosis.CaseInput;
import org.voltdocket.diagnosis.Evidence;
import org.voltdocket.diagnosis.EvidenceKind;
import org.voltdocket.diagnosis.History;
import org.voltdocket.diagnosis.Origin;
import org.voltdocket.diagnosis.Reading;
import org.voltdocket.diagnosis.Recording;
import org.voltdocket.kernel.Sha256;
import org.voltdocket.worlds.Leg.Kind;

/** Makes one case of a world: which tests and recordings there are, in which order, and what they show. */
final class CaseMaker {

    private static final OffsetDateTime FIRST_DAY = OffsetDateTime.of(2026, 1, 12, 8, 30, 0, 0, ZoneOffset.ofHours(1));
    private static final double END_OF_DISCHARGE_V = 10.5;

    private final World world;
    private final Setup setup;
    private final Car car;
    private final long seed;
    private final Chance plan;
    private final OffsetDateTime day;
    private final List<Evidence> evidence = new ArrayList<>();
    private final Map<String, List<Double>> estimates = new TreeMap<>();

    private CaseMaker(World world, Setup setup, long seed) {
        this.world = world;
        this.setup = setup;
        this.car = Car.of(setup);
        this.seed = seed;
        this.plan = setup.chance().of("plan");
        this.day = FIRST_DAY.plusDays(plan.below(300));
    }

    /** The case of a world, fault and seed; the same three always give the same case. */
    static WorldCase make(World world, Fault fault, long seed) {
        return new CaseMaker(world, setup(world, fault, seed), seed).make();
    }

    /** The same case with the same charge, age, loads, instruments and structure, but something else wrong, or nothing. */
    static WorldCase twin(World world, WorldCase one, Effects effects) {
        return new CaseMaker(world, one.setup().with(effects), one.seed()).make();
    }

    private static Setup setup(World world, Fault fault, long seed) {
        Chance chance = new Chance(seed).of(world.name()).of(fault.id());
        return Setup.draw(fault, seed, chance);
    }

    private WorldCase make() {
        truth("sensorOffsetA", car.offsetA());
        truth("sensorGain", car.gain());
        truth("standingDrainA", car.asleepA());
        if (!car.reportedAtSource()) {
            truth("harnessResistanceMilliohm", 1000 * car.mainOhm());
        }
        BatteryModel arrived = battery(setup.charge());
        truth("internalResistanceMilliohm", 25 * (arrived.voltage(-40) - arrived.voltage(-80)));
        workshop();
        recordings();
        if (evidence.isEmpty()) {
            drive(day.plusHours(3), setup.chance().of("drive"));
        }
        CaseInput input = new CaseInput(FactsMaker.of(setup, day.toLocalDate()), History.NONE, evidence);
        return new WorldCase(world.name(), setup.fault(), seed, setup, input, estimates);
    }

    private void truth(String estimate, double value) {
        estimates.computeIfAbsent(estimate, e -> new ArrayList<>()).add(value);
    }

    private BatteryModel battery(double charge) {
        return world.battery(setup, charge, setup.ambientC() + 3);
    }

    private void workshop() {
        Chance tests = setup.chance().of("tests");
        Instruments with = world.instruments();
        double still = tests.between(1, 16);
        double charged = tests.between(0.955, 1);
        double off = tests.between(2, 20);
        OffsetDateTime late = day.plusHours(26 + plan.below(30));
        if (plan.happens(0.70)) {
            add(with.battery(day, rested(setup.charge(), still, false), setup, still, false, tests.of("arrival")));
        }
        if (plan.happens(0.50)) {
            double crankS = crankS(setup.charge());
            add(with.cranking(
                    day.plusMinutes(plan.below(90)),
                    start(setup.charge(), crankS),
                    crankS,
                    setup,
                    tests.of("cranking")));
        }
        if (plan.happens(0.60)) {
            charging(with, tests.of("charging"));
        }
        if (plan.happens(0.72)) {
            add(with.battery(late, rested(charged, off, true), setup, off, true, tests.of("charged")));
        }
        if (plan.happens(0.15)) {
            OffsetDateTime again = late.plusHours(14 + plan.below(70));
            add(with.battery(again, rested(charged - 0.02, 40, true), setup, 40, true, tests.of("again")));
        }
    }

    private void recordings() {
        boolean drains = setup.fault() == Fault.DRAIN;
        if (plan.happens(0.86)) {
            drive(day.plusHours(3), setup.chance().of("drive"));
        }
        if (plan.happens(0.15)) {
            drive(day.minusDays(1), setup.chance().of("second drive"));
        }
        if (plan.happens(drains ? 0.75 : 0.22)) {
            standing();
        }
        if (plan.happens(0.15)) {
            Chance chance = setup.chance().of("cranking recording");
            Trace trace = start(setup.charge(), crankS(setup.charge()));
            add(world.log(trace, EvidenceKind.CRANKING_RECORDING, day.plusHours(1), setup, chance));
        }
        if (plan.happens(setup.fault().ofBattery() ? 0.35 : 0.08)) {
            discharge();
        }
    }

    /** The battery after some hours of rest; off a charger it still has surface charge. */
    private BatteryModel rested(double charge, double hours, boolean charged) {
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

    private double crankS(double charge) {
        BatteryModel battery = battery(charge);
        double amperes = 0.5 * setup.ratedA() / setup.effects().sizeFactor();
        double volts = Math.max(3, battery.voltage(-amperes) - amperes * car.mainOhm());
        double cold = 1 + 0.012 * Math.max(0, 20 - setup.ambientC());
        return Math.min(3.5, 0.7 * cold * (10.8 / volts) * (10.8 / volts));
    }

    private Trace start(double charge, double crankS) {
        return run(
                charge,
                List.of(
                        new Leg(Kind.AWAKE, 4, 0, 6),
                        new Leg(Kind.CRANK, crankS, 0, 0),
                        new Leg(Kind.DRIVE, 4, 0, 12)));
    }

    private Trace run(double charge, List<Leg> legs) {
        return new Circuit(setup, car, world, battery(charge)).run(legs);
    }

    private void charging(Instruments with, Chance chance) {
        double load = chance.between(12, 22);
        double heavy = load + chance.between(25, 50);
        double crankS = crankS(setup.charge());
        Leg ready = new Leg(Kind.AWAKE, 4, 0, 6);
        Leg crank = new Leg(Kind.CRANK, crankS, 0, 0);
        Leg idle = new Leg(Kind.DRIVE, 60, 0, load);
        Leg raised = new Leg(Kind.DRIVE, 60, 40, heavy);
        Trace idling = run(setup.charge(), List.of(ready, crank, idle));
        Trace loaded = run(setup.charge(), List.of(ready, crank, idle, raised));
        add(with.charging(day.plusMinutes(30 + plan.below(90)), idling, loaded, setup, chance));
    }

    private void drive(OffsetDateTime at, Chance chance) {
        boolean brief = setup.effects().shortTrips();
        int trips = brief ? 3 + chance.below(3) : 1 + chance.below(2);
        double load = chance.between(11, 22) + (brief ? 8 : 0) + Math.max(0, 10 - setup.ambientC()) / 2;
        double seconds = brief ? setup.effects().tripS() : chance.between(1500, 2700) / trips;
        double mostS = 0.35 * setup.fittedAh() * setup.effects().capacityFactor() * 3600 / load / trips;
        double drivenS = setup.effects().sourceShare() < 0.5 ? Math.min(seconds, mostS) : seconds;
        List<Leg> legs = world.cycle().drives(trips, drivenS, crankS(setup.charge()), load, chance.of("cycle"));
        Trace trace = run(setup.charge(), legs);
        World.Logged logged = world.log(trace, EvidenceKind.DRIVE_RECORDING, at, setup, chance.of("logger"));
        add(logged);
        truth("socStartPct", 100 * trace.at(Trace.Of.CHARGE, logged.fromS()));
        truth("socEndPct", 100 * trace.at(Trace.Of.CHARGE, logged.toS()));
        truth(
                "netChargeAh",
                trace.at(Trace.Of.CHARGED_AH, logged.toS()) - trace.at(Trace.Of.CHARGED_AH, logged.fromS()));
    }

    /** A night: units wake up now and then. */
    private void standing() {
        Chance chance = setup.chance().of("standing");
        List<Leg> legs = new ArrayList<>();
        legs.add(new Leg(Kind.AWAKE, chance.between(20, 120), 0, chance.between(3, 8)));
        int parts = 1 + chance.below(4);
        for (int i = 0; i < parts; i++) {
            legs.add(new Leg(Kind.ASLEEP, chance.between(1.5, 3.5) * 3600, 0, 0));
            legs.add(new Leg(Kind.AWAKE, chance.between(10, 60), 0, chance.between(1, 5)));
        }
        Trace trace = run(Math.min(1, setup.charge() + 0.1), legs);
        add(world.log(trace, EvidenceKind.STANDING_RECORDING, day.plusDays(4), setup, chance.of("logger")));
    }

    private void discharge() {
        Chance chance = setup.chance().of("discharge");
        BatteryModel full = world.battery(setup, 1, 25);
        double amperes = setup.fittedAh() / chance.one(20, 20, 10);
        Trace trace = new Trace();
        double volts = 99;
        for (double t = 0; volts > END_OF_DISCHARGE_V && t < 40 * 3600; t += 10) {
            volts = full.voltage(-amperes);
            trace.add(t, volts, -amperes, volts, -amperes, 0, 0, 0, 25, 0, full.charge(), -amperes * t / 3600);
            full.step(-amperes, 10);
        }
        if (trace.rows() > 60) {
            add(world.log(trace, EvidenceKind.DISCHARGE_RECORDING, day.plusDays(8), setup, chance.of("logger")));
        }
    }

    private void add(World.Logged logged) {
        Recording recording = logged.recording();
        if (recording.rows() >= 20 && recording.durationS() >= 10) {
            add(recording);
        }
    }

    private void add(Reading reading) {
        String id = world.name() + "-" + setup.fault().id() + "-" + seed + "-" + evidence.size();
        evidence.add(new Evidence(id, Sha256.of(id.getBytes(StandardCharsets.UTF_8)), Origin.WORKSHOP, reading));
    }
}
