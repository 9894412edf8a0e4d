package org.voltdocket.casefile.search;

import java.util.List;
import java.util.Optional;
import org.voltdocket.casefile.CaseListItem;

/**
 * One page of a list.
 *
 * @param nextCursor give it back in {@link CaseQuery} for the next page; empty on the last
 */
public record CasePage(List<CaseListItem> cases, Optional<String> nextCursor) {

    public CasePage {
        cases = List.copyOf(cases);
    }
}
