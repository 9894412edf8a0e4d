package org.voltdocket.paper;

import java.awt.BasicStroke;
import java.awt.Color;
import java.awt.Shape;
import java.awt.geom.Line2D;
import java.awt.geom.Rectangle2D;
import java.util.LinkedHashSet;
import java.util.Set;
import org.jfree.chart.JFreeChart;
import org.jfree.chart.LegendItem;
import org.jfree.chart.LegendItemCollection;
import org.jfree.chart.block.BlockBorder;
import org.jfree.chart.title.LegendTitle;
import org.jfree.chart.ui.RectangleEdge;
import org.jfree.chart.ui.RectangleInsets;

/** The key below a chart: lines, limits, and each kind of band once. */
final class ChartKey {

    private static final Shape DASH = new Line2D.Double(-9, 0, 9, 0);
    private static final Shape PATCH = new Rectangle2D.Double(-7, -3.5, 14, 7);
    /** Approximate characters per row, including the line samples. */
    private static final int ROW = 96;

    private static final int SIGN = 9;

    private ChartKey() {}

    static BasicStroke dashes(float width) {
        return new BasicStroke(width, BasicStroke.CAP_BUTT, BasicStroke.JOIN_ROUND, 10, new float[] {4, 2}, 0);
    }

    static int rows(Chart chart) {
        LegendItemCollection items = items(chart);
        int rows = 1;
        int used = 0;
        for (int i = 0; i < items.getItemCount(); i++) {
            int length = items.get(i).getLabel().length() + SIGN;
            if (used > 0 && used + length > ROW) {
                rows++;
                used = 0;
            }
            used += length;
        }
        return rows;
    }

    static LegendItemCollection items(Chart chart) {
        LegendItemCollection items = new LegendItemCollection();
        Set<String> named = new LinkedHashSet<>();
        for (Chart.Panel panel : chart.panels()) {
            for (Chart.Line line : panel.lines()) {
                items.add(stroke(line.name(), line.ink(), line.dashed() ? dashes(1.2f) : new BasicStroke(1.2f)));
            }
        }
        for (Chart.Panel panel : chart.panels()) {
            for (Chart.Limit limit : panel.limits()) {
                if (named.add(limit.name())) {
                    items.add(stroke(limit.name(), DocumentColors.LIMIT, dashes(0.8f)));
                }
            }
        }
        for (Chart.Band band : chart.bands()) {
            if (named.add(band.name())) {
                items.add(new LegendItem(
                        band.name(), null, null, null, PATCH, band.tint(), new BasicStroke(0.4f), DocumentColors.LINE));
            }
        }
        return items;
    }

    private static LegendItem stroke(String name, Color ink, BasicStroke stroke) {
        return new LegendItem(name, null, null, null, DASH, stroke, ink);
    }

    static void place(JFreeChart chart) {
        LegendTitle legend = chart.getLegend();
        legend.setPosition(RectangleEdge.BOTTOM);
        legend.setItemFont(ChartFont.plain(7));
        legend.setItemPaint(DocumentColors.INK);
        legend.setFrame(BlockBorder.NONE);
        legend.setBackgroundPaint(Color.WHITE);
        legend.setPadding(RectangleInsets.ZERO_INSETS);
        legend.setMargin(new RectangleInsets(2, 0, 0, 0));
    }
}
