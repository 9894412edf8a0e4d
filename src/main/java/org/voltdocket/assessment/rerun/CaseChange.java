package org.voltdocket.assessment.rerun;

import java.util.List;
import java.util.UUID;

/**
 * A case whose leaning or first cause changes.
 *
 * @param number of the case
 * @param leaningBefore null where it was not assessed before
 * @param causeBefore first cause, null where it was not assessed before
 * @param findings ids of those that differ in value, limit, result or weight, or are on one side only
 */
public record CaseChange(
        UUID caseId,
        String number,
        String leaningBefore,
        String leaningAfter,
        String causeBefore,
        String causeAfter,
        List<String> findings) {}
