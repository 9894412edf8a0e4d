package org.voltdocket.worlds.ceraolo;

import java.time.OffsetDateTime;
import org.voltdocket.diagnosis.Channel;
import org.voltdocket.diagnosis.EvidenceKind;
import org.voltdocket.worlds.Chance;
import org.voltdocket.worlds.Logger;
import org.voltdocket.worlds.Sampler;
import org.voltdocket.worlds.Setup;
import org.voltdocket.worlds.Trace;
import org.voltdocket.worlds.Trace.Of;

/** A logger of 1 to 10 rows a second and fine resolution; the bus is polled more slowly and leaves blanks. */
final class FastLogger extends Logger {

    FastLogger(Trace trace, EvidenceKind kind, OffsetDateTime startedAt, Setup setup, Chance chance) {
        super(trace, kind, startedAt, setup, chance, new Habits(0.75, 0.5, 0.6));
    }

    @Override
    protected double[] times() {
        double every = switch (kind) {
            case STANDING_RECORDING -> chance.one(2, 5, 10);
            case DISCHARGE_RECORDING -> chance.one(10, 30, 60);
            case CRANKING_RECORDING -> chance.one(0.005, 0.01);
            default -> chance.one(0.1, 0.1, 0.2, 0.5, 1);
        };
        double[] times = Sampler.times(0, trace.endS(), every, 0.1, chance);
        return drive ? Sampler.withGaps(times, chance.below(3), 20, chance) : times;
    }

    @Override
    protected void instruments(Sampler sampler) {
        keep(
                Channel.MEASURED_V,
                sampler.direct(Of.POST_V, 0.006 * chance.normal(), 0.003, chance.one(0.001, 0.005, 0.01)));
        boolean bench = kind == EvidenceKind.DISCHARGE_RECORDING;
        boolean clamp = chance.happens(drive ? 0.45 : 0.8);
        if (bench || clamp && kind != EvidenceKind.CRANKING_RECORDING) {
            double fine = drive ? 1 : 0.1;
            keep(
                    Channel.MEASURED_A,
                    sampler.direct(Of.AMPERES, 0.06 * fine * chance.normal(), 0.1 * fine, 0.05 * fine));
        }
    }

    @Override
    protected void bus(Sampler sampler) {
        double every = chance.between(0.3, 2);
        double delay = chance.between(0.1, 0.8);
        boolean held = chance.happens(0.4);
        keep(
                Channel.REPORTED_V,
                sampler.polled(
                        Of.VEHICLE_V, every, delay, held, 1, 0.05 * chance.normal(), chance.one(0.02, 0.05, 0.1)));
        if (chance.happens(setup.managed() ? 0.85 : 0.3)) {
            keep(Channel.REPORTED_A, sampler.polled(Of.SENSED_A, every, delay, held, 1, 0, chance.one(0.05, 0.25)));
            if (chance.happens(0.8)) {
                keep(Channel.REPORTED_SOC, sampler.polled(Of.BELIEVED, 10, 1, held, 100, 0, 1));
            }
        }
        if (chance.happens(0.85)) {
            keep(Channel.ENGINE_RPM, sampler.polled(Of.RPM, every, delay, held, 1, 0, 1));
        }
        if (chance.happens(0.8)) {
            keep(Channel.SPEED, sampler.polled(Of.SPEED, every, delay, held, 1, 0, 1));
        }
        if (chance.happens(0.6)) {
            keep(Channel.COOLANT, sampler.polled(Of.COOLANT, 5, 1, held, 1, 0, 1));
        }
        if (chance.happens(0.6)) {
            keep(Channel.AMBIENT, sampler.constant(StrictMath.rint(setup.ambientC())));
        }
    }
}
