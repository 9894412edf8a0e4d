package org.voltdocket.worlds.shepherd;

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

/** A voltmeter beside an adapter at the diagnostic socket: about a row a second, one value of the bus after the other. */
final class SocketLogger {

    private final Trace trace;
    private final EvidenceKind kind;
    private final OffsetDateTime startedAt;
    private final Setup setup;
    private final Chance chance;

    SocketLogger(Trace trace, EvidenceKind kind, OffsetDateTime startedAt, Setup setup, Chance chance) {
        this.trace = trace;
        this.kind = kind;
        this.startedAt = startedAt;
        this.setup = setup;
        this.chance = chance;
    }

    Logged take() {
        double every = switch (kind) {
            case STANDING_RECORDING -> chance.one(5, 20, 60);
            case DISCHARGE_RECORDING -> chance.one(20, 60);
            case CRANKING_RECORDING -> 0.01;
            default -> chance.one(0.1, 0.5, 1, 1, 1.5, 3);
        };
        boolean drive = kind == EvidenceKind.DRIVE_RECORDING;
        double[] times = Sampler.times(0, trace.endS(), every, 0.4, chance);
        times = drive ? Sampler.withGaps(times, chance.below(5), 60, chance) : times;
        Sampler sampler = new Sampler(trace, times, chance.of("samples"));
        Map<Channel, float[]> channels = new EnumMap<>(Channel.class);
        double bias = (chance.happens(0.1) ? 0.08 : 0.01) * chance.normal();
        channels.put(
                Channel.MEASURED_V,
                sampler.direct(Of.POST_V, bias, chance.between(0.002, 0.012), chance.one(0.01, 0.02)));
        if (kind == EvidenceKind.DISCHARGE_RECORDING || chance.happens(drive ? 0.3 : 0.7)) {
            double fine = drive ? 1 : 0.1;
            boolean there = kind != EvidenceKind.CRANKING_RECORDING;
            float[] amperes = sampler.direct(Of.AMPERES, 0.1 * fine * chance.normal(), 0.05 * fine, 0.1 * fine);
            if (there) {
                channels.put(Channel.MEASURED_A, amperes);
            }
        }
        if (drive && chance.happens(0.9)) {
            bus(sampler, channels);
        }
        List<Recording.Mark> marks =
                drive && chance.happens(0.4) ? Marks.of(trace, times[0], times[times.length - 1], chance) : List.of();
        Recording recording =
                new Recording(kind, chance.happens(0.9) ? startedAt : null, Sampler.clock(times), channels, marks);
        return new Logged(recording, times[0], times[times.length - 1]);
    }

    private void bus(Sampler sampler, Map<Channel, float[]> channels) {
        double every = chance.between(0.8, 4);
        double delay = chance.between(0.3, 1.2);
        boolean held = chance.happens(0.5);
        channels.put(
                Channel.REPORTED_V,
                sampler.polled(Of.VEHICLE_V, every, delay, held, 1, 0.04 * chance.normal(), chance.one(0.001, 0.1)));
        channels.put(Channel.ENGINE_RPM, sampler.polled(Of.RPM, every, delay, held, 1, 0, 0.25));
        if (chance.happens(0.9)) {
            channels.put(Channel.SPEED, sampler.polled(Of.SPEED, every, delay, held, 1, 0, 1));
        }
        if (chance.happens(0.9)) {
            channels.put(Channel.COOLANT, sampler.polled(Of.COOLANT, 6, delay, held, 1, 0, 1));
        }
        if (chance.happens(0.8)) {
            channels.put(Channel.AMBIENT, sampler.constant(StrictMath.rint(setup.ambientC())));
        }
        if (chance.happens(setup.managed() ? 0.8 : 0.2)) {
            channels.put(
                    Channel.REPORTED_A, sampler.polled(Of.SENSED_A, every, delay, held, 1, 0, chance.one(0.06, 0.5)));
        }
        if (chance.happens(setup.managed() ? 0.7 : 0.1)) {
            channels.put(Channel.REPORTED_SOC, sampler.polled(Of.BELIEVED, 8, delay, held, 100, 0, 0.4));
        }
    }
}
