package org.voltdocket.demo.year;

import java.time.DayOfWeek;
import java.time.Instant;
import java.time.LocalDate;
import java.time.YearMonth;
import java.time.ZoneOffset;
import java.time.temporal.TemporalAdjusters;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import org.voltdocket.demo.model.SeededRandom;
import org.voltdocket.diagnosis.ChargingControl;
import org.voltdocket.diagnosis.Chemistry;
import org.voltdocket.diagnosis.CrankingStandard;
import org.voltdocket.diagnosis.Facts;
import org.voltdocket.kernel.BatterySerial;
import org.voltdocket.kernel.Vin;

/** The plan of the year: production, sales and their cases. Pure: the same last day gives the same year. */
final class YearPlan {

    static final int CASES = 3000;

    /** Weeks of production, and how long before the last day the newest of them lies. */
    static final int WEEKS = 60;

    static final int NEWEST_WEEK = 5;

    /** Weibull lives: months by which 63 % would be claimed, and the shape. */
    private static final double SCALE = 165;

    private static final double SHAPE = 1.15;
    private static final double DAYS_A_MONTH = 365.25 / 12;
    private static final String LETTERS = "ABCDEFGHJKLMNPRSTUVWXYZ0123456789";

    private final LocalDate last;
    private final SeededRandom chance = new SeededRandom(20_260_117);
    private final Map<String, Map<YearMonth, Integer>> sold = new TreeMap<>();
    private final StringBuilder ranges = new StringBuilder("type,batch,first_serial,last_serial,produced_on,count\n");
    private final List<YearCase> cases;

    /** @param day any day; the year ends on the Monday on or before it */
    YearPlan(LocalDate day) {
        this.last = day.with(TemporalAdjusters.previousOrSame(DayOfWeek.MONDAY));
        List<Claimed> claimed = new ArrayList<>();
        for (int back = WEEKS + NEWEST_WEEK - 1; back >= NEWEST_WEEK; back--) {
            for (BatteryProduct make : BatteryProduct.ALL) {
                week(make, last.minusWeeks(back), back, claimed);
            }
        }
        this.cases = cases(claimed);
    }

    private record Claimed(BatteryProduct make, String serial, LocalDate made, LocalDate sold, Instant at, boolean badBatch) {}

    /** The Monday on which the year ends. */
    LocalDate last() {
        return last;
    }

    /** Produced ranges, as the catalogue takes them. */
    String ranges() {
        return ranges.toString();
    }

    /** Sales by month, as the catalogue takes them. */
    String sales() {
        StringBuilder out = new StringBuilder("type,batch,month,sold\n");
        sold.forEach((batch, months) -> months.forEach((month, n) -> out.append(batch)
                .append(',')
                .append(month)
                .append(',')
                .append(n)
                .append('\n')));
        return out.toString();
    }

    /** In the order of claiming. */
    List<YearCase> cases() {
        return cases;
    }

    /** One batch: sold over the four months that follow, some of it claimed. */
    private void week(BatteryProduct make, LocalDate monday, int back, List<Claimed> claimed) {
        String batch = BatteryProduct.batch(monday);
        ranges.append(String.join(
                        ",",
                        make.type(),
                        batch,
                        make.serial(monday, 1),
                        make.serial(monday, make.aWeek()),
                        monday.plusDays(2).toString(),
                        String.valueOf(make.aWeek())))
                .append('\n');
        boolean bad = make.type().equals(BatteryProduct.BAD_TYPE) && back == BatteryProduct.BAD_WEEK;
        for (int i = 1; i <= make.aWeek(); i++) {
            LocalDate day = monday.plusDays(7 + (long) (110 * chance.between(0, 1) * chance.between(0.2, 1)));
            double months = life(bad);
            if (day.isBefore(last)) {
                sold.computeIfAbsent(make.type() + "," + batch, none -> new TreeMap<>())
                        .merge(YearMonth.from(day), 1, Integer::sum);
                Instant at = day.plusDays(1 + (long) (months * DAYS_A_MONTH))
                        .atTime(chance.whole(7, 16), chance.whole(0, 59))
                        .toInstant(ZoneOffset.UTC);
                if (at.isBefore(last.atStartOfDay().toInstant(ZoneOffset.UTC))) {
                    claimed.add(new Claimed(make, make.serial(monday, i), monday.plusDays(2), day, at, bad));
                }
            }
        }
    }

    private double life(boolean bad) {
        double usual = SCALE * StrictMath.pow(-StrictMath.log(1 - chance.between(0, 1)), 1 / SHAPE);
        return bad && chance.odds(0.3) ? chance.between(0.5, 6) : usual;
    }

