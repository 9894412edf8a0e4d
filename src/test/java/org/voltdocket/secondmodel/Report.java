package org.voltdocket.secondmodel;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.function.ToDoubleFunction;
import org.jfree.data.xy.XYSeries;
import org.voltdocket.diagnosis.Cause;
import org.voltdocket.diagnosis.Regime;
import org.voltdocket.diagnosis.quantity.sensor.OffsetBound;
import org.voltdocket.diagnosis.signal.Robust;

/** Writes a tally as a page of Markdown with plots. */
final class Report {

    private static final double[] STATED = {0, 0.5, 0.6, 0.7, 0.8, 0.9, 1.0000001};

    /** Bands of probability for one cause. */
    private static final double[] BANDS = {0, 0.1, 0.5, 0.9, 1.0000001};

    private Report() {}

    /** Writes {@code report.md} and its plots into {@code out} and gives the page back. */
    static String write(Tally tally, Path out) throws IOException {
        StringBuilder page = new StringBuilder("# Judge against generated cases\n\n");
        line(page, "%d cases judged, %d failed.%n", tally.judged.size(), tally.failures.size());
        tally.failures.stream().limit(8).forEach(f -> line(page, "- failed: %s", f));
        if (!tally.judged.isEmpty()) {
            numbers(page, tally);
            bound(page, tally.bounded());
            confusion(page, tally);
            scenarios(page, tally);
            regimes(page, tally);
            wrong(page, tally);
            calibration(page, tally, out);
            reliabilityByCause(page, tally);
            offsets(tally, out);
        }
        Files.writeString(out.resolve("report.md"), page);
        return page.toString();
    }

    private static void numbers(StringBuilder page, Tally tally) {
        page.append("| number | value | to reach |\n|---|---|---|\n");
        line(page, "| first cause right | %.1f %% | ≥ 95 %% |", 100 * tally.accuracy());
        line(page, "| leaning right | %.1f %% | |", 100 * tally.leaningsRight());
        line(page, "| healthy leaning to battery or vehicle | %.1f %% | ≤ 1 %% |", 100 * tally.healthyBlamed());
        line(page, "| vehicle faults leaning vehicle-side | %.1f %% | ≥ 95 %% |", 100 * tally.vehicleFound());
        line(page, "| regimes right, all channels | %.1f %% | ≥ 95 %% |", 100 * tally.regimesRight(false));
        line(page, "| regimes right, measured_v alone | %.1f %% | ≥ 85 %% |", 100 * tally.regimesRight(true));
        line(
                page,
                "| sensor offset covered by its 95 %% interval | %.1f %% of %d | 92 to 98 %% |",
                100 * tally.offsetCoverage(),
                tally.withOffset().size());
        line(page, "| mean width of that interval | %.2f A | |", tally.offsetWidth());
        line(page, "| Brier score of the first cause | %.4f | ≤ 0.05 |", tally.brier());
        line(page, "| time a case | %.1f ms | |%n", tally.millis());
    }

    private static void bound(StringBuilder page, List<Tally.Bounded> cases) {
        if (cases.isEmpty()) {
            return;
        }
        page.append("| 95 % width of the offset without clamp over its Cramér–Rao bound | median | 90th percentile |"
                + " narrower than the bound |\n|---|---|---|---|\n");
        ratios(page, cases, "residuals as they are (data alone)", OffsetBound::dataA);
        ratios(page, cases, "residuals and the fit's own error as it takes them", OffsetBound::fitA);
        ratios(page, cases, "the same with its starting values as information", OffsetBound::pulledA);
        line(
                page,
                "%n%d cases, bound at the true offset. It holds for an unbiased estimate from the regression alone: not"
                        + " where the pull to usual coefficients and offsets decides (third row counts it) nor where the"
                        + " offset is held by what it cannot be, engine off or at charging voltage (in no row); there the"
                        + " interval may be narrower.%n",
                cases.size());
    }

    private static void ratios(
            StringBuilder page, List<Tally.Bounded> cases, String what, ToDoubleFunction<OffsetBound> bound) {
        double[] ratio = cases.stream()
                .mapToDouble(c -> c.width() / bound.applyAsDouble(c.bound()))
                .toArray();
        long narrower = Arrays.stream(ratio).filter(r -> r < 1).count();
        line(
                page,
                "| %s | %.2f | %.2f | %.1f %% |",
                what,
                Robust.median(ratio),
                Robust.quantile(ratio, 0.9),
                100.0 * narrower / ratio.length);
    }

    private static void confusion(StringBuilder page, Tally tally) {
        page.append("| scenario |");
        List<Cause> causes = Arrays.asList(Cause.values());
        causes.forEach(c -> page.append(' ').append(c.id()).append(" |"));
        page.append("\n|---|").append("---|".repeat(causes.size())).append('\n');
        for (Map.Entry<String, Map<Cause, Integer>> row : tally.confusion().entrySet()) {
            page.append("| ").append(row.getKey()).append(" |");
            causes.forEach(c -> page.append(' ')
                    .append(row.getValue().containsKey(c) ? row.getValue().get(c) : ".")
                    .append(" |"));
            page.append('\n');
        }
        page.append('\n');
    }

