package org.voltdocket.demo;

import org.voltdocket.demo.model.SeededRandom;
import org.voltdocket.demo.model.ModelSettings.Road;
import org.voltdocket.diagnosis.Chemistry;

/** Cases of use, of a wrong battery and of a drain while parked, and cases without a fault. */
final class UseCases {

    private UseCases() {}

    static void play(Scenario scenario, CaseDraft d) {
        switch (scenario) {
            case DRAINED_AT_REST -> drained(d, d.chance);
            case SHORT_TRIPS -> shortTrips(d, d.chance);
            case WRONG_TYPE -> wrongType(d, d.chance);
            case TOO_SMALL -> tooSmall(d, d.chance);
            case HEALTHY_MANAGED -> healthyManaged(d, d.chance);
            default -> healthyConventional(d, d.chance);
        }
    }

    private static void drained(CaseDraft d, SeededRandom chance) {
        d.complaint = chance.of(
                "Flat after standing for two or three days, fine when used every day.",
                "After the weekend it does not start, after a working day it does.",
                "Since the tow bar was fitted the battery is empty on Monday.");
        d.replacedBefore = chance.whole(0, 2);
        d.setup.standingDrainA = chance.between(0.25, 2);
        d.charge(chance.between(0.3, 0.55));
        d.batteryTest(d.setup.charge, chance.between(9, 16), false);
        if (chance.odds(0.6)) {
            d.crankingTest(d.setup.charge);
        }
        d.later(1);
        if (chance.odds(0.8)) {
            d.chargingTest(d.setup.charge, d.setup.managed ? 14.4 : d.setup.regulatedV, 14.1);
        }
        d.later(1);
        d.drive(0);
        d.standing(chance.between(3, 10), chance.between(300, 2400), 0.2, chance.odds(0.85));
        d.later(26);
        d.batteryTest(chance.between(0.96, 1), chance.between(12, 24), true);
    }

    private static void shortTrips(CaseDraft d, SeededRandom chance) {
        d.complaint = chance.of(
                "Only shopping and the school run, in winter it gets weaker every day.",
                "Delivery round with many stops, heating always on, battery low by Friday.",
                "I drive two kilometres to work and back. Battery low again.");
        d.monthsFitted = chance.between(5, 26);
        d.kmPerYear = chance.between(1200, 3800);
        d.setup.temperatureC = Math.min(d.setup.temperatureC, chance.whole(-8, 6));
        d.setup.road = Road.TOWN;
        d.setup.durationS = chance.whole(8, 14) * 60;
        d.setup.longestHaltS = 75;
        d.setup.alternatorA = chance.of(90.0, 100.0, 110.0, 120.0);
        d.setup.lamps = true;
        d.setup.blowerA = chance.between(9, 14);
        d.setup.heatedScreenA = chance.between(16, 24);
        d.setup.seatsA = chance.between(4, 9);
        d.charge(chance.between(0.48, 0.64));
        d.setup.believedPct = Math.min(70, d.setup.believedPct);
        d.batteryTest(d.setup.charge, chance.between(8, 15), false);
        if (chance.odds(0.8)) {
            d.chargingTest(d.setup.charge, d.setup.managed ? 14.3 : d.setup.regulatedV, 14.1);
        }
        d.later(1);
        int trips = chance.whole(2, 3);
        for (int i = 0; i < trips; i++) {
            d.drive(i == 0 ? 0 : 0.05);
            d.parked(chance.between(2, 7));
        }
        if (chance.odds(0.3)) {
            d.standing(chance.between(2, 5), chance.between(200, 1500), 0.05, true);
        }
        d.later(20);
        d.batteryTest(chance.between(0.94, 0.99), chance.between(12, 24), true);
    }

    private static void wrongType(CaseDraft d, SeededRandom chance) {
        d.complaint = chance.of(
                "Stop-start stopped working half a year after the new battery.",
                "Battery weak after one year in a car with stop-start.");
        d.setup.managed = true;
        d.setup.stopStart = true;
        d.requiredChemistry = chance.of(Chemistry.AGM, Chemistry.AGM, Chemistry.EFB);
        d.setup.chemistry = Chemistry.FLOODED;
        d.monthsFitted = chance.between(5, 16);
        d.setup.resistanceFactor = chance.between(1.05, 1.35);
        d.setup.capacityLeft = chance.between(0.75, 0.93);
        fitted(d, chance);
    }

