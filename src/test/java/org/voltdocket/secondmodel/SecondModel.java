package org.voltdocket.secondmodel;

import java.nio.charset.StandardCharsets;
import java.time.LocalDate;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.EnumSet;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.Set;
import org.voltdocket.diagnosis.CaseInput;
import org.voltdocket.diagnosis.Channel;
import org.voltdocket.diagnosis.ChargingControl;
import org.voltdocket.diagnosis.CrankingStandard;
import org.voltdocket.diagnosis.Evidence;
import org.voltdocket.diagnosis.EvidenceKind;
import org.voltdocket.diagnosis.Facts;
import org.voltdocket.diagnosis.History;
import org.voltdocket.diagnosis.Leaning;
import org.voltdocket.diagnosis.Origin;
import org.voltdocket.diagnosis.Reading;
import org.voltdocket.diagnosis.Regime;
import org.voltdocket.kernel.Sha256;
import org.voltdocket.secondmodel.DriveCycle.Leg;
import org.voltdocket.secondmodel.DriveCycle.Phase;

/** Cases of the second model: facts, workshop tests, recordings, and their truth. */
public final class SecondModel implements CaseSource {

    private static final OffsetDateTime NOON = OffsetDateTime.of(2026, 3, 2, 9, 0, 0, 0, ZoneOffset.ofHours(1));

    @Override
    public List<String> scenarios() {
        return Arrays.stream(Scenario.values()).map(s -> s.id).toList();
    }

    @Override
    public Labelled make(String scenario, long seed) {
        Scenario what = Scenario.of(scenario);
        Random chance = new Random(seed * 1_000_003 + what.ordinal() * 7919L);
        chance.nextLong();
        return new Case(what, seed, chance).make();
    }

    private static final class Case {
        private final Garage garage;
        private final Workshop workshop;
        private final Random chance;
        private final long seed;
        private final List<Evidence> evidence = new ArrayList<>();
        private final Map<String, Regime[]> regimes = new HashMap<>();
        private final OffsetDateTime day;

        Case(Scenario what, long seed, Random chance) {
            this.seed = seed;
            this.chance = chance;
            this.garage = new Garage(what, chance);
            this.workshop = new Workshop(garage);
            this.day = NOON.plusDays(chance.nextInt(200));
        }

        Labelled make() {
            tests();
            Trace drive = drive();
            if (garage.scenario == Scenario.DRAIN || chance.nextInt(4) == 0) {
                standing();
            }
            if (chance.nextInt(4) == 0) {
                cranking();
            }
            bench();
            return new Labelled(
                    garage.scenario.id,
                    seed,
                    new CaseInput(facts(), History.NONE, evidence),
                    garage.scenario.cause,
                    garage.scenario.leanings,
                    garage.offsetA,
                    drive.get(Trace.Of.CHARGE, 0),
                    drive.get(Trace.Of.CHARGE, drive.rows() - 1),
                    regimes);
        }

        private void tests() {
            double still = garage.between(3, 14);
            if (chance.nextInt(4) > 0) {
                add(workshop.battery(day, garage.charge, still, false));
            }
            if (chance.nextInt(10) < 7) {
                add(workshop.cranking(day.plusMinutes(12), garage.charge));
            }
            if (chance.nextInt(10) < 7) {
                add(workshop.charging(day.plusMinutes(25)));
            }
            double full = garage.between(0.95, 1.0);
            add(workshop.battery(day.plusHours(30), full, garage.between(4, 16), true));
            if (chance.nextInt(3) == 0) {
                add(workshop.cranking(day.plusHours(31), full));
            }
        }

        private Trace drive() {
            boolean duty = garage.scenario == Scenario.DUTY;
            int trips = duty ? 3 + chance.nextInt(3) : 1 + chance.nextInt(2);
            double seconds = duty ? garage.between(100, 240) : garage.between(1200, 3000) / trips;
            if (garage.scenario == Scenario.SOURCE_DEAD || garage.scenario == Scenario.SOURCE_WEAK) {
                double draw = garage.baseA + 25 * garage.heaviness;
                seconds = Math.min(seconds, 0.35 * garage.nominalAh * 3600 / draw / trips);
            }
            Vehicle car = workshop.vehicle(garage.charge, duty ? Math.max(0.6, garage.heaviness) : garage.heaviness);
            List<Leg> legs = DriveCycle.trips(
                    chance, trips, seconds, duty || chance.nextBoolean(), workshop.crankS(garage.charge));
            Trace trace = car.run(legs, 0.5);
            double hertz = 2 * Math.pow(10, chance.nextDouble());
            OffsetDateTime started = chance.nextInt(4) == 0 ? null : day.plusHours(2);
            Recorder.Taken taken = new Recorder(chance, garage.ambientC)
                    .take(trace, EvidenceKind.DRIVE_RECORDING, started, 0, hertz, chance.nextInt(4) == 0, bus(), true);
            regimes.put(add(taken.recording()), taken.truth());
            return trace;
        }

        /** Channels a scan tool finds: a conventional car often has no battery monitor. */
        private Set<Channel> bus() {
            Set<Channel> found =
                    EnumSet.of(Channel.REPORTED_V, Channel.ENGINE_RPM, Channel.SPEED, Channel.COOLANT, Channel.AMBIENT);
            if (garage.style != Control.Style.CONVENTIONAL || chance.nextBoolean()) {
                found.add(Channel.REPORTED_A);
                found.add(Channel.REPORTED_SOC);
            }
            return found;
        }

