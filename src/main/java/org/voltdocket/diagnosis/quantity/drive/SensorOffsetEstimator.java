package org.voltdocket.diagnosis.quantity.drive;

import java.util.Optional;
import org.voltdocket.diagnosis.quantity.sensor.ClampComparison;
import org.voltdocket.diagnosis.quantity.sensor.OffsetWithoutClamp;
import org.voltdocket.diagnosis.quantity.sensor.SleepingSensorOffset;
import org.voltdocket.kernel.Interval;

/** Estimates offset and gain of the current sensor in a drive: with a clamp if there is one, else by {@link OffsetWithoutClamp}. */
final class SensorOffsetEstimator {

    private SensorOffsetEstimator() {}

    /** The best offset, A; empty where nothing tells it. */
    static Optional<Interval> offset(DriveContext context) {
        Optional<ClampComparison.Result> clamp = ClampComparison.byClamp(context.drive);
        Optional<Interval> best =
                clamp.isPresent() ? Optional.of(byClamp(context, clamp.get())) : withoutClamp(context);
        best.ifPresent(b -> context.estimates.put("sensorOffsetA", b));
        return best;
    }

    private static Interval byClamp(DriveContext context, ClampComparison.Result clamp) {
        context.add("sensor-offset-by-clamp", clamp.offsetA());
        if (clamp.gain() != null) {
            context.add("sensor-gain", clamp.gain());
            context.estimates.put("sensorGain", clamp.gain());
        }
        SleepingSensorOffset.of(context.drive).ifPresent(asleep -> {
            context.add("sensor-asleep-in-drive", asleep);
            context.add("offset-ways-disagree", OffsetWithoutClamp.apart(clamp.offsetA(), asleep));
        });
        return clamp.offsetA();
    }

    private static Optional<Interval> withoutClamp(DriveContext context) {
        OffsetWithoutClamp ways = OffsetWithoutClamp.of(context.drive, context.reference);
        ways.fit().ifPresent(fit -> context.add("sensor-offset-by-fit", fit));
        ways.asleep().ifPresent(asleep -> context.add("sensor-asleep-in-drive", asleep));
        ways.apart().ifPresent(apart -> context.add("offset-ways-disagree", apart));
        ways.together().ifPresent(all -> context.add("sensor-offset-together", all));
        return ways.together();
    }
}
