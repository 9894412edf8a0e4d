package org.voltdocket.diagnosis.quantity;

import java.util.List;
import org.voltdocket.diagnosis.quantity.Quantities.Quantity;

/** The quantities of starts, of the source's behaviour, of nights asleep and capacity runs; part of the register. */
final class RecordingQuantities {

    static final List<Quantity> ALL = List.of(
            new Quantity(
                    "low-voltage-spread",
                    "V",
                    "Spread of the voltage of a source that carries the loads and never charges",
                    "10 % to 90 % quantile of 10 s means while moving, from 45 s after a start"),
            new Quantity(
                    "over-voltage-spread",
                    "V",
                    "Spread of a voltage that is too high for most of a drive",
                    "10 % to 90 % quantile of 10 s means while moving, from 45 s after a start"),
            new Quantity(
                    "charging-when-full",
                    "%",
                    "Running time at charging voltage, battery nearly full before",
                    "Share of 10 s means at 13.9 V or more; weighed with the probability of 86 % charge or more"),
            new Quantity(
                    "sag-over-rest",
                    "V",
                    "How far the posts stay above the rest voltage in the worst tenth of a drive in which the voltage sags",
                    "10 % quantile of 10 s means while moving less the rest voltage before the drive"),
            new Quantity(
                    "gap-by-voltage",
                    "ratio",
                    "How reported less measured voltage grows with the voltage, where no current is known",
                    "Slope of Huber's robust regression of the difference over the measured voltage, 5 s means"),
            new Quantity(
                    "drop-of-low-test",
                    "V",
                    "Drop under load of a charging test whose voltage is low and yet carries the loads",
                    "Idle less loaded voltage, where both lie between 12.5 and 13.4 V"),
            new Quantity(
                    "rows-in-start",
                    "count",
                    "Rows of a drive that show its first start",
                    "Changes of the measured voltage within the start; 0 where the recording shows none"),
            new Quantity(
                    "trip-length",
                    "s",
                    "Length of a trip",
                    "Median time from start to end of the trips that the recording shows whole"),
            new Quantity(
                    "best-of-sagging",
                    "V",
                    "Highest voltage of a source that the loads move and that stays short of regulation",
                    "98 % quantile of 10 s means below 14.05 V that spread by more than 0.25 V"),
            new Quantity(
                    "idle-voltage-of-drop",
                    "V",
                    "Voltage without load of a charging test in which it fell by more than 0.35 V under load",
                    "Read by the workshop's voltmeter, standard error 20 mV (common practice)"),
            new Quantity(
                    "inrush-sag",
                    "V",
                    "How far the posts fall as the starter engages",
                    "Voltage before less the least in the first 0.15 s; sampling may miss the deepest point"),
            new Quantity(
                    "cranking-plateau",
                    "V",
                    "Voltage at the posts while the starter turns steadily",
                    "Median from 0.25 s after the start to 0.08 s before its end"),
            new Quantity(
                    "compression-ripple",
                    "V",
                    "Swing of the plateau by compressions, peak to peak",
                    "Least squares of one sinusoid of 3 to 20 Hz (Lomb, 1976), bounds of Rife and Boorstyn (1974)"),
            new Quantity(
                    "compression-frequency",
                    "Hz",
                    "Compressions a second while cranking",
                    "Frequency of that sinusoid (Rife and Boorstyn, 1974)"),
            new Quantity(
                    "compression-unevenness",
                    "%",
                    "Largest less smallest swing by a compression, over their mean",
                    "Largest less least voltage within each period; the definition is ours"),
            new Quantity(
                    "recovery-time",
                    "s",
                    "From the end of cranking until nine tenths of the drop are made up",
                    "First sample back there, one sampling interval either way; the definition is ours"),
            new Quantity(
                    "restart-minimum",
                    "V",
                    "Least voltage of the deepest restart after a stop in traffic",
                    "Least sample of each restart, rows 0.12 s apart or closer; standard error 50 mV"),
            new Quantity(
                    "restart-trend",
                    "V",
                    "How much higher the last restart's least voltage lies than the first one's",
                    "Huber's robust line through four restarts or more"),
            new Quantity(
                    "stop-refusals",
                    "count",
                    "Standings of 10 s in a drive whose warm engine never stopped, charge reported 80 % or more",
                    "Counted where the vehicle has stop-start; 0 where it stopped at all; the definition is ours"),
            new Quantity(
                    "wake-ups",
                    "count",
                    "Wake-ups of the vehicle asleep",
                    "Bursts of 0.25 A or more over the quiet clamp current, joined within 30 s (ours)"),
            new Quantity(
                    "wake-up-length", "s", "Mean length of a wake-up", "Time within those bursts over their number"),
            new Quantity(
                    "wake-up-share",
                    "%",
                    "Share of the charge lost asleep that wake-ups take",
                    "Clamp current weighted with time, within the bursts over all"),
            new Quantity(
                    "capacity-gap",
                    "%",
                    "Share of a capacity run's time in which no current was recorded",
                    "Pauses over 300 s and over ten times the usual step (ours)"),
            new Quantity(
                    "capacity-share",
                    "%",
                    "Capacity at 25 °C as a share of the nominal one, from a run without long gaps",
                    "Time-weighted charge to the crossing of 10.50 V, C25 = Cθ·[1 - 0.01·(θ - 25)] (IEC 60095-1,"
                            + " EN 50342-1; from memory)"),
            new Quantity(
                    "capacity-at-higher-current",
                    "%",
                    "Capacity at the highest current of several runs as a share of the one at the lowest",
                    "Both at 25 °C; standard error 2 % each (common practice)"),
            new Quantity(
                    "peukert-exponent",
                    "ratio",
                    "Peukert's exponent over three runs or more at different currents",
                    "Slope of log time over log current (Peukert, 1897), Student's interval of the slope"));

    private RecordingQuantities() {}
}
