package org.voltdocket.diagnosis.rulebook;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.util.List;
import java.util.Map;
import org.voltdocket.diagnosis.Cause;
import org.voltdocket.diagnosis.EvidenceKind;
import org.voltdocket.kernel.Sha256;

/**
 * One edition of the rule book. A released edition never changes, because decisions are based on it.
 *
 * @param edition for example {@code 2026.1}
 * @param sha256 digest of the file
 * @param startingOdds probability of each cause before any evidence; ours, until audited outcomes replace them
 * @param oddsSource where the starting odds come from
 * @param rules in the order of the file
 * @param decisions value, meaning and source of each decision limit
 * @param tests what a test that is not there yet would cost and show, by kind of evidence
 * @param released false for a draft: no decision may be based on it
 */
public record Rulebook(
        String edition,
        Sha256 sha256,
        Map<Cause, Double> startingOdds,
        String oddsSource,
        List<Rule> rules,
        Map<DecisionLimit, Decision> decisions,
        Map<EvidenceKind, DiagnosticTest> tests,
        boolean released) {

    /** The edition that new assessments are made by unless the server is configured otherwise. */
    public static final String CURRENT_EDITION = "2026.1";

    /**
     * A decision limit as the edition gives it.
     *
     * @param meaning what the limit decides, in one sentence
     * @param source where the value comes from; "Ours" where it is our choice
     */
    public record Decision(double value, String meaning, String source) {}

    /** A released edition without decision limits, to evaluate rules only. */
    public Rulebook(
            String edition, Sha256 sha256, Map<Cause, Double> startingOdds, String oddsSource, List<Rule> rules) {
        this(edition, sha256, startingOdds, oddsSource, rules, Map.of(), Map.of(), true);
    }

    /**
     * Value of a decision limit.
     *
     * @throws IllegalStateException if this rule book has none
     */
    public double decision(DecisionLimit limit) {
        Decision decision = decisions.get(limit);
        if (decision == null) {
            throw new IllegalStateException("rule book " + edition + " has no decision limit " + limit.id());
        }
        return decision.value();
    }

    /** Reads {@link #CURRENT_EDITION} from the class path. */
    public static Rulebook current() {
        String file = "/shared/rulebook/" + CURRENT_EDITION + ".yaml";
        try (InputStream yaml = Rulebook.class.getResourceAsStream(file)) {
            if (yaml == null) {
                throw new IllegalStateException(file + " is missing from the program");
            }
            return read(yaml);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /**
     * Reads an edition.
     *
     * @throws IllegalArgumentException if the file is no rule book; the message names the row and the member
     */
    public static Rulebook read(InputStream yaml) {
        try {
            return RulebookParser.parse(yaml.readAllBytes());
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
