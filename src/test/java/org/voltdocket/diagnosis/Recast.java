package org.voltdocket.diagnosis;

import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.function.UnaryOperator;
import org.voltdocket.kernel.Sha256;

/** The same recording in another wrapping. */
public final class Recast {

    private Recast() {}

    public static CaseInput recordings(CaseInput input, UnaryOperator<Recording> change) {
        List<Evidence> changed = input.evidence().stream()
                .map(e -> e.reading() instanceof Recording r
                        ? new Evidence(e.id(), e.sha256(), e.origin(), change.apply(r))
                        : e)
                .toList();
        return new CaseInput(input.facts(), input.history(), changed);
    }

    public static Map<Channel, float[]> channels(Recording r) {
        Map<Channel, float[]> all = new EnumMap<>(Channel.class);
        for (Channel channel : Channel.values()) {
            if (r.has(channel)) {
                all.put(channel, r.channel(channel));
            }
        }
        return all;
    }

    public static Recording with(Recording r, Map<Channel, float[]> channels) {
        return new Recording(r.kind(), r.startedAt().orElse(null), r.timeS(), channels, r.marks());
    }

    public static Recording at(Recording r, double[] timeS) {
        return new Recording(r.kind(), r.startedAt().orElse(null), timeS, channels(r), r.marks());
    }

    public static Recording noted(Recording r, Recording.Mark mark) {
        return new Recording(r.kind(), r.startedAt().orElse(null), r.timeS(), channels(r), List.of(mark));
    }

    public static Recording slice(Recording r, int from, int to) {
        Map<Channel, float[]> cut = new EnumMap<>(Channel.class);
        channels(r).forEach((channel, values) -> cut.put(channel, Arrays.copyOfRange(values, from, to)));
        return new Recording(r.kind(), null, Arrays.copyOfRange(r.timeS(), from, to), cut, List.of());
    }

    /** Two parts as one recording that is otherwise {@code like} the one they came from. */
    public static Recording joined(Recording like, Recording one, Recording other) {
        Map<Channel, float[]> all = new EnumMap<>(Channel.class);
        for (Channel channel : channels(like).keySet()) {
            float[] values = blank(one.rows() + other.rows());
            if (one.has(channel)) {
                System.arraycopy(one.channel(channel), 0, values, 0, one.rows());
            }
            if (other.has(channel)) {
                System.arraycopy(other.channel(channel), 0, values, one.rows(), other.rows());
            }
            all.put(channel, values);
        }
        double[] time = Arrays.copyOf(one.timeS(), one.rows() + other.rows());
        System.arraycopy(other.timeS(), 0, time, one.rows(), other.rows());
        return new Recording(like.kind(), like.startedAt().orElse(null), time, all, like.marks());
    }

    public static Evidence part(Evidence whole, String mark, Recording recording) {
        String id = whole.id() + mark;
        return new Evidence(id, Sha256.of(id.getBytes(StandardCharsets.UTF_8)), whole.origin(), recording);
    }

    static double[] shifted(double[] timeS, double by) {
        return Arrays.stream(timeS).map(t -> t + by).toArray();
    }

    static float[] blank(int rows) {
        float[] none = new float[rows];
        Arrays.fill(none, Float.NaN);
        return none;
    }
}