    private static void tooSmall(CaseDraft d, SeededRandom chance) {
        d.complaint = chance.of(
                "Battery is always a little weak, also in summer.",
                "Bought the cheaper one that also fits the tray. Weak since.");
        d.requiredAh = chance.of(70.0, 80.0, 95.0);
        d.setup.capacityAh = chance.of(44.0, 44.0, 50.0);
        d.ratedA = Math.round(d.setup.capacityAh * chance.between(8.6, 10) / 10) * 10;
        d.setup.starterA = 2.1 * d.requiredAh + 20;
        d.setup.resistanceFactor = chance.between(1, 1.2);
        fitted(d, chance);
    }

    private static void fitted(CaseDraft d, SeededRandom chance) {
        d.charge(chance.between(0.62, 0.8));
        d.batteryTest(d.setup.charge, chance.between(6, 15), false);
        if (chance.odds(0.7)) {
            d.crankingTest(d.setup.charge);
        }
        d.later(1);
        if (chance.odds(0.8)) {
            d.chargingTest(d.setup.charge, d.setup.managed ? 14.3 : d.setup.regulatedV, 14.0);
        }
        d.later(1);
        if (chance.odds(0.8)) {
            d.drive(0);
        }
        d.later(26);
        d.batteryTest(chance.between(0.95, 1), chance.between(12, 24), true);
    }

    private static void healthyManaged(CaseDraft d, SeededRandom chance) {
        d.complaint = chance.of(
                "Display showed 12.4 volts while driving, so the alternator must be bad.",
                "Would not start once after the door was left open over night.",
                "Customer measured 12.5 V with the engine running and wants a new battery.");
        d.setup.managed = true;
        d.setup.reportedA |= chance.odds(0.7);
        d.setup.reportedSoc |= chance.odds(0.7);
        d.setup.lamps = d.setup.lamps && chance.odds(0.3);
        if (d.setup.chemistry == Chemistry.GEL) {
            d.setup.chemistry = Chemistry.AGM;
            d.requiredChemistry = Chemistry.AGM;
        }
        d.charge(chance.between(0.81, 0.9));
        if (chance.odds(0.45)) {
            // gives back while cruising what it takes in while coasting: 12.3 to 12.6 V, and no fault
            d.setup.restCurrentA = -chance.between(1, 4);
            d.setup.recuperates = true;
        }
        double idle = chance.odds(0.5) ? chance.between(14.1, 14.5) : chance.between(12.9, 13.3);
        healthy(d, chance, idle, 14.1);
    }

    private static void healthyConventional(CaseDraft d, SeededRandom chance) {
        d.complaint = chance.of(
                "Would not start once, the lamps had been on. Battery claimed as faulty.",
                "Slow start on one very cold morning.",
                "Customer wants it checked before winter, says it sounds weak.");
        d.setup.managed = false;
        d.setup.stopStart = false;
        d.setup.reportedA = false;
        d.setup.reportedSoc = false;
        if (d.setup.chemistry == Chemistry.AGM) {
            d.setup.chemistry = Chemistry.FLOODED;
            d.requiredChemistry = Chemistry.FLOODED;
        }
        d.charge(chance.between(0.86, 0.97));
        healthy(d, chance, d.setup.regulatedV, d.setup.regulatedV - 0.05);
    }

    private static void healthy(CaseDraft d, SeededRandom chance, double idleV, double loadedV) {
        d.batteryTest(d.setup.charge, chance.between(6, 15), false);
        if (chance.odds(0.7)) {
            d.crankingTest(d.setup.charge);
        }
        d.later(1);
        if (chance.odds(0.8)) {
            d.chargingTest(d.setup.charge, idleV, loadedV);
        }
        d.later(1);
        d.drive(0);
        if (chance.odds(0.35)) {
            d.standing(chance.between(2, 9), chance.between(200, 2400), 0.15, chance.odds(0.8));
        }
        if (chance.odds(0.7)) {
            d.later(26);
            d.batteryTest(chance.between(0.96, 1), chance.between(12, 24), true);
        }
    }
}
