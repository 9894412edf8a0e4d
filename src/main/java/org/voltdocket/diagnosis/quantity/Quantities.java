package org.voltdocket.diagnosis.quantity;

import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;

/**
 * Every quantity that the judge can measure. A quantity whose arithmetic changes gets a new number; the old one stays for
 * the editions of the rule book that rest on it.
 */
public final class Quantities {

    /**
     * A quantity.
     *
     * @param id name and number, as in {@code sensor-gain}
     * @param unit unit of its values; {@code count} for whole numbers, {@code ratio} for plain ones
     * @param meaning what it is, in one line
     * @param method how it is measured, and where the method comes from
     */
    public record Quantity(String id, String unit, String meaning, String method) {}

    private static final String SHARE_OURS = "Share of one second steps of the recording; the definition is ours";
    private static final String TABLES = "Rest-voltage tables: age-series/ElectricalAge2 and common practice";
    private static final String METER = "Read by the workshop's voltmeter, standard error 20 mV (common practice)";
    private static final String AGE =
            "From the facts of the case, against a service life that differs by 1.2 years from battery to battery";
    private static final String FACT = "From the facts of the case; exact";

    private static final List<Quantity> ALL = List.of(
            new Quantity(
                    "sensor-offset-by-clamp",
                    "A",
                    "What the vehicle's current sensor reads too high",
                    "Intercept of Huber's robust line of reported over clamp current, 5 s means"),
            new Quantity(
                    "sensor-offset-by-fit",
                    "A",
                    "What the vehicle's current sensor reads too high, by the circuit that fits the measured voltage",
                    "Nonlinear least squares of an equivalent circuit (Randles, 1947) on residuals freed of first-order"
                            + " correlation (Prais and Winsten, 1954), covariance by Newey and West (1987); starting"
                            + " values and the circuit's own error of 0.55 A for 70 Ah are ours"),
            new Quantity(
                    "sensor-asleep-in-drive",
                    "A",
                    "What the current sensor reads too high once the vehicle of a drive has fallen asleep",
                    "Steady reading after loads of 1.5 A or more fell off, less a drain of 0 to 1.5 A (ours)"),
            new Quantity(
                    "sensor-offset-together",
                    "A",
                    "What the vehicle's current sensor reads too high, by all that a drive without a clamp tells",
                    "Fit and reading asleep weighed by their errors, the fit less where they disagree (Birge, 1932),"
                            + " within what engine off and charging voltage allow"),
            new Quantity(
                    "offset-ways-disagree",
                    "A",
                    "Offset by clamp or fit less the one by the reading asleep",
                    "Difference of two independent values, errors added in squares"),
            new Quantity(
                    "offset-drive-and-rest-disagree",
                    "A",
                    "Offset by a drive less the one by a night's rest",
                    "Difference of two independent values, errors added in squares"),
            new Quantity(
                    "sensor-gain",
                    "ratio",
                    "Reported per true ampere",
                    "Slope of Huber's robust line of reported over clamp current, 5 s means"),
            new Quantity(
                    "sensor-at-rest",
                    "A",
                    "What the current sensor reads too high with the vehicle asleep",
                    "Mean reported current against the drain that is known, or against 0 to 1 A"),
            new Quantity(
                    "reported-charge-under-rest",
                    "%",
                    "Running time in which charging is reported while the posts lie under the rest voltage",
                    SHARE_OURS),
            new Quantity(
                    "reported-drain-while-held",
                    "%",
                    "Time held at charging voltage in which a discharge is reported",
                    SHARE_OURS),
            new Quantity(
                    "charge-seen-by-vehicle-only",
                    "%",
                    "Running time in which the vehicle sees charging voltage and current, and the posts see neither",
                    SHARE_OURS),
            new Quantity(
                    "reported-charge-error",
                    "%",
                    "Reported state of charge less the one of the rest voltage, points",
                    TABLES),
            new Quantity(
                    "answer-to-reported-need",
                    "%",
                    "Moving time in which a battery that is reported low is charged or held at charging voltage",
                    SHARE_OURS),
            new Quantity("charging-share-when-low", "%", "Moving time in which a low battery is charged", SHARE_OURS),
            new Quantity(
                    "holding-share-when-low", "%", "Moving time in which a low battery is merely held", SHARE_OURS),
            new Quantity(
                    "charging-when-low",
                    "A",
                    "Mean current into a low battery while the engine runs",
                    "Mean of 5 s means of the clamp, or of the reported current less its offset"),
            new Quantity(
                    "lift-when-low",
                    "V",
                    "Highest voltage while the engine runs, battery low before",
                    "Highest 10 s mean of the measured voltage, standard error 20 mV"),
            new Quantity(
                    "highest-charging-voltage",
                    "V",
                    "Highest voltage while the engine runs",
                    "Highest 10 s mean of the measured voltage, standard error 20 mV"),
            new Quantity(
                    "over-voltage-share", "%", "Running time above 15.05 V less 8 mV per K over 20 °C", SHARE_OURS),
            new Quantity(
                    "low-running-voltage-share",
                    "%",
                    "Moving time below 13.0 V less 3 mV per K over 20 °C",
                    SHARE_OURS),
            new Quantity(
                    "unsupported-share",
                    "%",
                    "Moving time in which the battery carries the loads, source never at charging voltage",
                    SHARE_OURS),
            new Quantity(
                    "unsupported-yet-lifted",
                    "%",
                    "Moving time in which the battery carries the loads, source at charging voltage at other times",
                    SHARE_OURS),
            new Quantity(
                    "failing-at-times",
                    "%",
                    "The smaller of charging and unsupported time, battery low before",
                    SHARE_OURS),
            new Quantity(
                    "gap-while-charging",
                    "V",
                    "Reported less measured voltage while charging, less the same with the engine off",
                    "Difference of medians, standard error 30 mV (ours)"),
            new Quantity(
                    "reported-voltage-bias",
                    "V",
                    "Reported less measured voltage at 13 V and no current",
                    "Constant of Huber's robust regression of the difference over measured voltage and current, 5 s means"),
            new Quantity(
                    "reported-voltage-gain",
                    "ratio",
                    "Reported per measured volt",
                    "Factor of the voltage in the same regression"),
            new Quantity(
                    "harness-resistance",
                    "mΩ",
                    "Resistance between the vehicle's voltmeter and the posts, cable and ground together",
                    "Factor of the current in the same regression (Ohm's law)"),
            new Quantity(
                    "harness-by-steps",
                    "mΩ",
                    "The same from steps of the load, free of bias, gain and drift",
                    "Slope of the change of the difference over the change of current, levels 10 s apart"),
            new Quantity(
                    "resistance-by-starts",
                    "mΩ",
                    "Internal resistance while cranking",
                    "Slope of voltage over clamp current, sample by sample (Ohm's law); median of the starts"),
            new Quantity(
                    "resistance-by-steps",
                    "mΩ",
                    "Internal resistance at steps of the load, engine running or off",
                    "Slope of voltage steps over current steps of the clamp (Ohm's law)"),
            new Quantity(
                    "resistance-by-rating",
                    "V",
                    "Internal resistance times rated cranking current",
                    "The narrower of the resistances by starts and by load steps"),
            new Quantity(
                    "rest-left",
                    "V",
                    "What the rest voltage before the drive has still to fall",
                    "Slope over time against 0.2 V a decade of time (published rests 0.12 to 0.26 V a decade)"),
            new Quantity(
                    "charge-before-drive",
                    "%",
                    "State of charge before the first start, what is left to relax taken off",
                    "Rest-voltage tables: age-series/ElectricalAge2 and common practice; rest as in rest-left"),
            new Quantity(
                    "charge-after-drive",
                    "%",
                    "State of charge by the rest after the drive",
                    "Voltage over the logarithm of time since the engine stopped, carried on to a day; rest-voltage tables"),
            new Quantity(
                    "charge-per-start",
                    "Ah",
                    "Charge gained over the recording for each start in it",
                    "Net charge over the number of starts"),
            new Quantity(
                    "charge-per-100-km",
                    "Ah",
                    "Charge gained over the recording for 100 km",
                    "Net charge over the distance, speed summed over time"),
            new Quantity(
                    "lift-when-cold",
                    "V",
                    "Highest voltage while the engine is cold",
                    "Highest 10 s mean with coolant below 40 °C, standard error 20 mV"),
            new Quantity(
                    "rise-when-slowing",
                    "V",
                    "Voltage while slowing down less the one at other times of moving",
                    "Difference of medians; slowing is 4 km/h or more within 3 s"),
            new Quantity(
                    "regulated-voltage",
                    "V",
                    "Voltage that the regulator holds while the vehicle moves",
                    "Median of 10 s means from 13.2 V on, where they are most of the time"),
            new Quantity(
                    "regulation-spread",
                    "V",
                    "Spread of that voltage",
                    "Robust standard deviation of the same 10 s means"),
            new Quantity(
                    "sag-under-load",
                    "V",
                    "How far the voltage falls below the regulated one in the worst tenth of the moving time",
                    "Median less 10 % quantile of 10 s means"),
            new Quantity(
                    "median-running-voltage",
                    "V",
                    "Voltage while the engine runs",
                    "Median of 10 s means of the measured voltage, standard error 20 mV"),
            new Quantity(
                    "charging-stopped",
                    "s",
                    "Time at the end of a drive without any charging, after the source had charged",
                    "From the last second at 13.4 V to the end, where the posts stay below 12.7 V; 0 elsewhere (ours)"),
            new Quantity(
                    "identical-voltages",
                    "%",
                    "Rows in which measured and reported voltage are equal to the last digit",
                    "Share of the rows that have both"),
            new Quantity(
                    "ripple-in-drive",
                    "V",
                    "Ripple at the posts, peak to peak",
                    "Middle 95 % of the samples within 0.25 s taken for a sine; median of the windows"),
            new Quantity(
                    "uncharged-though-told",
                    "%",
                    "Moving time without charging, battery low and the vehicle's own sensor honest",
                    "Share of one second steps of the recording; the definition is ours"),
            new Quantity(
                    "rests-as-claimed-full",
                    "%",
                    "Moving time without charging, battery low and taken for full by the vehicle",
                    "Share of one second steps of the recording; the definition is ours"),
            new Quantity(
                    "cranking-minimum",
                    "V",
                    "Least voltage at the posts while cranking",
                    "Least sample of the first start, or as tested; standard error 50 mV"),
            new Quantity(
                    "cranking-share",
                    "%",
                    "Cranking current as a share of the rated one",
                    "Conversions EN = 0.92 SAE, DIN = 0.58 EN (trade, from memory) where the standards differ"),
            new Quantity("arrival-voltage", "V", "Rest voltage at the first test of a battery as it came", METER),
            new Quantity(
                    "rest-after-driving",
                    "V",
                    "Rest voltage after a drive with 10 min at charging voltage",
                    "Median of the last 30 s, engine off for a minute or more, or a battery test within 12 h"),
            new Quantity(
                    "cranking-share-by-size",
                    "%",
                    "Cranking current as a share of the usual rating of the battery's size, where its rating is not known",
                    "Usual rating 8.8 A per Ah by EN, standard error 15 %; 600 A, 25 %, without a capacity (common practice)"),
            new Quantity("arrival-charge", "%", "State of charge at the first test of a battery as it came", TABLES),
            new Quantity("charge-after-recharge", "%", "State of charge at the deciding test, after charging", TABLES),
            new Quantity("voltage-after-recharge", "V", "Rest voltage at the deciding test, after charging", METER),
            new Quantity("charge-lost", "%", "Charge lost between two tests of the charged battery, points", TABLES),
            new Quantity(
                    "charging-test-best",
                    "V",
                    "Charging voltage of a charging test, loaded where it sags, else the higher",
                    METER),
            new Quantity("charging-test-loaded", "V", "Charging voltage with lamps and blower on", METER),
            new Quantity("load-drop", "V", "Charging voltage at idle less the one under load", METER),
            new Quantity(
                    "ripple", "V", "Ripple, peak to peak", "Read by the workshop's instrument, standard error 10 %"),
            new Quantity(
                    "batteries-replaced",
                    "count",
                    "Batteries replaced in the vehicle before",
                    "The greater of what was told and of other cases of the vehicle; exact"),
            new Quantity("managed", "count", "1 where the charging is managed, 0 where conventional", FACT),
            new Quantity("size-share", "%", "Nominal capacity as a share of the one the vehicle needs", FACT),
            new Quantity("type-step", "count", "Steps of construction above what the vehicle needs", FACT),
            new Quantity("battery-age", "a", "Age of the battery on the day of the newest evidence", AGE),
            new Quantity("daily-distance", "km/d", "Distance a day since the battery was fitted", FACT),
            new Quantity(
                    "standing-drain",
                    "A",
                    "Current out of the battery with the vehicle asleep",
                    "Mean of the clamp after the vehicle fell asleep, zero error 20 mA"),
            new Quantity(
                    "standing-drain-by-voltage",
                    "A",
                    "The same from the fall of the rest voltage",
                    "Slope of the voltage without its relaxation over the slope of the rest-voltage table"));

    private static final List<Quantity> EVERY =
            Stream.concat(ALL.stream(), RecordingQuantities.ALL.stream()).toList();

    private Quantities() {}

    /** All of them. */
    public static List<Quantity> all() {
        return EVERY;
    }

    /** The quantity with this identifier. */
    public static Optional<Quantity> find(String id) {
        return EVERY.stream().filter(q -> q.id().equals(id)).findFirst();
    }
}
