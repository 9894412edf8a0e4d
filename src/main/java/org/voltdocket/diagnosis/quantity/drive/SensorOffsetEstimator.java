package org.voltdocket.diagnosis.quantity.drive;

import java.util.Optional;
import org.voltdocket.diagnosis.quantity.sensor.ClampComparison;
import org.voltdocket.diagnosis.quantity.sensor.OffsetWithoutClamp;
import org.voltdocket.diagnosis.quantity.sensor.SleepingSensorOffset;
import org.voltdocket.kernel.Interval;

/** Says what is known of the current sensor in a drive: by a clamp where there is one, by {@link OffsetWithoutClamp} elsewhere. */
final class SensorOffsetEstimator {

    private SensorOffsetEstimator() {}

    /** The best offset, A; empty where nothing tells it. */
    static Optional<Interval> offset(DriveContext notes) {
        Optional<ClampComparison.Result> clamp = ClampComparison.byClamp(notes.drive);
        Optional<Interval> best = clamp.isPresent() ? Optional.of(byClamp(notes, clamp.get())) : withoutClamp(notes);
        best.ifPresent(b -> notes.estimates.put("sensorOffsetA", b));
        return best;
    }

    private static Interval byClamp(DriveContext notes, ClampComparison.Result clamp) {
        notes.say("sensor-offset-by-clamp", clamp.offsetA());
        if (clamp.gain() != null) {
            notes.say("sensor-gain", clamp.gain());
            notes.estimates.put("sensorGain", clamp.gain());
        }
        SleepingSensorOffset.of(notes.drive).ifPresent(asleep -> {
            notes.say("sensor-asleep-in-drive", asleep);
            notes.say("offset-ways-disagree", OffsetWithoutClamp.apart(clamp.offsetA(), asleep));
        });
        return clamp.offsetA();
    }

    private static Optional<Interval> withoutClamp(DriveContext notes) {
        OffsetWithoutClamp ways = OffsetWithoutClamp.of(notes.drive, notes.reference);
        ways.fit().ifPresent(fit -> notes.say("sensor-offset-by-fit", fit));
        ways.asleep().ifPresent(asleep -> notes.say("sensor-asleep-in-drive", asleep));
        ways.apart().ifPresent(apart -> notes.say("offset-ways-disagree", apart));
        ways.together().ifPresent(all -> notes.say("sensor-offset-together", all));
        return ways.together();
    }
}
