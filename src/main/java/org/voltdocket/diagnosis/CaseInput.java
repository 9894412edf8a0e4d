package org.voltdocket.diagnosis;

import java.util.List;

/**
 * Everything that an assessment is made from.
 *
 * @param evidence in any order; it is sorted canonically
 */
public record CaseInput(Facts facts, History history, List<Evidence> evidence) {

    public CaseInput {
        evidence = List.copyOf(evidence);
    }
}
