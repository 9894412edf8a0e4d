package org.voltdocket.demo;

import java.time.LocalDate;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import org.voltdocket.demo.model.CapacityRun;
import org.voltdocket.demo.model.SeededRandom;
import org.voltdocket.demo.model.CrankingRun;
import org.voltdocket.demo.model.ModelSettings;
import org.voltdocket.demo.model.ParkedVehicle;
import org.voltdocket.demo.model.GroundTruth;
import org.voltdocket.demo.model.VehicleRun;
import org.voltdocket.demo.model.Workshop;
import org.voltdocket.diagnosis.BatteryTest;
import org.voltdocket.diagnosis.ChargingControl;
import org.voltdocket.diagnosis.ChargingTest;
import org.voltdocket.diagnosis.Chemistry;
import org.voltdocket.diagnosis.CrankingStandard;
import org.voltdocket.diagnosis.CrankingTest;
import org.voltdocket.diagnosis.Facts;
import org.voltdocket.diagnosis.Recording;

/** A case under construction: a vehicle, its facts and the evidence so far. */
final class CaseDraft {

    final SeededRandom chance;
    final ModelSettings setup = new ModelSettings();
    final List<GeneratedItem> items = new ArrayList<>();
    final List<GroundTruth> truths = new ArrayList<>();

    double ratedA;
    CrankingStandard standard = CrankingStandard.EN;
    Chemistry requiredChemistry;
    double requiredAh;
    double monthsFitted;
    double kmPerYear;
    int replacedBefore;
    String complaint;
    OffsetDateTime now;

    private final BatteryTest.Instrument instrument;
    private final char delimiter;

    CaseDraft(SeededRandom chance) {
        this.chance = chance;
        int day = chance.whole(0, 290);
        this.now = LocalDate.of(2026, 1, 7)
                .plusDays(day)
                .atTime(chance.whole(7, 9), chance.whole(0, 59))
                .atOffset(ZoneOffset.ofHours(1));
        double season = 10 - 11 * StrictMath.cos(2 * Math.PI * (day - 13) / 365.0);
        setup.temperatureC = Math.round(Math.max(-10, Math.min(30, season + chance.normal(4))));
        this.instrument = new BatteryTest.Instrument(
                "HM-" + chance.whole(100, 999), now.toLocalDate().minusDays(chance.whole(20, 330)));
        double dialect = chance.between(0, 1);
        this.delimiter = dialect < 0.75 ? ',' : dialect < 0.93 ? ';' : '\t';
        vehicle();
        recorder();
    }

