package org.voltdocket.casefile;

import java.sql.Timestamp;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.UUID;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.security.access.AccessDeniedException;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;
import org.voltdocket.access.AccountService;
import org.voltdocket.access.rows.SeesAllRows;
import org.voltdocket.diagnosis.Facts;
import org.voltdocket.diagnosis.History;
import org.voltdocket.diagnosis.read.FactsParser;
import org.voltdocket.kernel.Actor;
import org.voltdocket.kernel.BatterySerial;
import org.voltdocket.kernel.CaseNumber;
import org.voltdocket.kernel.FieldError;
import org.voltdocket.kernel.RequestException;
import org.voltdocket.kernel.Vin;
import tools.jackson.databind.JsonNode;

/** The case files in PostgreSQL. Locks in this order: case, pending assessments, trail. */
@Service
@Transactional
class DefaultCaseService implements CaseService {

    /** Cases that one workshop may open of one vehicle or one battery. */
    private static final int MAX_OF_ONE = 50;

    private final CaseRepository rows;
    private final CaseVisibility visibility;
    private final RelatedCaseRepository kin;
    private final JdbcClient db;
    private final CaseChangeRecorder recorder;
    private final AccountService accounts;

    DefaultCaseService(
            CaseRepository rows,
            CaseVisibility visibility,
            RelatedCaseRepository kin,
            JdbcClient db,
            CaseChangeRecorder recorder,
            AccountService accounts) {
        this.rows = rows;
        this.visibility = visibility;
        this.kin = kin;
        this.db = db;
        this.recorder = recorder;
        this.accounts = accounts;
    }

    @Override
    @SeesAllRows
    public OpenCaseResult open(Actor actor, NewCase newCase) {
        refuseOnlooker(actor);
        FactChanges.refuseImpossible(newCase.facts(), recorder.today());
        String serial = newCase.serial().value();
        String vin = newCase.vin().value();
        Optional<CaseEntity> existing = rows.lockPair(serial, vin);
        boolean created = existing.isEmpty() && insert(actor, newCase);
        // a pair that another transaction opened meanwhile is there by now: the insert waited for it
        CaseEntity row = existing.orElseGet(() -> rows.lockPair(serial, vin).orElseThrow());
        if (created) {
            begin(actor, row, newCase.facts());
        } else {
            complete(actor, row, newCase.facts());
        }
        return new OpenCaseResult(created, row.ref());
    }

    private boolean insert(Actor actor, NewCase newCase) {
        long ordinal =
                db.sql("select nextval('case_ordinal')").query(Long.class).single();
        return db.sql("insert into case_file"
                                + " (id, number, battery_serial, vin, opened_at, opened_by, opened_workshop)"
                                + " values (?, ?, ?, ?, ?, ?, ?) on conflict (battery_serial, vin) do nothing")
                        .param(UUID.randomUUID())
                        .param(CaseNumber.of(ordinal).value())
                        .param(newCase.serial().value())
                        .param(newCase.vin().value())
                        .param(now())
                        .param(actor.user())
                        .param(actor.workshop().orElse(null))
                        .update()
                == 1;
    }

    private void begin(Actor actor, CaseEntity row, Facts facts) {
        row.change(facts);
        rows.flush();
        actor.workshop().ifPresent(workshop -> {
            refuseTooManyOfOne(workshop, row.ref());
            join(actor, row.id(), workshop);
        });
        recorder.opened(actor, row, facts, siblings(row.id()));
    }

    /** Each new case is part of the history of all cases of its vehicle and battery, which are assessed again. */
    private void refuseTooManyOfOne(UUID workshop, CaseReference opened) {
        long cases = db.sql(
                        "select greatest(count(*) filter (where vin = :vin), count(*) filter (where battery_serial = :serial))"
                                + " from case_file where opened_workshop = :workshop and (vin = :vin or battery_serial = :serial)")
                .param("vin", opened.vin().value())
                .param("serial", opened.serial().value())
                .param("workshop", workshop)
                .query(Long.class)
                .single();
        if (cases > MAX_OF_ONE) {
            throw CaseRefusals.tooManyOfOne(MAX_OF_ONE);
        }
    }

    private void complete(Actor actor, CaseEntity row, Facts given) {
        if (!visibility.sees(actor, row.id())) {
            throw CaseRefusals.inOtherWorkshop();
        }
        change(actor, row, FactChanges.fill(row.ref(), row.facts(), given), "facts-filled");
    }

    private void change(Actor actor, CaseEntity row, Facts after, String act) {
        Map<String, Object> changes = FactChanges.between(row.facts(), after);
        if (changes.isEmpty()) {
            return;
        }
        FactChanges.refuseImpossible(after, recorder.today());
        row.change(after);
        rows.flush();
        recorder.factsChanged(actor, row, act, changes);
    }

