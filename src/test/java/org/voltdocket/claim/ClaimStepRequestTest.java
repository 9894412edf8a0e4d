package org.voltdocket.claim;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatCode;
import static org.assertj.core.api.Assertions.catchThrowableOfType;

import java.util.List;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.voltdocket.kernel.FreeText;
import org.voltdocket.kernel.RequestException;

/** The members of a step request. */
class ClaimStepRequestTest {

    private static ClaimStepRequest request(
            ClaimAction action, String reason, List<String> items, List<String> others, String amount) {
        return new ClaimStepRequest(
                action, reason, items, others, Optional.ofNullable(amount), OptionalLong.empty(), Optional.empty());
    }

    private static String refusedField(ClaimStepRequest request) {
        RequestException refused = catchThrowableOfType(RequestException.class, request::check);
        assertThat(refused.code()).isEqualTo("claim-refused");
        return refused.field();
    }

    @ParameterizedTest
    @EnumSource(
            value = ClaimAction.class,
            names = {"APPROVE", "DECLINE", "GOODWILL", "REFUSE"})
    void decisionsAndRefusalsNeedAReason(ClaimAction action) {
        assertThat(refusedField(request(action, "  ", List.of(), List.of(), null)))
                .isEqualTo("reason");
        assertThatCode(request(action, " Why. ", List.of(), List.of(), null)::check)
                .doesNotThrowAnyException();
    }

    @Test
    void aReasonHasALargestLength() {
        String longest = "a".repeat(FreeText.MAX_LENGTH);
        assertThatCode(request(ClaimAction.TAKE, longest, List.of(), List.of(), null)::check)
                .doesNotThrowAnyException();
        assertThat(refusedField(request(ClaimAction.TAKE, longest + "a", List.of(), List.of(), null)))
                .isEqualTo("reason");
        assertThat(refusedField(request(ClaimAction.TAKE, "a\0", List.of(), List.of(), null)))
                .isEqualTo("reason");
    }

    @Test
    void anEvidenceRequestNamesOneToTwentyItems() {
        assertThat(refusedField(request(ClaimAction.ASK, null, List.of(), List.of(), null)))
                .isEqualTo("items");
        assertThat(refusedField(request(ClaimAction.ASK, null, List.of("tea"), List.of(), null)))
                .isEqualTo("items");
        List<String> twentyOne =
                IntStream.rangeClosed(1, 21).mapToObj(i -> "item " + i).toList();
        assertThat(refusedField(request(ClaimAction.ASK, null, List.of(), twentyOne, null)))
                .isEqualTo("items");
        ClaimStepRequest both = request(
                ClaimAction.ASK, null, List.of("charging-test", "charging-test"), List.of(" A photo ", ""), null);
        both.check();
        assertThat(both.requestedItems()).containsExactly("charging-test", "A photo");
    }

    @Test
    void itemsAndAmountBelongToTheirActionsOnly() {
        assertThat(refusedField(request(ClaimAction.TAKE, null, List.of("charging-test"), List.of(), null)))
                .isEqualTo("items");
        assertThat(refusedField(request(ClaimAction.TAKE, null, List.of(), List.of("A photo"), null)))
                .isEqualTo("others");
        assertThat(refusedField(request(ClaimAction.DECLINE, "Why.", List.of(), List.of(), "10")))
                .isEqualTo("amount");
        assertThatCode(request(ClaimAction.GOODWILL, "Why.", List.of(), List.of(), "10")::check)
                .doesNotThrowAnyException();
    }
}
