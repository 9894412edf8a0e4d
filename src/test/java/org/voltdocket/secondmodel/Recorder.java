package org.voltdocket.secondmodel;

import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.Set;
import org.voltdocket.diagnosis.Channel;
import org.voltdocket.diagnosis.EvidenceKind;
import org.voltdocket.diagnosis.Recording;
import org.voltdocket.diagnosis.Regime;

/** Turns what happened into what a logger keeps: irregular, quantised, delayed, held, gappy and spiky. */
final class Recorder {

    /** A recording with one true label a row; null near a border. */
    record Taken(Recording recording, Regime[] truth) {}

    private static final Map<Channel, Trace.Of> VEHICLE = new EnumMap<>(Map.of(
            Channel.REPORTED_V, Trace.Of.VEHICLE_V,
            Channel.REPORTED_A, Trace.Of.SENSED_A,
            Channel.REPORTED_SOC, Trace.Of.SENSED_CHARGE,
            Channel.ENGINE_RPM, Trace.Of.RPM,
            Channel.SPEED, Trace.Of.SPEED,
            Channel.COOLANT, Trace.Of.COOLANT));

    private final Random chance;
    private final double ambientC;

    Recorder(Random chance, double ambientC) {
        this.chance = chance;
        this.ambientC = ambientC;
    }

    /**
     * @param hertz mean rate of the rows
     * @param clamp whether an independent clamp was on
     * @param bus channels a scan tool read; empty where there was none
     * @param faults whether gaps and spikes happen
     */
    Taken take(
            Trace trace,
            EvidenceKind kind,
            OffsetDateTime startedAt,
            double fromS,
            double hertz,
            boolean clamp,
            Set<Channel> bus,
            boolean faults) {
        double[] at = faults ? withGaps(times(trace, fromS, hertz)) : times(trace, fromS, hertz);
        Map<Channel, float[]> channels = new EnumMap<>(Channel.class);
        channels.put(Channel.MEASURED_V, measured(trace, at, faults));
        if (clamp) {
            channels.put(Channel.MEASURED_A, clamped(trace, at, kind == EvidenceKind.STANDING_RECORDING));
        }
        if (!bus.isEmpty()) {
            boolean held = chance.nextBoolean();
            double poll = 0.5 + 1.5 * chance.nextDouble();
            VEHICLE.forEach((channel, of) -> {
                float[] values = polled(trace, at, channel, of, poll, held);
                if (bus.contains(channel)) {
                    channels.put(channel, values);
                }
            });
            float[] ambient = new float[at.length];
            Arrays.fill(ambient, Math.round(ambientC));
            channels.put(Channel.AMBIENT, ambient);
        }
        double odd = chance.nextInt(4) == 0 ? Math.rint(chance.nextDouble() * 9e5) / 10 : 0;
        double[] clock = Arrays.stream(at)
                .map(t -> Math.rint((t - fromS + odd) * 1000) / 1000)
                .toArray();
        return new Taken(new Recording(kind, startedAt, clock, channels, List.of()), truth(trace, at));
    }

    private double[] times(Trace trace, double fromS, double hertz) {
        List<Double> all = new ArrayList<>();
        for (double t = fromS; t < trace.endS(); t += (0.75 + 0.5 * chance.nextDouble()) / hertz) {
            all.add(t);
        }
        return all.stream().mapToDouble(Double::doubleValue).toArray();
    }

    private double[] withGaps(double[] at) {
        double[] kept = at;
        for (int gaps = chance.nextInt(4); gaps > 0; gaps--) {
            double from = at[0] + (at[at.length - 1] - at[0]) * chance.nextDouble();
            double to = from + 2 + 30 * chance.nextDouble() * chance.nextDouble();
            kept = Arrays.stream(kept).filter(t -> t < from || t > to).toArray();
        }
        return kept;
    }

