package org.voltdocket.claim;

import com.fasterxml.jackson.annotation.JsonInclude;
import io.swagger.v3.oas.annotations.media.Schema;
import java.time.Instant;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import org.voltdocket.assessment.StoredAssessment;
import org.voltdocket.diagnosis.Assessment;
import org.voltdocket.evidence.EvidenceItem;

/**
 * How a case differs from what its claim was decided on. It is information for a person and does not reopen the claim.
 *
 * @param differences differences of the assessments; empty if there are none
 * @param findings findings that were added, removed, or have another result
 * @param evidence ids of evidence added after the decision
 */
@Schema(name = "DecisionBasisChange", description = "How the case differs from what its claim was decided on")
@JsonInclude(JsonInclude.Include.NON_NULL)
public record DecisionBasisChange(
        @Schema(description = "when the case was judged anew; absent where it was not")
        Instant judgedAt,

        List<Difference> differences,
        List<FindingChange> findings,
        List<String> evidence) {

    /** One difference between the assessments. */
    @Schema(name = "BasisDifference")
    public record Difference(
            @Schema(
                    allowableValues = {
                        "rulebook",
                        "battery-verdict",
                        "battery-reason",
                        "leaning",
                        "first-cause",
                        "probability"
                    })
            String what,

            String before,
            String now) {}

    /** A finding that was added, removed, or has another result. */
    @Schema(name = "BasisFindingChange")
    @JsonInclude(JsonInclude.Include.NON_NULL)
    public record FindingChange(
            String rule,

            @Schema(description = "id of the evidence it rests on; absent for facts")
            String evidence,

            @Schema(
                    allowableValues = {"inside", "outside", "uncertain"},
                    description = "absent where there was none")
            String before,

            @Schema(description = "absent where there is none now")
            String now) {}

    /** Empty if nothing changed since the decision. */
    public static Optional<DecisionBasisChange> of(
            ClaimDecision decision,
            StoredAssessment frozen,
            Optional<StoredAssessment> latest,
            List<EvidenceItem> held) {
        List<String> late = held.stream()
                .filter(item -> !decision.evidence().containsKey(item.id()))
                .map(item -> item.id().toString())
                .toList();
        Optional<StoredAssessment> anew = latest.filter(kept -> !kept.id().equals(frozen.id()));
        if (anew.isEmpty() && late.isEmpty()) {
            return Optional.empty();
        }
        return Optional.of(new DecisionBasisChange(
                anew.map(StoredAssessment::assessedAt).orElse(null),
                anew.map(now -> differences(frozen.assessment(), now.assessment()))
                        .orElse(List.of()),
                anew.map(now -> findings(frozen.assessment(), now.assessment())).orElse(List.of()),
                late));
    }

    private static List<Difference> differences(Assessment before, Assessment now) {
        List<Difference> out = new ArrayList<>();
        add(out, "rulebook", before.rulebook(), now.rulebook());
        add(
                out,
                "battery-verdict",
                before.batteryVerdict().id(),
                now.batteryVerdict().id());
        add(
                out,
                "battery-reason",
                before.batteryReason().id(),
                now.batteryReason().id());
        add(out, "leaning", before.leaning().id(), now.leaning().id());
        Assessment.RankedCause first = before.causes().get(0);
        Assessment.RankedCause newFirst = now.causes().get(0);
        add(out, "first-cause", first.cause().id(), newFirst.cause().id());
        add(out, "probability", String.valueOf(first.probability()), String.valueOf(newFirst.probability()));
        return List.copyOf(out);
    }

    private static void add(List<Difference> out, String what, String before, String now) {
        if (!before.equals(now)) {
            out.add(new Difference(what, before, now));
        }
    }

    private record Key(String rule, String evidence) {}

    private static List<FindingChange> findings(Assessment before, Assessment now) {
        Map<Key, String> then = results(before);
        Map<Key, String> today = results(now);
        Set<Key> keys = new LinkedHashSet<>(then.keySet());
        keys.addAll(today.keySet());
        return keys.stream()
                .filter(key -> !Objects.equals(then.get(key), today.get(key)))
                .map(key -> new FindingChange(key.rule(), key.evidence(), then.get(key), today.get(key)))
                .toList();
    }

    private static Map<Key, String> results(Assessment assessment) {
        Map<Key, String> results = new LinkedHashMap<>();
        assessment
                .findings()
                .forEach(finding -> results.put(
                        new Key(finding.rule(), finding.evidence()),
                        finding.result().id()));
        return results;
    }
}
