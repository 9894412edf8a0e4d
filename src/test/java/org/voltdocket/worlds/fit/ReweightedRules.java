package org.voltdocket.worlds.fit;

import java.util.Map;
import java.util.function.UnaryOperator;
import org.voltdocket.diagnosis.Cause;
import org.voltdocket.diagnosis.rulebook.Rule;
import org.voltdocket.diagnosis.rulebook.Rulebook;

/** Rule books and rules with other weights; all else is the same. */
final class ReweightedRules {

    private ReweightedRules() {}

    static Rulebook of(Rulebook book, UnaryOperator<Rule> change) {
        return new Rulebook(
                book.edition(),
                book.sha256(),
                book.startingOdds(),
                book.oddsSource(),
                book.rules().stream().map(change).toList(),
                book.decisions(),
                book.tests(),
                book.released());
    }

    static Rule of(
            Rule rule, String group, Map<Cause, Double> below, Map<Cause, Double> inside, Map<Cause, Double> above) {
        return new Rule(
                rule.id(),
                rule.quantity(),
                rule.low(),
                rule.high(),
                rule.unit(),
                rule.source(),
                group,
                rule.control(),
                rule.decides(),
                below,
                inside,
                above,
                rule.plausible(),
                rule.examples(),
                rule.cases());
    }
}
