package org.voltdocket.diagnosis.quantity;

import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.List;
import org.voltdocket.diagnosis.ChargingControl;
import org.voltdocket.diagnosis.Chemistry;
import org.voltdocket.diagnosis.Facts;
import org.voltdocket.diagnosis.History;
import org.voltdocket.kernel.Interval;

/** What the facts and the history of a case measure. */
public final class FactQuantities {

    private static final int SHORTEST_DAYS = 14;
    private static final double DAYS_A_YEAR = 365.25;

    /** Standard deviation of the service life of single batteries, a (common practice): no day of age decides. */
    private static final double LIFETIMES_DIFFER = 1.2;

    private FactQuantities() {}

    /**
     * @param day day of the newest evidence; null where no evidence has a date
     */
    public static List<Measurement> of(Facts facts, History history, LocalDate day) {
        List<Measurement> out = new ArrayList<>();
        Integer told = facts.batteriesReplacedBefore();
        int replaced =
                Math.max(told == null ? 0 : told, history.batteriesInVehicle().size());
        if (told != null || replaced > 0) {
            out.add(Measurement.exact("batteries-replaced", null, replaced));
        }
        type(facts, out);
        if (facts.vehicle().chargingControl() == ChargingControl.CONVENTIONAL) {
            out.add(Measurement.exact("managed", null, 0));
        } else if (facts.vehicle().chargingControl() == ChargingControl.MANAGED) {
            out.add(Measurement.exact("managed", null, 1));
        }
        Facts.BatteryFacts battery = facts.battery();
        if (battery.capacityAh() != null && facts.vehicle().requiredCapacityAh() != null) {
            double share = 100 * battery.capacityAh() / facts.vehicle().requiredCapacityAh();
            out.add(Measurement.exact("size-share", null, share));
        }
        if (day != null) {
            dated(facts, day, out);
        }
        return out;
    }

    private static void dated(Facts facts, LocalDate day, List<Measurement> out) {
        Facts.BatteryFacts battery = facts.battery();
        LocalDate born = battery.producedOn() != null
                ? battery.producedOn()
                : battery.soldOn() != null ? battery.soldOn() : battery.fittedOn();
        if (born != null && !born.isAfter(day)) {
            double age = ChronoUnit.DAYS.between(born, day) / DAYS_A_YEAR;
            double reach = Interval.Z95 * LIFETIMES_DIFFER;
            out.add(Measurement.of("battery-age", null, new Interval(age, Math.max(0, age - reach), age + reach)));
        }
        Double then = battery.fittedOdometerKm();
        Double now = facts.vehicle().odometerKm();
        if (battery.fittedOn() != null && then != null && now != null && now >= then) {
            long days = ChronoUnit.DAYS.between(battery.fittedOn(), day);
            if (days >= SHORTEST_DAYS) {
                out.add(Measurement.exact("daily-distance", null, (now - then) / days));
            }
        }
    }

    /** Steps of construction between what is fitted and what the vehicle needs; a stop-start vehicle needs EFB at least. */
    private static void type(Facts facts, List<Measurement> out) {
        Chemistry fitted = facts.battery().chemistry();
        Chemistry required = facts.vehicle().requiredChemistry();
        if (required == null && Boolean.TRUE.equals(facts.vehicle().stopStart())) {
            required = Chemistry.EFB;
        }
        if (fitted != null && required != null) {
            out.add(Measurement.exact("type-step", null, fitted == required ? 0 : rank(fitted) - rank(required)));
        }
    }

    private static int rank(Chemistry chemistry) {
        return switch (chemistry) {
            case FLOODED, GEL -> 0;
            case EFB -> 1;
            case AGM -> 2;
        };
    }
}
