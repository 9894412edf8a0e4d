package org.voltdocket.insight.chart;

import java.awt.BasicStroke;
import java.awt.Color;
import java.awt.Paint;
import java.awt.Shape;
import java.awt.geom.Ellipse2D;
import java.awt.geom.Path2D;
import java.awt.geom.Rectangle2D;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.text.NumberFormat;
import java.util.Locale;
import org.jfree.chart.ChartUtils;
import org.jfree.chart.JFreeChart;
import org.jfree.chart.axis.Axis;
import org.jfree.chart.axis.NumberAxis;
import org.jfree.chart.plot.Plot;
import org.jfree.chart.plot.XYPlot;
import org.jfree.chart.ui.RectangleInsets;
import org.voltdocket.paper.ChartFont;
import org.voltdocket.paper.DocumentColors;

/**
 * A chart that can be had as a PNG of any width: drawn for the width, so that its letters stay readable on a phone.
 *
 * @param chart as the chart library holds it
 */
public record Drawing(JFreeChart chart) {

    /** Allowed widths, CSS pixels. */
    public static final int NARROW = 360;

    public static final int WIDE = 860;

    /** Letters of axes and labels, points. */
    static final float LETTERS = 12;

    static final Color GRID = new Color(0xe2ded3);
    static final Color BAND = new Color(0xdbe8ea);

    static final BasicStroke LINE = new BasicStroke(1.6f);
    static final BasicStroke DASHED =
            new BasicStroke(1.2f, BasicStroke.CAP_BUTT, BasicStroke.JOIN_ROUND, 1, new float[] {6, 4}, 0);
    static final BasicStroke DOTTED =
            new BasicStroke(1.2f, BasicStroke.CAP_BUTT, BasicStroke.JOIN_ROUND, 1, new float[] {2, 3}, 0);

    static final Shape DOT = new Ellipse2D.Double(-3, -3, 6, 6);
    static final Shape SQUARE = new Rectangle2D.Double(-4, -4, 8, 8);
    static final Shape WARN = triangle();

    /** An empty chart with a text. */
    public static Drawing nothing(String words) {
        XYPlot plot = plot(words, null);
        plot.setDomainGridlinesVisible(false);
        plot.setRangeGridlinesVisible(false);
        return of(plot, false);
    }

    /** @return a PNG at twice the width's pixels, for sharp letters */
    public byte[] png(int width) {
        int wide = Math.max(NARROW, Math.min(WIDE, width));
        int high = wide == NARROW ? 300 : 430;
        try {
            ByteArrayOutputStream out = new ByteArrayOutputStream(1 << 16);
            ChartUtils.writeScaledChartAsPNG(out, chart, wide, high, 2, 2);
            return out.toByteArray();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** A chart of this plot in the house's style. */
    static Drawing of(Plot plot, boolean key) {
        plot.setBackgroundPaint(Color.WHITE);
        plot.setOutlineVisible(false);
        plot.setInsets(new RectangleInsets(6, 2, 2, 10));
        JFreeChart chart = new JFreeChart(null, ChartFont.bold(LETTERS), plot, key);
        chart.setBackgroundPaint(Color.WHITE);
        if (key) {
            chart.getLegend().setItemFont(ChartFont.plain(LETTERS));
            chart.getLegend().setItemPaint(DocumentColors.INK);
            chart.getLegend().setFrame(org.jfree.chart.block.BlockBorder.NONE);
        }
        return new Drawing(chart);
    }

    /** An empty plot over two axes of numbers. */
    static XYPlot plot(String across, String up) {
        XYPlot plot = new XYPlot(null, axis(across), axis(up), null);
        plot.setDomainGridlinePaint(GRID);
        plot.setRangeGridlinePaint(GRID);
        return plot;
    }

    static NumberAxis axis(String label) {
        NumberAxis axis = new NumberAxis(label);
        style(axis);
        axis.setAutoRangeIncludesZero(true);
        return axis;
    }

    /** An axis of shares, 0 to 1, written in per cent. */
    static NumberAxis shares(String label) {
        NumberAxis axis = axis(label);
        axis.setNumberFormatOverride(percent());
        return axis;
    }

    static NumberFormat percent() {
        NumberFormat format = NumberFormat.getPercentInstance(Locale.ENGLISH);
        format.setMaximumFractionDigits(1);
        return format;
    }

    static void style(Axis axis) {
        axis.setLabelFont(ChartFont.plain(LETTERS));
        axis.setTickLabelFont(ChartFont.plain(LETTERS));
        axis.setLabelPaint(DocumentColors.DIM);
        axis.setTickLabelPaint(DocumentColors.DIM);
        axis.setAxisLinePaint(DocumentColors.DIM);
        axis.setTickMarkPaint(DocumentColors.DIM);
    }

    static Paint ink(int number) {
        Color[] inks = {
            DocumentColors.MEASURED,
            DocumentColors.REPORTED,
            DocumentColors.LIMIT,
            new Color(0x4a6a1f),
            new Color(0x5a4a8a),
            DocumentColors.DIM
        };
        return inks[number % inks.length];
    }

    private static Shape triangle() {
        Path2D path = new Path2D.Double();
        path.moveTo(0, -6);
        path.lineTo(5.5, 4.5);
        path.lineTo(-5.5, 4.5);
        path.closePath();
        return path;
    }
}
