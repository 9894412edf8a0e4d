package org.voltdocket.evidence;

import java.util.List;
import java.util.Set;
import java.util.UUID;
import org.voltdocket.kernel.Sha256;

/**
 * Recordings of different cases with the same course of voltage, even if one was cut, resampled, shifted or rounded.
 *
 * <p>Each new recording is stored as an outline; an index of its landmarks finds candidates, and the outlines decide (see
 * package {@code evidence.comparison}). At most one in 10⁶ pairs of unrelated drives is reported. Some copies are not found: a
 * resting voltage without its last decimal, or a short section rounded to tenths of a volt. A match asks a person to compare
 * both. Callers check first which cases the user may see; a workshop never learns about a case of another one.
 */
public interface DuplicateRecordings {

    /**
     * Two recordings with the same course.
     *
     * @param evidenceId the recording
     * @param otherId the matching recording
     * @param otherCaseId its case
     * @param correlation of both courses at their best alignment, 0 to 1; 1 for the same bytes
     * @param laterS start of the other relative to the start of the first, s
     * @param overlapS length of the overlap, s
     */
    record Match(UUID evidenceId, UUID otherId, UUID otherCaseId, double correlation, double laterS, double overlapS) {}

    /** Recordings of other cases that show the course of this one, most alike first; empty for anything else. */
    List<Match> like(UUID evidenceId);

    /** The matches of all recordings of these cases, by item, most alike first. One query. */
    List<Match> ofCases(Set<UUID> caseIds);

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
