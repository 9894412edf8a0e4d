package org.voltdocket.insight.chart;

import java.awt.Color;
import java.util.List;
import java.util.Optional;
import org.jfree.chart.plot.XYPlot;
import org.jfree.chart.renderer.xy.DeviationStepRenderer;
import org.jfree.chart.renderer.xy.XYLineAndShapeRenderer;
import org.jfree.data.xy.XYSeries;
import org.jfree.data.xy.XYSeriesCollection;
import org.jfree.data.xy.YIntervalSeries;
import org.jfree.data.xy.YIntervalSeriesCollection;
import org.voltdocket.insight.estimate.KaplanMeier;
import org.voltdocket.insight.estimate.Weibull;
import org.voltdocket.paper.DocumentColors;

/** The share claimed by age: counted as steps with their bands, and the fitted curve through them. */
public final class LifeChart {

    /**
     * A group.
     *
     * @param watchedTo age to which anything of it was watched
     */
    public record Curve(String name, KaplanMeier counted, Optional<Weibull> fit, double watchedTo) {}

    private LifeChart() {}

    public static Drawing of(List<Curve> curves, String across, String up) {
        YIntervalSeriesCollection counted = new YIntervalSeriesCollection();
        XYSeriesCollection fitted = new XYSeriesCollection();
        DeviationStepRenderer steps = new DeviationStepRenderer(true, false);
        XYLineAndShapeRenderer lines = new XYLineAndShapeRenderer(true, false);
        steps.setAlpha(0.16f);
        for (int i = 0; i < curves.size(); i++) {
            Curve curve = curves.get(i);
            counted.addSeries(steps(curve));
            steps.setSeriesPaint(i, Drawing.ink(i));
            steps.setSeriesFillPaint(i, Drawing.ink(i));
            steps.setSeriesStroke(i, Drawing.LINE);
            fitted.addSeries(fit(curve));
            lines.setSeriesPaint(i, Drawing.ink(i));
            lines.setSeriesStroke(i, Drawing.DOTTED);
            lines.setSeriesVisibleInLegend(i, false);
        }
        XYPlot plot = Drawing.plot(across, null);
        plot.setRangeAxis(Drawing.shares(up));
        plot.setDataset(0, counted);
        plot.setRenderer(0, steps);
        plot.setDataset(1, fitted);
        plot.setRenderer(1, lines);
        plot.setBackgroundPaint(Color.WHITE);
        plot.setDomainGridlinePaint(Drawing.GRID);
        plot.setRangeZeroBaselineVisible(true);
        plot.setRangeZeroBaselinePaint(DocumentColors.DIM);
        return Drawing.of(plot, true);
    }

    private static YIntervalSeries steps(Curve curve) {
        YIntervalSeries series = new YIntervalSeries(curve.name());
        series.add(0, 0, 0, 0);
        double[] last = {0, 0, 0};
        for (KaplanMeier.Step step : curve.counted().steps()) {
            last = new double[] {
                1 - step.survival().value(),
                1 - step.survival().high(),
                1 - step.survival().low()
            };
            series.add(step.age(), last[0], last[1], last[2]);
        }
        series.add(curve.watchedTo(), last[0], last[1], last[2]);
        return series;
    }

    private static XYSeries fit(Curve curve) {
        XYSeries series = new XYSeries(curve.name() + " ");
        curve.fit().ifPresent(fit -> {
            for (int i = 0; i <= 80; i++) {
                double age = curve.watchedTo() * i / 80;
                series.add(age, fit.failedBy(age));
            }
        });
        return series;
    }
}