        private void standing() {
            Trace trace = workshop.vehicle(garage.between(0.75, 0.95), 0).run(night(3600 * garage.between(6, 14)), 5);
            Recorder.Taken taken = new Recorder(chance, garage.ambientC)
                    .take(
                            trace,
                            EvidenceKind.STANDING_RECORDING,
                            day.plusDays(3),
                            0,
                            0.1 + 0.4 * chance.nextDouble(),
                            chance.nextInt(10) < 7,
                            chance.nextInt(3) == 0 ? Set.of(Channel.REPORTED_A) : Set.of(),
                            false);
            regimes.put(add(taken.recording()), taken.truth());
        }

        /** A car falls asleep and wakes by itself now and then, as its units look after each other. */
        private List<Leg> night(double seconds) {
            List<Leg> legs = new ArrayList<>();
            legs.add(new Leg(Phase.AWAKE, 30, 0));
            int wakes = chance.nextInt(4);
            for (int i = 0; i <= wakes; i++) {
                legs.add(new Leg(Phase.ASLEEP, seconds / (wakes + 1), 0));
                if (i < wakes) {
                    legs.add(new Leg(Phase.AWAKE, garage.between(40, 120), 0));
                }
            }
            return legs;
        }

        /** Capacity runs on a bench, of one current or of three; most battery faults are sent there, other cases seldom. */
        private void bench() {
            boolean suspected = garage.scenario == Scenario.WORN || garage.scenario == Scenario.DEFECT;
            if (chance.nextInt(suspected ? 2 : 8) > 0) {
                return;
            }
            double celsius = Math.rint(garage.between(20, 29));
            double[] hours = chance.nextInt(3) == 0 ? new double[] {20, 10, 5} : new double[] {20};
            for (int run = 0; run < hours.length; run++) {
                Trace trace = Bench.discharge(garage.battery, garage.nominalAh / hours[run], celsius);
                Recorder.Taken taken = new Recorder(chance, celsius)
                        .take(
                                trace,
                                EvidenceKind.DISCHARGE_RECORDING,
                                day.plusDays(5 + 3L * run),
                                0,
                                garage.between(0.02, 0.2),
                                true,
                                Set.of(Channel.AMBIENT),
                                false);
                regimes.put(add(taken.recording()), taken.truth());
            }
        }

        private void cranking() {
            Trace trace = workshop.vehicle(garage.charge, 0.2)
                    .run(
                            List.of(
                                    new Leg(Phase.AWAKE, 6, 0),
                                    new Leg(Phase.CRANK, workshop.crankS(garage.charge), 0),
                                    new Leg(Phase.IDLE, 12, 0)),
                            0.5);
            Recorder.Taken taken = new Recorder(chance, garage.ambientC)
                    .take(
                            trace,
                            EvidenceKind.CRANKING_RECORDING,
                            day.plusHours(1),
                            1,
                            garage.between(100, 400),
                            chance.nextInt(3) == 0,
                            Set.of(),
                            false);
            regimes.put(add(taken.recording()), taken.truth());
        }

        private Facts facts() {
            boolean managed = garage.style != Control.Style.CONVENTIONAL;
            double months = switch (garage.scenario) {
                case WORN -> garage.between(38, 70);
                case DEFECT -> garage.between(2, 20);
                default -> garage.between(3, 23);
            };
            double perMonth = garage.scenario == Scenario.DUTY ? garage.between(60, 250) : garage.between(900, 2200);
            LocalDate fitted = day.toLocalDate().minusDays((long) (months * 30.4));
            double odometer = Math.rint(garage.between(20_000, 160_000));
            return new Facts(
                    new Facts.BatteryFacts(
                            garage.chemistry,
                            chance.nextInt(20) == 0 ? null : garage.nominalAh,
                            garage.ratedA,
                            CrankingStandard.EN,
                            fitted.minusDays(40 + chance.nextInt(80)),
                            fitted.minusDays(chance.nextInt(6)),
                            fitted,
                            odometer),
                    new Facts.VehicleFacts(
                            chance.nextInt(10) == 0
                                    ? ChargingControl.UNKNOWN
                                    : managed ? ChargingControl.MANAGED : ChargingControl.CONVENTIONAL,
                            garage.stopStart,
                            garage.chemistry,
                            garage.nominalAh,
                            odometer + Math.rint(months * perMonth)),
                    null,
                    replaced());
        }

        /** A fault of the vehicle wears out one battery after the other; others seldom do. */
        private int replaced() {
            boolean outlives = garage.scenario.leanings.contains(Leaning.VEHICLE_SIDE);
            return outlives ? chance.nextInt(3) : chance.nextInt(7) == 0 ? 1 : 0;
        }

        private String add(Reading reading) {
            String id = garage.scenario.id + "-" + seed + "-" + evidence.size();
            evidence.add(new Evidence(id, Sha256.of(id.getBytes(StandardCharsets.UTF_8)), Origin.WORKSHOP, reading));
            return id;
        }
    }
}
