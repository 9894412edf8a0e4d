package org.voltdocket.assessment;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalLong;
import java.util.UUID;
import org.springframework.stereotype.Service;
import org.voltdocket.casefile.CaseService;
import org.voltdocket.casefile.NewCase;
import org.voltdocket.casefile.OpenCaseResult;
import org.voltdocket.casefile.PatchResult;
import org.voltdocket.kernel.Actor;
import org.voltdocket.kernel.CaseNumber;
import tools.jackson.databind.JsonNode;

/** Opens cases and updates their facts, then assesses them. Do not call these methods inside a transaction. */
@Service
public class CaseEditService {

    private final CaseService cases;
    private final PendingAssessmentService assessments;

    CaseEditService(CaseService cases, PendingAssessmentService assessments) {
        this.cases = cases;
        this.assessments = assessments;
    }

    /**
     * Opens the case of a battery and a vehicle, or finds it and adds missing facts; then assesses it and, if it is new, the
     * other cases of the same battery or vehicle, because it is part of their history. Throws what {@link CaseService#open}
     * throws.
     */
    public OpenCaseResult open(Actor actor, NewCase newCase) {
        OpenCaseResult opened = cases.open(actor, newCase);
        List<UUID> affected = new ArrayList<>(List.of(opened.ref().id()));
        if (opened.created()) {
            affected.addAll(cases.siblings(opened.ref().id()));
        }
        assessments.assessPending(affected);
        return opened;
    }

    /** Updates facts, then assesses the case. Throws what {@link CaseService#mend} throws. */
    public PatchResult updateFacts(Actor actor, CaseNumber number, JsonNode mergePatch, OptionalLong ifVersion) {
        PatchResult updated = cases.edit(actor, number, mergePatch, ifVersion);
        assessments.assessPending(List.of(updated.file().ref().id()));
        return updated;
    }
}