    private void vehicle() {
        setup.managed = chance.odds(0.65);
        setup.stopStart = setup.managed && chance.odds(0.5);
        setup.chemistry = setup.stopStart
                ? chance.of(Chemistry.AGM, Chemistry.EFB)
                : chance.of(Chemistry.FLOODED, Chemistry.FLOODED, Chemistry.EFB, Chemistry.AGM);
        if (!setup.managed) {
            setup.chemistry =
                    chance.odds(0.04) ? Chemistry.GEL : chance.of(Chemistry.FLOODED, Chemistry.FLOODED, Chemistry.EFB);
        }
        setup.capacityAh = chance.of(44.0, 52.0, 60.0, 63.0, 70.0, 74.0, 80.0, 95.0);
        requiredChemistry = setup.chemistry;
        requiredAh = setup.capacityAh;
        ratedA = Math.round(setup.capacityAh * chance.between(8.6, 10.6) / 10) * 10;
        if (chance.odds(0.12)) {
            standard = CrankingStandard.SAE;
            ratedA = Math.round(ratedA / 0.92 / 10) * 10;
        }
        setup.starterA = chance.between(1.7, 2.5) * setup.capacityAh + 20;
        setup.alternatorA = chance.of(90.0, 110.0, 120.0, 140.0, 150.0, 180.0);
        setup.regulatedV = chance.between(14.0, setup.chemistry == Chemistry.GEL ? 14.2 : 14.5);
        setup.cableOhm = chance.between(0.0015, 0.0045);
        setup.loadsAtSource = chance.between(0.2, 0.9);
        setup.recuperates = setup.managed && chance.odds(0.6);
        setup.restCurrentA = chance.between(0, 1.2);
        setup.restAbovePct = chance.between(76, 80);
        setup.resistanceFactor = chance.between(0.93, 1.12);
        setup.capacityLeft = chance.between(0.9, 1.03);
        setup.standingDrainA = chance.between(0.008, 0.03);
        setup.baseLoadA = chance.between(8, 14);
        setup.blowerA = chance.between(2, 9);
        setup.lamps = chance.odds(0.3);
        setup.seatsA = setup.temperatureC < 6 && chance.odds(0.3) ? chance.between(4, 8) : 0;
        setup.heatedScreenA = setup.temperatureC < 4 && chance.odds(0.4) ? chance.between(18, 26) : 0;
        setup.sensorOffsetA = chance.normal(0.06);
        setup.sensorGain = 1 + chance.normal(0.006);
        setup.sensorNoiseA = chance.between(0.02, 0.15);
        setup.sensorStepA = chance.of(0.02, 0.05, 0.1, 0.25);
        setup.sensorOffsetV = chance.normal(0.04);
        setup.sensorStepV = chance.of(0.001, 0.01, 0.05, 0.1);
        setup.voltageAtSource = chance.odds(0.4);
        setup.road = chance.of(ModelSettings.Road.TOWN, ModelSettings.Road.MIXED, ModelSettings.Road.MIXED, ModelSettings.Road.MOTORWAY);
        setup.durationS = chance.whole(15, 55) * 60;
        monthsFitted = chance.between(3, 30);
        kmPerYear = chance.between(9000, 24000);
        replacedBefore = chance.odds(0.25) ? 1 : 0;
    }

    private void recorder() {
        setup.rateHz = chance.of(2.0, 4.0, 5.0, 10.0, 10.0, 20.0);
        setup.measuredStepV = chance.of(0.01, 0.01, 0.001);
        setup.measuredNoiseV = chance.between(0.003, 0.012);
        setup.measuredA = chance.odds(0.6);
        setup.reportedA = setup.managed && chance.odds(0.85);
        setup.reportedSoc = setup.managed && chance.odds(0.75);
        setup.reportedV = chance.odds(0.92);
        setup.engineData = chance.odds(0.92);
        setup.temperatures = chance.odds(0.8);
        setup.pollS = chance.of(0.5, 0.8, 1.0, 1.5, 2.0);
        setup.lateS = chance.between(0.3, 3.0);
        setup.gap = chance.odds(0.08);
    }

    /** Charge at the start of the drive, and what an honest vehicle believes of it. */
    void charge(double share) {
        setup.charge = share;
        setup.believedPct = Math.max(0, Math.min(100, 100 * share + chance.normal(2.5)));
    }

    /** Restless resting battery, uncharged. */
    void batteryTest(double charge, double hours, boolean charged) {
        double surface =
                charged ? Math.max(0.005, 0.30 * StrictMath.exp(-hours / 7)) : 0.04 * StrictMath.exp(-hours / 4);
        double temperature = Math.max(charged ? 8 : -8, setup.temperatureC + chance.between(0, 6));
        BatteryTest full =
                workshop().battery(now, charge, surface, hours, charged, Math.round(temperature), ratedA, standard);
        boolean noOhms = chance.odds(0.3);
        BatteryTest test = new BatteryTest(
                full.takenAt(),
                full.restVoltageV(),
                full.temperatureC(),
                full.crankingCurrentA(),
                full.crankingStandard(),
                noOhms ? null : full.internalResistanceMilliohm(),
                full.hoursSinceEngineStop(),
                full.chargedBefore(),
                full.instrument());
        add("battery-test", test, TestFile.json(test));
    }

    void crankingTest(double charge) {
        CrankingTest test = workshop().cranking(now, charge, setup.temperatureC);
        add("cranking-test", test, TestFile.json(test));
    }

    /** With what the source is commanded to at idle and with consumers on, V. */
    void chargingTest(double charge, double idleV, double loadedV) {
        ChargingTest test = workshop().charging(now, charge, setup.temperatureC + 4, idleV, loadedV, chance.odds(0.7));
        add("charging-test", test, TestFile.json(test));
    }

