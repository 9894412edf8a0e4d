package org.voltdocket.demo;

import java.time.LocalDate;
import java.time.OffsetDateTime;
import java.util.List;
import org.voltdocket.demo.model.SeededRandom;
import org.voltdocket.demo.model.ModelSettings;
import org.voltdocket.demo.model.Workshop;
import org.voltdocket.diagnosis.BatteryTest;
import org.voltdocket.diagnosis.Facts;
import org.voltdocket.kernel.BatterySerial;

/** The previous battery of the same vehicle and type: it was also discharged, and sound after charging. */
final class EarlierBattery {

    private static final int DAYS_BEFORE = 120;

    private EarlierBattery() {}

    /** The case of the battery before that of {@code later}. */
    static GeneratedCase before(GeneratedCase later) {
        SeededRandom chance = new SeededRandom(later.seed() + 7);
        Facts.BatteryFacts battery = later.facts().battery();
        LocalDate returned = battery.fittedOn().minusDays(1);
        LocalDate fitted = returned.minusDays(DAYS_BEFORE);
        double km = later.facts().vehicle().odometerKm() - battery.fittedOdometerKm();
        double fittedKm = battery.fittedOdometerKm() - Math.max(1500, Math.round(km));
        Facts.BatteryFacts earlier = new Facts.BatteryFacts(
                battery.chemistry(),
                battery.capacityAh(),
                battery.ratedCrankingA(),
                battery.crankingStandard(),
                fitted.minusDays(70),
                fitted.minusDays(3),
                fitted,
                fittedKm);
        Facts.VehicleFacts vehicle = new Facts.VehicleFacts(
                later.facts().vehicle().chargingControl(),
                later.facts().vehicle().stopStart(),
                later.facts().vehicle().requiredChemistry(),
                later.facts().vehicle().requiredCapacityAh(),
                battery.fittedOdometerKm());
        Facts facts = new Facts(earlier, vehicle, later.facts().complaint(), 1);
        ModelSettings setup = new ModelSettings();
        setup.chemistry = battery.chemistry();
        setup.capacityAh = battery.capacityAh();
        BatteryTest.Instrument instrument = new BatteryTest.Instrument("HM-417", fitted.minusDays(40));
        Workshop workshop = new Workshop(setup, chance, instrument);
        OffsetDateTime morning =
                returned.minusDays(2).atTime(8, 25).atOffset(later.takenAt().getOffset());
        BatteryTest low =
                workshop.battery(morning, 0.42, 0, 11, false, 14, battery.ratedCrankingA(), battery.crankingStandard());
        BatteryTest charged = workshop.battery(
                morning.plusHours(27), 0.98, 0.02, 16, true, 16, battery.ratedCrankingA(), battery.crankingStandard());
        String day = returned.toString();
        BatterySerial serial =
                new BatterySerial(later.serial().value().substring(0, 4) + "-" + fitted.getYear() + "-00731");
        return new GeneratedCase(
                later.scenario(),
                later.seed(),
                serial,
                later.vin(),
                facts,
                List.of(
                        new GeneratedItem("01-battery-test-" + day + ".json", low, TestFile.json(low)),
                        new GeneratedItem("02-battery-test-" + day + ".json", charged, TestFile.json(charged))),
                List.of());
    }
}
