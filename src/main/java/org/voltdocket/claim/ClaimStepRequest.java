package org.voltdocket.claim;

import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.UUID;
import java.util.stream.Stream;
import org.voltdocket.kernel.FreeText;
import org.voltdocket.kernel.RequestException;

/**
 * A step that somebody wants to take.
 *
 * @param reason null where none is given
 * @param items requested by {@link ClaimAction#ASK}: kinds of evidence or names of facts
 * @param others requested by {@link ClaimAction#ASK} in free text
 * @param amount to be paid, if less than claimed; for {@link ClaimAction#APPROVE} and {@link ClaimAction#GOODWILL}
 * @param ifVersion version of the claim that the caller saw, if it said
 * @param ifAssessment assessment that the caller saw, if it said
 */
public record ClaimStepRequest(
        ClaimAction action,
        String reason,
        List<String> items,
        List<String> others,
        Optional<String> amount,
        OptionalLong ifVersion,
        Optional<UUID> ifAssessment) {

    private static final int MOST_ITEMS = 20;
    private static final int MOST_WORDS = 200;

    public ClaimStepRequest {
        reason = reason == null || reason.isBlank() ? null : reason.strip();
        items = List.copyOf(new LinkedHashSet<>(items));
        others = others.stream()
                .map(String::strip)
                .filter(text -> !text.isEmpty())
                .distinct()
                .toList();
    }

    /** @throws RequestException if a member is missing, or one is there that the action does not know */
    public void check() {
        FreeText.optional("claim-refused", "reason", reason);
        if (action.decides() && reason == null) {
            throw RequestException.invalid("claim-refused", "reason", "'reason' is missing: a decision needs a reason");
        }
        if (action == ClaimAction.REFUSE && reason == null) {
            throw RequestException.invalid(
                    "claim-refused", "reason", "'reason' is missing: rejecting a proposal needs a reason");
        }
        if (action == ClaimAction.ASK) {
            checkItems();
        } else if (!items.isEmpty() || !others.isEmpty()) {
            throw RequestException.invalid(
                    "claim-refused", items.isEmpty() ? "others" : "items", "'items' and 'others' go with 'ask' only");
        }
        if (amount.isPresent() && action != ClaimAction.APPROVE && action != ClaimAction.GOODWILL) {
            throw RequestException.invalid(
                    "claim-refused", "amount", "'amount' goes with 'approve' and 'goodwill' only");
        }
    }

    /** All requested items, in order: identifiers, then free text of the clerk. */
    public List<String> requestedItems() {
        return Stream.concat(items.stream(), others.stream()).distinct().toList();
    }

    private void checkItems() {
        int count = requestedItems().size();
        if (count == 0 || count > MOST_ITEMS) {
            throw RequestException.invalid(
                    "claim-refused",
                    "items",
                    "'items' names 1 to " + MOST_ITEMS
                            + " things to send, such as \"charging-test\", 'others' those that have no name; read "
                            + count);
        }
        for (String item : items) {
            if (!RequestableItem.ALL.contains(item)) {
                throw RequestException.invalid(
                        "claim-refused",
                        "items",
                        "'items' names kinds of evidence or facts: " + String.join(", ", RequestableItem.ALL)
                                + "; read '" + item.substring(0, Math.min(60, item.length())) + "'");
            }
        }
        for (String other : others) {
            if (other.length() > MOST_WORDS || other.chars().anyMatch(Character::isISOControl)) {
                throw RequestException.invalid(
                        "claim-refused",
                        "others",
                        "'others' are lines of text of at most " + MOST_WORDS + " characters; read " + other.length());
            }
        }
    }
}
