package org.voltdocket.diagnosis;

import java.time.OffsetDateTime;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * A recording: one increasing time column and the channels that were there. Arrays are shared, not copied, for a
 * recording may hold five million rows; nobody may write into them.
 */
public final class Recording implements Reading {

    private final EvidenceKind kind;
    private final OffsetDateTime startedAt;
    private final double[] timeS;
    private final Map<Channel, float[]> channels;
    private final List<Mark> marks;

    /**
     * What the driver noted.
     *
     * @param atS s from the start
     * @param text the note
     */
    public record Mark(double atS, String text) {}

    /**
     * @param kind one of the recording kinds
     * @param startedAt clock time of the first row; null where the file has seconds only
     * @param timeS s from the start, strictly increasing, first 0 or more
     * @param channels values by channel, each as long as {@code timeS}, NaN where not sampled; {@link
     *     Channel#MEASURED_V} always there; any other with no sample at all counts as not recorded
     * @throws IllegalArgumentException if a column is missing or of another length
     */
    public Recording(
            EvidenceKind kind,
            OffsetDateTime startedAt,
            double[] timeS,
            Map<Channel, float[]> channels,
            List<Mark> marks) {
        if (!channels.containsKey(Channel.MEASURED_V)) {
            throw new IllegalArgumentException("a recording has measured_v");
        }
        channels.forEach((channel, values) -> {
            if (values.length != timeS.length) {
                throw new IllegalArgumentException(channel.id() + " has another length than time");
            }
        });
        this.kind = kind;
        this.startedAt = startedAt;
        this.timeS = timeS;
        this.channels = new EnumMap<>(channels);
        this.channels.entrySet().removeIf(e -> e.getKey() != Channel.MEASURED_V && neverSampled(e.getValue()));
        this.marks = List.copyOf(marks);
    }

    private static boolean neverSampled(float[] values) {
        for (float value : values) {
            if (!Float.isNaN(value)) {
                return false;
            }
        }
        return true;
    }

    @Override
    public EvidenceKind kind() {
        return kind;
    }

    /** The same recording under another kind. */
    public Recording as(EvidenceKind other) {
        return new Recording(other, startedAt, timeS, channels, marks);
    }

    /** Clock time of the first row, where the file told it. */
    public Optional<OffsetDateTime> startedAt() {
        return Optional.ofNullable(startedAt);
    }

    /** s from the start, strictly increasing; not to be written to. */
    public double[] timeS() {
        return timeS;
    }

    /** Values of a channel, NaN where not sampled; null where the channel was not recorded. Not to be written to. */
    public float[] channel(Channel channel) {
        return channels.get(channel);
    }

    /** Whether the channel was recorded. */
    public boolean has(Channel channel) {
        return channels.containsKey(channel);
    }

    /** The driver's notes in time order. */
    public List<Mark> marks() {
        return marks;
    }

    /** Number of rows. */
    public int rows() {
        return timeS.length;
    }

    /** From first to last row, s. */
    public double durationS() {
        return rows() == 0 ? 0 : timeS[rows() - 1] - timeS[0];
    }
}
