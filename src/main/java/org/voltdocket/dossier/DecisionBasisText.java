package org.voltdocket.dossier;

import java.util.ArrayList;
import java.util.List;
import org.voltdocket.claim.DecisionBasisChange;
import org.voltdocket.claim.DecisionBasisChange.Difference;
import org.voltdocket.claim.DecisionBasisChange.FindingChange;
import org.voltdocket.evidence.EvidenceItem;
import org.voltdocket.ui.TextFormatter;

/** Describes, line by line, how a case differs from the basis its claim was decided on. */
public final class DecisionBasisText {

    /** Findings listed one by one; further ones are counted. */
    private static final int MOST = 12;

    private final TextFormatter words;
    private final Dossier dossier;

    public DecisionBasisText(TextFormatter words, Dossier dossier) {
        this.words = words;
        this.dossier = dossier;
    }

    public List<String> lines(DecisionBasisChange other) {
        List<String> lines = new ArrayList<>();
        if (other.judgedAt() != null) {
            lines.add(words.say("grounds.judged", words.moment(other.judgedAt())));
            if (other.differences().isEmpty() && other.findings().isEmpty()) {
                lines.add(words.say("grounds.same"));
            }
        }
        other.differences().forEach(one -> lines.add(difference(one)));
        other.findings().stream().limit(MOST).forEach(one -> lines.add(finding(one)));
        if (other.findings().size() > MOST) {
            lines.add(words.say("grounds.more", other.findings().size() - MOST));
        }
        other.evidence().forEach(id -> lines.add(words.say("grounds.evidence", file(id))));
        return lines;
    }

    private String difference(Difference one) {
        return words.say(
                "grounds.change", words.of("grounds", one.what()), said(one, one.before()), said(one, one.now()));
    }

    private String said(Difference one, String value) {
        return switch (one.what()) {
            case "battery-verdict" -> words.of("verdict", value);
            case "battery-reason" -> words.of("battery-reason", value);
            case "leaning" -> words.of("leaning", value);
            case "first-cause" -> words.of("cause-name", value);
            case "probability" -> words.percent(Double.parseDouble(value));
            default -> value;
        };
    }

    private String finding(FindingChange one) {
        String where = one.evidence() == null ? words.say("findings.facts") : file(one.evidence());
        return words.say(
                "grounds.change",
                one.rule() + " (" + where + ")",
                one.before() == null ? words.say("grounds.none") : words.of("result", one.before()),
                one.now() == null ? words.say("grounds.none") : words.of("result", one.now()));
    }

    private String file(String id) {
        return dossier.evidence().stream()
                .filter(item -> item.id().toString().equals(id))
                .map(EvidenceItem::fileName)
                .findFirst()
                .orElse(id);
    }
}
