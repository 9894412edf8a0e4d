package org.voltdocket.worlds;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.voltdocket.diagnosis.Recording;
import org.voltdocket.worlds.Assessor.Assessed;
import org.voltdocket.worlds.WorldEvaluation.Outcome;

/** Writes single cases: a line for each, for reading errors by pattern, or one in full. */
final class CaseReport {

    private final StringBuilder page = new StringBuilder();

    private CaseReport() {}

    private void line(String format, Object... values) {
        page.append(String.format(Locale.ROOT, format, values)).append('\n');
    }

    /** One line for each case, with a heading. */
    static List<String> lines(List<Outcome> outcomes) {
        List<String> lines = new ArrayList<>();
        lines.add("world;channels;fault;seed;severity;kind;achievable;cause;said;stated;ofTruth;battery;leaning");
        for (Outcome o : outcomes) {
            lines.add(String.format(
                    Locale.ROOT,
                    "%s;%s;%s;%d;%s;%s;%.3f;%s;%s;%.3f;%.3f;%s;%s",
                    o.truth().world(),
                    o.channels().id,
                    o.truth().fault().id(),
                    o.truth().seed(),
                    o.truth().severity(),
                    o.kind(),
                    o.achievable(),
                    o.truth().fault().cause().id(),
                    o.said().first().id(),
                    o.said().stated(),
                    o.said().probabilities().get(o.truth().fault().cause()),
                    o.said().battery(),
                    o.said().leaning().id()));
        }
        return lines;
    }

    /** One case in full. */
    static String explain(WorldCase truth, Assessed said) {
        CaseReport report = new CaseReport();
        report.line(
                "%s: true %s, strength %.2f",
                truth, truth.fault().cause().id(), truth.setup().strength());
        report.line("truth %s", truth.estimates());
        report.line("%s", truth.input().facts());
        truth.input().evidence().forEach(item -> report.line("  %s %s", item.id(), described(item.reading())));
        report.line(
                "said %s, %s: %s",
                said.battery(), said.leaning().id(), said.whole().said());
        said.whole().causes().stream()
                .limit(4)
                .forEach(c -> report.line("  %-16s %.3f %s", c.cause().id(), c.probability(), c.weights()));
        said.whole().findings().stream()
                .forEach(f -> report.line(
                        "  %-9s %-34s %s [%s, %s] %s | %s",
                        f.result().id(),
                        f.id(),
                        number(f.value()),
                        number(f.low()),
                        number(f.high()),
                        f.unit(),
                        f.said()));
        said.whole().estimates().forEach((name, e) -> report.line("  %s %s", name, e));
        report.line("regimes %s", said.whole().regimes());
        report.line("missing %s; next %s", said.whole().missing(), said.whole().nextSteps());
        return report.page.toString();
    }

    private static String number(Double value) {
        return value == null ? "-" : String.format(Locale.ROOT, "%.3f", value);
    }

    private static String described(Object reading) {
        return reading instanceof Recording r
                ? String.format(Locale.ROOT, "%s %d rows %.0f s %s", r.kind().id(), r.rows(), r.durationS(), r.marks())
                : reading.toString();
    }
}
