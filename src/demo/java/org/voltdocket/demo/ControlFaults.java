package org.voltdocket.demo;

import org.voltdocket.demo.model.SeededRandom;
import org.voltdocket.diagnosis.Chemistry;

/** Cases in which the charging source works but is controlled wrongly: by a sensor with an error or a stuck control unit. */
final class ControlFaults {

    private ControlFaults() {}

    static void play(Scenario scenario, CaseDraft d) {
        managed(d, d.chance);
        switch (scenario) {
            case SENSOR_READS_HIGH -> readsHigh(d, d.chance);
            case SENSOR_READS_LOW -> readsLow(d, d.chance);
            default -> stuck(d, d.chance);
        }
    }

    private static void managed(CaseDraft d, SeededRandom chance) {
        d.setup.managed = true;
        d.setup.reportedA = true;
        d.setup.reportedSoc |= chance.odds(0.6);
        d.setup.reportedV = true;
        if (d.setup.chemistry == Chemistry.GEL) {
            d.setup.chemistry = Chemistry.EFB;
            d.requiredChemistry = Chemistry.EFB;
        }
        d.replacedBefore = chance.whole(0, 3);
    }

    private static void readsHigh(CaseDraft d, SeededRandom chance) {
        d.complaint = chance.of(
                "Third battery in this car. It starts badly again after a few weeks, the garage finds nothing.",
                "Battery tested good after charging and was empty again two weeks later.",
                "Message 'battery low' on the display although I drive 60 km a day.");
        daylight(d);
        d.setup.sensorOffsetA = chance.between(3.5, 8);
        d.setup.sensorOffsetV = chance.odds(0.65) ? chance.between(0.4, 1.2) : chance.normal(0.05);
        d.setup.restCurrentA = chance.between(0.5, 2);
        d.monthsFitted = chance.between(0.7, 9);
        d.setup.charge = chance.between(0.48, 0.72);
        d.setup.believedPct = chance.between(88.5, 96);
        d.setup.durationS = chance.whole(30, 58) * 60;
        takeTests(d, chance, 13.6, 14.3);
    }

    private static void readsLow(CaseDraft d, SeededRandom chance) {
        d.complaint = chance.of(
                "Acid smell in the boot, and the battery case is swollen.",
                "Battery dries out within a year, this is the second one.",
                "Message 'charge battery' although it is full when we test it.");
        d.setup.sensorOffsetA = -chance.between(3, 8);
        d.setup.charge = chance.between(0.97, 1);
        d.setup.believedPct = chance.between(45, 64);
        d.setup.recuperates = false;
        takeTests(d, chance, 14.6, 14.4);
    }

    private static void stuck(CaseDraft d, SeededRandom chance) {
        d.complaint = chance.of(
                "Flat after ten days although I drive to work and back. Alternator was replaced already.",
                "Stop-start never works and the battery is always low.",
                "Needs the charger every other week since the software visit.");
        d.setup.stuckAtV = chance.between(12.2, 12.6);
        d.setup.recuperates = chance.odds(0.3);
        d.setup.commandedAtEnd = chance.odds(0.6);
        d.setup.reportedSoc = true;
        d.charge(chance.between(0.4, 0.62));
        d.setup.believedPct = Math.min(70, d.setup.believedPct);
        d.setup.lamps |= chance.odds(0.5);
        takeTests(d, chance, d.setup.stuckAtV, d.setup.stuckAtV);
    }

    /** With lamps or screen on, the controller would leave its rest. */
    private static void daylight(CaseDraft d) {
        d.setup.lamps = false;
        d.setup.heatedScreenA = 0;
    }

    private static void takeTests(CaseDraft d, SeededRandom chance, double idleV, double loadedV) {
        double charge = d.setup.charge;
        d.batteryTest(charge, chance.between(4, 15), false);
        d.later(1);
        if (chance.odds(0.75)) {
            d.chargingTest(charge, idleV, loadedV);
        }
        d.later(1);
        d.drive(0);
        d.later(26);
        d.batteryTest(chance.between(0.96, 1), chance.between(12, 24), true);
        if (chance.odds(0.5)) {
            d.crankingTest(0.96);
        }
        if (chance.odds(0.2)) {
            d.crankWatch(0.95);
        }
    }
}
