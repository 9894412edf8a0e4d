package org.voltdocket.demo.year;

import java.time.LocalDate;
import java.time.temporal.IsoFields;
import java.util.List;
import java.util.Locale;
import org.voltdocket.diagnosis.Chemistry;

/**
 * A battery type of the demo's catalogue with its production and price.
 *
 * @param aWeek batteries made each week
 * @param price amount that a workshop claims for it, in cents
 */
record BatteryProduct(String type, Chemistry chemistry, double capacityAh, double ratedA, String stem, int aWeek, int price) {

    static final List<BatteryProduct> ALL = List.of(
            new BatteryProduct("FENN-A70", Chemistry.AGM, 70, 700, "YA70", 620, 17_450),
            new BatteryProduct("FENN-E52", Chemistry.EFB, 52, 540, "YE52", 430, 11_290),
            new BatteryProduct("TARR-E74", Chemistry.EFB, 74, 670, "YE74", 560, 13_980),
            new BatteryProduct("TARR-F60", Chemistry.FLOODED, 60, 530, "YF60", 610, 8_940),
            new BatteryProduct("TARR-F95", Chemistry.FLOODED, 95, 910, "YF95", 180, 15_600));

    /** The batch that is bad: this type, made in this week before the year's last. */
    static final String BAD_TYPE = "TARR-E74";

    static final int BAD_WEEK = 34;

    static String batch(LocalDate monday) {
        return String.format(
                Locale.ROOT,
                "Y%02d-W%02d",
                monday.get(IsoFields.WEEK_BASED_YEAR) % 100,
                monday.get(IsoFields.WEEK_OF_WEEK_BASED_YEAR));
    }

    String serial(LocalDate monday, int number) {
        return String.format(Locale.ROOT, "%s-%s-%05d", stem, batch(monday).substring(1), number);
    }
}
