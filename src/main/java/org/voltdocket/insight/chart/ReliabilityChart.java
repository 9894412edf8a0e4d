package org.voltdocket.insight.chart;

import org.jfree.chart.annotations.XYLineAnnotation;
import org.jfree.chart.annotations.XYTextAnnotation;
import org.jfree.chart.plot.XYPlot;
import org.jfree.chart.renderer.xy.XYErrorRenderer;
import org.jfree.chart.ui.TextAnchor;
import org.jfree.data.xy.XYIntervalSeries;
import org.jfree.data.xy.XYIntervalSeriesCollection;
import org.voltdocket.insight.estimate.Calibration;
import org.voltdocket.kernel.Interval;
import org.voltdocket.paper.ChartFont;
import org.voltdocket.paper.DocumentColors;

/** Reliability diagram: observed frequency over stated probability. */
public final class ReliabilityChart {

    private ReliabilityChart() {}

    public static Drawing of(Calibration calibration, String across, String up) {
        XYIntervalSeries points = new XYIntervalSeries(up);
        XYPlot plot = Drawing.plot(across, null);
        plot.setDomainAxis(Drawing.shares(across));
        plot.setRangeAxis(Drawing.shares(up));
        for (Calibration.Bin bin : calibration.bins()) {
            if (bin.came().known()) {
                Interval came = bin.came().interval();
                points.add(bin.stated(), bin.stated(), bin.stated(), came.value(), came.low(), came.high());
                XYTextAnnotation size = new XYTextAnnotation("  " + bin.came().of(), bin.stated(), came.value());
                size.setFont(ChartFont.plain(Drawing.LETTERS));
                size.setPaint(DocumentColors.DIM);
                size.setTextAnchor(TextAnchor.HALF_ASCENT_LEFT);
                plot.addAnnotation(size);
            }
        }
        XYIntervalSeriesCollection all = new XYIntervalSeriesCollection();
        all.addSeries(points);
        XYErrorRenderer bars = new XYErrorRenderer();
        bars.setDrawXError(false);
        bars.setSeriesPaint(0, DocumentColors.MEASURED);
        bars.setSeriesShape(0, Drawing.SQUARE);
        plot.setDataset(all);
        plot.setRenderer(bars);
        plot.addAnnotation(new XYLineAnnotation(0, 0, 1, 1, Drawing.DASHED, DocumentColors.LIMIT));
        plot.getDomainAxis().setRange(0, 1.05);
        plot.getRangeAxis().setRange(0, 1.02);
        return Drawing.of(plot, false);
    }
}
