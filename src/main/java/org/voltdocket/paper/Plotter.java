package org.voltdocket.paper;

import com.lowagie.text.pdf.PdfGraphics2D;
import com.lowagie.text.pdf.PdfTemplate;
import java.awt.BasicStroke;
import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.geom.Rectangle2D;
import java.util.LinkedHashSet;
import java.util.Set;
import org.jfree.chart.JFreeChart;
import org.jfree.chart.axis.NumberAxis;
import org.jfree.chart.plot.CombinedDomainXYPlot;
import org.jfree.chart.plot.IntervalMarker;
import org.jfree.chart.plot.ValueMarker;
import org.jfree.chart.plot.XYPlot;
import org.jfree.chart.renderer.xy.XYLineAndShapeRenderer;
import org.jfree.chart.ui.Layer;
import org.jfree.chart.ui.RectangleAnchor;
import org.jfree.chart.ui.RectangleInsets;
import org.jfree.chart.ui.TextAnchor;
import org.jfree.data.xy.DefaultXYDataset;

/** Draws charts as vectors. */
final class Plotter {

    private static final float PANEL = 128;
    private static final float AXIS = 38;
    private static final float KEY_ROW = 14;
    private static final BasicStroke SOLID = new BasicStroke(0.7f, BasicStroke.CAP_BUTT, BasicStroke.JOIN_ROUND);
    private static final BasicStroke HAIR = new BasicStroke(0.4f);

    private Plotter() {}

    /** Height that a chart needs, points. */
    static float height(Chart chart) {
        return chart.panels().size() * PANEL + AXIS + KEY_ROW * ChartKey.rows(chart);
    }

    static void draw(Chart chart, PdfTemplate on, DocumentFonts type) {
        NumberAxis time = axis(chart.timeLabel());
        time.setRange(chart.from(), Math.max(chart.to(), chart.from() + 1));
        time.setStandardTickUnits(ClockUnits.source());
        CombinedDomainXYPlot all = new CombinedDomainXYPlot(time);
        all.setGap(7);
        all.setInsets(RectangleInsets.ZERO_INSETS);
        boolean top = true;
        for (Chart.Panel panel : chart.panels()) {
            all.add(panel(chart, panel, top));
            top = false;
        }
        all.setFixedLegendItems(ChartKey.items(chart));
        JFreeChart drawing = new JFreeChart(null, ChartFont.plain(8), all, true);
        drawing.setBackgroundPaint(Color.WHITE);
        drawing.setPadding(new RectangleInsets(4, 0, 0, 6));
        ChartKey.place(drawing);
        Graphics2D graphics = new PdfGraphics2D(on, on.getWidth(), on.getHeight(), type, false, false, 1);
        drawing.draw(graphics, new Rectangle2D.Double(0, 0, on.getWidth(), on.getHeight()));
        graphics.dispose();
    }

    private static XYPlot panel(Chart chart, Chart.Panel panel, boolean top) {
        DefaultXYDataset data = new DefaultXYDataset();
        XYLineAndShapeRenderer lines = new XYLineAndShapeRenderer(true, false);
        lines.setDrawSeriesLineAsPath(true);
        for (int i = 0; i < panel.lines().size(); i++) {
            Chart.Line line = panel.lines().get(i);
            data.addSeries(i, new double[][] {line.timeS(), line.values()});
            lines.setSeriesPaint(i, line.ink());
            lines.setSeriesStroke(i, line.dashed() ? ChartKey.dashes(0.9f) : SOLID);
        }
        NumberAxis values = axis(panel.label());
        values.setAutoRangeIncludesZero(false);
        if (panel.cut() != null) {
            values.setRange(panel.cut().low(), panel.cut().high());
        }
        XYPlot plot = new XYPlot(data, null, values, lines);
        plot.setBackgroundPaint(Color.WHITE);
        plot.setOutlinePaint(DocumentColors.LINE);
        plot.setOutlineStroke(HAIR);
        plot.setRangeGridlinePaint(DocumentColors.LINE);
        plot.setRangeGridlineStroke(HAIR);
        plot.setDomainGridlinesVisible(false);
        bands(chart, plot, top);
        limits(panel, plot, values);
        if (top) {
            headroom(values, !chart.marks().isEmpty());
        }
        marks(chart, plot, top);
        return plot;
    }

