package org.voltdocket.worlds;

import java.time.LocalDate;
import org.voltdocket.diagnosis.Cause;
import org.voltdocket.diagnosis.ChargingControl;
import org.voltdocket.diagnosis.CrankingStandard;
import org.voltdocket.diagnosis.Facts;

/** What the workshop enters of battery and vehicle; some of it is often missing. */
final class FactsMaker {

    /** Share of cases of which only serial and VIN are known. */
    private static final double NOTHING_KNOWN = 0.12;
    /** Share of single facts that are missing elsewhere. */
    private static final double MISSING = 0.12;

    private final Chance chance;
    private final boolean complete;

    private FactsMaker(Chance chance, boolean complete) {
        this.chance = chance;
        this.complete = complete;
    }

    /** The same facts with nothing missing. */
    static Facts complete(Setup setup, LocalDate day) {
        Chance chance = setup.chance().of("facts");
        chance.happens(NOTHING_KNOWN);
        return new FactsMaker(chance, true).facts(setup, day);
    }

    static Facts of(Setup setup, LocalDate day) {
        Chance chance = setup.chance().of("facts");
        return chance.happens(NOTHING_KNOWN) ? Facts.UNKNOWN : new FactsMaker(chance, false).facts(setup, day);
    }

    private Facts facts(Setup setup, LocalDate day) {
        boolean shortTrips = setup.effects().shortTrips();
        double perMonth = shortTrips ? chance.between(50, 320) : chance.between(700, 2200);
        LocalDate fitted = day.minusDays((long) (setup.ageMonths() * 30.4));
        double odometer = StrictMath.rint(chance.between(5_000, 180_000));
        Double fittedKm = known(odometer);
        return new Facts(
                new Facts.BatteryFacts(
                        known(setup.chemistry()),
                        known(setup.fittedAh()),
                        known(setup.ratedA()),
                        CrankingStandard.EN,
                        known(fitted.minusDays(30 + chance.below(150))),
                        known(fitted.minusDays(chance.below(6))),
                        known(fitted),
                        fittedKm),
                new Facts.VehicleFacts(
                        control(setup.managed()),
                        known(Car.of(setup).stopStart()),
                        known(setup.required()),
                        known(setup.requiredAh()),
                        known(odometer + StrictMath.rint(setup.ageMonths() * perMonth))),
                null,
                known(replaced(setup.fault().cause())));
    }

    private ChargingControl control(boolean managed) {
        ChargingControl known = managed ? ChargingControl.MANAGED : ChargingControl.CONVENTIONAL;
        return chance.happens(0.2) && !complete ? ChargingControl.UNKNOWN : known;
    }

    /** A fault of the vehicle wears out one battery after the other; others seldom do. */
    private int replaced(Cause cause) {
        boolean vehicle = switch (cause) {
            case CHARGING_SOURCE, CURRENT_SENSOR, CHARGE_CONTROL, WIRING, STANDING_DRAIN -> true;
            default -> false;
        };
        return chance.happens(vehicle ? 0.5 : 0.15) ? 1 + chance.below(2) : 0;
    }

    private <T> T known(T fact) {
        return chance.happens(MISSING) && !complete ? null : fact;
    }
}
