package org.voltdocket.insight.chart;

import java.util.ArrayList;
import java.util.List;
import org.jfree.chart.annotations.XYTextAnnotation;
import org.jfree.chart.plot.ValueMarker;
import org.jfree.chart.plot.XYPlot;
import org.jfree.chart.renderer.xy.XYLineAndShapeRenderer;
import org.jfree.chart.ui.TextAnchor;
import org.jfree.data.xy.XYSeries;
import org.jfree.data.xy.XYSeriesCollection;
import org.voltdocket.insight.estimate.Funnel;
import org.voltdocket.insight.estimate.Proportion;
import org.voltdocket.paper.ChartFont;
import org.voltdocket.paper.DocumentColors;

/** Funnel plot: shares of groups over their size, with limits. Only groups outside the limits are labelled. */
public final class FunnelChart {

    /** Letters of a name that a narrow chart has room for beside its dot; the sentence above names it in full. */
    private static final int LONGEST = 20;

    /**
     * Words of the chart.
     *
     * @param across what is counted along the bottom
     * @param up whose share
     */
    public record Names(String across, String up, String inside, String outside, String warning, String alarm) {}

    /** A group with its share; the share is known. */
    public record Group(String name, Proportion share) {}

    private FunnelChart() {}

    public static Drawing of(List<Group> groups, Funnel funnel, Names names) {
        XYSeriesCollection points = new XYSeriesCollection();
        XYSeries inside = new XYSeries(names.inside());
        XYSeries outside = new XYSeries(names.outside());
        XYPlot plot = Drawing.plot(names.across(), null);
        plot.setRangeAxis(Drawing.shares(names.up()));
        int largest = 1;
        List<Group> outer = new ArrayList<>();
        for (Group group : groups) {
            double share = group.share().interval().value();
            largest = (int) Math.max(largest, group.share().of());
            boolean in = funnel.place(group.share()) == Funnel.Place.INSIDE;
            (in ? inside : outside).add(group.share().of(), share);
            if (!in) {
                outer.add(group);
            }
        }
        for (Group group : outer) {
            plot.addAnnotation(named(group, group.share().of() > 0.55 * largest));
        }
        points.addSeries(inside);
        points.addSeries(outside);
        plot.setDataset(0, points);
        plot.setRenderer(0, dots());
        plot.setDataset(1, limits(funnel, largest, names));
        plot.setRenderer(1, lines());
        ValueMarker centre = new ValueMarker(funnel.target(), DocumentColors.DIM, Drawing.LINE);
        plot.addRangeMarker(centre);
        plot.getDomainAxis().setRange(0, largest * 1.18 + 1);
        plot.getRangeAxis().setRange(0, 1.02);
        return Drawing.of(plot, true);
    }

    private static XYTextAnnotation named(Group group, boolean left) {
        String words =
                group.name().length() <= LONGEST ? group.name() : group.name().substring(0, LONGEST - 1) + "…";
        XYTextAnnotation name = new XYTextAnnotation(
                left ? words + "   " : "   " + words,
                group.share().of(),
                group.share().interval().value());
        name.setFont(ChartFont.bold(Drawing.LETTERS));
        name.setPaint(DocumentColors.INK);
        name.setTextAnchor(left ? TextAnchor.HALF_ASCENT_RIGHT : TextAnchor.HALF_ASCENT_LEFT);
        return name;
    }

    private static XYLineAndShapeRenderer dots() {
        XYLineAndShapeRenderer dots = new XYLineAndShapeRenderer(false, true);
        dots.setSeriesShape(0, Drawing.DOT);
        dots.setSeriesPaint(0, DocumentColors.MEASURED);
        dots.setSeriesShape(1, Drawing.WARN);
        dots.setSeriesPaint(1, DocumentColors.REPORTED);
        return dots;
    }

    private static XYLineAndShapeRenderer lines() {
        XYLineAndShapeRenderer lines = new XYLineAndShapeRenderer(true, false);
        for (int i = 0; i < 4; i++) {
            lines.setSeriesPaint(i, DocumentColors.LIMIT);
            lines.setSeriesStroke(i, i < 2 ? Drawing.DASHED : Drawing.DOTTED);
            lines.setSeriesVisibleInLegend(i, i % 2 == 0);
        }
        return lines;
    }

    private static XYSeriesCollection limits(Funnel funnel, int largest, Names names) {
        XYSeriesCollection limits = new XYSeriesCollection();
        for (double held : List.of(Funnel.WARNING, Funnel.ALARM)) {
            String name = held == Funnel.WARNING ? names.warning() : names.alarm();
            XYSeries high = new XYSeries(name);
            XYSeries low = new XYSeries(name + " ");
            for (int size : sizes(largest)) {
                high.add(size, funnel.high(size, held));
                low.add(size, funnel.low(size, held));
            }
            limits.addSeries(high);
            limits.addSeries(low);
        }
        return limits;
    }

    private static List<Integer> sizes(int largest) {
        List<Integer> sizes = new ArrayList<>();
        int step = Math.max(1, largest / 300);
        for (int size = 1; size <= largest * 1.1 + 1; size += step) {
            sizes.add(size);
        }
        return sizes;
    }
}