    /** As many as the year has, spread evenly over all that could be. */
    private List<YearCase> cases(List<Claimed> claimed) {
        claimed.sort(Comparator.comparing(Claimed::at).thenComparing(Claimed::serial));
        List<YearCase> all = new ArrayList<>();
        double step = Math.max(1, (double) claimed.size() / CASES);
        for (double at = 0; at < claimed.size() && all.size() < CASES; at += step) {
            all.add(one(all.size(), claimed.get((int) at), all));
        }
        return List.copyOf(all);
    }

    private YearCase one(int number, Claimed claimed, List<YearCase> before) {
        YearFault trouble = claimed.badBatch() && chance.odds(0.9) ? YearFault.DEFECT : YearFault.draw(chance);
        YearWorkshop garage = garage();
        if (garage == YearWorkshop.HASTY && trouble.ofBattery() && !claimed.badBatch() && chance.odds(0.7)) {
            trouble = chance.of(YearFault.SHORT_TRIPS, YearFault.DRAIN, YearFault.SENSOR, YearFault.NOTHING);
        }
        boolean again = !trouble.ofBattery() && before.size() > 50 && chance.odds(0.06);
        Vin vin = again ? before.get(chance.whole(0, before.size() - 1)).vin() : vin();
        Instant decided = claimed.at().plusSeconds(3600L * chance.whole(20, 240));
        Instant arrived = decided.plusSeconds(86_400L * chance.whole(5, 20));
        Instant end = last.atStartOfDay().toInstant(ZoneOffset.UTC);
        boolean sentBack = chance.odds(trouble.ofBattery() ? 0.45 : 0.35);
        return new YearCase(
                number,
                new BatterySerial(claimed.serial()),
                vin,
                facts(claimed, trouble),
                garage,
                claimed.make(),
                claimed.sold(),
                trouble,
                claimed.at(),
                Optional.of(decided).filter(at -> at.isBefore(end)),
                Optional.of(arrived).filter(at -> sentBack && at.isBefore(end)),
                chance.whole(1, Integer.MAX_VALUE - 1));
    }

    private YearWorkshop garage() {
        double all = YearWorkshop.ALL.stream().mapToDouble(YearWorkshop::share).sum();
        double at = chance.between(0, all);
        for (YearWorkshop one : YearWorkshop.ALL) {
            at -= one.share();
            if (at < 0) {
                return one;
            }
        }
        return YearWorkshop.ALL.get(0);
    }

    private Facts facts(Claimed claimed, YearFault trouble) {
        LocalDate fitted = claimed.sold().plusDays(chance.whole(0, 1));
        LocalDate claimedOn = claimed.at().atZone(ZoneOffset.UTC).toLocalDate();
        fitted = fitted.isAfter(claimedOn) ? claimed.sold() : fitted;
        double days = Math.max(1, java.time.temporal.ChronoUnit.DAYS.between(fitted, claimedOn));
        double daily = trouble == YearFault.SHORT_TRIPS ? chance.between(2, 7) : chance.between(22, 60);
        double before = Math.round(chance.between(15_000, 150_000));
        BatteryProduct make = claimed.make();
        return new Facts(
                new Facts.BatteryFacts(
                        make.chemistry(),
                        make.capacityAh(),
                        make.ratedA(),
                        CrankingStandard.EN,
                        claimed.made(),
                        claimed.sold(),
                        fitted,
                        before),
                new Facts.VehicleFacts(
                        managed(make) ? ChargingControl.MANAGED : ChargingControl.CONVENTIONAL,
                        make.chemistry() == Chemistry.AGM || make.chemistry() == Chemistry.EFB,
                        make.chemistry(),
                        make.capacityAh(),
                        (double) Math.round(before + daily * days)),
                chance.of(
                        "Does not start in the morning.",
                        "Turns slowly, needed a helper battery.",
                        "Flat after the weekend.",
                        "Battery lamp was on, then nothing.",
                        "Stop-start has not worked for weeks."),
                chance.odds(0.15) ? 1 : 0);
    }

    static boolean managed(BatteryProduct make) {
        return make.chemistry() == Chemistry.AGM || make.chemistry() == Chemistry.EFB;
    }

    /** Valid in form only: no maker has this identifier. */
    private Vin vin() {
        StringBuilder out = new StringBuilder("XX8");
        for (int i = 0; i < 8; i++) {
            out.append(LETTERS.charAt(chance.whole(0, LETTERS.length() - 1)));
        }
        return new Vin(out + String.format(Locale.ROOT, "%06d", chance.whole(1, 999_999)));
    }
}
