package org.voltdocket.assessment.rerun;

import java.math.BigDecimal;
import java.util.List;
import java.util.Map;
import java.util.UUID;

/**
 * The changes of a run, in groups.
 *
 * @param ways by leaning before and after, most cases first
 * @param rules by row of the rule book; a case stands under each row that differs
 * @param claimed what the claims of all changed cases ask for, by currency
 */
public record RunSummary(List<Group> ways, List<Group> rules, Map<String, BigDecimal> claimed) {

    /**
     * Changed cases that have something in common.
     *
     * @param before leaning before, empty where there was none; for a rule its id, empty where no finding differs
     * @param after leaning after; empty for a rule
     * @param cases how many
     * @param claimed what their claims ask for, by currency
     * @param samples a few of them
     */
    public record Group(String before, String after, int cases, Map<String, BigDecimal> claimed, List<UUID> samples) {}
}
