package org.voltdocket.dossier;

import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Isolation;
import org.springframework.transaction.annotation.Transactional;
import org.voltdocket.access.AccountService;
import org.voltdocket.assessment.AssessmentService;
import org.voltdocket.assessment.StoredAssessment;
import org.voltdocket.casefile.CaseFacts;
import org.voltdocket.casefile.CaseService;
import org.voltdocket.claim.Claim;
import org.voltdocket.claim.service.ClaimService;
import org.voltdocket.evidence.EvidenceArchive;
import org.voltdocket.evidence.EvidenceItem;
import org.voltdocket.kernel.Actor;
import org.voltdocket.kernel.CaseNumber;
import org.voltdocket.trail.Trail;
import org.voltdocket.trail.TrailEntry;

/** Reads a dossier in a fixed number of queries within one repeatable-read transaction. */
@Service
public class DossierService {

    private final CaseService cases;
    private final EvidenceArchive evidence;
    private final AssessmentService assessments;
    private final ClaimService claims;
    private final Trail trail;
    private final AccountService accounts;

    DossierService(
            CaseService cases,
            EvidenceArchive evidence,
            AssessmentService assessments,
            ClaimService claims,
            Trail trail,
            AccountService accounts) {
        this.cases = cases;
        this.evidence = evidence;
        this.assessments = assessments;
        this.claims = claims;
        this.trail = trail;
        this.accounts = accounts;
    }

    /** @throws org.voltdocket.kernel.RequestException (404) if there is no such case for this actor */
    @Transactional(readOnly = true, isolation = Isolation.REPEATABLE_READ)
    public Dossier of(Actor actor, CaseNumber number) {
        UUID id = cases.require(actor, number).id();
        CaseFacts file = cases.facts(id);
        List<EvidenceItem> held = evidence.ofCase(id);
        Optional<StoredAssessment> latest = assessments.latest(id);
        Optional<Claim> claim = claims.of(actor, id);
        return new Dossier(
                file,
                cases.relatives(actor, id),
                held,
                latest,
                assessments.failure(id),
                assessments.pendingSince(id),
                claim,
                claim.flatMap(made -> claims.basisChange(made, latest, held)),
                shown(actor, trail.of(number.value())),
                names(file.workshops()));
    }

    private static List<TrailEntry> shown(Actor actor, List<TrailEntry> trail) {
        return trail.stream()
                .filter(entry -> !actor.isWorkshop() || !ClaimService.INTERNAL_ACTS.contains(entry.act()))
                .toList();
    }

    /** A case belongs to one workshop, rarely to two or three. */
    private Map<UUID, String> names(List<UUID> workshops) {
        Map<UUID, String> names = new LinkedHashMap<>();
        for (UUID workshop : workshops) {
            accounts.workshopName(workshop).ifPresent(name -> names.put(workshop, name));
        }
        return Collections.unmodifiableMap(names);
    }
}
