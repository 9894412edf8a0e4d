package org.voltdocket.claim;

import java.time.Instant;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;
import org.voltdocket.casefile.CaseService;
import org.voltdocket.casefile.web.FactFields;
import org.voltdocket.evidence.EvidenceArchive;
import org.voltdocket.evidence.EvidenceItem;

/** What was asked for last, and what came for it. */
@Component
class EvidenceRequestRepository {

    private final JdbcClient db;
    private final EvidenceArchive archive;
    private final CaseService cases;

    EvidenceRequestRepository(JdbcClient db, EvidenceArchive archive, CaseService cases) {
        this.db = db;
        this.archive = archive;
        this.cases = cases;
    }

    private record Given(int position, Optional<UUID> evidence, Optional<String> words) {}

    void keep(UUID claimId, ClaimStep ask, RequestedItemAnswer answer, Instant at, String by) {
        db.sql("""
                insert into claim_answer (claim_id, version, position, evidence_id, words, answered_at, answered_by)
                values (?, ?, ?, ?, ?, ?, ?)""")
                .param(claimId)
                .param(ask.version())
                .param(answer.position())
                .param(answer.evidence().orElse(null))
                .param(answer.words())
                .param(at.atOffset(ZoneOffset.UTC))
                .param(by)
                .update();
    }

    /** The list of the last step that asked; empty where nothing was asked for yet. */
    List<RequestedItem> of(UUID claimId, UUID caseId, List<ClaimStep> steps) {
        Optional<ClaimStep> last = lastAsk(steps);
        if (last.isEmpty()) {
            return List.of();
        }
        ClaimStep ask = last.get();
        List<Given> given = given(claimId, ask.version());
        List<EvidenceItem> held = archive.ofCase(caseId);
        Map<String, String> facts = FactFields.values(cases.facts(caseId).facts());
        List<RequestedItem> items = new ArrayList<>();
        for (int i = 0; i < ask.items().size(); i++) {
            items.add(item(i + 1, ask, given, held, facts));
        }
        return items;
    }

    static Optional<ClaimStep> lastAsk(List<ClaimStep> steps) {
        return steps.stream().filter(step -> step.action() == ClaimAction.ASK).reduce((earlier, later) -> later);
    }

    private static RequestedItem item(
            int position, ClaimStep ask, List<Given> given, List<EvidenceItem> held, Map<String, String> facts) {
        String said = ask.items().get(position - 1);
        boolean known = RequestableItem.ALL.contains(said);
        Set<UUID> sent = new LinkedHashSet<>();
        List<String> words = new ArrayList<>();
        given.stream().filter(one -> one.position() == position).forEach(one -> {
            one.evidence().ifPresent(sent::add);
            one.words().ifPresent(words::add);
        });
        Set<UUID> fitting = new LinkedHashSet<>();
        for (EvidenceItem item : held) {
            boolean ofKind = item.kind().id().equals(said);
            boolean late = item.receivedAt().isAfter(ask.at());
            if (sent.contains(item.id()) ? ofKind || !known : ofKind && late) {
                fitting.add(item.id());
            }
        }
        sent.addAll(fitting);
        boolean answered = !fitting.isEmpty() || !words.isEmpty() || facts.containsKey(said);
        return new RequestedItem(
                position, known ? said : null, known ? null : said, answered, List.copyOf(sent), words);
    }

    private List<Given> given(UUID claimId, long version) {
        return db.sql("select position, evidence_id, words from claim_answer where claim_id = ? and version = ?"
                        + " order by ordinal")
                .param(claimId)
                .param(version)
                .query((row, n) -> new Given(
                        row.getInt("position"),
                        Optional.ofNullable(row.getObject("evidence_id", UUID.class)),
                        Optional.ofNullable(row.getString("words"))))
                .list();
    }
}
