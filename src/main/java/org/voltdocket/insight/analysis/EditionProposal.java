package org.voltdocket.insight.analysis;

import static java.nio.charset.StandardCharsets.UTF_8;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.time.LocalDate;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import org.springframework.security.access.AccessDeniedException;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;
import org.voltdocket.assessment.edition.Edition;
import org.voltdocket.assessment.edition.EditionService;
import org.voltdocket.diagnosis.Cause;
import org.voltdocket.insight.InsightQuery;
import org.voltdocket.kernel.Actor;
import org.voltdocket.kernel.Interval;

/**
 * An edition of the rule book as it would be with the learned odds: the text of the one in force with other starting odds, in
 * preparation. It is only written; a person uploads it, tries it and puts it in force.
 */
@Service
public class EditionProposal {

    private final StartingOddsAnalysis learning;
    private final EditionService editions;

    EditionProposal(StartingOddsAnalysis learning, EditionService editions) {
        this.learning = learning;
        this.editions = editions;
    }

    /** @throws AccessDeniedException for others than auditor and administrator */
    @Transactional(readOnly = true)
    public String text(Actor actor, InsightQuery query) {
        if (!actor.canAudit()) {
            throw new AccessDeniedException("editions are proposed by auditor or administrator");
        }
        Edition inForce = editions.inForce();
        Map<Cause, Double> before = editions.rulebook().startingOdds();
        StartingOddsAnalysis.Learnt learnt = learning.learnt(query);
        return write(
                new String(editions.content(inForce.sha256()), UTF_8),
                inForce.name() + "-learned",
                query.to(),
                "Learned from " + learnt.outcomes() + " audited outcomes of claims from " + query.from() + " to "
                        + query.to() + ", the odds of " + inForce.name()
                        + " counting as 50; causes that no bench can tell apart keep their proportions.",
                spread(before, learnt.odds()));
    }

    /** Defect and wear as learned, all else in the proportions it had; to four places, adding to 1. */
    static Map<Cause, BigDecimal> spread(Map<Cause, Double> before, List<Interval> learned) {
        double defect = learned.get(0).value();
        double wear = learned.get(1).value();
        double others = 1 - before.get(Cause.BATTERY_DEFECT) - before.get(Cause.BATTERY_WORN);
        Map<Cause, BigDecimal> odds = new EnumMap<>(Cause.class);
        BigDecimal left = BigDecimal.ONE;
        for (Cause cause : Cause.values()) {
            double value = switch (cause) {
                case BATTERY_DEFECT -> defect;
                case BATTERY_WORN -> wear;
                default -> before.get(cause) / others * (1 - defect - wear);
            };
            BigDecimal rounded = new BigDecimal(value).setScale(4, RoundingMode.HALF_EVEN);
            odds.put(cause, rounded.max(new BigDecimal("0.0001")));
            left = left.subtract(odds.get(cause));
        }
        Cause largest = odds.entrySet().stream()
                .max(Map.Entry.comparingByValue())
                .orElseThrow()
                .getKey();
        odds.merge(largest, left, BigDecimal::add);
        return odds;
    }

    /** The text with another name and other odds; the rules are unchanged. */
    static String write(String text, String name, LocalDate day, String source, Map<Cause, BigDecimal> odds) {
        StringBuilder out = new StringBuilder();
        boolean inOdds = false;
        for (String line : text.split("\n", -1)) {
            boolean top = !line.isEmpty() && !Character.isWhitespace(line.charAt(0)) && line.charAt(0) != '#';
            inOdds = inOdds && !top;
            if (line.startsWith("edition:")) {
                out.append("edition: \"").append(name).append("\"\n");
            } else if (line.startsWith("issued:")) {
                out.append("issued: \"").append(day).append("\"\ninTheMaking: true\n");
            } else if (line.startsWith("startingOdds:")) {
                inOdds = true;
                out.append("startingOdds:\n  source: \"").append(source).append("\"\n  odds: {");
                out.append(odds.entrySet().stream()
                                .map(one -> one.getKey().id() + ": "
                                        + one.getValue().toPlainString())
                                .collect(Collectors.joining(", ")))
                        .append("}\n");
            } else if (!inOdds && !line.startsWith("inTheMaking:")) {
                out.append(line).append('\n');
            }
        }
        return out.toString().stripTrailing() + "\n";
    }
}
