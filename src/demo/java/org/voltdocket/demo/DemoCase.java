package org.voltdocket.demo;

import java.util.List;
import org.voltdocket.diagnosis.EvidenceKind;

/**
 * One case of the demo archive. The setting is invented: the Skerrivan islands, a ring road, a ferry, and one distributor
 * that sells batteries to the workshops of the islands.
 *
 * @param account the workshop account that opens it
 * @param scenario the true fault
 * @param seed selects the invented vehicle
 * @param complaint what the customer says
 * @param replacedBefore batteries replaced before for it
 * @param only kinds of evidence that the workshop sent in; empty for all there is
 * @param most how many of them it sent
 * @param earlier whether it is the battery that this vehicle had before
 */
record DemoCase(
        String account,
        Scenario scenario,
        long seed,
        String complaint,
        int replacedBefore,
        List<EvidenceKind> only,
        int most,
        boolean earlier) {

    private static final String LANTERN_YARD = "workshop";
    private static final String COPPER_QUAY = "workshop2";

    /** The archive in the order of opening; the last one is the newest in every list. */
    static final List<DemoCase> ALL = List.of(
            whole(LANTERN_YARD, Scenario.HEALTHY_MANAGED, 105, 0, """
                    Customer read 12.6 V on the display on the ring road and wants a new battery under warranty."""),
            whole(COPPER_QUAY, Scenario.HEALTHY_CONVENTIONAL, 100, 0, """
                    Would not start after the ferry crossing; the lamps had been left on. Battery claimed as faulty."""),
            whole(COPPER_QUAY, Scenario.WORN, 110, 0, """
                    Turns slowly on every cold morning now, needed the helper battery twice last week."""),
            whole(LANTERN_YARD, Scenario.CELL_SHORTED, 102, 0, """
                    Dead on the second morning after fitting. Smells a little when charged."""),
            whole(COPPER_QUAY, Scenario.STRAP_BROKEN, 115, 0, """
                    Lights are bright, but with the key turned everything goes dark. Sometimes it starts after all."""),
            whole(LANTERN_YARD, Scenario.WILL_NOT_HOLD, 111, 0, """
                    Charged on Saturday, flat on Tuesday, and the van stood in the shed all the time."""),
            whole(LANTERN_YARD, Scenario.SOURCE_DEAD, 103, 0, """
                    Red battery lamp since the hill, radio went off on the way home. New battery lasted two days."""),
            whole(COPPER_QUAY, Scenario.SOURCE_OVER, 110, 1, """
                    White crust on the posts and a smell after long drives. Second battery that has dried out."""),
            whole(COPPER_QUAY, Scenario.SENSOR_READS_LOW, 104, 1, """
                    Display says to charge the battery, but it is full whenever we test it. Case is swollen."""),
            whole(LANTERN_YARD, Scenario.CONTROL_STUCK, 119, 2, """
                    Flat every ten days although it does the school run and the ring road daily. Alternator is new."""),
            whole(COPPER_QUAY, Scenario.CABLE_RESISTANCE, 102, 1, """
                    Since the front was repaired the battery does not last. Charging shows over 14 V on the tester."""),
            whole(LANTERN_YARD, Scenario.DRAINED_AT_REST, 100, 1, """
                    Flat after the weekend on the mainland, fine when used every day. Tow bar was fitted in spring."""),
            whole(LANTERN_YARD, Scenario.SHORT_TRIPS, 100, 0, """
                    Bakery round with many halts, screen and seat heating always on. Weak by Friday."""),
            whole(COPPER_QUAY, Scenario.WRONG_TYPE, 101, 0, """
                    Stop-start has not worked since last summer; battery was bought at the ferry pier."""),
            whole(COPPER_QUAY, Scenario.TOO_SMALL, 103, 0, """
                    Always a little weak, also in summer. The owner chose the cheaper one that also fits the tray."""),
            new DemoCase(
                    LANTERN_YARD,
                    Scenario.HEALTHY_CONVENTIONAL,
                    106,
                    "Battery flat this morning. Nothing else known yet, customer waits.",
                    0,
                    List.of(EvidenceKind.BATTERY_TEST),
                    1,
                    false),
            new DemoCase(
                    LANTERN_YARD,
                    Scenario.SENSOR_READS_HIGH,
                    189,
                    "Second battery in this car, empty again after three weeks. Tests good after charging.",
                    1,
                    List.of(),
                    Integer.MAX_VALUE,
                    true),
            whole(LANTERN_YARD, Scenario.SENSOR_READS_HIGH, 189, 2, """
                    Third battery in this car within a year. Each one tests good after charging and is empty three \
                    weeks later. The scan tool shows good voltage and a charging current."""));

    private static DemoCase whole(String account, Scenario scenario, long seed, int replacedBefore, String complaint) {
        return new DemoCase(account, scenario, seed, complaint, replacedBefore, List.of(), Integer.MAX_VALUE, false);
    }

    /** The invented case behind it. */
    GeneratedCase generate() {
        GeneratedCase made = Generator.generate(scenario, seed);
        return earlier ? EarlierBattery.before(made) : made;
    }

    /** The files that the workshop sent in, in the order of taking. */
    List<GeneratedItem> sent(GeneratedCase made) {
        return made.items().stream()
                .filter(item -> only.isEmpty() || only.contains(item.reading().kind()))
                .limit(most)
                .toList();
    }
}
