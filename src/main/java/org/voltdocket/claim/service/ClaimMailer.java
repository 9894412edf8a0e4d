package org.voltdocket.claim.service;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.springframework.stereotype.Component;
import org.voltdocket.access.AccountService;
import org.voltdocket.claim.ClaimDecision;
import org.voltdocket.claim.ClaimStep;
import org.voltdocket.claim.repository.RequestedItems;
import org.voltdocket.kernel.CaseNumber;
import org.voltdocket.kernel.Role;
import org.voltdocket.mail.Outbox;
import org.voltdocket.ui.TextFormatter;

/** Writes mail to the people who have to act next. A message contains the case number and a link, and no personal data. */
@Component
class ClaimMailer {

    private final Outbox outbox;
    private final AccountService accounts;
    private final TextFormatter words;

    ClaimMailer(Outbox outbox, AccountService accounts, TextFormatter words) {
        this.outbox = outbox;
        this.accounts = accounts;
        this.words = words;
    }

    /**
     * Called in the transaction that takes the step.
     *
     * @param all steps of the claim, oldest first
     */
    void stepTaken(CaseNumber number, UUID workshop, ClaimStep step, List<ClaimStep> all) {
        if (!outbox.isOn()) {
            return;
        }
        switch (step.action()) {
            case ASK -> send(number, "asked", accounts.emailsOf(workshop));
            case ANSWER -> send(number, "answered", asker(all));
            case APPROVE, DECLINE, GOODWILL, CONFIRM -> {
                if (step.isProposal()) {
                    send(number, "proposed", others(step.by()));
                } else {
                    send(number, "decided", accounts.emailsOf(workshop));
                }
            }
            case REFUSE -> send(number, "refused", proposer(all));
            default -> {}
        }
    }

    /** A workshop objected: writes to the person who decided. */
    void objected(CaseNumber number, ClaimDecision decision) {
        if (outbox.isOn()) {
            send(number, "objected", accounts.emailOf(decision.by()).stream().toList());
        }
    }

    /** An objection is answered: writes to the workshop. */
    void objectionAnswered(CaseNumber number, UUID workshop) {
        if (outbox.isOn()) {
            send(number, "objection-answered", accounts.emailsOf(workshop));
        }
    }

    private void send(CaseNumber number, String kind, List<String> to) {
        outbox.write(
                to,
                words.say("mail." + kind + ".subject", number.value()),
                words.say(
                        "mail.body",
                        words.say("mail." + kind, number.value()),
                        outbox.address() + "/cases/" + number.value()));
    }

    private List<String> asker(List<ClaimStep> all) {
        return RequestedItems.latestRequest(all).flatMap(ask -> accounts.emailOf(ask.by())).stream()
                .toList();
    }

    private List<String> proposer(List<ClaimStep> all) {
        Optional<ClaimStep> last =
                all.stream().filter(step -> step.action().decides()).reduce((earlier, later) -> later);
        return last.flatMap(step -> accounts.emailOf(step.by())).stream().toList();
    }

    private List<String> others(String proposer) {
        List<String> all = new ArrayList<>();
        Arrays.stream(Role.values()).filter(Role::canDecideClaims).forEach(role -> all.addAll(accounts.emailsOf(role)));
        accounts.emailOf(proposer).ifPresent(own -> all.removeIf(own::equals));
        return all;
    }
}