    /** A drive; the vehicle keeps its charge and belief for the next one. */
    void drive(double surfaceV) {
        VehicleRun.Outcome run = VehicleRun.drive(setup, chance.split(), chance.odds(0.7) ? now : null, surfaceV);
        addRecording("drive", run);
        setup.charge = run.truth().chargeEnd();
        setup.believedPct = Math.max(
                0,
                Math.min(
                        100,
                        setup.believedPct
                                + 100
                                        * (run.truth().netAh() + setup.sensorOffsetA * setup.durationS / 3600)
                                        / setup.capacityAh));
        later(setup.durationS / 3600);
    }

    void standing(double hours, double awakeS, double surfaceV, boolean clamp) {
        ModelSettings parked = setup.copy();
        parked.durationS = hours * 3600;
        parked.rateHz = chance.of(0.1, 0.2, 0.5, 1.0);
        parked.measuredA = clamp;
        parked.smallClamp = true;
        parked.gap = false;
        VehicleRun.Outcome run = ParkedVehicle.record(parked, chance.split(), now, awakeS, surfaceV);
        addRecording("standing", run);
        setup.charge = run.truth().chargeEnd();
        later(hours);
    }

    /** A full battery taken down to 10.50 V with a twentieth of its nominal capacity. */
    void capacityRun() {
        ModelSettings bench = setup.copy();
        bench.charge = 1;
        bench.temperatureC = chance.between(22, 27);
        addRecording("capacity", CapacityRun.record(bench, chance.split(), now));
    }

    void crankWatch(double charge) {
        ModelSettings start = setup.copy();
        start.charge = charge;
        start.rateHz = chance.of(100.0, 250.0, 500.0);
        start.gap = false;
        addRecording("cranking", CrankingRun.record(start, chance.split(), now).outcome());
    }

    /** Parked unrecorded: control units fall asleep, a door is opened, the radio plays for a while. */
    void parked(double hours) {
        double usedAh = chance.between(0.7, 1.8) + setup.standingDrainA * hours;
        setup.charge -= usedAh / setup.capacityAh / setup.capacityLeft;
        setup.believedPct -= 100 * usedAh / setup.capacityAh;
        later(hours);
    }

    void later(double hours) {
        now = now.plusMinutes(Math.round(hours * 60));
    }

    Facts facts() {
        LocalDate fitted = now.toLocalDate().minusDays(Math.round(monthsFitted * 30.4));
        LocalDate sold = fitted.minusDays(chance.whole(0, 6));
        LocalDate produced = sold.minusDays(chance.whole(25, 150));
        double since = kmPerYear * monthsFitted / 12;
        double fittedKm = Math.round(chance.between(20_000, 140_000));
        Facts.BatteryFacts battery = new Facts.BatteryFacts(
                setup.chemistry, setup.capacityAh, ratedA, standard, produced, sold, fitted, fittedKm);
        ChargingControl control = setup.managed ? ChargingControl.MANAGED : ChargingControl.CONVENTIONAL;
        Facts.VehicleFacts vehicle = new Facts.VehicleFacts(
                chance.odds(0.06) ? ChargingControl.UNKNOWN : control,
                setup.stopStart,
                requiredChemistry,
                requiredAh,
                (double) Math.round(fittedKm + since));
        return new Facts(battery, vehicle, complaint, replacedBefore);
    }

    private Workshop workshop() {
        return new Workshop(setup, chance.split(), instrument);
    }

    private void addRecording(String name, VehicleRun.Outcome run) {
        Recording recording = run.recording();
        add(name, recording, RecordingFile.csv(recording, delimiter));
        truths.add(run.truth());
    }

    private void add(String name, org.voltdocket.diagnosis.Reading reading, byte[] content) {
        String end = reading instanceof Recording ? ".csv" : ".json";
        String number = String.format("%02d", items.size() + 1);
        items.add(new GeneratedItem(number + "-" + name + "-" + now.toLocalDate() + end, reading, content));
    }
}