    private static void bands(Chart chart, XYPlot plot, boolean named) {
        double width = PdfPages.RIGHT - PdfPages.LEFT - 50;
        for (Chart.Band band : chart.bands()) {
            IntervalMarker marker = new IntervalMarker(band.fromS(), band.toS(), band.tint());
            marker.setAlpha(1);
            marker.setOutlinePaint(null);
            double wide = (band.toS() - band.fromS()) / (chart.to() - chart.from()) * width;
            if (named && wide > band.name().length() * 4.2) {
                marker.setLabel(band.name());
                marker.setLabelFont(ChartFont.plain(6.5f));
                marker.setLabelPaint(DocumentColors.DIM);
                marker.setLabelBackgroundColor(band.tint());
                marker.setLabelAnchor(RectangleAnchor.TOP);
                marker.setLabelTextAnchor(TextAnchor.TOP_CENTER);
            }
            plot.addDomainMarker(marker, Layer.BACKGROUND);
        }
    }

    /** A limit far from all values would press the lines flat: it stays in the key, with its value, but is not drawn. */
    private static void limits(Chart.Panel panel, XYPlot plot, NumberAxis values) {
        Set<Double> drawn = new LinkedHashSet<>();
        double low = values.getLowerBound();
        double high = values.getUpperBound();
        double air = (high - low) * 0.6;
        for (Chart.Limit limit : panel.limits()) {
            if (limit.value() < low - air || limit.value() > high + air || !drawn.add(limit.value())) {
                continue;
            }
            plot.addRangeMarker(new ValueMarker(limit.value(), DocumentColors.LIMIT, ChartKey.dashes(0.8f)));
            double margin = (high - low) * 0.05;
            values.setRange(
                    Math.min(values.getLowerBound(), limit.value() - margin),
                    Math.max(values.getUpperBound(), limit.value() + margin));
        }
    }

    /** Room above the lines for the names of the bands, and below them for the numbers of the marks. */
    private static void headroom(NumberAxis values, boolean marked) {
        double air = (values.getUpperBound() - values.getLowerBound()) * 0.1;
        values.setRange(values.getLowerBound() - (marked ? air : 0), values.getUpperBound() + air);
    }

    private static void marks(Chart chart, XYPlot plot, boolean named) {
        for (Chart.Mark mark : chart.marks()) {
            ValueMarker line = new ValueMarker(mark.atS(), DocumentColors.INK, HAIR);
            if (named) {
                line.setLabel(String.valueOf(mark.number()));
                line.setLabelFont(ChartFont.bold(6.5f));
                line.setLabelPaint(DocumentColors.INK);
                line.setLabelBackgroundColor(Color.WHITE);
                line.setLabelAnchor(RectangleAnchor.BOTTOM_RIGHT);
                line.setLabelTextAnchor(TextAnchor.BOTTOM_LEFT);
            }
            plot.addDomainMarker(line, Layer.FOREGROUND);
        }
    }

    private static NumberAxis axis(String label) {
        NumberAxis axis = new NumberAxis(label);
        axis.setLabelFont(ChartFont.plain(7.5f));
        axis.setTickLabelFont(ChartFont.plain(7));
        axis.setLabelPaint(DocumentColors.INK);
        axis.setTickLabelPaint(DocumentColors.INK);
        axis.setAxisLinePaint(DocumentColors.LINE);
        axis.setTickMarkPaint(DocumentColors.DIM);
        axis.setTickMarkStroke(HAIR);
        axis.setLabelInsets(new RectangleInsets(1, 1, 1, 1));
        return axis;
    }
}
