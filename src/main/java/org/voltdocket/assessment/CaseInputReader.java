package org.voltdocket.assessment;

import java.util.List;
import java.util.UUID;
import java.util.function.Supplier;
import org.springframework.stereotype.Component;
import org.voltdocket.casefile.CaseFacts;
import org.voltdocket.casefile.CaseReference;
import org.voltdocket.casefile.CaseService;
import org.voltdocket.diagnosis.CaseInput;
import org.voltdocket.diagnosis.Facts;
import org.voltdocket.diagnosis.History;
import org.voltdocket.evidence.DuplicateRecordings;
import org.voltdocket.evidence.EvidenceArchive;
import org.voltdocket.evidence.EvidenceItem;
import org.voltdocket.kernel.Sha256;

/** Reads what an assessment of a case is based on. */
@Component
class CaseInputReader {

    private final CaseService cases;
    private final EvidenceArchive evidence;
    private final DuplicateRecordings duplicates;

    CaseInputReader(CaseService cases, EvidenceArchive evidence, DuplicateRecordings duplicates) {
        this.cases = cases;
        this.evidence = evidence;
        this.duplicates = duplicates;
    }

    /**
     * A case without its readings.
     *
     * @param digest of the whole input, the readings included
     */
    record Summary(CaseReference ref, Facts facts, History history, Sha256 digest) {}

    /** Runs work that reads the whole input of a case as soon as there is memory for it. */
    <T> T withMemoryFor(UUID caseId, Supplier<T> work) {
        return evidence.withMemoryFor(caseId, work);
    }

    CaseReference reference(UUID caseId) {
        return cases.facts(caseId).ref();
    }

    Summary summary(UUID caseId) {
        CaseFacts file = cases.facts(caseId);
        History history = cases.history(caseId).with(duplicates.copiedFromAnotherBattery(caseId));
        List<EvidenceItem> items = evidence.ofCase(caseId);
        return new Summary(file.ref(), file.facts(), history, InputDigest.of(file, history, items));
    }

    CaseInput input(UUID caseId, Summary summary) {
        return new CaseInput(summary.facts(), summary.history(), evidence.readings(caseId));
    }
}
