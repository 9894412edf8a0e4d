package org.voltdocket.casefile;

import java.util.Collection;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.UUID;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;
import org.voltdocket.kernel.Actor;

/** Who may see a case: a workshop its own cases, all other roles every case. */
@Component
class CaseVisibility {

    private final JdbcClient db;

    CaseVisibility(JdbcClient db) {
        this.db = db;
    }

    boolean sees(Actor actor, UUID caseId) {
        return !visible(actor, List.of(caseId)).isEmpty();
    }

    /** The cases of the list that the actor may see. One query for a workshop, none otherwise. */
    Set<UUID> visible(Actor actor, Collection<UUID> cases) {
        if (!actor.isWorkshop() || cases.isEmpty()) {
            return new HashSet<>(cases);
        }
        return new HashSet<>(db.sql("select case_id from case_workshop where workshop_id = ? and case_id = any(?)")
                .param(actor.workshop().orElseThrow())
                .param(cases.toArray(UUID[]::new))
                .query(UUID.class)
                .list());
    }

    List<UUID> workshops(UUID caseId) {
        return db.sql("select workshop_id from case_workshop where case_id = ? order by added_at, workshop_id")
                .param(caseId)
                .query(UUID.class)
                .list();
    }
}
