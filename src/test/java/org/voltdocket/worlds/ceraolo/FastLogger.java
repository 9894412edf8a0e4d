package org.voltdocket.worlds.ceraolo;

import java.time.OffsetDateTime;
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

/** A logger of 1 to 10 rows a second and fine resolution; the bus is polled more slowly and leaves blanks. */
final class FastLogger {

    private final Trace trace;
    private final EvidenceKind kind;
    private final OffsetDateTime startedAt;
    private final Setup setup;
    private final Chance chance;

    FastLogger(Trace trace, EvidenceKind kind, OffsetDateTime startedAt, Setup setup, Chance chance) {
        this.trace = trace;
        this.kind = kind;
        this.startedAt = startedAt;
        this.setup = setup;
        this.chance = chance;
    }

    Logged take() {
        double every = switch (kind) {
            case STANDING_RECORDING -> chance.one(2, 5, 10);
            case DISCHARGE_RECORDING -> chance.one(10, 30, 60);
            case CRANKING_RECORDING -> chance.one(0.005, 0.01);
            default -> chance.one(0.1, 0.1, 0.2, 0.5, 1);
        };
        boolean drive = kind == EvidenceKind.DRIVE_RECORDING;
        double[] times = Sampler.times(0, trace.endS(), every, 0.1, chance);
        times = drive ? Sampler.withGaps(times, chance.below(3), 20, chance) : times;
        Sampler sampler = new Sampler(trace, times, chance.of("samples"));
        Map<Channel, float[]> channels = new EnumMap<>(Channel.class);
        channels.put(
                Channel.MEASURED_V,
                sampler.direct(Of.POST_V, 0.006 * chance.normal(), 0.003, chance.one(0.001, 0.005, 0.01)));
        boolean bench = kind == EvidenceKind.DISCHARGE_RECORDING;
        boolean clamp = chance.happens(drive ? 0.45 : 0.8);
        if (bench || clamp && kind != EvidenceKind.CRANKING_RECORDING) {
            double fine = drive ? 1 : 0.1;
            channels.put(
                    Channel.MEASURED_A,
                    sampler.direct(Of.AMPERES, 0.06 * fine * chance.normal(), 0.1 * fine, 0.05 * fine));
        }
        if (drive && chance.happens(0.75)) {
            bus(sampler, channels);
        }
        List<Recording.Mark> marks =
                drive && chance.happens(0.5) ? Marks.of(trace, times[0], times[times.length - 1], chance) : List.of();
        Recording recording =
                new Recording(kind, chance.happens(0.6) ? startedAt : null, Sampler.clock(times), channels, marks);
        return new Logged(recording, times[0], times[times.length - 1]);
    }

    private void bus(Sampler sampler, Map<Channel, float[]> channels) {
        double every = chance.between(0.3, 2);
        double delay = chance.between(0.1, 0.8);
        boolean held = chance.happens(0.4);
        channels.put(
                Channel.REPORTED_V,
                sampler.polled(
                        Of.VEHICLE_V, every, delay, held, 1, 0.05 * chance.normal(), chance.one(0.02, 0.05, 0.1)));
        if (chance.happens(setup.managed() ? 0.85 : 0.3)) {
            channels.put(
                    Channel.REPORTED_A, sampler.polled(Of.SENSED_A, every, delay, held, 1, 0, chance.one(0.05, 0.25)));
            if (chance.happens(0.8)) {
                channels.put(Channel.REPORTED_SOC, sampler.polled(Of.BELIEVED, 10, 1, held, 100, 0, 1));
            }
        }
        if (chance.happens(0.85)) {
            channels.put(Channel.ENGINE_RPM, sampler.polled(Of.RPM, every, delay, held, 1, 0, 1));
        }
        if (chance.happens(0.8)) {
            channels.put(Channel.SPEED, sampler.polled(Of.SPEED, every, delay, held, 1, 0, 1));
        }
        if (chance.happens(0.6)) {
            channels.put(Channel.COOLANT, sampler.polled(Of.COOLANT, 5, 1, held, 1, 0, 1));
        }
        if (chance.happens(0.6)) {
            channels.put(Channel.AMBIENT, sampler.constant(StrictMath.rint(setup.ambientC())));
        }
    }
}
