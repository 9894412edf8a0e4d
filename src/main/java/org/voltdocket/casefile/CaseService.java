package org.voltdocket.casefile;

import java.util.List;
import java.util.OptionalLong;
import java.util.UUID;
import org.voltdocket.diagnosis.History;
import org.voltdocket.kernel.Actor;
import org.voltdocket.kernel.BatterySerial;
import org.voltdocket.kernel.CaseNumber;
import org.voltdocket.kernel.RequestException;
import org.voltdocket.kernel.Vin;
import tools.jackson.databind.JsonNode;

/** The case files. Every question takes the one who asks, but those that the server asks itself. */
public interface CaseService {

    /** Code of the refusal where the case belongs to another workshop. */
    String IN_OTHER_WORKSHOP = "case-with-another-workshop";

    /** Code of the refusal where the case has another version than expected. */
    String CHANGED_SINCE_READ = "changed-since-read";

    /** Code of the refusal where the case exists and knows other facts than those given. */
    String CONFLICTING_FACTS = "conflicting-facts";

    /** Code of the refusal of a key or a fact. */
    String INVALID_FACTS = "facts-refused";

    /**
     * Opens the case of a pair, or finds it and fills its blanks.
     *
     * @throws RequestException {@link #CONFLICTING_FACTS} if the case exists with other facts; nothing is changed then
     * @throws RequestException {@link #IN_OTHER_WORKSHOP} if a workshop asks and the case belongs to others only
     * @throws org.springframework.security.access.AccessDeniedException for {@code AUDITOR}, who only looks
     */
    OpenCaseResult open(Actor actor, NewCase newCase);

    /** @throws RequestException (404) if there is none, or not for this actor */
    CaseReference require(Actor actor, CaseNumber number);

    /** @throws RequestException (404) if there is none, or not for this actor */
    CaseReference require(Actor actor, UUID caseId);

    /**
     * A case that the actor may add to: it sees it, and its role does more than look.
     *
     * @throws RequestException (404) if there is none, or not for this actor
     * @throws org.springframework.security.access.AccessDeniedException if its role only looks
     */
    CaseReference requireToFeed(Actor actor, CaseNumber number);

    /**
     * A case with its facts, for what runs on the server's own account or after {@link #require(Actor, CaseNumber)}.
     *
     * @throws RequestException (404) if there is none
     */
    CaseFacts facts(UUID caseId);

    /**
     * Changes facts by a JSON Merge Patch (RFC 7396): a member sets, {@code null} removes, what is absent stays.
     *
     * @param ifVersion the version that the change was made on, if the caller said
     * @throws RequestException (404) if there is none, or not for this actor
     * @throws RequestException {@link #INVALID_FACTS} if the patch, or what it makes of the case, cannot be right
     * @throws RequestException {@link #CHANGED_SINCE_READ} if the case has another version
     */
    PatchResult edit(Actor actor, CaseNumber number, JsonNode mergePatch, OptionalLong ifVersion);

    /** Other cases of the same vehicle or battery, for the judge: all of them. */
    History history(UUID caseId);

    /** Ids of the other cases of the same vehicle or battery, sorted. */
    List<UUID> siblings(UUID caseId);

    /** Other cases of the same vehicle or battery, as the actor may see them. */
    RelatedCases relatives(Actor actor, UUID caseId);

    /**
     * All cases of a battery that the actor may see, newest first; those it may not see are not told of.
     *
     * @throws RequestException (404) if there is none
     */
    List<CaseListItem> ofBattery(Actor actor, BatterySerial serial);

    /**
     * All cases of a vehicle that the actor may see, newest first; those it may not see are not told of.
     *
     * @throws RequestException (404) if there is none
     */
    List<CaseListItem> ofVehicle(Actor actor, Vin vin);

    /** Writes what the latest assessment says into the columns that lists show. */
    void saveAssessmentSummary(UUID caseId, AssessmentSummary summary);

    /** Writes the state of the case's latest claim into the column that lists show. */
    void saveClaimState(UUID caseId, String state);

    /**
     * Lets a workshop see and feed a case. For {@code CLERK} and {@code ADMIN}.
     *
     * @throws RequestException (404) if there is no such case, or the actor may not do this
     */
    void addWorkshop(Actor actor, CaseNumber number, UUID workshop);
}
