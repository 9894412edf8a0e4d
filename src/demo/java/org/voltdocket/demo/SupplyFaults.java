package org.voltdocket.demo;

import org.voltdocket.demo.model.SeededRandom;
import org.voltdocket.demo.model.ModelSettings.SourceFault;
import org.voltdocket.diagnosis.Chemistry;

/** Cases in which the charging source or the cables supply the battery badly. */
final class SupplyFaults {

    private SupplyFaults() {}

    static void play(Scenario scenario, CaseDraft d) {
        d.replacedBefore = d.chance.whole(0, 2);
        switch (scenario) {
            case SOURCE_OVER -> over(d, d.chance);
            case CABLE_RESISTANCE -> cable(d, d.chance);
            default -> under(scenario, d, d.chance);
        }
    }

    private static void under(Scenario scenario, CaseDraft d, SeededRandom chance) {
        switch (scenario) {
            case SOURCE_DEAD -> {
                d.setup.sourceFault = SourceFault.DEAD;
                d.setup.durationS = chance.whole(15, 28) * 60;
                d.complaint = chance.of(
                        "Battery lamp flickered, then the radio went off while driving.",
                        "New battery lasted two days.");
            }
            case SOURCE_WEAK -> {
                boolean diode = chance.odds(0.35);
                d.setup.sourceFault = diode ? SourceFault.DIODE : SourceFault.WEAK;
                d.setup.sourceLevel = chance.between(0.14, 0.32);
                d.setup.alternatorA = diode ? 90 : d.setup.alternatorA;
                d.setup.lamps = true;
                d.complaint = chance.of(
                        "Lamps go dim at the traffic light, flat after a week of town.",
                        "Every few weeks flat, mostly in the wet season.");
            }
            default -> {
                d.setup.sourceFault = SourceFault.SLIPPING;
                d.complaint = chance.of(
                        "Squeals after the start and when I switch on the lamps, flat now and then.",
                        "Battery lamp comes and goes.");
            }
        }
        d.charge(chance.between(0.35, 0.62));
        d.batteryTest(d.setup.charge, chance.between(4, 14), false);
        d.later(1);
        boolean slips = d.setup.sourceFault == SourceFault.SLIPPING;
        if (!slips || chance.odds(0.5)) {
            d.chargingTest(d.setup.charge, d.setup.managed ? 14.4 : d.setup.regulatedV, 14.2);
        }
        d.later(1);
        if (slips || chance.odds(0.85)) {
            d.drive(0);
        }
        recharged(d, chance);
    }

    private static void over(CaseDraft d, SeededRandom chance) {
        d.complaint = chance.of(
                "Smell of rotten eggs after longer drives, white crust on the posts.",
                "Lamp bulbs burn out all the time and the battery boils.",
                "Third battery dried out in two years.");
        d.setup.sourceFault = SourceFault.OVER;
        d.setup.sourceLevel = chance.between(15.3, 16.9);
        d.charge(chance.between(0.94, 1));
        d.batteryTest(d.setup.charge, chance.between(6, 16), false);
        if (chance.odds(0.85)) {
            d.chargingTest(d.setup.charge, 14.3, 14.2);
        }
        d.later(1);
        d.drive(0.1);
        d.later(24);
        if (chance.odds(0.5)) {
            d.batteryTest(chance.between(0.95, 1), chance.between(12, 24), true);
        }
    }

    private static void cable(CaseDraft d, SeededRandom chance) {
        d.complaint = chance.of(
                "Flat every two or three weeks. The charging was checked and is fine, they say.",
                "Charging shows 14.3 on the tester, battery is empty anyway.",
                "Since the repair after the accident the battery does not last.");
        d.setup.cableOhm = chance.between(0.02, 0.06);
        d.setup.loadsAtSource = chance.odds(0.6) ? 1 : 0;
        d.setup.voltageAtSource = true;
        d.setup.reportedV = true;
        d.setup.sensorOffsetV = chance.normal(0.03);
        d.setup.measuredA |= !d.setup.reportedA;
        if (d.setup.chemistry == Chemistry.GEL) {
            d.setup.chemistry = Chemistry.FLOODED;
        }
        d.charge(chance.between(0.42, 0.68));
        d.batteryTest(d.setup.charge, chance.between(4, 14), false);
        d.later(1);
        if (chance.odds(0.75)) {
            d.chargingTest(d.setup.charge, d.setup.managed ? 14.4 : d.setup.regulatedV, 14.2);
        }
        d.later(1);
        d.drive(0);
        recharged(d, chance);
    }

    private static void recharged(CaseDraft d, SeededRandom chance) {
        d.later(27);
        d.batteryTest(chance.between(0.95, 1), chance.between(12, 24), true);
        if (chance.odds(0.5)) {
            d.crankingTest(0.95);
        }
    }
}
