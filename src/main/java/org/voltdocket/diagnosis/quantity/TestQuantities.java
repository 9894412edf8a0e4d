package org.voltdocket.diagnosis.quantity;

import java.time.Duration;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.function.Predicate;
import org.voltdocket.diagnosis.BatteryTest;
import org.voltdocket.diagnosis.ChargingTest;
import org.voltdocket.diagnosis.CrankingTest;
import org.voltdocket.diagnosis.Evidence;
import org.voltdocket.diagnosis.Facts;
import org.voltdocket.diagnosis.Origin;
import org.voltdocket.diagnosis.signal.NormalDistribution;
import org.voltdocket.kernel.Interval;

/** Quantities of the test records. */
public final class TestQuantities {

    /** A battery below this is charged before it is judged, % (vehicle workshop manuals: at least 75 %). */
    public static final double JUDGED_FROM = 75;
    /** The lower end of the interval of the charge must lie above this for an uncharged test that fails a battery, % (ours). */
    private static final double SURELY_ABOVE = JUDGED_FROM;

    private static final double WARM_C = 10;
    /** An uncharged test passes from this share of the rating on, % (ours; the battery gives more when charged). */
    private static final double PASSES = 80;

    /** Accuracy of a workshop voltmeter, V, standard error (common practice). */
    private static final double METER_SE_V = 0.02;

    /** A source whose voltage falls by more than this under load is judged by the loaded one, V (ours). */
    private static final double SAG_V = 0.5;
    /** A source that carries all loads keeps the posts above this, V, and one that does not charge below that (ours). */
    private static final double CARRIES_V = 12.5;

    private static final double NOT_CHARGING_V = 13.4;
    /** A condition less probable than this is not looked at (ours). */
    private static final double LEAST_CHANCE = 0.05;
    /** More than a sound cable and source lose under load, V (vehicle workshop manual, 2018: 0.3 V at 30 A). */
    private static final double DROP_V = 0.35;

    private final MeasurementContext reference;
    private final List<Measurement> out = new ArrayList<>();
    /** Probability that the battery was low when it came. */
    private double arrivedLow;

    private boolean judged;
    private boolean tested;
    private boolean unrated;

    private TestQuantities(MeasurementContext reference) {
        this.reference = reference;
    }

    /**
     * @param evidence in canonical order
     */
    public static TestQuantities of(List<Evidence> evidence, MeasurementContext reference) {
        TestQuantities all = new TestQuantities(reference);
        all.battery(evidence);
        for (Evidence item : evidence) {
            if (item.reading() instanceof CrankingTest test) {
                all.cranking(item, test);
            } else if (item.reading() instanceof ChargingTest test) {
                all.charging(item, test);
            }
        }
        return all;
    }

    public List<Measurement> measurements() {
        return out;
    }

    /** Whether a cranking current was measured at sufficient charge while its rating or a standard is missing. */
    public boolean unrated() {
        return unrated;
    }

    /** Whether a battery test was taken at all. */
    public boolean tested() {
        return tested;
    }

    /** Whether a test was taken at enough charge to judge the battery. */
    public boolean judged() {
        return judged;
    }

    private void add(String quantity, Evidence item, Interval value, double temperatureC) {
        out.add(Measurement.of(quantity, item, value).at(temperatureC));
    }

    private void battery(List<Evidence> evidence) {
        List<Evidence> tests = evidence.stream()
                .filter(e -> e.reading() instanceof BatteryTest)
                .sorted(Comparator.comparing((Evidence e) -> test(e).takenAt().toInstant())
                        .thenComparing(Evidence::sha256))
                .toList();
        tested = !tests.isEmpty();
        tests.stream().filter(e -> !charged(e)).findFirst().ifPresent(e -> {
            BatteryTest test = test(e);
            Interval soc = charge(test);
            arrivedLow = NormalDistribution.chanceBelow(soc, RestVoltage.LOW_CHARGE);
            Interval volts = Interval.ofStandardError(test.restVoltageV(), METER_SE_V);
            add("arrival-voltage", e, volts, test.temperatureC());
            if (!belowTable(test)) {
                add("arrival-charge", e, soc, test.temperatureC());
            }
        });
        List<Evidence> fit =
                tests.stream().filter(e -> charged(e) || surelyCharged(test(e))).toList();
        judged = !fit.isEmpty();
        last(fit, e -> charged(e)).ifPresent(this::rest);
        last(fit, e -> test(e).crankingCurrentA() != null)
                .or(() -> last(fit, e -> true))
                .ifPresent(this::delivered);
        held(tests.stream().filter(TestQuantities::charged).toList());
    }

    /** Charge lost between two tests of the charged battery that no drive lies between, as far as a week apart. */
    private void held(List<Evidence> charged) {
        for (int i = 1; i < charged.size(); i++) {
            BatteryTest before = test(charged.get(i - 1));
            BatteryTest after = test(charged.get(i));
            Duration apart = Duration.between(before.takenAt(), after.takenAt());
            if (apart.toHours() >= 12 && apart.toDays() < 7) {
                Interval lost = new Interval(
                        charge(before).value() - charge(after).value(),
                        charge(before).low() - charge(after).high(),
                        charge(before).high() - charge(after).low());
                add("charge-lost", charged.get(i), lost, after.temperatureC());
            }
        }
    }

    /** The last of these tests; a bench test before a workshop's. */
    private static Optional<Evidence> last(List<Evidence> tests, Predicate<Evidence> which) {
        List<Evidence> some = tests.stream().filter(which).toList();
        Optional<Evidence> bench =
                some.stream().filter(e -> e.origin() == Origin.BENCH).reduce((a, b) -> b);
        return bench.or(() -> some.stream().reduce((a, b) -> b));
    }

