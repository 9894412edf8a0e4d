package org.voltdocket.dossier.report;

import java.awt.Color;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import org.voltdocket.diagnosis.Assessment.Finding;
import org.voltdocket.diagnosis.Assessment.RegimeSpan;
import org.voltdocket.diagnosis.Regime;
import org.voltdocket.dossier.VoltageLimit;
import org.voltdocket.evidence.EvidenceItem;
import org.voltdocket.evidence.Series;
import org.voltdocket.paper.Chart;
import org.voltdocket.paper.DocumentColors;
import org.voltdocket.ui.TextFormatter;

/** Makes the chart of a recording: voltages above, currents below, regimes behind, limits and marks across. */
final class RecordingChartBuilder {

    /** Each differs from its usual neighbours in grey too. */
    private static final Map<Regime, Color> TINTS = Map.of(
            Regime.REST, new Color(0xf6f5f0),
            Regime.CRANKING, new Color(0xe39a6f),
            Regime.CHARGING, new Color(0xd8ecee),
            Regime.HOLDING, new Color(0xe9eddc),
            Regime.DISCHARGING, new Color(0xfae5cc),
            Regime.STOPPED, new Color(0xdcd3ea),
            Regime.UNKNOWN, Color.WHITE);

    /** Part of the points at either end that does not count for the axis of currents. */
    private static final double TAIL = 0.03;
    /** Narrowest axis of currents, A. */
    private static final double SMALLEST = 4;
    /** How many times wider the whole range has to be for the axis to be cut. */
    private static final double CUT = 4;

    private final TextFormatter words;

    RecordingChartBuilder(TextFormatter words) {
        this.words = words;
    }

    Chart chart(EvidenceItem item, Series series, List<RegimeSpan> regimes, List<Finding> findings) {
        List<Chart.Panel> panels = new ArrayList<>();
        panels.add(new Chart.Panel(
                words.say("report.axis.voltage"), lines(series, "measured_v", "reported_v"), limits(findings), null));
        List<Chart.Line> currents = lines(series, "measured_a", "reported_a");
        if (!currents.isEmpty()) {
            panels.add(current(currents));
        }
        List<Chart.Mark> marks = new ArrayList<>();
        series.marks().forEach(mark -> marks.add(new Chart.Mark(marks.size() + 1, mark.atS())));
        List<Chart.Band> bands = regimes.stream()
                .map(span -> new Chart.Band(
                        words.of("regime", span.regime().id()), span.from(), span.to(), TINTS.get(span.regime())))
                .toList();
        return new Chart(
                alternative(item, series, regimes),
                series.from(),
                series.to(),
                words.say("report.axis.time"),
                panels,
                bands,
                marks);
    }

    private String alternative(EvidenceItem item, Series series, List<RegimeSpan> regimes) {
        return words.say(
                "report.chart",
                item.fileName(),
                words.clock(series.to() - series.from()),
                String.join(
                        ", ",
                        series.channels().keySet().stream()
                                .map(id -> words.of("channel", id))
                                .toList()),
                regimes.size());
    }

    private List<Chart.Line> lines(Series series, String measured, String reported) {
        List<Chart.Line> lines = new ArrayList<>();
        add(lines, series, reported, DocumentColors.REPORTED, true);
        add(lines, series, measured, DocumentColors.MEASURED, false);
        return lines;
    }

    /** A start takes so much current for so short a time that all else would lie flat: the axis is cut then, and says so. */
    private Chart.Panel current(List<Chart.Line> lines) {
        double[] all = lines.stream()
                .flatMapToDouble(line -> Arrays.stream(line.values()))
                .filter(Double::isFinite)
                .sorted()
                .toArray();
        double least = all[0];
        double most = all[all.length - 1];
        double low = all[(int) (all.length * TAIL)];
        double high = all[(int) Math.ceil((all.length - 1) * (1 - TAIL))];
        double span = Math.max(high - low, SMALLEST);
        if (most - least < CUT * span) {
            return new Chart.Panel(words.say("report.axis.current"), lines, List.of(), null);
        }
        Chart.Range cut = new Chart.Range(Math.max(least, low - span / 2), Math.min(most, high + span / 2));
        String label = words.say("report.axis.current.cut", words.number(least), words.number(most));
        return new Chart.Panel(label, lines, List.of(), cut);
    }

    private void add(List<Chart.Line> lines, Series series, String channel, Color ink, boolean dashed) {
        Series.Line line = series.channels().get(channel);
        if (line == null || line.t().isEmpty()) {
            return;
        }
        double[] time = line.t().stream().mapToDouble(Double::doubleValue).toArray();
        double[] values =
                line.v().stream().mapToDouble(v -> v == null ? Double.NaN : v).toArray();
        lines.add(new Chart.Line(words.of("channel", channel), time, values, ink, dashed));
    }

    private List<Chart.Limit> limits(List<Finding> findings) {
        return VoltageLimit.of(findings).stream()
                .map(level -> new Chart.Limit(
                        words.say(
                                level.minimum() ? "chart.limit.min" : "chart.limit.max",
                                words.number(level.value()) + " " + level.unit(),
                                words.of("quantity", words.bare(level.quantity()))),
                        level.value()))
                .toList();
    }
}
