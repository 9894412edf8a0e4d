package org.voltdocket.secondmodel;

import java.awt.Color;
import java.io.File;
import java.io.IOException;
import org.jfree.chart.ChartFactory;
import org.jfree.chart.ChartUtils;
import org.jfree.chart.JFreeChart;
import org.jfree.chart.axis.NumberAxis;
import org.jfree.chart.plot.CombinedDomainXYPlot;
import org.jfree.chart.plot.XYPlot;
import org.jfree.chart.renderer.xy.XYLineAndShapeRenderer;
import org.jfree.data.xy.XYSeries;
import org.jfree.data.xy.XYSeriesCollection;
import org.voltdocket.diagnosis.Channel;
import org.voltdocket.diagnosis.Recording;
import org.voltdocket.diagnosis.Regime;

/** Pictures of recordings and of calibration, as PNG. */
final class Plots {

    private Plots() {}

    /** A recording's channels under each other, with the true regime as a number. */
    static void recording(Recording recording, Regime[] truth, String title, File png) throws IOException {
        CombinedDomainXYPlot all = new CombinedDomainXYPlot(new NumberAxis("s"));
        all.add(plot("V", series(recording, Channel.MEASURED_V), series(recording, Channel.REPORTED_V)), 3);
        all.add(plot("A", series(recording, Channel.MEASURED_A), series(recording, Channel.REPORTED_A)), 2);
        all.add(plot("%, km/h", series(recording, Channel.REPORTED_SOC), series(recording, Channel.SPEED)), 1);
        XYSeries regime = new XYSeries("regime");
        for (int i = 0; i < truth.length; i++) {
            regime.add(recording.timeS()[i] - recording.timeS()[0], truth[i] == null ? -1 : truth[i].ordinal());
        }
        all.add(plot("regime", regime), 1);
        ChartUtils.saveChartAsPNG(png, new JFreeChart(title, JFreeChart.DEFAULT_TITLE_FONT, all, true), 1400, 900);
    }

    /** Stated against true share. */
    static void calibration(double[] stated, double[] came, File png) throws IOException {
        XYSeries line = new XYSeries("true share");
        XYSeries ideal = new XYSeries("ideal");
        for (int i = 0; i < stated.length; i++) {
            if (!Double.isNaN(came[i])) {
                line.add(stated[i], came[i]);
            }
        }
        ideal.add(0, 0);
        ideal.add(1, 1);
        XYSeriesCollection both = new XYSeriesCollection();
        both.addSeries(line);
        both.addSeries(ideal);
        ChartUtils.saveChartAsPNG(
                png,
                ChartFactory.createXYLineChart("Calibration of the first cause", "stated", "true", both),
                600,
                500);
    }

    /** Estimated against true values, with a line of equality. */
    static void scatter(String title, XYSeries points, File png) throws IOException {
        ChartUtils.saveChartAsPNG(
                png,
                ChartFactory.createScatterPlot(title, "true", "estimated", new XYSeriesCollection(points)),
                600,
                500);
    }

    private static XYPlot plot(String axis, XYSeries... lines) {
        XYSeriesCollection data = new XYSeriesCollection();
        for (XYSeries line : lines) {
            data.addSeries(line);
        }
        NumberAxis range = new NumberAxis(axis);
        range.setAutoRangeIncludesZero(false);
        XYLineAndShapeRenderer pen = new XYLineAndShapeRenderer(true, false);
        pen.setSeriesPaint(0, Color.BLUE);
        pen.setSeriesPaint(1, Color.RED);
        return new XYPlot(data, null, range, pen);
    }

    private static XYSeries series(Recording recording, Channel channel) {
        XYSeries line = new XYSeries(channel.id());
        float[] values = recording.channel(channel);
        for (int i = 0; values != null && i < values.length; i++) {
            if (!Float.isNaN(values[i])) {
                line.add(recording.timeS()[i] - recording.timeS()[0], values[i]);
            }
        }
        return line;
    }
}
