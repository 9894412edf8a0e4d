package org.voltdocket.demo.year;

import java.io.ByteArrayInputStream;
import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.UUID;
import java.util.concurrent.ConcurrentHashMap;
import org.springframework.context.annotation.Profile;
import org.springframework.stereotype.Component;
import org.voltdocket.access.AccountService;
import org.voltdocket.access.WorkshopSummary;
import org.voltdocket.assessment.AssessmentService;
import org.voltdocket.assessment.CaseEditService;
import org.voltdocket.assessment.EvidenceUploadService;
import org.voltdocket.casefile.CaseReference;
import org.voltdocket.casefile.CaseService;
import org.voltdocket.casefile.NewCase;
import org.voltdocket.kernel.RequestException;
import org.voltdocket.claim.Claim;
import org.voltdocket.claim.ClaimAction;
import org.voltdocket.claim.service.ClaimService;
import org.voltdocket.claim.ClaimState;
import org.voltdocket.claim.ClaimStepRequest;
import org.voltdocket.claim.service.ClaimStepService;
import org.voltdocket.demo.RetryWhileBusy;
import org.voltdocket.diagnosis.Leaning;
import org.voltdocket.diagnosis.Origin;
import org.voltdocket.evidence.Upload;
import org.voltdocket.kernel.Actor;
import org.voltdocket.kernel.Role;
import org.voltdocket.returned.BatteryCondition;
import org.voltdocket.returned.BenchOutcome;
import org.voltdocket.returned.ReturnListItem;
import org.voltdocket.returned.ReturnQuery;
import org.voltdocket.returned.service.ReturnService;

/** Performs a planned event through the services that workshop, clerk and auditor use. Skips events that were performed before. */
@Component
@Profile("demo")
class YearEventWriter {

    private static final String NOTE = "Invented for the demonstration.";
    private static final Actor CLERK = new Actor("clerk", Role.CLERK, Optional.empty());
    private static final Actor AUDITOR = new Actor("auditor", Role.AUDITOR, Optional.empty());

    private final AccountService accounts;
    private final CaseService cases;
    private final CaseEditService caseEdits;
    private final EvidenceUploadService uploads;
    private final ClaimService claims;
    private final ClaimStepService steps;
    private final AssessmentService assessments;
    private final ReturnService returns;
    private final Map<String, UUID> workshops = new ConcurrentHashMap<>();

    YearEventWriter(
            AccountService accounts,
            CaseService cases,
            CaseEditService caseEdits,
            EvidenceUploadService uploads,
            ClaimService claims,
            ClaimStepService steps,
            AssessmentService assessments,
            ReturnService returns) {
        this.accounts = accounts;
        this.cases = cases;
        this.caseEdits = caseEdits;
        this.uploads = uploads;
        this.claims = claims;
        this.steps = steps;
        this.assessments = assessments;
        this.returns = returns;
    }

    /** Whether its case is on file. */
    boolean known(YearCase one) {
        try {
            return !cases.ofBattery(Actor.system(), one.serial()).isEmpty();
        } catch (RequestException notYet) {
            return false;
        }
    }

    void happen(YearEvent event) {
        switch (event.kind()) {
            case CLAIM -> claim(event.of());
            case DECISION -> RetryWhileBusy.with(() -> decide(event.of()));
            case RETURN -> comeBack(event.of(), event.at());
            default -> conclude(event.of());
        }
    }

    private void claim(YearCase one) {
        Actor workshop = workshop(one.garage());
        CaseReference ref = caseEdits
                .open(workshop, new NewCase(one.serial(), one.vin(), one.facts()))
                .ref();
        for (YearTests.Sent file : YearTests.ofWorkshop(one)) {
            uploads.receive(
                    workshop,
                    ref,
                    new Upload(file.name(), new ByteArrayInputStream(file.content()), NOTE, Origin.WORKSHOP));
        }
        if (claims.of(workshop, ref.id()).isEmpty()) {
            int cents = one.make().price();
            steps.open(workshop, ref.number(), cents / 100 + "." + String.format("%02d", cents % 100), "EUR", null);
            steps.act(workshop, ref.number(), act(ClaimAction.SUBMIT, null));
        }
    }

