package org.voltdocket.dossier.report;

import java.awt.Color;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.voltdocket.diagnosis.Assessment.Finding;
import org.voltdocket.diagnosis.Assessment.RegimeSpan;
import org.voltdocket.diagnosis.Regime;
import org.voltdocket.dossier.Level;
import org.voltdocket.evidence.EvidenceItem;
import org.voltdocket.evidence.Series;
import org.voltdocket.paper.Chart;
import org.voltdocket.paper.Ink;
import org.voltdocket.ui.Words;

/** Makes the chart of a recording: voltages above, currents below, regimes behind, limits and marks across. */
final class ChartMaker {

    /** Each differs from its usual neighbours in grey too. */
    private static final Map<Regime, Color> TINTS = Map.of(
            Regime.REST, new Color(0xf4f2ec),
            Regime.CRANKING, new Color(0xe39a6f),
            Regime.CHARGING, new Color(0xcfe6e8),
            Regime.HOLDING, new Color(0xeceee4),
            Regime.DISCHARGING, new Color(0xf6d9b8),
            Regime.STOPPED, new Color(0xdcd3ea),
            Regime.UNKNOWN, Color.WHITE);

    private final Words words;

    ChartMaker(Words words) {
        this.words = words;
    }

    Chart chart(EvidenceItem item, Series series, List<RegimeSpan> regimes, List<Finding> findings) {
        List<Chart.Panel> panels = new ArrayList<>();
        panels.add(new Chart.Panel(
                words.say("report.axis.voltage"), lines(series, "measured_v", "reported_v"), limits(findings)));
        List<Chart.Line> currents = lines(series, "measured_a", "reported_a");
        if (!currents.isEmpty()) {
            panels.add(new Chart.Panel(words.say("report.axis.current"), currents, List.of()));
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
        add(lines, series, reported, Ink.REPORTED, true);
        add(lines, series, measured, Ink.MEASURED, false);
        return lines;
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
        return Level.of(findings).stream()
                .map(level -> new Chart.Limit(
                        words.say(
                                "report.limit",
                                words.of("quantity", words.bare(level.quantity())),
                                words.number(level.value()),
                                level.unit()),
                        level.value()))
                .toList();
    }
}
