package org.voltdocket.demo.model;

import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import org.voltdocket.diagnosis.Channel;
import org.voltdocket.diagnosis.EvidenceKind;
import org.voltdocket.diagnosis.Recording;

/**
 * The recording instrument: samples the measured channels at its own rate and requests one slow channel of the vehicle after
 * the other, so that most cells of a slow channel stay empty.
 */
final class Logger {

    private final SeededRandom chance;
    private final double stepV;
    private final double noiseV;
    private final double offsetV;
    private final double offsetA;
    private final double clamp;
    private final double gapFromS;
    private final double gapToS;
    private final double periodS;
    private final Map<Channel, float[]> columns = new EnumMap<>(Channel.class);
    private final Map<Channel, double[]> polls = new EnumMap<>(Channel.class);
    private final List<Recording.Mark> marks = new ArrayList<>();
    private double[] time = new double[4096];
    private int rows;
    private double next;

    Logger(ModelSettings setup, SeededRandom chance) {
        this.chance = chance;
        this.stepV = setup.measuredStepV;
        this.noiseV = setup.measuredNoiseV;
        this.offsetV = chance.normal(0.008);
        this.clamp = setup.smallClamp ? 0.01 : 0.06;
        this.offsetA = chance.normal(clamp);
        this.periodS = 1 / setup.rateHz;
        boolean lost = setup.gap;
        this.gapFromS = lost ? chance.between(0.3, 0.7) * setup.durationS : Double.MAX_VALUE;
        this.gapToS = lost ? gapFromS + chance.between(4, 25) : Double.MAX_VALUE;
        columns.put(Channel.MEASURED_V, new float[4096]);
        if (setup.measuredA) {
            columns.put(Channel.MEASURED_A, new float[4096]);
        }
    }

    /** Adds a slow channel, asked for every so many seconds. */
    void slow(Channel channel, double everyS) {
        float[] column = new float[time.length];
        columns.put(channel, column);
        polls.put(channel, new double[] {chance.between(0, everyS), everyS});
    }

    boolean due(double t) {
        return t >= next;
    }

    /** Opens a row; false in the gap. */
    boolean row(double t, double volts, double amperes, double rippleV) {
        next += periodS;
        if (t >= gapFromS && t < gapToS) {
            return false;
        }
        double stamp = Math.round((t + chance.between(0, 0.2) * Math.min(0.02, periodS)) * 1000) / 1000.0;
        if (rows == 0) {
            stamp = 0;
        }
        if (rows > 0 && stamp <= time[rows - 1]) {
            return false;
        }
        if (rows == time.length) {
            grow();
        }
        time[rows] = stamp;
        columns.values().forEach(column -> column[rows] = Float.NaN);
        double v = volts
                + offsetV
                + chance.normal(noiseV)
                + rippleV * StrictMath.sin(chance.between(0, 2 * Math.PI)) * 0.5;
        columns.get(Channel.MEASURED_V)[rows] = decimals(BatterySensor.step(v, stepV), 3);
        if (columns.containsKey(Channel.MEASURED_A)) {
            double a = amperes + offsetA + chance.normal(clamp + 0.003 * Math.abs(amperes));
            columns.get(Channel.MEASURED_A)[rows] = decimals(BatterySensor.step(a, clamp < 0.05 ? 0.01 : 0.05), 2);
        }
        rows++;
        return true;
    }

    /** Whether the open row is one at which this channel was asked for. */
    boolean asked(Channel channel, double t) {
        double[] poll = polls.get(channel);
        if (poll == null || t < poll[0]) {
            return false;
        }
        poll[0] += poll[1] * Math.max(1, Math.floor((t - poll[0]) / poll[1]) + 1);
        return true;
    }

    /** Writes into the open row. */
    void put(Channel channel, double value) {
        columns.get(channel)[rows - 1] = decimals(value, 3);
    }

    void mark(double t, String text) {
        marks.add(new Recording.Mark(t, text));
    }

    Recording done(EvidenceKind kind, OffsetDateTime startedAt) {
        Map<Channel, float[]> cut = new EnumMap<>(Channel.class);
        columns.forEach((channel, values) -> cut.put(channel, Arrays.copyOf(values, rows)));
        double[] stamps = Arrays.copyOf(time, rows);
        List<Recording.Mark> kept = marks.stream()
                .map(m -> new Recording.Mark(nearest(stamps, m.atS()), m.text()))
                .toList();
        return new Recording(kind, startedAt, stamps, cut, kept);
    }

    private void grow() {
        int more = time.length * 2;
        time = Arrays.copyOf(time, more);
        columns.replaceAll((channel, values) -> Arrays.copyOf(values, more));
    }

    private static double nearest(double[] stamps, double t) {
        int i = Arrays.binarySearch(stamps, t);
        return stamps[Math.min(stamps.length - 1, i < 0 ? -i - 1 : i)];
    }

    private static float decimals(double value, int digits) {
        double scale = StrictMath.pow(10, digits);
        return (float) (Math.round(value * scale) / scale);
    }
}
