package org.voltdocket.evidence;

import java.util.List;
import java.util.Set;
import java.util.UUID;
import org.voltdocket.kernel.Sha256;

/**
 * Recordings that show the same course of voltage as one of another case, whoever cut, thinned, shifted or rounded it.
 *
 * <p>Each recording is outlined when it is received; its landmarks find candidates through an index, and only a course
 * that correlates once laid over the other counts (see {@code evidence.waveform}). Not found is what rounding leaves
 * nothing of: a resting voltage without its last decimal, say; and, where thousands of drives are alike, one that was thinned
 * and rounded to tenths at once. Methods without an actor are for callers that ask {@code
 * Cases} what may be told: a workshop never learns another's case.
 */
public interface DuplicateRecordings {

    /**
     * One recording that shows the same course as another.
     *
     * @param evidenceId the item asked for
     * @param twinId the other item
     * @param twinCaseId its case
     * @param correlation of both courses, laid over each other, 0 to 1; 1 for the same bytes
     * @param laterS how much later than the first the twin starts within the course, s; negative where it starts earlier
     * @param overlapS how long both show it, s
     */
    record Twin(UUID evidenceId, UUID twinId, UUID twinCaseId, double correlation, double laterS, double overlapS) {}

    /** Recordings of other cases that show the course of this one, most alike first; empty for anything else. */
    List<Twin> like(UUID evidenceId);

    /** The twins of all recordings of these cases, by item, most alike first. One query. */
    List<Twin> ofCases(Set<UUID> caseIds);

    /**
     * Digests, sorted, of the recordings of a case that match a recording received earlier in a case of another battery. A
     * match does not count against the case that was there first: only the later recording can be the copy.
     */
    List<Sha256> copiedFromAnotherBattery(UUID caseId);

    /**
     * Compares the recordings that a case received since the last call, in a transaction of its own that also marks the
     * cases with a new match as pending assessment. A second call changes nothing.
     *
     * @return the cases with a new match, this one included; empty if there is none
     * @throws org.springframework.dao.ConcurrencyFailureException if the database asks to try again
     */
    Set<UUID> compare(UUID caseId);

    /** Cases with recordings that are still to be compared, as a crash or an older version of the server leaves them. */
    List<UUID> casesToCompare();
}
