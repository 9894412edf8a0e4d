package org.voltdocket.claim.repository;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import org.junit.jupiter.api.Test;
import org.voltdocket.claim.ClaimAction;
import org.voltdocket.claim.ClaimState;
import org.voltdocket.claim.ClaimStep;
import org.voltdocket.claim.RequestedItem;
import org.voltdocket.diagnosis.EvidenceKind;
import org.voltdocket.diagnosis.Origin;
import org.voltdocket.evidence.EvidenceItem;
import org.voltdocket.kernel.Role;
import org.voltdocket.kernel.Sha256;

/** Which evidence, facts and answers answer a requested item. */
class RequestedItemsTest {

    private static final Instant REQUESTED = Instant.parse("2026-03-04T08:00:00Z");

    private static ClaimStep request(String... items) {
        return new ClaimStep(
                3,
                REQUESTED,
                "clerk",
                Role.CLERK,
                ClaimAction.ASK,
                ClaimState.IN_REVIEW,
                ClaimState.EVIDENCE_ASKED,
                null,
                List.of(items));
    }

    private static EvidenceItem evidence(EvidenceKind kind, int minutesAfterRequest) {
        return new EvidenceItem(
                UUID.randomUUID(),
                UUID.randomUUID(),
                Sha256.of(new byte[0]),
                kind,
                Origin.WORKSHOP,
                "file",
                "application/json",
                0,
                null,
                null,
                List.of(),
                List.of(),
                null,
                REQUESTED.plusSeconds(60L * minutesAfterRequest),
                "workshop",
                null);
    }

    private static RequestedItem only(
            String item, List<RequestedItemAnswer> answers, List<EvidenceItem> evidence, Set<String> facts) {
        List<RequestedItem> items = RequestedItems.match(request(item), answers, evidence, facts);
        assertThat(items).hasSize(1);
        return items.get(0);
    }

    @Test
    void evidenceOfTheKindAnswersOnlyIfItCameAfterTheRequest() {
        EvidenceItem before = evidence(EvidenceKind.CHARGING_TEST, -1);
        EvidenceItem after = evidence(EvidenceKind.CHARGING_TEST, 1);
        assertThat(only("charging-test", List.of(), List.of(before), Set.of()).answered())
                .isFalse();
        RequestedItem answered = only("charging-test", List.of(), List.of(before, after), Set.of());
        assertThat(answered.answered()).isTrue();
        assertThat(answered.evidence()).containsExactly(after.id());
    }

    @Test
    void evidenceOfAnotherKindIsListedButDoesNotAnswer() {
        EvidenceItem other = evidence(EvidenceKind.BATTERY_TEST, 1);
        RequestedItemAnswer answer = new RequestedItemAnswer(1, Optional.of(other.id()), null);
        RequestedItem item = only("charging-test", List.of(answer), List.of(other), Set.of());
        assertThat(item.answered()).isFalse();
        assertThat(item.evidence()).containsExactly(other.id());
    }

    @Test
    void earlierEvidenceAnswersIfTheWorkshopNamesIt() {
        EvidenceItem before = evidence(EvidenceKind.CHARGING_TEST, -1);
        RequestedItemAnswer answer = new RequestedItemAnswer(1, Optional.of(before.id()), null);
        assertThat(only("charging-test", List.of(answer), List.of(before), Set.of())
                        .answered())
                .isTrue();
    }

    @Test
    void anyEvidenceOrTextAnswersFreeText() {
        EvidenceItem photo = evidence(EvidenceKind.DOCUMENT, 1);
        RequestedItem open = only("A photograph of the date code", List.of(), List.of(photo), Set.of());
        assertThat(open.answered()).isFalse();
        assertThat(open.name()).isEqualTo("A photograph of the date code");
        RequestedItemAnswer sent = new RequestedItemAnswer(1, Optional.of(photo.id()), null);
        assertThat(only("A photograph of the date code", List.of(sent), List.of(photo), Set.of())
                        .answered())
                .isTrue();
        RequestedItemAnswer text = new RequestedItemAnswer(1, Optional.empty(), "The code is not legible.");
        assertThat(only("A photograph of the date code", List.of(text), List.of(), Set.of())
                        .words())
                .containsExactly("The code is not legible.");
    }

    @Test
    void aKnownFactAnswers() {
        assertThat(only("odometerKm", List.of(), List.of(), Set.of("odometerKm"))
                        .answered())
                .isTrue();
        assertThat(only("odometerKm", List.of(), List.of(), Set.of("soldOn")).answered())
                .isFalse();
    }

    @Test
    void eachPositionHasItsOwnAnswers() {
        RequestedItemAnswer second = new RequestedItemAnswer(2, Optional.empty(), "Sent by post.");
        List<RequestedItem> items =
                RequestedItems.match(request("charging-test", "cranking-test"), List.of(second), List.of(), Set.of());
        assertThat(items).extracting(RequestedItem::answered).containsExactly(false, true);
    }

    @Test
    void theLatestRequestCounts() {
        assertThat(RequestedItems.latestRequest(List.of())).isEmpty();
        ClaimStep first = request("charging-test");
        ClaimStep second = request("cranking-test");
        assertThat(RequestedItems.latestRequest(List.of(first, second))).contains(second);
    }
}
