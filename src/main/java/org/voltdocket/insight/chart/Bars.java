package org.voltdocket.insight.chart;

import java.util.List;
import java.util.Map;
import org.jfree.chart.axis.CategoryAxis;
import org.jfree.chart.axis.CategoryLabelPositions;
import org.jfree.chart.axis.NumberAxis;
import org.jfree.chart.plot.CategoryPlot;
import org.jfree.chart.plot.DatasetRenderingOrder;
import org.jfree.chart.plot.PlotOrientation;
import org.jfree.chart.renderer.category.LineAndShapeRenderer;
import org.jfree.chart.renderer.category.StackedBarRenderer;
import org.jfree.chart.renderer.category.StandardBarPainter;
import org.jfree.data.category.DefaultCategoryDataset;
import org.voltdocket.paper.DocumentColors;

/** Bars of named things: as a Pareto chart with its running share, or lying and stacked by kind. */
public final class Bars {

    /**
     * A bar.
     *
     * @param parts its length by kind, at least 0, every bar with the same kinds in the same order
     */
    public record Bar(String name, Map<String, Double> parts) {

        private double length() {
            return parts.values().stream().mapToDouble(Double::doubleValue).sum();
        }
    }

    private Bars() {}

    /** Longest first as given, with the share that they hold together so far (J. M. Juran's use of V. Pareto's name). */
    public static Drawing pareto(List<Bar> bars, String up, String together) {
        DefaultCategoryDataset shares = new DefaultCategoryDataset();
        double all = bars.stream().mapToDouble(Bar::length).sum();
        double sum = 0;
        for (Bar bar : bars) {
            sum += bar.length();
            shares.addValue(all == 0 ? 0 : sum / all, together, bar.name());
        }
        CategoryPlot plot = plot(bars, up);
        NumberAxis right = Drawing.shares(together);
        right.setRange(0, 1.02);
        plot.setRangeAxis(1, right);
        plot.setDataset(1, shares);
        plot.mapDatasetToRangeAxis(1, 1);
        LineAndShapeRenderer line = new LineAndShapeRenderer();
        line.setSeriesPaint(0, DocumentColors.REPORTED);
        line.setSeriesStroke(0, Drawing.LINE);
        line.setSeriesShape(0, Drawing.DOT);
        plot.setRenderer(1, line);
        plot.setDatasetRenderingOrder(DatasetRenderingOrder.FORWARD);
        plot.getDomainAxis().setCategoryLabelPositions(CategoryLabelPositions.UP_90);
        return Drawing.of(plot, true);
    }

    /** Lying bars, first on top. */
    public static Drawing lying(List<Bar> bars, String along) {
        CategoryPlot plot = plot(bars, along);
        plot.setOrientation(PlotOrientation.HORIZONTAL);
        return Drawing.of(plot, true);
    }

    private static CategoryPlot plot(List<Bar> bars, String up) {
        DefaultCategoryDataset data = new DefaultCategoryDataset();
        bars.forEach(bar -> bar.parts().forEach((kind, length) -> data.addValue(length, kind, bar.name())));
        StackedBarRenderer renderer = new StackedBarRenderer();
        renderer.setBarPainter(new StandardBarPainter());
        renderer.setShadowVisible(false);
        renderer.setMaximumBarWidth(0.12);
        for (int i = 0; i < data.getRowCount(); i++) {
            renderer.setSeriesPaint(i, Drawing.ink(i));
        }
        CategoryAxis names = new CategoryAxis();
        Drawing.style(names);
        names.setMaximumCategoryLabelLines(2);
        names.setMaximumCategoryLabelWidthRatio(0.9f);
        CategoryPlot plot = new CategoryPlot(data, names, Drawing.axis(up), renderer);
        plot.setRangeGridlinePaint(Drawing.GRID);
        return plot;
    }
}