    private static void scenarios(StringBuilder page, Tally tally) {
        page.append("| scenario | cases | cause right | leaning right | mean weight of the true cause | regimes"
                + " | regimes, measured_v alone | offsets | covered | mean width A | mean error A |\n");
        page.append("|---".repeat(11)).append("|\n");
        for (String scenario : tally.confusion().keySet()) {
            Tally part = tally.of(scenario);
            line(
                    page,
                    "| %s | %d | %.3f | %.3f | %.3f | %.3f | %.3f | %d | %.3f | %.2f | %+.2f |",
                    scenario,
                    part.judged.size(),
                    part.accuracy(),
                    part.leaningsRight(),
                    part.weightOfTruth(),
                    part.regimesRight(false),
                    part.regimesRight(true),
                    part.withOffset().size(),
                    part.offsetCoverage(),
                    part.offsetWidth(),
                    part.offsetError());
        }
        page.append('\n');
    }

    private static void regimes(StringBuilder page, Tally tally) {
        page.append("Seconds by true regime (down) and regime said (across), all channels | measured_v alone\n\n| |");
        for (Regime said : Regime.values()) {
            page.append(' ').append(said.id()).append(" |");
        }
        page.append("\n").append("|---".repeat(Regime.values().length + 1)).append("|\n");
        for (Regime truth : Regime.values()) {
            page.append("| ").append(truth.id()).append(" |");
            for (Regime said : Regime.values()) {
                double all = tally.seconds(false, truth, said);
                double bare = tally.seconds(true, truth, said);
                page.append(all + bare == 0 ? " . |" : String.format(Locale.ROOT, " %.0f / %.0f |", all, bare));
            }
            page.append('\n');
        }
        page.append('\n');
    }

    private static void wrong(StringBuilder page, Tally tally) {
        tally.judged.stream()
                .filter(j -> !j.right() || !j.leansRight())
                .limit(60)
                .forEach(j -> line(
                        page,
                        "- %s %d: said %s %.2f, %s, battery %s",
                        j.truth().scenario(),
                        j.truth().seed(),
                        j.first().id(),
                        j.stated(),
                        j.said().leaning().id(),
                        j.said().batteryVerdict().id()));
        page.append('\n');
    }

    private static void calibration(StringBuilder page, Tally tally, Path out) throws IOException {
        page.append("| stated | cases | mean stated | right |\n|---|---|---|---|\n");
        double[] stated = new double[STATED.length - 1];
        double[] came = new double[STATED.length - 1];
        for (int b = 0; b + 1 < STATED.length; b++) {
            double low = STATED[b];
            double high = STATED[b + 1];
            List<Tally.Judged> in = tally.judged.stream()
                    .filter(j -> j.stated() >= low && j.stated() < high)
                    .toList();
            stated[b] = in.stream().mapToDouble(Tally.Judged::stated).average().orElse(Double.NaN);
            came[b] = in.stream().mapToDouble(j -> j.right() ? 1 : 0).average().orElse(Double.NaN);
            line(page, "| %.1f to %.1f | %d | %.3f | %.3f |", low, high, in.size(), stated[b], came[b]);
        }
        Plots.calibration(stated, came, out.resolve("calibration.png").toFile());
        page.append("\n![calibration](calibration.png) ![sensor offset](offset.png)\n");
    }

    /** Of each cause, how often it was the truth where its probability lay within a band, first in the ranking or not. */
    private static void reliabilityByCause(StringBuilder page, Tally tally) {
        page.append("\n| cause: cases, mean stated, true |");
        for (int b = 0; b + 1 < BANDS.length; b++) {
            line(page, " %.2f to %.2f |", BANDS[b], BANDS[b + 1]);
            page.setLength(page.length() - 1);
        }
        page.append("\n").append("|---".repeat(BANDS.length)).append("|\n");
        for (Cause cause : Cause.values()) {
            page.append("| ").append(cause.id()).append(" |");
            for (int b = 0; b + 1 < BANDS.length; b++) {
                page.append(band(tally, cause, BANDS[b], BANDS[b + 1]));
            }
            page.append('\n');
        }
    }

    private static String band(Tally tally, Cause cause, double low, double high) {
        int n = 0;
        double stated = 0;
        double right = 0;
        for (Tally.Judged j : tally.judged) {
            double p = j.said().causes().stream()
                    .filter(c -> c.cause() == cause)
                    .mapToDouble(c -> c.probability())
                    .sum();
            if (p >= low && p < high) {
                n++;
                stated += p;
                right += j.truth().cause() == cause ? 1 : 0;
            }
        }
        return n == 0 ? " . |" : String.format(Locale.ROOT, " %d, %.3f, %.3f |", n, stated / n, right / n);
    }

    private static void offsets(Tally tally, Path out) throws IOException {
        XYSeries points = new XYSeries("sensor offset, A");
        tally.withOffset()
                .forEach(j -> points.add(j.truth().sensorOffsetA(), j.offset().value()));
        Plots.scatter("Sensor offset, A", points, out.resolve("offset.png").toFile());
    }

    private static void line(StringBuilder page, String format, Object... values) {
        page.append(String.format(Locale.ROOT, format, values)).append('\n');
    }
}
