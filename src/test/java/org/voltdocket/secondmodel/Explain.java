package org.voltdocket.secondmodel;

import java.util.Locale;
import java.util.stream.Collectors;
import org.voltdocket.diagnosis.Assessment;
import org.voltdocket.diagnosis.Recording;

/** One case and its assessment on a page of text. */
final class Explain {

    private Explain() {}

    static String of(Labelled truth, Assessment said) {
        StringBuilder page = new StringBuilder();
        line(
                page,
                "%s %d: true %s, offset %.2f A, charge %.0f to %.0f %%",
                truth.scenario(),
                truth.seed(),
                truth.cause().id(),
                truth.sensorOffsetA(),
                100 * truth.socStart(),
                100 * truth.socEnd());
        line(page, "facts %s", truth.input().facts());
        truth.input()
                .evidence()
                .forEach(item -> line(
                        page,
                        "  %s %s",
                        item.id(),
                        item.reading() instanceof Recording r
                                ? String.format(
                                        Locale.ROOT,
                                        "%s %d rows %.0f s",
                                        r.kind().id(),
                                        r.rows(),
                                        r.durationS())
                                : item.reading()));
        line(
                page,
                "said %s / %s: %s",
                said.batteryVerdict().id(),
                said.leaning().id(),
                said.said());
        said.causes().stream()
                .limit(5)
                .forEach(c -> line(
                        page,
                        "  %-16s %.3f  %s",
                        c.cause().id(),
                        c.probability(),
                        c.weights().stream()
                                .limit(9)
                                .map(w -> String.format(Locale.ROOT, "%s %+.1f", w.finding(), w.decibans()))
                                .collect(Collectors.joining(", "))));
        said.findings()
                .forEach(f -> line(
                        page,
                        "  %-9s %-34s %s [%s, %s] %s %s %s%s | %s",
                        f.result().id(),
                        f.id(),
                        number(f.value()),
                        number(f.low()),
                        number(f.high()),
                        f.unit(),
                        f.comparison(),
                        number(f.limit()),
                        f.limitHigh() == null ? "" : ".." + number(f.limitHigh()),
                        f.said()));
        said.estimates()
                .forEach((name, e) -> line(
                        page, "  estimate %-26s %.3f [%.3f, %.3f] %s", name, e.value(), e.low(), e.high(), e.unit()));
        double[] time = Tally.rightOfAll(Tally.regimeTime(truth, said));
        line(
                page,
                "regimes right %.1f %% of %.0f s; missing %s; next %s",
                100 * time[0] / time[1],
                time[1],
                said.missing(),
                said.nextSteps());
        truth.regimes()
                .forEach((id, labels) -> truth.input().evidence().stream()
                        .filter(item -> item.id().equals(id))
                        .forEach(item -> {
                            double[] t = Tally.rightOfAll(Tally.regimeTime(
                                    (Recording) item.reading(),
                                    labels,
                                    said.regimes().get(id)));
                            line(page, "  %s regimes right %.1f %% of %.0f s", id, 100 * t[0] / t[1], t[1]);
                        }));
        return page.toString();
    }

    private static String number(Double value) {
        return value == null ? "-" : String.format(Locale.ROOT, "%.3f", value);
    }

    private static void line(StringBuilder page, String format, Object... values) {
        page.append(String.format(Locale.ROOT, format, values)).append('\n');
    }
}
