package org.voltdocket.diagnosis.signal;

import org.voltdocket.diagnosis.Channel;
import org.voltdocket.diagnosis.Recording;

/**
 * How much later a slow channel tells what the measured voltage (for a current, the clamp where there is one) shows at
 * once.
 *
 * <p>Both are freed of what is slower than 6 s, and the shift with the highest correlation is taken, refined by a
 * parabola through its neighbours (standard cross-correlation delay estimate).
 */
public final class Delay {

    private static final double STEP_S = 0.25;
    private static final double LATEST_S = 6;
    private static final double SLOW_S = 6;
    private static final double CLIP_SD = 4;
    /** Below this correlation the two do not resemble each other enough to tell a delay. */
    private static final double RESEMBLANCE = 0.25;

    private final Recording recording;
    private Grid grid;
    private double[] room;
    private double[] voltage;

    /** @param recording the one whose channels are asked for */
    public Delay(Recording recording) {
        this.recording = recording;
    }

    /** As {@link #of(Channel)}, for one channel of a recording. */
    public static double of(Recording recording, Channel channel) {
        return new Delay(recording).of(channel);
    }

    /**
     * The channel's delay, s, 0 to 6; 0 where it cannot be told.
     */
    public double of(Channel channel) {
        if (!recording.has(channel)) {
            return 0;
        }
        if (grid == null) {
            grid = Grid.of(recording, STEP_S);
            room = new double[grid.steps() + 1];
        }
        boolean clamped = channel == Channel.REPORTED_A && recording.has(Channel.MEASURED_A);
        double[] measured = clamped ? quick(grid.mean(Channel.MEASURED_A)) : quickVoltage();
        double[] reported = quick(grid.held(channel, 0));
        double[] score = LagCorrelation.of(measured, reported, (int) Math.round(LATEST_S / grid.stepS()) + 1);
        int best = 0;
        for (int lag = 1; lag < score.length; lag++) {
            best = score[lag] > score[best] ? lag : best;
        }
        if (!(score[best] >= RESEMBLANCE)) {
            return 0;
        }
        return (best + vertex(score, best)) * grid.stepS();
    }

    private double[] quickVoltage() {
        if (voltage == null) {
            voltage = quick(grid.voltage());
        }
        return voltage;
    }

    private double[] quick(double[] values) {
        double[] out = Robust.movingMean(values, (int) Math.round(SLOW_S / grid.stepS() / 2), room);
        for (int i = 0; i < values.length; i++) {
            out[i] = values[i] - out[i];
        }
        double clip = CLIP_SD * Math.max(Robust.sd(out, room), 1e-6);
        for (int i = 0; i < out.length; i++) {
            out[i] = Double.isNaN(out[i]) ? Double.NaN : Math.max(-clip, Math.min(clip, out[i]));
        }
        return out;
    }

    private static double vertex(double[] score, int best) {
        if (best == 0 || best == score.length - 1) {
            return 0;
        }
        double left = score[best - 1];
        double right = score[best + 1];
        double bend = left - 2 * score[best] + right;
        return bend < 0 ? 0.5 * (left - right) / bend : 0;
    }
}
