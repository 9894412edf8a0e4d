package org.voltdocket.insight.web;

import java.math.BigDecimal;
import java.util.List;
import java.util.Optional;
import org.springframework.stereotype.Component;
import org.voltdocket.insight.TestAgreementService;
import org.voltdocket.insight.TopicResult;
import org.voltdocket.insight.TopicTable;
import org.voltdocket.insight.estimate.BlandAltman;
import org.voltdocket.ui.TextFormatter;

/** Formats the result of a topic for the page. */
@Component
class InsightFormatter {

    private final TextFormatter words;

    InsightFormatter(TextFormatter words) {
        this.words = words;
    }

    /** A sentence, with the key of the cases behind it. */
    public record Sentence(String text, Optional<String> key) {}

    /** A topic in short. */
    public record Brief(String topic, List<Sentence> statements, boolean drawn) {}

    /** A row of the page; numbers are right-aligned. */
    public record Line(String key, boolean marked, List<Value> values) {}

    /** A value of a row. */
    public record Value(String text, boolean number) {}

    /** Statement where a chart has nothing to draw. */
    String nothing() {
        return words.say("insight.chart.nothing");
    }

    Brief brief(TopicResult insight) {
        List<Sentence> all = sentences(insight);
        return new Brief(
                insight.topic().id(),
                all.subList(0, Math.min(4, all.size())),
                insight.drawing().isPresent());
    }

    /** The instruments whose bias is 2 % or more with 95 % confidence. */
    List<String> instruments(List<TestAgreementService.Instrument> instruments) {
        if (instruments.stream().noneMatch(one -> one.limits().isPresent())) {
            return List.of(words.say("insight.agreement.brief.none"));
        }
        List<String> apart = instruments.stream()
                .filter(one -> one.limits().filter(InsightFormatter::surely).isPresent())
                .limit(3)
                .map(one -> words.say(
                        "insight.agreement.brief.apart",
                        one.serial(),
                        String.join(", ", one.workshops()),
                        one.limits().orElseThrow().bias().value(),
                        one.pairs().size()))
                .toList();
        return apart.isEmpty() ? List.of(words.say("insight.agreement.brief.within")) : apart;
    }

    private static boolean surely(BlandAltman limits) {
        return Math.max(limits.bias().low(), -limits.bias().high()) >= 2;
    }

    List<Sentence> sentences(TopicResult insight) {
        return insight.statements().stream()
                .map(statements -> new Sentence(
                        words.say(statements.code(), statements.arguments().toArray()), statements.key()))
                .toList();
    }

    List<Line> rows(TopicTable table) {
        return table.rows().stream()
                .map(row -> new Line(
                        row.key().orElse(""),
                        row.marked(),
                        row.cells().stream().map(this::value).toList()))
                .toList();
    }

    private Value value(TopicTable.Cell cell) {
        boolean number = cell.kind() != TopicTable.Kind.TEXT && cell.kind() != TopicTable.Kind.WORD;
        return new Value(cell.value().map(value -> shown(cell, value)).orElse("–"), number);
    }

    private String shown(TopicTable.Cell cell, Object value) {
        return switch (cell.kind()) {
            case TEXT, COUNT -> value.toString();
            case SHARE -> share((Double) value);
            case NUMBER -> words.number((Double) value);
            case MONEY ->
                ((BigDecimal) value)
                        .setScale(2, java.math.RoundingMode.HALF_EVEN)
                        .toPlainString();
            case WORD -> words.of(cell.group(), value.toString());
        };
    }

    /** In per cent, with as many places as a small share needs. */
    private static String share(double value) {
        double percent = value * 100;
        int places = percent == 0 || percent >= 10 ? 0 : percent >= 1 ? 1 : 2;
        return String.format(java.util.Locale.ROOT, "%." + places + "f %%", percent);
    }
}
