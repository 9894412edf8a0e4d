package org.voltdocket.claim.view;

import com.fasterxml.jackson.annotation.JsonInclude;
import io.swagger.v3.oas.annotations.media.Schema;
import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.UUID;
import org.voltdocket.claim.Claim;
import org.voltdocket.claim.ClaimAction;
import org.voltdocket.claim.ClaimDecision;
import org.voltdocket.claim.ClaimStep;
import org.voltdocket.claim.Confirmation;
import org.voltdocket.claim.DecisionBasisChange;
import org.voltdocket.claim.DecisionProposal;
import org.voltdocket.claim.DocumentKind;
import org.voltdocket.claim.Objection;
import org.voltdocket.claim.RequestedItem;
import org.voltdocket.kernel.CaseNumber;
import org.voltdocket.kernel.Money;
import org.voltdocket.kernel.Sha256;
import org.voltdocket.warranty.WarrantyCalculation;

/** A claim in JSON. What is not known is absent. */
@Schema(name = "Claim", description = "Claim of the workshop, its steps and the decision.")
@JsonInclude(JsonInclude.Include.NON_NULL)
public record ClaimView(
        @Schema(
                allowableValues = {
                    "draft",
                    "submitted",
                    "in-review",
                    "evidence-asked",
                    "approved",
                    "declined",
                    "goodwill",
                    "settled",
                    "withdrawn"
                })
        String state,

        @Schema(example = "129.90") String amount,

        @Schema(description = "ISO 4217", example = "EUR") String currency,

        @Schema(description = "raised by every step") long version,

        Instant openedAt,
        String openedBy,

        @Schema(description = "the steps that you may take now")
        List<String> allowedActions,

        @Schema(description = "what the distributor waits for: kinds of evidence, names of facts, or words")
        List<String> awaited,

        @Schema(description = "what was asked for last, with what came; absent where nothing was")
        List<RequestedItemView> requestedItems,

        @Schema(description = "oldest first") List<StepView> steps,

        @Schema(description = "a decision above the limit that waits for a second person; absent where none does")
        ProposalView proposal,

        @Schema(description = "absent until decided") DecisionView decision,

        @Schema(allowableValues = {"private", "commercial", "taxi"})
        String useClass,

        @Schema(
                description =
                        "amount according to the warranty terms; as calculated for the decision once there is one")
        WarrantyCalculation warranty,

        @Schema(description = "which claim of the case it is, from 1; also where it stands under claims/")
        int place,

        @Schema(description = "of the workshop to the decision, oldest first; absent where there is none")
        List<ObjectionView> objections) {

    /** What the workshop holds against the decision. */
    @Schema(name = "ClaimObjection")
    @JsonInclude(JsonInclude.Include.NON_NULL)
    public record ObjectionView(
            Instant at,
            String by,
            String reason,

            @Schema(description = "absent until answered") String answer,

            Instant answeredAt,
            String answeredBy) {

        static ObjectionView of(Objection objection) {
            Optional<Objection.Answer> answer = objection.answer();
            return new ObjectionView(
                    objection.at(),
                    objection.by(),
                    objection.reason(),
                    answer.map(Objection.Answer::text).orElse(null),
                    answer.map(Objection.Answer::at).orElse(null),
                    answer.map(Objection.Answer::by).orElse(null));
        }
    }

    /** A decision that waits for a second person. */
    @Schema(name = "ClaimProposal")
    public record ProposalView(
            @Schema(allowableValues = {"approved", "goodwill"})
            String kind,

            @Schema(description = "what is to be paid, in the claim's currency")
            String amount,

            @Schema(description = "limit for one person at the time of the proposal")
            String limit,

            String reason,
            Instant proposedAt,
            String proposedBy,
            FrozenAssessment assessment,
            boolean againstLeaning) {

        static ProposalView of(DecisionProposal proposal) {
            return new ProposalView(
                    proposal.kind().id(),
                    proposal.paid().text(),
                    proposal.limit().text(),
                    proposal.reason(),
                    proposal.at(),
                    proposal.by(),
                    new FrozenAssessment(
                            proposal.assessment().toString(),
                            proposal.assessmentSha256().hex(),
                            proposal.edition(),
                            proposal.leaning().id()),
                    proposal.againstLeaning());
        }
    }

    /** One thing that was asked for. */
    @Schema(name = "RequestedItem")
    @JsonInclude(JsonInclude.Include.NON_NULL)
    public record RequestedItemView(
            @Schema(description = "from 1; answers go to claim/requested-items/{position}")
            int position,

            @Schema(description = "kind of evidence or name of a fact", example = "charging-test")
            String item,

            @Schema(description = "the clerk's own words, where it has no name")
            String text,

            @Schema(
                    description =
                            "something that fits came since, the fact is known, or the workshop said a word on it")
            boolean answered,

            @Schema(description = "ids of what came for it") List<String> evidence,

            @Schema(description = "what the workshop says of it")
            List<String> words) {

        static RequestedItemView of(RequestedItem item) {
            return new RequestedItemView(
                    item.position(),
                    item.id(),
                    item.text(),
                    item.answered(),
                    item.evidence().stream().map(UUID::toString).toList(),
                    item.words());
        }
    }

    /** One step. */
    @Schema(name = "ClaimStep")
    @JsonInclude(JsonInclude.Include.NON_NULL)
    public record StepView(
            Instant at,
            String by,
            String role,
            String action,
            String from,
            String to,
            String reason,
            List<String> items) {

        static StepView of(ClaimStep step) {
            return new StepView(
                    step.at(),
                    step.by(),
                    step.role().name(),
                    step.action().id(),
                    step.from().id(),
                    step.to().id(),
                    step.reason(),
                    step.items().isEmpty() ? null : step.items());
        }
    }

    /** A decision and what it rests on. */
    @Schema(name = "ClaimDecision")
    @JsonInclude(JsonInclude.Include.NON_NULL)
    public record DecisionView(
            @Schema(allowableValues = {"approved", "declined", "goodwill"})
            String kind,

            @Schema(description = "what is paid, in the claim's currency")
            String amount,

            String reason,
            Instant decidedAt,
            String decidedBy,

            @Schema(description = "what one person could grant then; absent where there was no limit")
            String limit,

            @Schema(description = "the second person; absent where none was needed")
            String confirmedBy,

            @Schema(description = "when the first person proposed it; absent where no second person was needed")
            Instant proposedAt,

            FrozenAssessment assessment,

            @Schema(description = "SHA-256 of each item of evidence in the case, by its id")
            Map<String, String> evidence,

            @Schema(description = "the decision goes against the leaning; its reason explains why")
            boolean againstLeaning,

            @Schema(description = "evidence came or the case was reassessed since; the decision stands")
            boolean basisChanged,

            @Schema(description = "what differs; absent where nothing does")
            DecisionBasisChange basisChange,

            @Schema(description = "address of the letter", example = "/api/v1/cases/V-0K3-9TF-R/claims/1/letter.pdf")
            String letter,

            String letterSha256,

            @Schema(description = "address of the report as it was printed for the decision")
            String report,

            String reportSha256) {

        static DecisionView of(
                CaseNumber number, Claim claim, ClaimDecision decision, Optional<DecisionBasisChange> other) {
            Map<DocumentKind, Sha256> papers = claim.papers();
            Map<String, String> evidence = new TreeMap<>();
            decision.evidence().forEach((id, sha256) -> evidence.put(id.toString(), sha256.hex()));
            return new DecisionView(
                    decision.kind().id(),
                    decision.paid().text(),
                    decision.reason(),
                    decision.at(),
                    decision.by(),
                    decision.limit().map(Money::text).orElse(null),
                    decision.confirmation().map(Confirmation::by).orElse(null),
                    decision.confirmation().map(Confirmation::proposedAt).orElse(null),
                    new FrozenAssessment(
                            decision.assessment().toString(),
                            decision.assessmentSha256().hex(),
                            decision.edition(),
                            decision.leaning().id()),
                    evidence,
                    decision.againstLeaning(),
                    other.isPresent(),
                    other.orElse(null),
                    address(number, DocumentKind.LETTER, claim),
                    hex(DocumentKind.LETTER, papers),
                    address(number, DocumentKind.REPORT, claim),
                    hex(DocumentKind.REPORT, papers));
        }

        private static String address(CaseNumber number, DocumentKind kind, Claim claim) {
            return claim.papers().containsKey(kind)
                    ? "/api/v1/cases/" + number + "/claims/" + claim.place() + "/" + kind.id() + ".pdf"
                    : null;
        }

        private static String hex(DocumentKind kind, Map<DocumentKind, Sha256> papers) {
            return Optional.ofNullable(papers.get(kind)).map(Sha256::hex).orElse(null);
        }
    }

    /** The assessment that a decision rests on. */
    @Schema(name = "FrozenAssessment")
    public record FrozenAssessment(
            String id,

            @Schema(description = "SHA-256 of the stored assessment")
            String sha256,

            @Schema(description = "edition of the rule book")
            String rulebook,

            String leaning) {}

    /** @param other how the case differs from what the claim was decided on */
    public static ClaimView of(CaseNumber number, Claim claim, Optional<DecisionBasisChange> other) {
        return new ClaimView(
                claim.state().id(),
                claim.amount().text(),
                claim.amount().code(),
                claim.version(),
                claim.openedAt(),
                claim.openedBy(),
                claim.allowed().stream().map(ClaimAction::id).toList(),
                claim.awaited().isEmpty() ? null : claim.awaited(),
                claim.requestedItems().isEmpty()
                        ? null
                        : claim.requestedItems().stream()
                                .map(RequestedItemView::of)
                                .toList(),
                claim.steps().stream().map(StepView::of).toList(),
                claim.proposal().map(ProposalView::of).orElse(null),
                claim.decision()
                        .map(decision -> DecisionView.of(number, claim, decision, other))
                        .orElse(null),
                claim.use().id(),
                claim.warranty(),
                claim.place(),
                claim.objections().isEmpty()
                        ? null
                        : claim.objections().stream().map(ObjectionView::of).toList());
    }
}
