package org.voltdocket.worlds.shepherd;

import java.time.OffsetDateTime;
import org.voltdocket.diagnosis.Channel;
import org.voltdocket.diagnosis.EvidenceKind;
import org.voltdocket.worlds.Chance;
import org.voltdocket.worlds.Logger;
import org.voltdocket.worlds.Sampler;
import org.voltdocket.worlds.Setup;
import org.voltdocket.worlds.Trace;
import org.voltdocket.worlds.Trace.Of;

/** A voltmeter beside an adapter at the diagnostic socket: about a row a second, one value of the bus after the other. */
final class SocketLogger extends Logger {

    SocketLogger(Trace trace, EvidenceKind kind, OffsetDateTime startedAt, Setup setup, Chance chance) {
        super(trace, kind, startedAt, setup, chance, new Habits(0.9, 0.4, 0.9));
    }

    @Override
    protected double[] times() {
        double every = switch (kind) {
            case STANDING_RECORDING -> chance.one(5, 20, 60);
            case DISCHARGE_RECORDING -> chance.one(20, 60);
            case CRANKING_RECORDING -> 0.01;
            default -> chance.one(0.1, 0.5, 1, 1, 1.5, 3);
        };
        double[] times = Sampler.times(0, trace.endS(), every, 0.4, chance);
        return drive ? Sampler.withGaps(times, chance.below(5), 60, chance) : times;
    }

    @Override
    protected void instruments(Sampler sampler) {
        double bias = (chance.happens(0.1) ? 0.08 : 0.01) * chance.normal();
        keep(Channel.MEASURED_V, sampler.direct(Of.POST_V, bias, chance.between(0.002, 0.012), chance.one(0.01, 0.02)));
        if (kind == EvidenceKind.DISCHARGE_RECORDING || chance.happens(drive ? 0.3 : 0.7)) {
            double fine = drive ? 1 : 0.1;
            boolean there = kind != EvidenceKind.CRANKING_RECORDING;
            float[] amperes = sampler.direct(Of.AMPERES, 0.1 * fine * chance.normal(), 0.05 * fine, 0.1 * fine);
            if (there) {
                keep(Channel.MEASURED_A, amperes);
            }
        }
    }

    @Override
    protected void bus(Sampler sampler) {
        double every = chance.between(0.8, 4);
        double delay = chance.between(0.3, 1.2);
        boolean held = chance.happens(0.5);
        keep(
                Channel.REPORTED_V,
                sampler.polled(Of.VEHICLE_V, every, delay, held, 1, 0.04 * chance.normal(), chance.one(0.001, 0.1)));
        keep(Channel.ENGINE_RPM, sampler.polled(Of.RPM, every, delay, held, 1, 0, 0.25));
        if (chance.happens(0.9)) {
            keep(Channel.SPEED, sampler.polled(Of.SPEED, every, delay, held, 1, 0, 1));
        }
        if (chance.happens(0.9)) {
            keep(Channel.COOLANT, sampler.polled(Of.COOLANT, 6, delay, held, 1, 0, 1));
        }
        if (chance.happens(0.8)) {
            keep(Channel.AMBIENT, sampler.constant(StrictMath.rint(setup.ambientC())));
        }
        if (chance.happens(setup.managed() ? 0.8 : 0.2)) {
            keep(Channel.REPORTED_A, sampler.polled(Of.SENSED_A, every, delay, held, 1, 0, chance.one(0.06, 0.5)));
        }
        if (chance.happens(setup.managed() ? 0.7 : 0.1)) {
            keep(Channel.REPORTED_SOC, sampler.polled(Of.BELIEVED, 8, delay, held, 100, 0, 0.4));
        }
    }
}
