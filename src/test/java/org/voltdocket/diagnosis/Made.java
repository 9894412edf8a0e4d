package org.voltdocket.diagnosis;

import java.util.Arrays;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.function.DoubleUnaryOperator;
import org.voltdocket.diagnosis.signal.Grid;
import org.voltdocket.kernel.Sha256;

/** Recordings made by hand, from curves over time. */
public final class Made {

    private final double[] timeS;
    private final Map<Channel, float[]> channels = new EnumMap<>(Channel.class);
    private EvidenceKind kind = EvidenceKind.DRIVE_RECORDING;

    private Made(double[] timeS) {
        this.timeS = timeS;
    }

    /**
     * @param hertz samples a second
     * @param seconds length, s
     */
    public static Made at(double hertz, double seconds) {
        double[] timeS = new double[(int) Math.round(hertz * seconds) + 1];
        Arrays.setAll(timeS, i -> i / hertz);
        return new Made(timeS);
    }

    /** A channel sampled at every row. */
    public Made with(Channel channel, DoubleUnaryOperator curve) {
        return with(channel, 1, curve);
    }

    /** A channel sampled at every so many rows, blank between. */
    public Made with(Channel channel, int every, DoubleUnaryOperator curve) {
        float[] values = new float[timeS.length];
        for (int i = 0; i < values.length; i++) {
            values[i] = i % every == 0 ? (float) curve.applyAsDouble(timeS[i]) : Float.NaN;
        }
        channels.put(channel, values);
        return this;
    }

    public Made as(EvidenceKind other) {
        kind = other;
        return this;
    }

    public Recording recording() {
        return new Recording(kind, null, timeS, channels, List.of());
    }

    public Grid grid() {
        return Grid.of(recording(), 1);
    }

    public Evidence evidence() {
        return evidence("made", recording());
    }

    public static Evidence evidence(String name, Reading reading) {
        return new Evidence(
                name, Sha256.of(name.getBytes(java.nio.charset.StandardCharsets.UTF_8)), Origin.WORKSHOP, reading);
    }

    /** Noise in which each value keeps a share of the one before, with the given standard deviation. */
    public static double[] noise(Random chance, int n, double sd, double kept) {
        double[] out = new double[n];
        double now = sd * chance.nextGaussian();
        for (int i = 0; i < n; i++) {
            out[i] = now;
            now = kept * now + sd * Math.sqrt(1 - kept * kept) * chance.nextGaussian();
        }
        return out;
    }

    /** A level that jumps to a new one every few seconds, as loads do. */
    public static double[] steps(Random chance, int n, double low, double high, int shortest, int longest) {
        double[] out = new double[n];
        for (int i = 0; i < n; ) {
            double level = low + (high - low) * chance.nextDouble();
            int end = Math.min(n, i + shortest + chance.nextInt(longest - shortest + 1));
            Arrays.fill(out, i, end, level);
            i = end;
        }
        return out;
    }
}