    /**
     * Whether a test that no charger went before shows enough charge for what it says. What fails must surely be charged, for
     * with less charge a sound battery gives less; what passes needs only be warm and about charged.
     */
    private boolean surelyCharged(BatteryTest test) {
        Interval soc = charge(test);
        boolean warm = test.temperatureC() >= WARM_C;
        boolean passes = warm
                && soc.value() >= JUDGED_FROM - 5
                && share(test).filter(share -> share.value() >= PASSES).isPresent();
        return passes || soc.low() >= SURELY_ABOVE;
    }

    /** Share of the rated cranking current, %; of the usual one of the size where the rating is missing. */
    private Optional<Interval> share(BatteryTest test) {
        if (test.crankingCurrentA() == null) {
            return Optional.empty();
        }
        Facts.BatteryFacts battery = reference.facts().battery();
        return unrated(test)
                ? Optional.of(CrankingReference.shareOfUsual(
                        test.crankingCurrentA(), test.crankingStandard(), battery.capacityAh()))
                : CrankingReference.shareOfRating(
                        test.crankingCurrentA(),
                        test.crankingStandard(),
                        battery.ratedCrankingA(),
                        battery.crankingStandard());
    }

    private boolean unrated(BatteryTest test) {
        Facts.BatteryFacts battery = reference.facts().battery();
        return battery.ratedCrankingA() == null
                || battery.crankingStandard() == null
                || test.crankingStandard() == null;
    }

    /** What the rest voltage after charging shows. */
    private void rest(Evidence item) {
        BatteryTest test = test(item);
        if (!belowTable(test)) {
            add("charge-after-recharge", item, charge(test), test.temperatureC());
        }
        add(
                "voltage-after-recharge",
                item,
                Interval.ofStandardError(test.restVoltageV(), METER_SE_V),
                test.temperatureC());
    }

    /** What the battery delivers, by a test at enough charge; a later one without a cranking current takes nothing back. */
    private void delivered(Evidence item) {
        BatteryTest test = test(item);
        Double rated = reference.facts().battery().ratedCrankingA();
        unrated = test.crankingCurrentA() != null && unrated(test);
        share(test)
                .ifPresent(share ->
                        add(unrated ? "cranking-share-by-size" : "cranking-share", item, share, test.temperatureC()));
        if (test.internalResistanceMilliohm() != null && rated != null && test.temperatureC() >= 5) {
            double value = test.internalResistanceMilliohm() * rated / 1000;
            add("resistance-by-rating", item, Interval.ofStandardError(value, 0.05 * value), test.temperatureC());
        }
    }

    private boolean belowTable(BatteryTest test) {
        return RestVoltage.belowTable(reference.chemistry(), test.restVoltageV(), test.temperatureC());
    }

    private static BatteryTest test(Evidence item) {
        return (BatteryTest) item.reading();
    }

    private static boolean charged(Evidence item) {
        return Boolean.TRUE.equals(test(item).chargedBefore());
    }

    private Interval charge(BatteryTest test) {
        return RestVoltage.charge(
                reference.chemistry(),
                test.restVoltageV(),
                test.temperatureC(),
                METER_SE_V,
                unrested(test.hoursSinceEngineStop()));
    }

    /**
     * Surface charge that may still be there, V: makers ask for 2 to 24 h of rest, and off a charge a 100 Ah battery
     * still fell by 0.4 V after two hours (vmehra813/lead_acid_battery_data).
     */
    private static double unrested(Double hours) {
        if (hours == null) {
            return 0.06;
        }
        return hours >= 12 ? 0.01 : hours >= 4 ? 0.06 : hours >= 2 ? 0.12 : 0.25;
    }

    private void cranking(Evidence item, CrankingTest test) {
        boolean low = test.minimumVoltageV() < CrankingReference.leastVoltage(test.temperatureC());
        double counts = low ? 1 - arrivedLow : 1;
        if (counts < LEAST_CHANCE) {
            return;
        }
        out.add(Measurement.of("cranking-minimum", item, Interval.ofStandardError(test.minimumVoltageV(), 0.05))
                .at(test.temperatureC())
                .given(counts));
    }

    private void charging(Evidence item, ChargingTest test) {
        double idle = test.idleVoltageV() == null ? Double.NaN : test.idleVoltageV();
        double loaded = test.loadedVoltageV() == null ? Double.NaN : test.loadedVoltageV();
        boolean sags = idle - loaded > SAG_V;
        double best = sags || Double.isNaN(idle) ? loaded : Double.isNaN(loaded) ? idle : Math.max(idle, loaded);
        if (!Double.isNaN(best)) {
            add("charging-test-best", item, Interval.ofStandardError(best, METER_SE_V), test.temperatureC());
        }
        if (!Double.isNaN(loaded)) {
            add("charging-test-loaded", item, Interval.ofStandardError(loaded, METER_SE_V), test.temperatureC());
        }
        if (!Double.isNaN(loaded) && !Double.isNaN(idle)) {
            add("load-drop", item, Interval.ofStandardError(idle - loaded, METER_SE_V), test.temperatureC());
            // a source that charges in either state is not commanded low
            if (loaded >= CARRIES_V && Math.max(idle, loaded) <= NOT_CHARGING_V) {
                add("drop-of-low-test", item, Interval.ofStandardError(idle - loaded, METER_SE_V), test.temperatureC());
            }
            if (idle - loaded > DROP_V) {
                add("idle-voltage-of-drop", item, Interval.ofStandardError(idle, METER_SE_V), test.temperatureC());
            }
        }
        if (test.ripplePeakToPeakV() != null) {
            double ripple = test.ripplePeakToPeakV();
            add("ripple", item, Interval.ofStandardError(ripple, 0.1 * ripple), test.temperatureC());
        }
    }
}
