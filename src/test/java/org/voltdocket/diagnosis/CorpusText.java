package org.voltdocket.diagnosis;

import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.stream.IntStream;
import org.assertj.core.util.diff.Delta;
import org.assertj.core.util.diff.DiffUtils;
import org.voltdocket.diagnosis.Assessment.RegimeSpan;

/** An assessment as the corpus keeps it: JSON, one fact a line, so that a difference can be read. */
final class CorpusText {

    private CorpusText() {}

    static String of(Assessment said) {
        List<String> causes = said.causes().stream()
                .map(c -> String.format(Locale.ROOT, "\"%s\": %.4f", c.cause().id(), c.probability()))
                .toList();
        List<String> findings = said.findings().stream()
                .map(f -> String.format(
                        Locale.ROOT,
                        "{\"id\": \"%s\", \"value\": %s, \"result\": \"%s\"}",
                        f.id(),
                        number(f.value()),
                        f.result().id()))
                .toList();
        List<String> estimates = said.estimates().entrySet().stream()
                .map(e -> String.format(
                        "\"%s\": [%s, %s, %s]",
                        e.getKey(),
                        number(e.getValue().value()),
                        number(e.getValue().low()),
                        number(e.getValue().high())))
                .toList();
        List<String> missing = said.missing().stream().map(m -> '"' + m + '"').toList();
        return "{\n  \"batteryVerdict\": \"" + said.batteryVerdict().id()
                + "\",\n  \"batteryReason\": \"" + said.batteryReason().id() + "\",\n  \"leaning\": \""
                + said.leaning().id() + "\",\n  \"causes\": " + block("{", causes, "}") + ",\n  \"findings\": "
                + block("[", findings, "]") + ",\n  \"estimates\": " + block("{", estimates, "}")
                + ",\n  \"regimes\": " + block("[", regimes(said), "]") + ",\n  \"missing\": "
                + block("[", missing, "]") + "\n}\n";
    }

    /** Of each recording the seconds in each regime. */
    private static List<String> regimes(Assessment said) {
        List<String> out = new ArrayList<>();
        for (List<RegimeSpan> spans : said.regimes().values()) {
            Map<Regime, Double> seconds = new EnumMap<>(Regime.class);
            spans.forEach(span -> seconds.merge(span.regime(), span.to() - span.from(), Double::sum));
            List<String> parts = seconds.entrySet().stream()
                    .map(e -> String.format("\"%s\": %s", e.getKey().id(), number(e.getValue())))
                    .toList();
            out.add("{" + String.join(", ", parts) + "}");
        }
        return out;
    }

    private static String block(String open, List<String> lines, String close) {
        return lines.isEmpty() ? open + close : open + "\n    " + String.join(",\n    ", lines) + "\n  " + close;
    }

    /** Six significant digits, plain. */
    private static String number(Double value) {
        if (value == null) {
            return "null";
        }
        BigDecimal rounded = new BigDecimal(value).round(new MathContext(6, RoundingMode.HALF_EVEN));
        return rounded.setScale(Math.min(6, Math.max(0, rounded.scale())), RoundingMode.HALF_EVEN)
                .stripTrailingZeros()
                .toPlainString();
    }

    /** What the assessment comes to: verdict on the battery, leaning and first cause, without the numbers. */
    static String conclusion(String text) {
        List<String> lines = text.lines().toList();
        int causes = IntStream.range(0, lines.size())
                .filter(i -> lines.get(i).contains("\"causes\""))
                .findFirst()
                .orElseThrow();
        String first = lines.get(causes + 1).replaceAll("[^\"]*\"([^\"]*)\".*", "$1");
        return String.join(
                        "\n",
                        lines.stream()
                                .limit(causes)
                                .filter(l -> l.contains(":"))
                                .toList()) + "\n" + first + "\n";
    }

    /** Lines that differ, {@code -} for what was expected and {@code +} for what is said now; empty where none does. */
    static List<String> difference(String expected, String now) {
        List<String> out = new ArrayList<>();
        for (Delta<String> delta :
                DiffUtils.diff(expected.lines().toList(), now.lines().toList()).getDeltas()) {
            delta.getOriginal().getLines().forEach(line -> out.add("- " + line.strip()));
            delta.getRevised().getLines().forEach(line -> out.add("+ " + line.strip()));
        }
        return out;
    }
}
