package org.voltdocket.insight.chart;

import java.awt.Color;
import java.util.List;
import org.jfree.chart.plot.IntervalMarker;
import org.jfree.chart.plot.ValueMarker;
import org.jfree.chart.plot.XYPlot;
import org.jfree.chart.renderer.xy.XYLineAndShapeRenderer;
import org.jfree.chart.ui.Layer;
import org.jfree.chart.ui.RectangleAnchor;
import org.jfree.chart.ui.TextAnchor;
import org.jfree.data.Range;
import org.jfree.data.xy.XYSeries;
import org.jfree.data.xy.XYSeriesCollection;
import org.voltdocket.insight.estimate.BlandAltman;
import org.voltdocket.kernel.Interval;
import org.voltdocket.paper.ChartFont;
import org.voltdocket.paper.DocumentColors;

/** Differences of two instruments over their mean, with bias, limits of agreement and the interval of each as a band. */
public final class BlandAltmanChart {

    /** A pair: mean of both readings, and their difference. */
    public record Point(double mean, double difference) {}

    /** Words of the chart. */
    public record Names(String across, String up, String bias, String lower, String upper) {}

    private BlandAltmanChart() {}

    /** @param limits of the same points; null where there are too few for any */
    public static Drawing of(List<Point> points, BlandAltman limits, Names names) {
        XYSeries pairs = new XYSeries("pairs");
        double reach = 1;
        for (Point point : points) {
            pairs.add(point.mean(), point.difference());
            reach = Math.max(reach, Math.abs(point.difference()));
        }
        XYPlot plot = Drawing.plot(names.across(), names.up());
        XYLineAndShapeRenderer dots = new XYLineAndShapeRenderer(false, true);
        dots.setSeriesShape(0, Drawing.DOT);
        dots.setSeriesPaint(0, DocumentColors.MEASURED);
        plot.setDataset(0, new XYSeriesCollection(pairs));
        plot.setRenderer(0, dots);
        ValueMarker zero = new ValueMarker(0, DocumentColors.DIM, Drawing.DOTTED);
        plot.addRangeMarker(zero, Layer.BACKGROUND);
        if (limits != null) {
            line(plot, limits.bias(), names.bias(), DocumentColors.REPORTED);
            line(plot, limits.lower(), names.lower(), DocumentColors.LIMIT);
            line(plot, limits.upper(), names.upper(), DocumentColors.LIMIT);
            reach = Math.max(
                    reach, Math.max(-limits.lower().low(), limits.upper().high()));
        }
        plot.getRangeAxis().setRange(-reach * 1.1, reach * 1.1);
        plot.getDomainAxis().setRange(across(points));
        return Drawing.of(plot, false);
    }

    /** A little more than the readings span, and more than a hair where they are all the same. */
    private static Range across(List<Point> points) {
        double low = points.stream().mapToDouble(Point::mean).min().orElse(0);
        double high = points.stream().mapToDouble(Point::mean).max().orElse(1);
        double air = Math.max((high - low) * 0.06, Math.max(1, high * 0.05));
        return new Range(low - air, high + air);
    }

    private static void line(XYPlot plot, Interval at, String name, Color ink) {
        IntervalMarker band = new IntervalMarker(at.low(), at.high(), Drawing.BAND);
        band.setAlpha(0.7f);
        plot.addRangeMarker(band, Layer.BACKGROUND);
        ValueMarker line = new ValueMarker(at.value(), ink, Drawing.LINE);
        line.setLabel(name);
        line.setLabelFont(ChartFont.plain(Drawing.LETTERS));
        line.setLabelPaint(DocumentColors.INK);
        line.setLabelBackgroundColor(Color.WHITE);
        line.setLabelAnchor(RectangleAnchor.TOP_RIGHT);
        line.setLabelTextAnchor(TextAnchor.BOTTOM_RIGHT);
        plot.addRangeMarker(line, Layer.FOREGROUND);
    }
}
