package org.voltdocket.assessment;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import com.zaxxer.hikari.HikariDataSource;
import java.io.ByteArrayInputStream;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.OptionalLong;
import java.util.UUID;
import java.util.concurrent.Callable;
import java.util.concurrent.CopyOnWriteArrayList;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.TimeUnit;
import javax.sql.DataSource;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.transaction.PlatformTransactionManager;
import org.springframework.transaction.support.TransactionTemplate;
import org.voltdocket.casefile.CaseService;
import org.voltdocket.casefile.NewCase;
import org.voltdocket.casefile.pending.PendingAssessments;
import org.voltdocket.diagnosis.Facts;
import org.voltdocket.diagnosis.Origin;
import org.voltdocket.diagnosis.rulebook.Rulebook;
import org.voltdocket.diagnosis.write.AssessmentJson;
import org.voltdocket.dossier.Pairs;
import org.voltdocket.evidence.Stored;
import org.voltdocket.evidence.Upload;
import org.voltdocket.kernel.Actor;
import org.voltdocket.kernel.BatterySerial;
import org.voltdocket.kernel.CaseNumber;
import org.voltdocket.kernel.Role;
import org.voltdocket.kernel.Sha256;
import org.voltdocket.kernel.Vin;
import org.voltdocket.support.Answer;
import org.voltdocket.support.Client;
import org.voltdocket.support.Server;
import org.voltdocket.support.ServerTest;
import org.voltdocket.trail.Trail;
import org.voltdocket.trail.TrailEntry;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;

@ServerTest
class AssessmentKeepingTest {

    private static final String BATTERY = """
            {"kind":"battery-test","takenAt":"2026-03-04T08:40:00+01:00","restVoltageV":12.71,"temperatureC":18,
             "crankingCurrentA":712,"crankingStandard":"EN","hoursSinceEngineStop":12,"chargedBefore":true}""";
    private static final String CRANKING = """
            {"kind":"cranking-test","takenAt":"2026-03-04T08:50:00+01:00","minimumVoltageV":10.3,"durationS":0.8,
             "temperatureC":12}""";
    private static final String CHARGING = """
            {"kind":"charging-test","takenAt":"2026-03-04T09:00:00+01:00","idleVoltageV":14.2,"loadedVoltageV":13.9,
             "ripplePeakToPeakV":0.08,"temperatureC":18}""";

    @Autowired
    private Server server;

    @Autowired
    private AssessmentService assessments;

    @Autowired
    private CaseAssessor assessor;

    @Autowired
    private PendingAssessmentService service;

    @Autowired
    private CaseService cases;

    @Autowired
    private PendingAssessments due;

    @Autowired
    private EvidenceUploadService uploads;

    @Autowired
    private CaseEditService caseEdits;

    @Autowired
    private Trail trail;

    @Autowired
    private JdbcClient db;

    @Autowired
    private PlatformTransactionManager transactions;

    private Server.User user;
    private Client workshop;

    @BeforeEach
    void people() {
        user = server.newUser(Role.WORKSHOP);
        workshop = server.as(user);
    }

    @Test
    void aCaseIsAssessedAsSoonAsItIsOpenAndAgainWithEveryChangeThatCounts() {
        String number = open(Pairs.vin(), "");
        assertThat(kept(number)).hasSize(1);
        JsonNode first = read(number).get("assessment");
        assertThat(first.get("leaning").stringValue()).isEqualTo("open");
        assertThat(first.get("missing").isEmpty()).isFalse();

        upload(number, "battery.json", BATTERY, 201);
        assertThat(kept(number)).hasSize(2);
        upload(number, "again.json", BATTERY, 200);
        assertThat(kept(number)).as("the same bytes change nothing").hasSize(2);
        workshop.patchJson("/api/v1/cases/" + number, "{\"battery\":{\"chemistry\":\"agm\"}}");
        assertThat(kept(number)).hasSize(3);
        workshop.patchJson("/api/v1/cases/" + number, "{\"battery\":{\"chemistry\":\"agm\"}}");
        assertThat(kept(number)).as("a patch that changes nothing").hasSize(3);
        assessments.reassess(Actor.system(), CaseNumber.parse(number));
        assertThat(kept(number)).as("the same input and rule book").hasSize(3);

        StoredAssessment latest = kept(number).get(0);
        assertThat(read(number).get("assessment").toString())
                .isEqualTo(tools.jackson.databind.json.JsonMapper.shared()
                        .readTree(latest.body())
                        .toString());
        assertThat(workshop.get("/api/v1/cases/" + number).text())
                .as("served byte for byte as kept")
                .contains(latest.body());
        assertThat(due.since(latest.caseId())).isEmpty();
    }