    private float[] measured(Trace trace, double[] at, boolean faults) {
        double noise = 0.002 + 0.010 * chance.nextDouble();
        double step = new double[] {0.005, 0.01, 0.02, 0.05}[chance.nextInt(4)];
        double bias = 0.006 * chance.nextGaussian();
        float[] values = new float[at.length];
        for (int i = 0; i < at.length; i++) {
            int row = trace.at(at[i]);
            double ripple = trace.get(Trace.Of.RPM, row) > 400 ? 0.012 * chance.nextGaussian() : 0;
            double v = trace.get(Trace.Of.POST_V, row) + bias + noise * chance.nextGaussian() + ripple;
            values[i] = (float) quantised(v, step);
        }
        for (int spikes = faults ? chance.nextInt(6) : 0; spikes > 0; spikes--) {
            int where = chance.nextInt(values.length);
            values[where] = (float) quantised(values[where] + 2.5 * (chance.nextDouble() - 0.4), step);
        }
        return values;
    }

    /** A clamp for small currents reads a sleeping car to some mA; the wide one has an offset of 50 mA. */
    private float[] clamped(Trace trace, double[] at, boolean small) {
        double fine = small ? 0.1 : 1;
        double zero = fine * 0.05 * chance.nextGaussian();
        float[] values = new float[at.length];
        for (int i = 0; i < at.length; i++) {
            double a = trace.get(Trace.Of.BATTERY_A, trace.at(at[i]));
            values[i] = (float) quantised(a * 1.003 + zero + fine * 0.08 * chance.nextGaussian(), fine * 0.05);
        }
        return values;
    }

    private float[] polled(Trace trace, double[] at, Channel channel, Trace.Of of, double poll, boolean held) {
        double delay = 0.2 + (channel == Channel.COOLANT ? 3 : 1.8) * chance.nextDouble() * chance.nextDouble() * 2;
        double step = step(channel);
        double bias = channel == Channel.REPORTED_V ? 0.04 * chance.nextGaussian() : 0;
        double noise = channel == Channel.REPORTED_V ? 0.01 : channel == Channel.REPORTED_A ? 0.05 : 0;
        double scale = channel == Channel.REPORTED_SOC ? 100 : 1;
        double lostFrom = chance.nextInt(5) == 0 ? at[0] + (at[at.length - 1] - at[0]) * chance.nextDouble() : -1;
        double lostTo = lostFrom + 10 + 40 * chance.nextDouble();
        float[] values = new float[at.length];
        float last = Float.NaN;
        double due = at[0] + chance.nextDouble() / poll;
        for (int i = 0; i < at.length; i++) {
            values[i] = held ? last : Float.NaN;
            if (at[i] < due || at[i] > lostFrom && at[i] < lostTo) {
                continue;
            }
            due = at[i] + (0.8 + 0.4 * chance.nextDouble()) / poll;
            int row = trace.at(Math.max(0, at[i] - delay * (0.9 + 0.2 * chance.nextDouble())));
            double asleep = channel == Channel.ENGINE_RPM && trace.get(Trace.Of.RPM, row) < 40 ? 0 : 1;
            double v = trace.get(of, row) * scale * asleep + bias + noise * chance.nextGaussian();
            last = (float) quantised(v, step);
            values[i] = last;
        }
        return values;
    }

    private double step(Channel channel) {
        return switch (channel) {
            case REPORTED_V -> new double[] {0.02, 0.05, 0.1}[chance.nextInt(3)];
            case REPORTED_A -> new double[] {0.05, 0.1, 0.25}[chance.nextInt(3)];
            case ENGINE_RPM -> 1;
            default -> 1;
        };
    }

    private static double quantised(double value, double step) {
        return Math.rint(value / step) * step;
    }

    private static Regime[] truth(Trace trace, double[] at) {
        Regime[] labels = new Regime[at.length];
        for (int i = 0; i < at.length; i++) {
            Regime now = trace.regime(trace.at(at[i]));
            Regime before = trace.regime(trace.at(Math.max(0, at[i] - 1)));
            Regime after = trace.regime(trace.at(at[i] + 1));
            boolean inside = now == Regime.CRANKING || now == before && now == after;
            labels[i] = inside ? now : null;
        }
        return labels;
    }
}
