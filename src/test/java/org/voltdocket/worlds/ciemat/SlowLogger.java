package org.voltdocket.worlds.ciemat;

import java.time.OffsetDateTime;
import java.util.Arrays;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import org.voltdocket.diagnosis.Channel;
import org.voltdocket.diagnosis.EvidenceKind;
import org.voltdocket.diagnosis.Recording;
import org.voltdocket.worlds.Chance;
import org.voltdocket.worlds.Marks;
import org.voltdocket.worlds.Sampler;
import org.voltdocket.worlds.Setup;
import org.voltdocket.worlds.Trace;
import org.voltdocket.worlds.Trace.Of;
import org.voltdocket.worlds.World.Logged;

/** A logger of a row every 0.5 to 60 s with coarse resolution; it may be switched on after the start of the engine. */
final class SlowLogger {

    private final Trace trace;
    private final EvidenceKind kind;
    private final OffsetDateTime startedAt;
    private final Setup setup;
    private final Chance chance;

    SlowLogger(Trace trace, EvidenceKind kind, OffsetDateTime startedAt, Setup setup, Chance chance) {
        this.trace = trace;
        this.kind = kind;
        this.startedAt = startedAt;
        this.setup = setup;
        this.chance = chance;
    }

    Logged take() {
        double every = switch (kind) {
            case STANDING_RECORDING, DISCHARGE_RECORDING -> chance.one(10, 30, 60);
            case CRANKING_RECORDING -> 0.02;
            default -> chance.one(0.5, 1, 1, 2, 5, 10, 30, 60);
        };
        boolean drive = kind == EvidenceKind.DRIVE_RECORDING;
        double[] times = Sampler.times(from(drive), trace.endS(), every, 0, chance);
        Sampler sampler = new Sampler(trace, times, chance.of("samples"));
        double resolution = kind == EvidenceKind.CRANKING_RECORDING ? 0.01 : chance.one(0.01, 0.05, 0.1);
        Map<Channel, float[]> channels = new EnumMap<>(Channel.class);
        double bias = 0.012 * chance.normal();
        double held = chance.one(1, 1, 2, 3);
        channels.put(
                Channel.MEASURED_V,
                drive && held > 1
                        ? sampler.polled(Of.POST_V, held * every, 0, true, 1, bias, resolution)
                        : sampler.direct(Of.POST_V, bias, 0.005, resolution));
        fill(channels.get(Channel.MEASURED_V));
        if (kind == EvidenceKind.DISCHARGE_RECORDING
                || !drive && chance.happens(0.6)
                || drive && chance.happens(0.25)) {
            double fine = drive ? 1 : 0.2;
            channels.put(
                    Channel.MEASURED_A,
                    sampler.direct(Of.AMPERES, 0.08 * fine * chance.normal(), 0.1 * fine, 0.1 * fine));
        }
        if (drive && chance.happens(0.8)) {
            bus(sampler, channels, every);
        }
        List<Recording.Mark> marks =
                drive && chance.happens(0.6) ? Marks.of(trace, times[0], times[times.length - 1], chance) : List.of();
        Recording recording =
                new Recording(kind, chance.happens(0.8) ? startedAt : null, Sampler.clock(times), channels, marks);
        return new Logged(recording, times[0], times[times.length - 1]);
    }

    /** Some loggers wake up with the engine. */
    private double from(boolean drive) {
        boolean late = chance.happens(0.25) && drive && !trace.events().isEmpty();
        double after = chance.between(1, 25);
        return late ? trace.events().get(0).atS() + after : 0;
    }

    /** Rows before the first poll show the first value. */
    private static void fill(float[] values) {
        int first = 0;
        while (first < values.length - 1 && Float.isNaN(values[first])) {
            first++;
        }
        Arrays.fill(values, 0, first, values[first]);
    }

    private void bus(Sampler sampler, Map<Channel, float[]> channels, double every) {
        double poll = Math.max(every, chance.between(1, 6));
        double delay = chance.between(0.2, 1.5);
        channels.put(
                Channel.REPORTED_V,
                sampler.polled(Of.VEHICLE_V, poll, delay, true, 1, 0.06 * chance.normal(), chance.one(0.05, 0.1)));
        if (chance.happens(setup.managed() ? 0.7 : 0.15)) {
            channels.put(Channel.REPORTED_A, sampler.polled(Of.SENSED_A, poll, delay, true, 1, 0, chance.one(0.1, 1)));
        }
        if (chance.happens(setup.managed() ? 0.6 : 0.1)) {
            channels.put(Channel.REPORTED_SOC, sampler.polled(Of.BELIEVED, 15, 2, true, 100, 0, 1));
        }
        if (chance.happens(0.7)) {
            channels.put(Channel.ENGINE_RPM, sampler.polled(Of.RPM, poll, delay, true, 1, 0, 1));
        }
        if (chance.happens(0.7)) {
            channels.put(Channel.SPEED, sampler.polled(Of.SPEED, poll, delay, true, 1, 0, 1));
        }
        if (chance.happens(0.5)) {
            channels.put(Channel.AMBIENT, sampler.constant(StrictMath.rint(setup.ambientC())));
        }
    }
}
