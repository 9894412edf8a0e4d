package org.voltdocket.worlds.ciemat;

import java.time.OffsetDateTime;
import java.util.Arrays;
import org.voltdocket.diagnosis.Channel;
import org.voltdocket.diagnosis.EvidenceKind;
import org.voltdocket.worlds.Chance;
import org.voltdocket.worlds.Logger;
import org.voltdocket.worlds.Sampler;
import org.voltdocket.worlds.Setup;
import org.voltdocket.worlds.Trace;
import org.voltdocket.worlds.Trace.Of;

/** A logger of a row every 0.5 to 60 s with coarse resolution; it may be switched on after the start of the engine. */
final class SlowLogger extends Logger {

    private double every;

    SlowLogger(Trace trace, EvidenceKind kind, OffsetDateTime startedAt, Setup setup, Chance chance) {
        super(trace, kind, startedAt, setup, chance, new Habits(0.8, 0.6, 0.8));
    }

    @Override
    protected double[] times() {
        every = switch (kind) {
            case STANDING_RECORDING, DISCHARGE_RECORDING -> chance.one(10, 30, 60);
            case CRANKING_RECORDING -> 0.02;
            default -> chance.one(0.5, 1, 1, 2, 5, 10, 30, 60);
        };
        return Sampler.times(from(), trace.endS(), every, 0, chance);
    }

    @Override
    protected void instruments(Sampler sampler) {
        double resolution = kind == EvidenceKind.CRANKING_RECORDING ? 0.01 : chance.one(0.01, 0.05, 0.1);
        double bias = 0.012 * chance.normal();
        double held = chance.one(1, 1, 2, 3);
        float[] posts = drive && held > 1
                ? sampler.polled(Of.POST_V, held * every, 0, true, 1, bias, resolution)
                : sampler.direct(Of.POST_V, bias, 0.005, resolution);
        fill(posts);
        keep(Channel.MEASURED_V, posts);
        if (kind == EvidenceKind.DISCHARGE_RECORDING
                || !drive && chance.happens(0.6)
                || drive && chance.happens(0.25)) {
            double fine = drive ? 1 : 0.2;
            keep(Channel.MEASURED_A, sampler.direct(Of.AMPERES, 0.08 * fine * chance.normal(), 0.1 * fine, 0.1 * fine));
        }
    }

    /** Some loggers wake up with the engine. */
    private double from() {
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

    @Override
    protected void bus(Sampler sampler) {
        double poll = Math.max(every, chance.between(1, 6));
        double delay = chance.between(0.2, 1.5);
        keep(
                Channel.REPORTED_V,
                sampler.polled(Of.VEHICLE_V, poll, delay, true, 1, 0.06 * chance.normal(), chance.one(0.05, 0.1)));
        if (chance.happens(setup.managed() ? 0.7 : 0.15)) {
            keep(Channel.REPORTED_A, sampler.polled(Of.SENSED_A, poll, delay, true, 1, 0, chance.one(0.1, 1)));
        }
        if (chance.happens(setup.managed() ? 0.6 : 0.1)) {
            keep(Channel.REPORTED_SOC, sampler.polled(Of.BELIEVED, 15, 2, true, 100, 0, 1));
        }
        if (chance.happens(0.7)) {
            keep(Channel.ENGINE_RPM, sampler.polled(Of.RPM, poll, delay, true, 1, 0, 1));
        }
        if (chance.happens(0.7)) {
            keep(Channel.SPEED, sampler.polled(Of.SPEED, poll, delay, true, 1, 0, 1));
        }
        if (chance.happens(0.5)) {
            keep(Channel.AMBIENT, sampler.constant(StrictMath.rint(setup.ambientC())));
        }
    }
}
