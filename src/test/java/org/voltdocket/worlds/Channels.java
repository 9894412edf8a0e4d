package org.voltdocket.worlds;

import java.util.EnumMap;
import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.voltdocket.diagnosis.CaseInput;
import org.voltdocket.diagnosis.Channel;
import org.voltdocket.diagnosis.Evidence;
import org.voltdocket.diagnosis.EvidenceKind;
import org.voltdocket.diagnosis.Recording;

/** Which channels of the recordings are kept; bench recordings keep all. */
enum Channels {
    ALL("all", EnumSet.allOf(Channel.class), true),
    /** Measured and reported voltage with marks. */
    REPORTED("reported", EnumSet.of(Channel.MEASURED_V, Channel.REPORTED_V), true),
    /** Measured voltage only. */
    VOLTAGE("voltage", EnumSet.of(Channel.MEASURED_V), false);

    final String id;
    private final Set<Channel> kept;
    private final boolean marks;

    Channels(String id, Set<Channel> kept, boolean marks) {
        this.id = id;
        this.kept = kept;
        this.marks = marks;
    }

    CaseInput of(CaseInput whole) {
        if (this == ALL) {
            return whole;
        }
        List<Evidence> some = whole.evidence().stream().map(this::of).toList();
        return new CaseInput(whole.facts(), whole.history(), some);
    }

    private Evidence of(Evidence item) {
        boolean strip = item.reading() instanceof Recording r && r.kind() != EvidenceKind.DISCHARGE_RECORDING;
        return strip ? new Evidence(item.id(), item.sha256(), item.origin(), of((Recording) item.reading())) : item;
    }

    private Recording of(Recording recording) {
        Map<Channel, float[]> channels = new EnumMap<>(Channel.class);
        for (Channel channel : kept) {
            if (recording.has(channel)) {
                channels.put(channel, recording.channel(channel));
            }
        }
        return new Recording(
                recording.kind(),
                recording.startedAt().orElse(null),
                recording.timeS(),
                channels,
                marks ? recording.marks() : List.of());
    }
}