    @Test
    void whatIsKeptReadsBackAsItWasWritten() {
        String number = open(Pairs.vin(), "");
        upload(number, "b.json", BATTERY, 201);
        StoredAssessment kept = kept(number).get(0);
        assertThat(AssessmentJson.of(kept.assessment(), kept.assessedAt())).isEqualTo(kept.body());
        double sum = 0;
        for (JsonNode cause : read(number).get("assessment").get("causes")) {
            sum += cause.get("probability").doubleValue();
        }
        assertThat(sum).isBetween(1 - 1e-9, 1 + 1e-9);
    }

    @Test
    void theListShowsWhatTheLatestAssessmentSays() {
        String number = open(Pairs.vin(), "");
        upload(number, "b.json", BATTERY, 201);
        JsonNode line = workshop.get("/api/v1/cases").json().get("cases").get(0);
        JsonNode assessment = read(number).get("assessment");
        assertThat(line.get("leaning")).isEqualTo(assessment.get("leaning"));
        assertThat(line.get("batteryVerdict")).isEqualTo(assessment.get("batteryVerdict"));
        assertThat(line.get("firstCause"))
                .isEqualTo(assessment.get("causes").get(0).get("cause"));
        assertThat(line.get("probability").doubleValue())
                .isEqualTo(assessment.get("causes").get(0).get("probability").doubleValue());
        String leaning = assessment.get("leaning").stringValue();
        assertThat(workshop.get("/api/v1/cases?leaning=" + leaning)
                        .json()
                        .get("cases")
                        .size())
                .isOne();
        String another = leaning.equals("open") ? "vehicle-side" : "open";
        assertThat(workshop.get("/api/v1/cases?leaning=" + another)
                        .json()
                        .get("cases")
                        .isEmpty())
                .isTrue();
    }

    @Test
    void theOrderOfUploadsDoesNotMatterToTheLastDigit() {
        List<String> files = new ArrayList<>(List.of(BATTERY, CRANKING, CHARGING));
        String facts = ",\"battery\":{\"chemistry\":\"agm\",\"capacityAh\":70,\"ratedCrankingA\":760,"
                + "\"crankingStandard\":\"EN\"},\"vehicle\":{\"chargingControl\":\"managed\"}";
        List<String> bodies = new ArrayList<>();
        for (int turn = 0; turn < 3; turn++) {
            String number = open(Pairs.vin(), facts);
            for (String file : files) {
                upload(number, "test.json", file, 201);
            }
            String body = kept(number).get(0).body();
            for (JsonNode item : read(number).get("evidence")) {
                body = body.replace(
                        item.get("id").stringValue(), item.get("sha256").stringValue());
            }
            bodies.add(body.replaceFirst("\"assessedAt\":\"[^\"]+\"", ""));
            Collections.rotate(files, 1);
        }
        assertThat(bodies.get(1)).isEqualTo(bodies.get(0));
        assertThat(bodies.get(2)).isEqualTo(bodies.get(0));
        assertThat(bodies.get(0)).contains("\"batteryVerdict\"");
    }

