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
    private final Simulation simulation;
    private final long seed;
    private final Chance plan;
    private final OffsetDateTime day;
    private final List<Evidence> evidence = new ArrayList<>();
    private final Map<String, List<Double>> estimates = new TreeMap<>();

    private CaseMaker(World world, Setup setup, long seed) {
        this.world = world;
        this.setup = setup;
        this.car = Car.of(setup);
        this.simulation = new Simulation(world, setup, car);
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
        BatteryModel arrived = simulation.battery(setup.charge());
        truth("internalResistanceMilliohm", 25 * (arrived.voltage(-40) - arrived.voltage(-80)));
        new WorkshopTests(world, setup, simulation, day, plan).take().forEach(this::add);
        recordings();
        if (evidence.isEmpty()) {
            drive(day.plusHours(3), setup.chance().of("drive"));
        }
        CaseInput input = new CaseInput(FactsMaker.of(setup, day.toLocalDate()), History.NONE, evidence);
        return new WorldCase(
                world.name(),
                setup.fault(),
                seed,
                setup,
                input,
                FactsMaker.complete(setup, day.toLocalDate()),
                estimates);
    }

    private void truth(String estimate, double value) {
        estimates.computeIfAbsent(estimate, e -> new ArrayList<>()).add(value);
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
            Trace trace = simulation.start(setup.charge(), simulation.crankS(setup.charge()));
            add(world.log(trace, EvidenceKind.CRANKING_RECORDING, day.plusHours(1), setup, chance));
        }
        if (plan.happens(setup.fault().ofBattery() ? 0.35 : 0.08)) {
            discharge();
        }
    }

    private void drive(OffsetDateTime at, Chance chance) {
        boolean shortTrips = setup.effects().shortTrips();
        int trips = shortTrips ? 3 + chance.below(3) : 1 + chance.below(2);
        double load = chance.between(11, 22) + (shortTrips ? 8 : 0) + Math.max(0, 10 - setup.ambientC()) / 2;
        double seconds = shortTrips ? setup.effects().tripS() : chance.between(1500, 2700) / trips;
        double mostS = 0.35 * setup.fittedAh() * setup.effects().capacityFactor() * 3600 / load / trips;
        double drivenS = setup.effects().sourceShare() < 0.5 ? Math.min(seconds, mostS) : seconds;
        List<Leg> legs =
                world.cycle().drives(trips, drivenS, simulation.crankS(setup.charge()), load, chance.of("cycle"));
        Trace trace = simulation.run(setup.charge(), legs);
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
        Trace trace = simulation.run(Math.min(1, setup.charge() + 0.1), legs);
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
