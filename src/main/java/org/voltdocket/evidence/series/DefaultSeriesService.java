package org.voltdocket.evidence.series;

import java.util.EnumSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.UUID;
import java.util.stream.Collectors;
import org.springframework.stereotype.Service;
import org.voltdocket.diagnosis.Channel;
import org.voltdocket.evidence.EvidenceArchive;
import org.voltdocket.evidence.EvidenceItem;
import org.voltdocket.evidence.Series;
import org.voltdocket.evidence.SeriesQuery;
import org.voltdocket.evidence.SeriesService;
import org.voltdocket.evidence.storage.BlockCodec;
import org.voltdocket.evidence.storage.RecordingBlockRepository;
import org.voltdocket.kernel.Actor;

/** Reads the blocks of a section one at a time and reduces them. */
@Service
class DefaultSeriesService implements SeriesService {

    private final EvidenceArchive archive;
    private final RecordingBlockRepository blocks;

    DefaultSeriesService(EvidenceArchive archive, RecordingBlockRepository blocks) {
        this.archive = archive;
        this.blocks = blocks;
    }

    @Override
    public Series read(Actor actor, UUID evidenceId, SeriesQuery query) {
        EvidenceItem item = archive.item(actor, evidenceId);
        if (!item.isRecording()) {
            throw SeriesQuery.invalid("id", "This item is a " + item.kind().id() + "; only recordings have a series.");
        }
        return read(evidenceId, query);
    }

    private Series read(UUID id, SeriesQuery query) {
        RecordingBlockRepository.Extent extent = blocks.extent(id);
        double from = query.from() == null ? extent.fromS() : query.from();
        double to = query.to() == null ? extent.toS() : query.to();
        int points = query.points() == null ? SeriesQuery.USUAL : query.points();
        check(from, to, points);
        Map<Channel, Double> steps = blocks.steps(id);
        Map<Channel, SeriesDecimator> lines = new LinkedHashMap<>();
        double begin = Math.max(from, extent.fromS());
        double end = Math.min(to, extent.toS());
        for (Channel channel : asked(query.channels(), steps.keySet())) {
            lines.put(channel, new SeriesDecimator(begin, end, points, steps.get(channel)));
        }
        double first = Double.NaN;
        double last = Double.NaN;
        long rows = 0;
        double[] time = new double[BlockCodec.ROWS];
        float[] values = new float[BlockCodec.ROWS];
        for (RecordingBlockRepository.Span span : blocks.spans(id, from, to)) {
            BlockCodec.unpack(
                    blocks.block(id, RecordingBlockRepository.TIME, span.blockNo())
                            .checked(),
                    time,
                    0,
                    span.rows());
            int lo = 0;
            int hi = span.rows();
            while (lo < hi && time[lo] < from) {
                lo++;
            }
            while (hi > lo && time[hi - 1] > to) {
                hi--;
            }
            if (lo == hi) {
                continue;
            }
            first = rows == 0 ? time[lo] : first;
            last = time[hi - 1];
            rows += hi - lo;
            for (Map.Entry<Channel, SeriesDecimator> line : lines.entrySet()) {
                byte[] packed =
                        blocks.block(id, line.getKey().id(), span.blockNo()).checked();
                BlockCodec.unpack(packed, values, 0, span.rows());
                feed(line.getValue(), time, values, lo, hi);
            }
        }
        Map<String, Series.Line> drawn = new LinkedHashMap<>();
        lines.forEach((channel, thinner) -> drawn.put(channel.id(), thinner.line()));
        return new Series(rows == 0 ? from : first, rows == 0 ? to : last, rows, drawn, blocks.marks(id, from, to));
    }

    private static void feed(SeriesDecimator thinner, double[] time, float[] values, int from, int to) {
        for (int i = from; i < to; i++) {
            if (!Float.isNaN(values[i])) {
                thinner.add(time[i], values[i]);
            }
        }
    }

    private static void check(double from, double to, int points) {
        if (!Double.isFinite(from)) {
            throw SeriesQuery.invalid("from", "from is not a time. Give seconds from the start.");
        }
        if (!Double.isFinite(to) || to < from) {
            throw SeriesQuery.invalid("to", "to must be a time not before from (" + from + " s); read " + to + ".");
        }
        if (points < SeriesQuery.LEAST || points > SeriesQuery.MOST) {
            throw SeriesQuery.invalid(
                    "points",
                    "points is " + points + "; " + SeriesQuery.LEAST + " to " + SeriesQuery.MOST + " can be drawn.");
        }
    }

    /** The requested channels that were recorded; all of them if none is named. */
    private static Set<Channel> asked(List<String> names, Set<Channel> recorded) {
        if (names.isEmpty()) {
            return recorded;
        }
        Set<Channel> asked = EnumSet.noneOf(Channel.class);
        for (String name : names) {
            try {
                asked.add(Channel.of(name.strip()));
            } catch (IllegalArgumentException e) {
                String known =
                        EnumSet.allOf(Channel.class).stream().map(Channel::id).collect(Collectors.joining(", "));
                throw SeriesQuery.invalid("channels", "'" + name + "' is not a channel. Known: " + known + ".");
            }
        }
        asked.retainAll(recorded);
        return asked;
    }
}
