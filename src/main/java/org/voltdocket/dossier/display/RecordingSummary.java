package org.voltdocket.dossier.display;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import org.voltdocket.diagnosis.Channel;
import org.voltdocket.diagnosis.Recording;

/**
 * A recording cut into equal stretches with least, mean and greatest of each channel: the chart for those who read it.
 *
 * @param stepS length of a stretch, s: a minute, or less or more where that gives too few or too many rows
 */
public record RecordingSummary(double stepS, List<Channel> channels, List<Stretch> stretches) {

    private static final double[] STEPS = {1, 5, 10, 60, 300, 600, 1800, 3600, 21600, 86400};
    private static final int MOST = 120;

    /** One stretch; a channel that was not sampled in it is absent. */
    public record Stretch(double from, double to, Map<Channel, Values> values) {

        /** Null where the channel was not sampled. */
        public Values of(Channel channel) {
            return values.get(channel);
        }
    }

    /** Least, plain mean of the samples, and greatest. */
    public record Values(double min, double mean, double max, int samples) {}

    public static RecordingSummary of(Recording recording) {
        double[] time = recording.timeS();
        List<Channel> channels = new ArrayList<>();
        for (Channel channel : Channel.values()) {
            if (recording.has(channel)) {
                channels.add(channel);
            }
        }
        double step = step(recording.durationS());
        List<Stretch> stretches = new ArrayList<>();
        int start = 0;
        while (start < time.length) {
            double from = Math.floor(time[start] / step) * step;
            int end = start;
            while (end < time.length && time[end] < from + step) {
                end++;
            }
            end = Math.max(end, start + 1);
            stretches.add(stretch(recording, channels, from, from + step, start, end));
            start = end;
        }
        return new RecordingSummary(step, channels, List.copyOf(stretches));
    }

    private static double step(double duration) {
        for (double step : STEPS) {
            if (duration / step <= MOST && (step >= 60 || duration <= 180)) {
                return step;
            }
        }
        return STEPS[STEPS.length - 1];
    }

    private static Stretch stretch(
            Recording recording, List<Channel> channels, double from, double to, int start, int end) {
        Map<Channel, Values> values = new EnumMap<>(Channel.class);
        for (Channel channel : channels) {
            float[] all = recording.channel(channel);
            double min = Double.POSITIVE_INFINITY;
            double max = Double.NEGATIVE_INFINITY;
            double sum = 0;
            int n = 0;
            for (int i = start; i < end; i++) {
                if (!Float.isNaN(all[i])) {
                    min = Math.min(min, all[i]);
                    max = Math.max(max, all[i]);
                    sum += all[i];
                    n++;
                }
            }
            if (n > 0) {
                values.put(channel, new Values(min, sum / n, max, n));
            }
        }
        return new Stretch(from, to, values);
    }
}
