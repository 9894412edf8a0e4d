package org.voltdocket.claim;

import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.Set;
import java.util.UUID;
import java.util.regex.Pattern;

/**
 * A step that somebody wants to take.
 *
 * @param reason null where none is given
 * @param items what {@link ClaimAction#ASK} asks for: kinds of evidence or names of facts
 * @param amount what is paid, if less than asked for; for {@link ClaimAction#APPROVE} and {@link ClaimAction#GOODWILL}
 * @param ifVersion version of the claim that the caller saw, if it said
 * @param ifAssessment assessment that the caller saw, if it said
 */
public record ClaimAct(
        ClaimAction action,
        String reason,
        List<String> items,
        Optional<String> amount,
        OptionalLong ifVersion,
        Optional<UUID> ifAssessment) {

    private static final int MOST_REASON = 2000;
    private static final int MOST_ITEMS = 20;
    private static final Pattern ITEM = Pattern.compile("[A-Za-z0-9.-]{1,60}");

    public ClaimAct {
        reason = reason == null || reason.isBlank() ? null : reason.strip();
        items = List.copyOf(new LinkedHashSet<>(items));
    }

    /** @throws ClaimRefused if a member is missing, or one is there that the action does not know */
    void check(Set<String> askable) {
        if (reason != null && reason.length() > MOST_REASON) {
            throw new ClaimRefused(
                    "reason", "'reason' has at most " + MOST_REASON + " characters; read " + reason.length());
        }
        if (reason != null && reason.indexOf(0) >= 0) {
            throw new ClaimRefused("reason", "'reason' is text; it holds a NUL character");
        }
        if (action.decides() && reason == null) {
            throw new ClaimRefused("reason", "'reason' is missing: a decision says why");
        }
        if (action == ClaimAction.ASK) {
            checkItems(askable);
        } else if (!items.isEmpty()) {
            throw new ClaimRefused("items", "'items' goes with 'ask' only");
        }
        if (amount.isPresent() && action != ClaimAction.APPROVE && action != ClaimAction.GOODWILL) {
            throw new ClaimRefused("amount", "'amount' goes with 'approve' and 'goodwill' only");
        }
    }

    private void checkItems(Set<String> askable) {
        if (items.isEmpty() || items.size() > MOST_ITEMS) {
            throw new ClaimRefused(
                    "items",
                    "'items' names 1 to " + MOST_ITEMS + " things to send, such as \"charging-test\"; read "
                            + items.size());
        }
        for (String item : items) {
            if (!ITEM.matcher(item).matches() || !askable.contains(item)) {
                throw new ClaimRefused(
                        "items",
                        "'items' names kinds of evidence or facts: " + String.join(", ", askable) + "; read '"
                                + item.substring(0, Math.min(60, item.length())) + "'");
            }
        }
    }
}
