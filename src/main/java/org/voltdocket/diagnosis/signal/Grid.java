package org.voltdocket.diagnosis.signal;

import java.util.Arrays;
import java.util.EnumMap;
import java.util.Map;
import org.voltdocket.diagnosis.Channel;
import org.voltdocket.diagnosis.Recording;

/**
 * A recording on even steps of time. The measured voltage is the median of each step, so spikes and quantisation do not
 * carry over; slow channels are held at their last sample until it is too old.
 */
public final class Grid {

    /** Longest stretch without a voltage sample that is bridged by a straight line, s. */
    static final double BRIDGE_S = 5;
    /** A recording with rows further apart is bridged from row to row, up to this, s (ours). */
    private static final double LONGEST_BRIDGE_S = 100;
    /** The same in usual distances of the rows (ours). */
    private static final double BRIDGED_ROWS = 1.6;
    /** Fewer rows do not tell how far apart they usually are. */
    private static final int FEWEST_ROWS = 20;

    private static final int MAX_STEPS = 40_000;

    private final Recording recording;
    private final double stepS;
    private final double startS;
    private final int steps;
    private final double[] voltage;
    private final Map<Channel, Double> intervals = new EnumMap<>(Channel.class);
    private int[] ends;
    private int[] upToCentres;

    private Grid(Recording recording, double stepS) {
        this.recording = recording;
        this.stepS = stepS;
        this.startS = recording.timeS()[0];
        this.steps = Math.max(1, (int) Math.floor(recording.durationS() / stepS) + 1);
        this.voltage = new double[steps];
        fillVoltage();
    }

    /**
     * @param stepS wanted step, s; widened for recordings so long that they would take over 40 000 steps
     */
    public static Grid of(Recording recording, double stepS) {
        return new Grid(recording, Math.max(stepS, recording.durationS() / MAX_STEPS));
    }

    private void fillVoltage() {
        double[] time = recording.timeS();
        float[] v = recording.channel(Channel.MEASURED_V);
        double[] box = new double[16];
        int row = 0;
        for (int k = 0; k < steps; k++) {
            double end = startS + (k + 1) * stepS;
            int n = 0;
            while (row < time.length && (time[row] < end || k == steps - 1)) {
                if (!Float.isNaN(v[row])) {
                    if (n == box.length) {
                        box = Arrays.copyOf(box, 2 * n);
                    }
                    box[n++] = v[row];
                }
                row++;
            }
            voltage[k] = median(box, n);
        }
        bridge(voltage);
    }

    /** Median of the first {@code n}, which are put into order; up to three need none. */
    private static double median(double[] box, int n) {
        switch (n) {
            case 0:
                return Double.NaN;
            case 1:
                return box[0];
            case 2:
                return 0.5 * (box[0] + box[1]);
            case 3:
                double low = Math.min(box[0], box[1]);
                return Math.max(low, Math.min(Math.max(box[0], box[1]), box[2]));
            default:
                Selection.sort(box, 0, n);
                return n % 2 == 1 ? box[n / 2] : 0.5 * (box[n / 2 - 1] + box[n / 2]);
        }
    }

    private void bridge(double[] values) {
        double rows = recording.rows() < FEWEST_ROWS ? 0 : Math.min(LONGEST_BRIDGE_S, BRIDGED_ROWS * rowS());
        double longest = Math.max(Math.max(BRIDGE_S, 3 * stepS), rows);
        int last = -1;
        for (int k = 0; k < steps; k++) {
            if (Double.isNaN(values[k])) {
                continue;
            }
            if (last >= 0 && k - last > 1 && (k - last) * stepS <= longest) {
                for (int j = last + 1; j < k; j++) {
                    values[j] = values[last] + (values[k] - values[last]) * (j - last) / (k - last);
                }
            }
            last = k;
        }
    }

    /**
     * A channel held on the grid.
     *
     * @param delayS how much later than the truth the channel says it, s; taken off here
     * @return values by step, NaN where there is no sample young enough; null where the channel was not recorded
     */
    public double[] held(Channel channel, double delayS) {
        float[] values = recording.channel(channel);
        if (values == null) {
            return null;
        }
        double[] time = recording.timeS();
        double keep = Math.max(BRIDGE_S, 3 * intervals.computeIfAbsent(channel, c -> medianInterval(time, values)));
        int[] rows = upToCentres(delayS);
        double[] out = new double[steps];
        int from = 0;
        double value = Double.NaN;
        double at = Double.NEGATIVE_INFINITY;
        for (int k = 0; k < steps; k++) {
            double centre = startS + (k + 0.5) * stepS + delayS;
            int last = rows[k] - 1;
            while (last >= from && Float.isNaN(values[last])) {
                last--;
            }
            if (last >= from) {
                value = values[last];
                at = time[last];
            }
            from = rows[k];
            out[k] = centre - at <= keep ? value : Double.NaN;
        }
        return out;
    }

    /** By step, how many rows are not later than its centre; all channels held without a delay share one. */
    private int[] upToCentres(double delayS) {
        if (delayS != 0) {
            return RowIndex.upToCentres(recording.timeS(), startS, stepS, steps, delayS);
        }
        if (upToCentres == null) {
            upToCentres = RowIndex.upToCentres(recording.timeS(), startS, stepS, steps, 0);
        }
        return upToCentres;
    }

    /** A fast channel averaged over each step, NaN where not sampled; null where not recorded. */
    public double[] mean(Channel channel) {
        float[] values = recording.channel(channel);
        if (values == null) {
            return null;
        }
        double[] out = new double[steps];
        int row = 0;
        for (int k = 0; k < steps; k++) {
            double sum = 0;
            int count = 0;
            for (; row < ends()[k]; row++) {
                if (!Float.isNaN(values[row])) {
                    sum += values[row];
                    count++;
                }
            }
            out[k] = count == 0 ? Double.NaN : sum / count;
        }
        bridge(out);
        return out;
    }

    /** Usual time between two samples of the measured voltage, s. */
    public double rowS() {
        float[] v = recording.channel(Channel.MEASURED_V);
        return intervals.computeIfAbsent(Channel.MEASURED_V, c -> medianInterval(recording.timeS(), v));
    }

    private static double medianInterval(double[] time, float[] values) {
        double[] gaps = new double[Math.min(values.length, 2000)];
        int n = 0;
        double last = Double.NaN;
        for (int row = 0; row < values.length && n < gaps.length; row++) {
            if (!Float.isNaN(values[row])) {
                if (!Double.isNaN(last)) {
                    gaps[n++] = time[row] - last;
                }
                last = time[row];
            }
        }
        return n == 0 ? 0 : Robust.quantileOfOwn(gaps, n, 0.5);
    }

    /** The recording this grid lies over. */
    public Recording recording() {
        return recording;
    }

    /** Step, s. */
    public double stepS() {
        return stepS;
    }

    /** Time of the first row, s. */
    public double startS() {
        return startS;
    }

    /** Number of steps. */
    public int steps() {
        return steps;
    }

    /** Step that a time falls into, the first or last one for a time beyond the ends. */
    public int stepOf(double atS) {
        return Math.max(0, Math.min(steps - 1, (int) ((atS - startS) / stepS)));
    }

    /** By step, the first row behind it. Not to be written to. */
    public int[] ends() {
        if (ends == null) {
            ends = RowIndex.ends(recording.timeS(), startS, stepS, steps);
        }
        return ends;
    }

    /** Start of a step, s. */
    public double timeOf(int step) {
        return startS + step * stepS;
    }

    /** Median measured voltage by step, V, NaN in gaps. Not to be written to. */
    public double[] voltage() {
        return voltage;
    }
}
