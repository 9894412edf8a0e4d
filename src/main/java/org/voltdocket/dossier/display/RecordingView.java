package org.voltdocket.dossier.display;

import java.util.List;
import org.voltdocket.diagnosis.Assessment.Finding;
import org.voltdocket.diagnosis.Assessment.RegimeSpan;
import org.voltdocket.diagnosis.Channel;
import org.voltdocket.diagnosis.Recording.Mark;
import org.voltdocket.dossier.VoltageLimit;
import org.voltdocket.evidence.EvidenceItem;

/**
 * A recording as its chart and tables show it.
 *
 * @param from s, first row
 * @param to s, last row
 */
public record RecordingView(
        EvidenceItem item,
        double from,
        double to,
        List<ChannelRow> channels,
        List<RegimeSpan> regimes,
        List<Mark> marks,
        List<LimitRow> limits) {

    /** A recorded channel with its unit. */
    public record ChannelRow(String id, String unit) {}

    /** A limit to draw across a panel. */
    public record LimitRow(double value, String unit, String quantity, boolean minimum) {}

    public static RecordingView of(
            EvidenceItem item,
            double from,
            double to,
            List<Mark> marks,
            List<RegimeSpan> regimes,
            List<Finding> findings) {
        List<ChannelRow> channels = item.channels().stream()
                .sorted()
                .map(c -> new ChannelRow(c.id(), unit(c)))
                .toList();
        List<LimitRow> limits = VoltageLimit.of(findings).stream()
                .map(l -> new LimitRow(l.value(), l.unit(), l.quantity(), l.minimum()))
                .toList();
        return new RecordingView(item, from, to, channels, regimes, marks, limits);
    }

    /** The regimes that occur, in the order of their first stretch. */
    public List<String> regimesSeen() {
        return regimes.stream().map(r -> r.regime().id()).distinct().toList();
    }

    /** Seconds spent in a regime. */
    public double secondsIn(String regime) {
        return regimes.stream()
                .filter(r -> r.regime().id().equals(regime))
                .mapToDouble(r -> r.to() - r.from())
                .sum();
    }

    /** Whether any of these channels was recorded. */
    public boolean has(String... ids) {
        return channels.stream().anyMatch(c -> List.of(ids).contains(c.id()));
    }

    static String unit(Channel channel) {
        return switch (channel) {
            case MEASURED_V, REPORTED_V -> "V";
            case MEASURED_A, REPORTED_A -> "A";
            case REPORTED_SOC -> "%";
            case ENGINE_RPM -> "1/min";
            case SPEED -> "km/h";
            case COOLANT, AMBIENT -> "°C";
        };
    }
}
