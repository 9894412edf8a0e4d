package org.voltdocket.casefile;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import org.voltdocket.diagnosis.ChargingControl;
import org.voltdocket.diagnosis.Facts;
import org.voltdocket.diagnosis.read.Fact;
import org.voltdocket.diagnosis.read.FactsParser;
import org.voltdocket.kernel.FieldError;
import org.voltdocket.kernel.RequestException;

/** Fills, patches and compares facts, and refuses facts that cannot be true together. */
final class FactChanges {

    private FactChanges() {}

    /**
     * What the case knows with its blanks filled.
     *
     * @throws RequestException (409) if known and given differ anywhere
     */
    static Facts fill(CaseReference ref, Facts known, Facts given) {
        Map<Fact, Object> all = new EnumMap<>(Fact.class);
        all.putAll(Fact.known(known));
        List<FactConflict> conflicts = new ArrayList<>();
        Fact.known(given).forEach((fact, value) -> {
            Object old = all.get(fact);
            if (saysNothing(old)) {
                all.put(fact, value);
            } else if (!saysNothing(value) && !old.equals(value)) {
                Object was = Fact.plain(old);
                Object is = Fact.plain(value);
                conflicts.add(new FactConflict(
                        fact.path(),
                        "'" + fact.path() + "' is " + was + " in case " + ref.number() + "; this request says " + is
                                + ".",
                        was,
                        is));
            }
        });
        if (!conflicts.isEmpty()) {
            throw CaseRefusals.conflicting(ref, conflicts);
        }
        return Fact.facts(all);
    }

    /** What the case knows after a patch; a fact mapped to null is removed. */
    static Facts patch(Facts known, Map<Fact, Object> patch) {
        Map<Fact, Object> all = new EnumMap<>(Fact.class);
        all.putAll(Fact.known(known));
        all.putAll(patch);
        return Fact.facts(all);
    }

    /** Old and new value of each fact that differs, by dotted name, as the trail keeps them. */
    static Map<String, Object> between(Facts before, Facts after) {
        Map<String, Object> changes = new LinkedHashMap<>();
        for (Fact fact : Fact.values()) {
            Object old = fact.of(before);
            Object now = fact.of(after);
            if (!Objects.equals(old, now)) {
                Map<String, Object> pair = new LinkedHashMap<>();
                pair.put("old", Fact.plain(old));
                pair.put("new", Fact.plain(now));
                changes.put(fact.path(), pair);
            }
        }
        return changes;
    }

    /**
     * Refuses impossible days.
     *
     * @throws RequestException naming each of them
     */
    static void refuseImpossible(Facts facts, LocalDate today) {
        List<FieldError> errors = FactsParser.impossibleDays(facts, today);
        if (!errors.isEmpty()) {
            throw CaseRefusals.invalid(errors, Optional.empty());
        }
    }

    /** Blank, or the one value that means so. */
    private static boolean saysNothing(Object value) {
        return value == null || value == ChargingControl.UNKNOWN;
    }
}
