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
import org.voltdocket.access.Accounts;
import org.voltdocket.assessment.Assessments;
import org.voltdocket.assessment.KeptAssessment;
import org.voltdocket.casefile.CaseFacts;
import org.voltdocket.casefile.Cases;
import org.voltdocket.claim.Claim;
import org.voltdocket.claim.Claims;
import org.voltdocket.evidence.EvidenceArchive;
import org.voltdocket.evidence.EvidenceItem;
import org.voltdocket.kernel.Actor;
import org.voltdocket.kernel.CaseNumber;
import org.voltdocket.kernel.Role;
import org.voltdocket.trail.Trail;
import org.voltdocket.trail.TrailEntry;

/** Gathers a dossier from the rooms below: a fixed number of queries, all of them of the same moment. */
@Service
class DossierReader implements Dossiers {

    private final Cases cases;
    private final EvidenceArchive evidence;
    private final Assessments assessments;
    private final Claims claims;
    private final Trail trail;
    private final Accounts accounts;

    DossierReader(
            Cases cases,
            EvidenceArchive evidence,
            Assessments assessments,
            Claims claims,
            Trail trail,
            Accounts accounts) {
        this.cases = cases;
        this.evidence = evidence;
        this.assessments = assessments;
        this.claims = claims;
        this.trail = trail;
        this.accounts = accounts;
    }

    @Override
    @Transactional(readOnly = true, isolation = Isolation.REPEATABLE_READ)
    public Dossier of(Actor actor, CaseNumber number) {
        UUID id = cases.require(actor, number).id();
        CaseFacts file = cases.facts(id);
        List<EvidenceItem> held = evidence.ofCase(id);
        Optional<KeptAssessment> latest = assessments.latest(id);
        Optional<Claim> claim = claims.of(actor, id);
        return new Dossier(
                file,
                cases.relatives(actor, id),
                held,
                latest,
                assessments.failure(id),
                claim,
                claim.flatMap(made -> claims.otherGrounds(made, latest, held)),
                shown(actor, trail.of(number.value())),
                names(file.workshops()));
    }

    private static List<TrailEntry> shown(Actor actor, List<TrailEntry> trail) {
        return trail.stream()
                .filter(entry -> actor.role() != Role.WORKSHOP || !Claims.INTERNAL_ACTS.contains(entry.act()))
                .toList();
    }

    /** A case belongs to one workshop, seldom to two or three. */
    private Map<UUID, String> names(List<UUID> workshops) {
        Map<UUID, String> names = new LinkedHashMap<>();
        for (UUID workshop : workshops) {
            accounts.workshopName(workshop).ifPresent(name -> names.put(workshop, name));
        }
        return Collections.unmodifiableMap(names);
    }
}
