package org.voltdocket.diagnosis.quantity.standing;

import java.util.LinkedHashMap;
import java.util.Map;
import org.voltdocket.diagnosis.Channel;
import org.voltdocket.diagnosis.Recording;
import org.voltdocket.diagnosis.signal.Robust;
import org.voltdocket.kernel.Interval;

/** Wake-ups of a sleeping vehicle from the clamp current: number, mean length, share of the charge lost. */
final class WakeUps {

    /** A control unit awake takes more than this over what is asleep, A (common practice). */
    private static final double AWAKE_A = 0.25;

    private static final double NOISE_TIMES = 5;
    /** Two bursts closer than this are one wake-up, s (ours). */
    private static final double JOIN_S = 30;
    /** A pause between samples longer than this tells of no current, s (ours). */
    private static final double GAP_S = 120;

    private static final int SAMPLED = 20_000;

    private WakeUps() {}

    /** @param fromS from when on the vehicle counts as asleep, s */
    static Map<String, Interval> in(Recording recording, double fromS) {
        Map<String, Interval> out = new LinkedHashMap<>();
        float[] amperes = recording.channel(Channel.MEASURED_A);
        double[] time = recording.timeS();
        double[] some = some(time, amperes, fromS);
        if (Robust.count(some) < 100) {
            return out;
        }
        double quiet = Robust.median(some);
        double limit = quiet - Math.max(AWAKE_A, NOISE_TIMES * Robust.sd(some));
        double last = Double.NaN;
        double lastAwake = Double.NEGATIVE_INFINITY;
        int count = 0;
        double awakeS = 0;
        double awakeAs = 0;
        double allAs = 0;
        for (int i = 0; i < time.length; i++) {
            if (time[i] < fromS || Float.isNaN(amperes[i])) {
                continue;
            }
            double step = time[i] - last;
            double held = step <= GAP_S ? step : 0;
            last = time[i];
            allAs -= amperes[i] * held;
            if (amperes[i] < limit) {
                count += time[i] - lastAwake > JOIN_S ? 1 : 0;
                lastAwake = time[i];
                awakeS += held;
                awakeAs -= amperes[i] * held;
            }
        }
        out.put("wake-ups", Interval.exact(count));
        if (count > 0) {
            double each = awakeS / count;
            double error = 2 * recording.durationS() / recording.rows();
            out.put("wake-up-length", new Interval(each, Math.max(0, each - error), each + error));
        }
        if (allAs > 0) {
            out.put("wake-up-share", Interval.exact(Math.max(0, Math.min(100, 100 * awakeAs / allAs))));
        }
        return out;
    }

    private static double[] some(double[] time, float[] amperes, double fromS) {
        int every = Math.max(1, time.length / SAMPLED);
        double[] out = new double[time.length / every + 1];
        for (int i = 0; i < out.length; i++) {
            int row = i * every;
            out[i] = row < time.length && time[row] >= fromS ? amperes[row] : Double.NaN;
        }
        return out;
    }
}
