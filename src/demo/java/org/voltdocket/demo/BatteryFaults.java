package org.voltdocket.demo;

import org.voltdocket.demo.model.SeededRandom;

/** Cases in which the battery itself is at fault. */
final class BatteryFaults {

    private BatteryFaults() {}

    static void play(Scenario scenario, CaseDraft d) {
        switch (scenario) {
            case CELL_SHORTED -> cellShorted(d, d.chance);
            case STRAP_BROKEN -> strapBroken(d, d.chance);
            case WILL_NOT_HOLD -> willNotHold(d, d.chance);
            default -> worn(d, d.chance);
        }
    }

    private static void cellShorted(CaseDraft d, SeededRandom chance) {
        d.complaint = chance.of(
                "Would not turn over on the second morning after fitting, lights dim.",
                "Starter only clicks. A helper battery starts it at once.",
                "Smells, gets warm at one end, and does not start the car any more.");
        d.monthsFitted = chance.between(1, 20);
        d.setup.missingCellV = chance.between(1.85, 2.15);
        d.setup.selfDischargeA = chance.between(0.1, 0.5);
        d.charge(chance.between(0.55, 0.8));
        d.batteryTest(d.setup.charge, chance.between(2, 16), false);
        if (chance.odds(0.6)) {
            d.crankingTest(d.setup.charge);
        }
        if (chance.odds(0.6)) {
            d.chargingTest(d.setup.charge, d.setup.managed ? 14.3 : d.setup.regulatedV, 14.1);
        }
        if (chance.odds(0.6)) {
            d.drive(0);
        }
        d.later(26);
        d.batteryTest(chance.between(0.85, 0.95), chance.between(10, 22), true);
        if (chance.odds(0.3)) {
            d.crankWatch(0.88);
        }
    }

    private static void strapBroken(CaseDraft d, SeededRandom chance) {
        d.complaint = chance.of(
                "Everything lights up, but the moment I turn the key all goes dark.",
                "Starts fine one day and is stone dead the next; shaking the car helps.",
                "New battery, voltage is fine, but it does not turn the engine.");
        d.monthsFitted = chance.between(1, 18);
        d.setup.strapOhm = chance.between(0.012, 0.03);
        d.charge(chance.between(0.78, 0.92));
        d.batteryTest(d.setup.charge, chance.between(2, 16), false);
        d.crankingTest(d.setup.charge);
        if (chance.odds(0.6)) {
            d.chargingTest(d.setup.charge, d.setup.managed ? 14.2 : d.setup.regulatedV, 14.1);
        }
        if (d.setup.strapOhm < 0.015 && chance.odds(0.7)) {
            d.drive(0);
        }
        d.later(27);
        d.batteryTest(chance.between(0.96, 1), chance.between(12, 24), true);
        if (chance.odds(0.5)) {
            d.crankWatch(0.96);
        }
    }

    private static void willNotHold(CaseDraft d, SeededRandom chance) {
        d.complaint = chance.of(
                "Charged over the weekend, flat again on Tuesday. The car was not used.",
                "Loses its charge even when it stands on the bench.",
                "Each morning weaker than the last, although I drive an hour a day.");
        d.monthsFitted = chance.between(2, 22);
        d.setup.missingCellV = chance.between(0.0, 0.35);
        d.setup.selfDischargeA = chance.between(0.5, 1.6);
        d.charge(chance.between(0.2, 0.45));
        d.batteryTest(d.setup.charge, chance.between(8, 16), false);
        if (chance.odds(0.7)) {
            d.chargingTest(d.setup.charge, d.setup.managed ? 14.4 : d.setup.regulatedV, 14.2);
        }
        if (chance.odds(0.5)) {
            d.drive(0);
        }
        d.later(20);
        double charged = chance.between(0.93, 0.98);
        double wait = chance.between(18, 40);
        double lost = d.setup.selfDischargeA * wait / d.setup.capacityAh;
        d.batteryTest(charged - lost * 0.15, 3, true);
        d.later(wait);
        d.batteryTest(Math.max(0.1, charged - lost), wait, true);
        if (chance.odds(0.5)) {
            d.setup.charge = charged;
            d.later(24);
            d.standing(chance.between(5, 10), 60, 0.05, chance.odds(0.8));
        }
    }

    private static void worn(CaseDraft d, SeededRandom chance) {
        d.complaint = chance.of(
                "Turns slower every winter, now it needs two tries.",
                "Battery is weak on cold mornings, fine when warm.",
                "Stop-start has not worked for a year and now it hardly starts.");
        d.monthsFitted = chance.between(44, 95);
        d.kmPerYear = chance.between(8000, 20000);
        d.setup.capacityLeft = chance.between(0.38, 0.62);
        d.setup.resistanceFactor = chance.between(1.75, 2.7);
        d.setup.selfDischargeA = chance.between(0.01, 0.04);
        d.charge(chance.between(0.72, 0.9));
        d.batteryTest(d.setup.charge, chance.between(6, 16), false);
        if (chance.odds(0.75)) {
            d.crankingTest(d.setup.charge);
        }
        if (chance.odds(0.8)) {
            d.chargingTest(d.setup.charge, d.setup.managed ? 14.2 : d.setup.regulatedV, 14.0);
        }
        if (chance.odds(0.75)) {
            d.drive(0);
        }
        d.later(28);
        d.batteryTest(chance.between(0.93, 0.99), chance.between(12, 24), true);
        if (chance.odds(0.3)) {
            d.crankWatch(0.95);
        }
        if (chance.odds(0.35)) {
            d.later(24);
            d.capacityRun();
        }
    }
}