    @Test
    void anotherBatteryInTheSameVehicleMakesTheOldCaseJudgedAnew() {
        String vin = Pairs.vin();
        String first = open(vin, "");
        open(vin, "");
        assertThat(kept(first)).hasSize(2);
        open(vin, "");
        assertThat(kept(first)).hasSize(3);
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "update assessment set leaning = 'battery-side' where case_id = ?",
                "delete from assessment where case_id = ?",
                "truncate assessment cascade"
            })
    void assessmentsRefuseChange(String sql) {
        String number = open(Pairs.vin(), "");
        JdbcClient.StatementSpec statement = db.sql(sql);
        JdbcClient.StatementSpec ready = sql.contains("?") ? statement.param(id(number)) : statement;
        assertThatThrownBy(ready::update).hasStackTraceContaining("permission denied");
        assertThat(kept(number)).hasSize(1);
    }

    @Test
    void evidenceSurvivesAJudgeThatStopsAndTheCaseSaysSo() {
        String number = open(Pairs.vin(), "");
        upload(number, "b.json", BATTERY, 201);
        UUID id = id(number);
        Rulebook empty = new Rulebook("broken", Sha256.of(new byte[0]), Map.of(), "none", List.of());
        assessor.assess(id, () -> empty);

        JsonNode shown = read(number);
        assertThat(shown.get("evidence").size()).isOne();
        assertThat(shown.get("assessmentFailure").get("reason").stringValue()).startsWith("The assessment failed");
        assertThat(shown.get("assessment").get("rulebook").stringValue()).isNotEqualTo("broken");
        assertThat(trail.of(number).stream().map(TrailEntry::act)).contains("assessment-failed");

        assessments.reassess(Actor.system(), CaseNumber.parse(number));
        assertThat(read(number).has("assessmentFailure")).isFalse();
    }

    @Test
    void whatACrashLeftBetweenChangeAndAssessmentIsAssessedAtTheNextStart() {
        String number = open(Pairs.vin(), "");
        UUID id = id(number);
        // as a server leaves it that dies right after the commit of a change
        db.sql("update case_file set replaced_before = 2, version = version + 1 where id = ?")
                .param(id)
                .update();
        new TransactionTemplate(transactions).executeWithoutResult(tx -> due.mark(id));
        assertThat(read(number).has("assessmentPendingSince")).isTrue();
        service.resume();
        assertThat(kept(number)).hasSize(2);
        assertThat(due.since(id)).isEmpty();
        assertThat(read(number).has("assessmentPendingSince")).isFalse();
    }

    @Test
    void whatADeadNodeLeftBehindIsAssessedWithoutARestart() {
        String number = open(Pairs.vin(), "");
        UUID id = id(number);
        db.sql("update case_file set replaced_before = 3, version = version + 1 where id = ?")
                .param(id)
                .update();
        new TransactionTemplate(transactions).executeWithoutResult(tx -> due.mark(id));
        service.assessAbandoned();
        assertThat(kept(number)).as("somebody may be at work on it").hasSize(1);
        db.sql("update pending_assessment set since = since - interval '5 minutes' where case_id = ?")
                .param(id)
                .update();
        service.assessAbandoned();
        assertThat(kept(number)).hasSize(2);
        assertThat(due.since(id)).isEmpty();
    }

    /** Uploads, new cases and changed facts at once, three times as many as connections, without the limits of HTTP. */
    @Test
    void callersDoNotWaitForEachOthersConnections(@Autowired DataSource pool) throws Exception {
        int connections = pool.unwrap(HikariDataSource.class).getMaximumPoolSize();
        List<String> numbers = new CopyOnWriteArrayList<>();
        List<Callable<Void>> calls = new ArrayList<>();
        for (int i = 0; i < connections; i++) {
            String uploaded = open(Pairs.vin(), "");
            String changed = open(Pairs.vin(), "");
            numbers.addAll(List.of(uploaded, changed));
            calls.add(() -> {
                Upload upload = new Upload(
                        "battery.json",
                        new ByteArrayInputStream(BATTERY.getBytes(StandardCharsets.UTF_8)),
                        null,
                        Origin.WORKSHOP);
                assertThat(uploads.receive(user.actor(), cases.require(Actor.system(), id(uploaded)), upload))
                        .isInstanceOf(Stored.class);
                return null;
            });
            calls.add(() -> {
                NewCase newCase = new NewCase(
                        BatterySerial.parse(Pairs.serial()), Vin.parse(Pairs.vin()), new Facts(null, null, null, null));
                numbers.add(caseEdits.open(user.actor(), newCase).ref().number().value());
                return null;
            });
            calls.add(() -> {
                caseEdits.updateFacts(
                        user.actor(),
                        CaseNumber.parse(changed),
                        JsonMapper.shared().readTree("{\"battery\":{\"chemistry\":\"agm\"}}"),
                        OptionalLong.empty());
                return null;
            });
        }
        ExecutorService threads = Executors.newFixedThreadPool(calls.size());
        try {
            for (Future<Void> call : threads.invokeAll(calls, 2, TimeUnit.MINUTES)) {
                call.get();
            }
        } finally {
            threads.shutdownNow();
        }
        assertThat(numbers).hasSize(3 * connections);
        for (String number : numbers) {
            JsonNode shown = read(number);
            assertThat(shown.has("assessmentFailure")).as(shown.toString()).isFalse();
            assertThat(shown.get("assessment").isNull()).isFalse();
            assertThat(due.since(id(number))).isEmpty();
        }
    }

    @Test
    void aCaseIsNotAssessedInsideATransaction() {
        UUID id = id(open(Pairs.vin(), ""));
        TransactionTemplate transaction = new TransactionTemplate(transactions);
        assertThatThrownBy(() -> transaction.executeWithoutResult(tx -> service.assess(id)))
                .isInstanceOf(IllegalStateException.class);
    }

    private String open(String vin, String more) {
        Answer answer = workshop.postJson(
                "/api/v1/cases", "{\"batterySerial\":\"" + Pairs.serial() + "\",\"vin\":\"" + vin + "\"" + more + "}");
        assertThat(answer.status()).as(answer.toString()).isEqualTo(201);
        return answer.json().get("number").stringValue();
    }

    private void upload(String number, String name, String content, int status) {
        Answer answer = workshop.upload(
                "/api/v1/cases/" + number + "/evidence", name, content.getBytes(StandardCharsets.UTF_8), null);
        assertThat(answer.status()).as(answer.toString()).isEqualTo(status);
    }

    private JsonNode read(String number) {
        return workshop.get("/api/v1/cases/" + number).json();
    }

    private UUID id(String number) {
        return cases.require(Actor.system(), CaseNumber.parse(number)).id();
    }

    private List<StoredAssessment> kept(String number) {
        return assessments.all(id(number));
    }
}
