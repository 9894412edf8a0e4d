package org.voltdocket.assessment.rerun;

import java.math.BigDecimal;
import java.util.Collection;
import java.util.Map;
import java.util.UUID;

/** What the claims of cases ask for; told by the room above that keeps claims. */
public interface ClaimedAmounts {

    /** Sum of the amounts that the latest claims of these cases ask for, by currency; withdrawn ones left out. */
    Map<String, BigDecimal> of(Collection<UUID> caseIds);
}