    @Override
    public PatchResult edit(Actor actor, CaseNumber number, JsonNode mergePatch, OptionalLong ifVersion) {
        refuseOnlooker(actor);
        // locked before it is read: a row read first would be stale by the time the lock is had
        CaseEntity row = rows.lockNumber(number.value())
                .filter(found -> visibility.sees(actor, found.id()))
                .orElseThrow(() -> RequestException.notFound("case " + number));
        refuseErased(row);
        FactsParser.Parsed patch = CaseRequest.patch(mergePatch, row.ref());
        if (ifVersion.isPresent() && ifVersion.getAsLong() != row.version()) {
            throw CaseRefusals.changedSinceRead(row.ref());
        }
        change(actor, row, FactChanges.patch(row.facts(), patch.values()), "facts-edited");
        return new PatchResult(facts(row), patch.ignored());
    }

    @Override
    @Transactional(readOnly = true)
    public CaseReference require(Actor actor, CaseNumber number) {
        return rows.findByNumber(number.value())
                .filter(row -> visibility.sees(actor, row.id()))
                .map(CaseEntity::ref)
                .orElseThrow(() -> RequestException.notFound("case " + number));
    }

    @Override
    @Transactional(readOnly = true)
    public CaseReference require(Actor actor, UUID caseId) {
        return rows.findById(caseId)
                .filter(row -> visibility.sees(actor, row.id()))
                .map(CaseEntity::ref)
                .orElseThrow(() -> RequestException.notFound("such case"));
    }

    @Override
    @Transactional(readOnly = true)
    public CaseReference requireToFeed(Actor actor, CaseNumber number) {
        CaseReference ref = require(actor, number);
        refuseOnlooker(actor);
        refuseErased(rows.findById(ref.id()).orElseThrow());
        return ref;
    }

    @Override
    @Transactional(readOnly = true)
    public CaseFacts facts(UUID caseId) {
        return facts(rows.findById(caseId).orElseThrow(() -> RequestException.notFound("such case")));
    }

    private CaseFacts facts(CaseEntity row) {
        return new CaseFacts(
                row.ref(),
                row.facts(),
                row.openedAt(),
                row.openedBy(),
                visibility.workshops(row.id()),
                row.version(),
                row.standing());
    }

    @Override
    @Transactional(readOnly = true)
    @SeesAllRows
    public History history(UUID caseId) {
        return kin.history(caseId);
    }

    @Override
    @Transactional(readOnly = true)
    @SeesAllRows
    public List<UUID> siblings(UUID caseId) {
        return rows.relatives(caseId).stream().map(CaseEntity::id).sorted().toList();
    }

    @Override
    @Transactional(readOnly = true)
    @SeesAllRows
    public RelatedCases relatives(Actor actor, UUID caseId) {
        return kin.relatives(actor, require(actor, caseId));
    }

    @Override
    @Transactional(readOnly = true)
    public List<CaseListItem> ofBattery(Actor actor, BatterySerial serial) {
        return kin.ofBattery(actor, serial);
    }

    @Override
    @Transactional(readOnly = true)
    public List<CaseListItem> ofVehicle(Actor actor, Vin vin) {
        return kin.ofVehicle(actor, vin);
    }

    @Override
    public void saveAssessmentSummary(UUID caseId, AssessmentSummary summary) {
        db.sql("update case_file set leaning = ?, battery_verdict = ?, first_cause = ?, probability = ?,"
                        + " assessed_at = ? where id = ?")
                .param(summary.leaning().id())
                .param(summary.verdict().id())
                .param(summary.firstCause().id())
                .param(summary.probability())
                .param(Timestamp.from(summary.assessedAt()))
                .param(caseId)
                .update();
    }

    @Override
    public void saveClaimState(UUID caseId, String state) {
        db.sql("update case_file set claim_state = ? where id = ?")
                .param(state)
                .param(caseId)
                .update();
    }

    @Override
    public void addWorkshop(Actor actor, CaseNumber number, UUID workshop) {
        CaseReference ref = require(actor, number);
        if (!actor.canDecideClaims()) {
            throw RequestException.notFound("case " + number + " for you to share");
        }
        if (workshop == null || accounts.workshopName(workshop).isEmpty()) {
            throw CaseRefusals.invalid(
                    List.of(new FieldError("workshop", "'workshop' is not a known workshop; read " + workshop)),
                    Optional.empty());
        }
        if (join(actor, ref.id(), workshop)) {
            recorder.workshopAdded(actor, ref, workshop);
        }
    }

    private boolean join(Actor actor, UUID caseId, UUID workshop) {
        return db.sql("insert into case_workshop (case_id, workshop_id, added_at, added_by) values (?, ?, ?, ?)"
                                + " on conflict do nothing")
                        .param(caseId)
                        .param(workshop)
                        .param(now())
                        .param(actor.user())
                        .update()
                == 1;
    }

    private static void refuseOnlooker(Actor actor) {
        if (!actor.canEditCases()) {
            throw new AccessDeniedException("an auditor adds to a case by a returned battery only");
        }
    }

    private static void refuseErased(CaseEntity row) {
        if (row.isErased()) {
            throw CaseRefusals.erased(row.ref());
        }
    }

    private Timestamp now() {
        return Timestamp.from(recorder.now());
    }
}
