package org.voltdocket.assessment;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Clock;
import java.time.Duration;
import java.util.List;
import java.util.UUID;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.transaction.PlatformTransactionManager;
import org.voltdocket.assessment.edition.EditionService;
import org.voltdocket.assessment.edition.EditionTexts;
import org.voltdocket.casefile.CaseReference;
import org.voltdocket.casefile.CaseService;
import org.voltdocket.casefile.NewCase;
import org.voltdocket.casefile.pending.PendingAssessments;
import org.voltdocket.diagnosis.Facts;
import org.voltdocket.diagnosis.rulebook.Rulebook;
import org.voltdocket.dossier.Pairs;
import org.voltdocket.kernel.Actor;
import org.voltdocket.kernel.BatterySerial;
import org.voltdocket.kernel.Vin;
import org.voltdocket.support.ServerTest;
import org.voltdocket.trail.Trail;

/** A machine's clock set back a day: the order of what is kept is the database's, not the clock's. */
@ServerTest
class ClockSetBackTest {

    @Autowired
    private CaseService cases;

    @Autowired
    private CaseEditService caseEdits;

    @Autowired
    private CaseInputReader inputs;

    @Autowired
    private AssessmentRepository rows;

    @Autowired
    private PendingAssessments pending;

    @Autowired
    private JdbcClient db;

    @Autowired
    private Clock clock;

    @Autowired
    private PlatformTransactionManager transactions;

    @Autowired
    private EditionService editions;

    @Autowired
    private AssessmentService assessments;

    @Autowired
    private Trail trail;

    @Test
    void theLatestAssessmentIsTheLastOneMadeAndTheTrailHolds() {
        CaseReference ref = caseEdits
                .open(
                        Actor.system(),
                        new NewCase(
                                BatterySerial.parse(Pairs.serial()),
                                Vin.parse(Pairs.vin()),
                                new Facts(null, null, null, null)))
                .ref();
        UUID id = ref.id();
        Rulebook next = editions.rulebook(
                editions.keep(Actor.system(), EditionTexts.bytes(EditionTexts.text(EditionTexts.name())))
                        .sha256());
        Clock back = Clock.offset(clock, Duration.ofDays(-1));
        new CaseAssessor(inputs, new AssessmentStore(rows, cases, db, back), pending, trail, back, transactions)
                .reassess(id, next, result -> {});

        List<StoredAssessment> all = assessments.all(id);
        assertThat(all).hasSize(2);
        assertThat(all.get(0).assessedAt()).isBefore(all.get(1).assessedAt());
        assertThat(all.get(0).assessment().rulebook()).isEqualTo(next.edition());
        assertThat(assessments.latest(id).orElseThrow().id())
                .isEqualTo(all.get(0).id());
        assertThat(cases.facts(id).standing().orElseThrow().assessedAt())
                .isEqualTo(all.get(0).assessedAt());
        assertThat(trail.of(ref.number().value())).isNotEmpty();
    }
}
