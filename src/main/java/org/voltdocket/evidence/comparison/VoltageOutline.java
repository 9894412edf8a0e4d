package org.voltdocket.evidence.comparison;

import java.nio.ByteBuffer;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.BitSet;
import java.util.List;
import org.voltdocket.diagnosis.Channel;
import org.voltdocket.diagnosis.Recording;
import org.voltdocket.diagnosis.signal.Robust;

/**
 * The measured voltage of a recording in coarse even steps. It hardly changes if somebody resamples the recording, cuts it
 * or drops a decimal.
 *
 * @param scale length of a step
 * @param resolutionV smallest difference between two values of the recording, V; 0 below 0.1 mV
 * @param volts mean by step, V, to the millivolt; NaN in gaps
 */
public record VoltageOutline(OutlineScale scale, double resolutionV, double[] volts) {

    /** Shortest outline, steps; a shorter course has too few features (ours). */
    static final int SHORTEST = 64;
    /** Longest outline, steps; the rest of the recording is ignored. */
    public static final int LONGEST = 40_000;
    /** Gaps up to this many steps are bridged by a straight line. */
    private static final int BRIDGE = 3;
    /** What is slower than this many steps either way is level, not course. */
    private static final int SLOW = 16;

    private static final double TOO_SLOW = 1.3;

    private static final short GAP = Short.MIN_VALUE;
    /** Of a volt, as packed: up to 21.8 V either way. */
    private static final double PARTS = 1500;

    /** Parts of a volt in which the resolution is measured and packed: 0.1 mV. */
    private static final int RESOLUTION_PARTS = 10_000;

    private static final double LEAST_PACKED = Short.MAX_VALUE;

    /** Outlines of a recording, finest first; none if it is too short or too slow for each scale. */
    public static List<VoltageOutline> of(Recording recording) {
        List<VoltageOutline> out = new ArrayList<>();
        float[] v = recording.channel(Channel.MEASURED_V);
        int samples = 0;
        for (float one : v) {
            samples += Float.isNaN(one) ? 0 : 1;
        }
        double interval = recording.durationS() / Math.max(1, samples - 1);
        for (OutlineScale scale : OutlineScale.values()) {
            boolean fine = interval <= TOO_SLOW * scale.stepS();
            if (fine && recording.durationS() >= SHORTEST * scale.stepS()) {
                out.add(new VoltageOutline(scale, resolution(v), steps(recording.timeS(), v, scale.stepS())));
            }
        }
        return out;
    }

    /** The smallest difference between two different values, V; 0 if there are not two, or if it is below 0.1 mV. */
    private static double resolution(float[] volts) {
        BitSet values = new BitSet();
        for (float v : volts) {
            if (v >= 0) {
                values.set(Math.round(v * RESOLUTION_PARTS));
            }
        }
        int least = Integer.MAX_VALUE;
        int last = values.nextSetBit(0);
        for (int next = values.nextSetBit(last + 1); last >= 0 && next >= 0; next = values.nextSetBit(next + 1)) {
            least = Math.min(least, next - last);
            last = next;
        }
        return least <= 1 || least > Short.MAX_VALUE ? 0 : (double) least / RESOLUTION_PARTS;
    }

    private static double[] steps(double[] time, float[] v, double stepS) {
        double first = time[0];
        int n = (int) Math.min(LONGEST, Math.floor((time[time.length - 1] - first) / stepS) + 1);
        double[] sum = new double[n];
        int[] count = new int[n];
        for (int row = 0; row < time.length; row++) {
            int k = (int) ((time[row] - first) / stepS);
            if (k < n && !Float.isNaN(v[row])) {
                sum[k] += v[row];
                count[k]++;
            }
        }
        for (int k = 0; k < n; k++) {
            sum[k] = count[k] == 0 ? Double.NaN : Math.rint(1000 * sum[k] / count[k]) / 1000;
        }
        bridge(sum);
        return sum;
    }

    private static void bridge(double[] values) {
        int last = -1;
        for (int k = 0; k < values.length; k++) {
            if (Double.isNaN(values[k])) {
                continue;
            }
            if (last >= 0 && k - last > 1 && k - last <= BRIDGE + 1) {
                for (int j = last + 1; j < k; j++) {
                    double between = values[last] + (values[k] - values[last]) * (j - last) / (k - last);
                    values[j] = Math.rint(1000 * between) / 1000;
                }
            }
            last = k;
        }
    }

    /**
     * The course without its level: mean of three steps less the mean of what is around, V; NaN in gaps and near the ends,
     * where a level would be one-sided.
     */
    double[] course() {
        double[] smooth = Robust.movingMean(volts, 1);
        double[] level = Robust.movingMean(volts, SLOW);
        for (int k = 0; k < smooth.length; k++) {
            boolean inner = k >= SLOW && k + SLOW < smooth.length;
            smooth[k] = inner ? smooth[k] - level[k] : Double.NaN;
        }
        return smooth;
    }

    /** Two bytes for the resolution and two for each step. */
    public byte[] packed() {
        ByteBuffer out = ByteBuffer.allocate(2 + 2 * volts.length);
        out.putShort((short) Math.rint(resolutionV * RESOLUTION_PARTS));
        for (double v : volts) {
            out.putShort(
                    Double.isNaN(v)
                            ? GAP
                            : (short) Math.rint(Math.max(-LEAST_PACKED, Math.min(LEAST_PACKED, PARTS * v))));
        }
        return out.array();
    }

    /** Reverses {@link #packed}, to 1 mV. */
    public static VoltageOutline unpacked(OutlineScale scale, byte[] packed) {
        ByteBuffer in = ByteBuffer.wrap(packed);
        double resolution = (double) in.getShort() / RESOLUTION_PARTS;
        double[] volts = new double[packed.length / 2 - 1];
        for (int k = 0; k < volts.length; k++) {
            short one = in.getShort();
            volts[k] = one == GAP ? Double.NaN : one / PARTS;
        }
        return new VoltageOutline(scale, resolution, volts);
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof VoltageOutline o
                && scale == o.scale
                && resolutionV == o.resolutionV
                && Arrays.equals(volts, o.volts);
    }

    @Override
    public int hashCode() {
        return 31 * scale.hashCode() + Arrays.hashCode(volts);
    }

    @Override
    public String toString() {
        return "outline of " + volts.length + " steps of " + scale.stepS() + " s";
    }
}
