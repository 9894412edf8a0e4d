package org.voltdocket.casefile;

import java.util.LinkedHashMap;
import java.util.Map;
import org.voltdocket.diagnosis.Facts;
import org.voltdocket.diagnosis.read.Fact;

/** Facts as JSON answers and canonical texts write them. */
public final class FactsJson {

    private FactsJson() {}

    /** What is known, by dotted name, in a fixed order: texts, whole and decimal numbers, truths. */
    public static Map<String, Object> flat(Facts facts) {
        Map<String, Object> flat = new LinkedHashMap<>();
        Fact.known(facts).forEach((fact, value) -> flat.put(fact.path(), Fact.plain(value)));
        return flat;
    }

    /** The members of a group ({@code battery}, {@code vehicle}) that are known, in a fixed order. */
    public static Map<String, Object> group(Facts facts, String group) {
        Map<String, Object> members = new LinkedHashMap<>();
        Fact.known(facts).forEach((fact, value) -> {
            if (fact.group().equals(group)) {
                members.put(fact.member(), Fact.plain(value));
            }
        });
        return members;
    }
}
