package org.voltdocket.worlds;

import java.time.OffsetDateTime;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import org.voltdocket.diagnosis.Channel;
import org.voltdocket.diagnosis.EvidenceKind;
import org.voltdocket.diagnosis.Recording;
import org.voltdocket.worlds.World.Logged;

/** Records a trace: the posts, perhaps a clamp, in a drive perhaps values of the bus and marks of the driver. */
public abstract class Logger {

    /** Makes the logger of a world. */
    public interface Maker {

        Logger of(Trace trace, EvidenceKind kind, OffsetDateTime startedAt, Setup setup, Chance chance);
    }

    /**
     * How often something is recorded, 0 to 1.
     *
     * @param bus values of the bus in a drive
     * @param marks marks in a drive
     * @param dated the time of day
     */
    public record Habits(double bus, double marks, double dated) {}

    protected final Trace trace;
    protected final EvidenceKind kind;
    protected final Setup setup;
    protected final Chance chance;
    /** Whether it is a drive. */
    protected final boolean drive;

    private final OffsetDateTime startedAt;
    private final Habits habits;
    private final Map<Channel, float[]> channels = new EnumMap<>(Channel.class);

    protected Logger(
            Trace trace, EvidenceKind kind, OffsetDateTime startedAt, Setup setup, Chance chance, Habits habits) {
        this.trace = trace;
        this.kind = kind;
        this.startedAt = startedAt;
        this.setup = setup;
        this.chance = chance;
        this.drive = kind == EvidenceKind.DRIVE_RECORDING;
        this.habits = habits;
    }

    final Logged take() {
        double[] times = times();
        Sampler sampler = new Sampler(trace, times, chance.of("samples"));
        instruments(sampler);
        if (drive && chance.happens(habits.bus())) {
            bus(sampler);
        }
        double last = times[times.length - 1];
        List<Recording.Mark> marks =
                drive && chance.happens(habits.marks()) ? Marks.of(trace, times[0], last, chance) : List.of();
        Recording recording = new Recording(
                kind, chance.happens(habits.dated()) ? startedAt : null, Sampler.clock(times), channels, marks);
        return new Logged(recording, times[0], last);
    }

    protected final void keep(Channel channel, float[] values) {
        channels.put(channel, values);
    }

    /** Times of the rows, s of the trace. */
    protected abstract double[] times();

    /** Voltmeter and clamp. */
    protected abstract void instruments(Sampler sampler);

    /** What the vehicle reports. */
    protected abstract void bus(Sampler sampler);
}