    private void decide(YearCase one) {
        CaseReference ref = file(one);
        Optional<Claim> claim = claims.of(CLERK, ref.id());
        ClaimState state = claim.map(Claim::state).orElse(ClaimState.SETTLED);
        if (state == ClaimState.SUBMITTED) {
            steps.act(CLERK, ref.number(), act(ClaimAction.TAKE, null));
        } else if (state != ClaimState.IN_REVIEW) {
            return;
        }
        Leaning leaning =
                assessments.latest(ref.id()).orElseThrow().assessment().leaning();
        boolean kind = one.seed() % 5 == 0;
        if (leaning == Leaning.BATTERY_SIDE) {
            steps.act(CLERK, ref.number(), act(ClaimAction.APPROVE, "The battery failed its test after charging."));
        } else if (leaning == Leaning.OPEN || leaning == Leaning.CONTRADICTORY) {
            steps.act(
                    CLERK,
                    ref.number(),
                    act(
                            kind ? ClaimAction.DECLINE : ClaimAction.APPROVE,
                            "The evidence decides nothing either way; decided on the customer's account and the age of the"
                                    + " battery, and the battery is asked back for the bench."));
        } else {
            steps.act(
                    CLERK,
                    ref.number(),
                    act(
                            kind ? ClaimAction.GOODWILL : ClaimAction.DECLINE,
                            "The battery passed after charging; the evidence points to the vehicle or its use."));
        }
    }

    private void comeBack(YearCase one, Instant at) {
        if (standing(one).isPresent()) {
            return;
        }
        UUID id = returns.arrive(AUDITOR, one.serial(), Optional.empty())
                .battery()
                .id();
        returns.recordCondition(
                AUDITOR,
                id,
                new BatteryCondition(
                        false, false, false, false, BatteryCondition.Terminals.SOUND, null, at, AUDITOR.user()));
        returns.recordPlace(
                AUDITOR, id, "Row " + (char) ('A' + one.number() % 6) + ", shelf " + (1 + one.number() % 9));
    }

    private void conclude(YearCase one) {
        Optional<ReturnListItem> line = standing(one);
        if (line.isEmpty()) {
            return;
        }
        UUID id = line.get().id();
        if (returns.of(AUDITOR, id).outcome().isPresent()) {
            return;
        }
        Instant tested = one.returnedAt().orElseThrow().plusSeconds(3600 * 60);
        YearTests.Sent file = YearTests.ofBench(one, tested);
        returns.receive(AUDITOR, id, new Upload(file.name(), new ByteArrayInputStream(file.content()), NOTE, Origin.BENCH));
        BenchOutcome finding = switch (one.trouble()) {
            case DEFECT -> BenchOutcome.DEFECT_CONFIRMED;
            case WORN -> BenchOutcome.WEAR_CONFIRMED;
            default -> BenchOutcome.NO_FAULT_FOUND;
        };
        returns.recordOutcome(AUDITOR, id, finding, "Charged, rested a day and tested on the bench.");
    }

    private Optional<ReturnListItem> standing(YearCase one) {
        return returns.list(AUDITOR, new ReturnQuery(one.serial().value(), "", "", 1)).stream()
                .findFirst();
    }

    private CaseReference file(YearCase one) {
        return cases.ofBattery(Actor.system(), one.serial()).get(0).ref();
    }

    private static ClaimStepRequest act(ClaimAction action, String reason) {
        return new ClaimStepRequest(
                action, reason, List.of(), List.of(), Optional.empty(), OptionalLong.empty(), Optional.empty());
    }

    private Actor workshop(YearWorkshop garage) {
        UUID id = workshops.computeIfAbsent(garage.name(), this::find);
        return new Actor("workshop", Role.WORKSHOP, Optional.of(id));
    }

    private UUID find(String name) {
        return accounts.workshops().stream()
                .filter(known -> known.name().equals(name))
                .findFirst()
                .map(WorkshopSummary::id)
                .orElseGet(() -> accounts.createWorkshop(Actor.system(), name).id());
    }
}
