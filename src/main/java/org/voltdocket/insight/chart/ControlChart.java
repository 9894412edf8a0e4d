package org.voltdocket.insight.chart;

import java.util.List;
import org.jfree.chart.axis.SymbolAxis;
import org.jfree.chart.plot.ValueMarker;
import org.jfree.chart.plot.XYPlot;
import org.jfree.chart.renderer.xy.XYLineAndShapeRenderer;
import org.jfree.chart.renderer.xy.XYStepRenderer;
import org.jfree.data.xy.XYSeries;
import org.jfree.data.xy.XYSeriesCollection;
import org.voltdocket.insight.estimate.PChart;
import org.voltdocket.paper.DocumentColors;

/** Shares of samples in their order, with the limits that each sample's own size gives. */
public final class ControlChart {

    private ControlChart() {}

    /**
     * @param samples names in the order that the chart's points count them
     * @param limit word for the limits
     * @param outside word for samples beyond them
     */
    public static Drawing of(
            PChart chart, List<String> samples, String across, String up, String limit, String outside) {
        XYSeries line = new XYSeries(up);
        XYSeries beyond = new XYSeries(outside);
        XYSeries high = new XYSeries(limit);
        XYSeries low = new XYSeries(limit + " ");
        double most = 0.01;
        for (PChart.Point point : chart.points()) {
            double share = point.share().interval().value();
            line.add(point.sample(), share);
            if (point.outside()) {
                beyond.add(point.sample(), share);
            }
            high.add(point.sample() - 0.5, point.high());
            low.add(point.sample() - 0.5, point.low());
            high.add(point.sample() + 0.5, point.high());
            low.add(point.sample() + 0.5, point.low());
            most = Math.max(most, Math.max(share, point.high()));
        }
        XYPlot plot = Drawing.plot(across, null);
        SymbolAxis weeks = new SymbolAxis(across, samples.toArray(String[]::new));
        Drawing.style(weeks);
        weeks.setGridBandsVisible(false);
        weeks.setVerticalTickLabels(true);
        plot.setDomainAxis(weeks);
        plot.setRangeAxis(Drawing.shares(up));
        plot.setDataset(0, collected(line, beyond));
        plot.setRenderer(0, points());
        plot.setDataset(1, collected(high, low));
        plot.setRenderer(1, steps());
        plot.addRangeMarker(new ValueMarker(chart.centre(), DocumentColors.DIM, Drawing.LINE));
        plot.getRangeAxis().setRange(0, Math.min(1, most * 1.1));
        weeks.setRange(-0.5, Math.max(1, samples.size()) - 0.5);
        return Drawing.of(plot, true);
    }

    private static XYSeriesCollection collected(XYSeries... series) {
        XYSeriesCollection all = new XYSeriesCollection();
        for (XYSeries one : series) {
            all.addSeries(one);
        }
        return all;
    }

    private static XYLineAndShapeRenderer points() {
        XYLineAndShapeRenderer points = new XYLineAndShapeRenderer();
        points.setSeriesPaint(0, DocumentColors.MEASURED);
        points.setSeriesShape(0, Drawing.DOT);
        points.setSeriesStroke(0, Drawing.LINE);
        points.setSeriesPaint(1, DocumentColors.REPORTED);
        points.setSeriesShape(1, Drawing.WARN);
        points.setSeriesLinesVisible(1, false);
        return points;
    }

    private static XYStepRenderer steps() {
        XYStepRenderer steps = new XYStepRenderer();
        for (int i = 0; i < 2; i++) {
            steps.setSeriesPaint(i, DocumentColors.LIMIT);
            steps.setSeriesStroke(i, Drawing.DASHED);
            steps.setSeriesVisibleInLegend(i, i == 0);
        }
        return steps;
    }
}
