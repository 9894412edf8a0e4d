package org.voltdocket.diagnosis;

import java.util.List;

/**
 * Everything the judge takes of a case.
 *
 * @param evidence in any order; the judge orders it canonically
 */
public record CaseInput(Facts facts, History history, List<Evidence> evidence) {

    public CaseInput {
        evidence = List.copyOf(evidence);
    }
}
