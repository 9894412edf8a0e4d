package org.voltdocket.assessment.rerun;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import java.util.concurrent.Callable;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.atomic.AtomicInteger;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.voltdocket.assessment.AssessmentService;
import org.voltdocket.assessment.edition.Edition;
import org.voltdocket.assessment.edition.EditionService;
import org.voltdocket.assessment.edition.EditionTexts;
import org.voltdocket.casefile.CaseService;
import org.voltdocket.dossier.Pairs;
import org.voltdocket.kernel.Actor;
import org.voltdocket.kernel.CaseNumber;
import org.voltdocket.kernel.RequestException;
import org.voltdocket.kernel.Role;
import org.voltdocket.support.Answer;
import org.voltdocket.support.Client;
import org.voltdocket.support.Server;
import org.voltdocket.support.ServerTest;
import tools.jackson.databind.JsonNode;

/** An edition run over the archive: what it finds, what it changes, and that no case is judged twice or left out. */
@ServerTest
class ReassessmentTest {

    private static final String BATTERY = """
            {"kind":"battery-test","takenAt":"2026-03-04T08:40:00+01:00","restVoltageV":12.71,"temperatureC":18,
             "crankingCurrentA":712,"crankingStandard":"EN","hoursSinceEngineStop":12,"chargedBefore":true}""";

    @Autowired
    private Server server;

    @Autowired
    private EditionService editions;

    @Autowired
    private ReassessmentService runs;

    @Autowired
    private RunRepository store;

    @Autowired
    private RunWorker work;

    @Autowired
    private CaseService cases;

    @Autowired
    private AssessmentService assessments;

    @Autowired
    private JdbcClient db;

    @Test
    void aTrialListsWhatWouldChangeWithWhatIsClaimedAndChangesNothing() {
        Client workshop = server.as(server.newUser(Role.WORKSHOP));
        String number = open(workshop);
        workshop.postJson("/api/v1/cases/" + number + "/claim", "{\"amount\":\"129.90\",\"currency\":\"EUR\"}");
        String edition = keep(EditionTexts.draft(EditionTexts.tilted(EditionTexts.name())))
                .name();
        int before = kept(number);

        Client admin = server.as(Role.ADMIN);
        Answer asked = admin.postJson("/api/v1/reassessments", "{\"mode\":\"trial\",\"rulebook\":\"" + edition + "\"}");
        assertThat(asked.status()).as(asked.toString()).isEqualTo(202);
        String id = asked.json().get("id").stringValue();
        assertThat(asked.header("location")).contains("/api/v1/reassessments/" + id);

        JsonNode done = ended(id);
        assertThat(done.get("state").stringValue()).isEqualTo("done");
        assertThat(done.get("casesRead").intValue())
                .isEqualTo(done.get("casesTotal").intValue())
                .isPositive();
        assertThat(done.get("secondsLeft").doubleValue()).isZero();
        assertThat(done.get("casesPerSecond").doubleValue()).isPositive();
        JsonNode mine = changed(done, number);
        assertThat(mine.get("causeAfter").stringValue()).isEqualTo("misfit");
        assertThat(mine.get("causeBefore").stringValue()).isNotEqualTo("misfit");
        assertThat(kept(number)).isEqualTo(before);

        Answer page = server.browser(server.user(Role.ADMIN)).get("/reassessments/" + id);
        assertThat(page.status()).isEqualTo(200);
        // a page shows samples of each group; whose they are depends on what other tests have left
        assertThat(page.text())
                .contains(" EUR", "/compare")
                .doesNotContain("/cases//")
                .doesNotContain("??");
        Answer compare = server.browser(server.user(Role.ADMIN))
                .get("/cases/" + number + "/compare?edition=2026.1&with=" + edition);
        assertThat(compare.status()).isEqualTo(200);
        assertThat(compare.text()).contains("calculated now", "stored ").doesNotContain("??");
    }

    @Test
    void aRunForGoodAppendsOnceAndKeepsWhatWasThere() {
        Client workshop = server.as(server.newUser(Role.WORKSHOP));
        String number = open(workshop);
        String first = assessments.latest(id(number)).orElseThrow().body();
        int before = kept(number);
        String edition = keep(EditionTexts.tilted(EditionTexts.name())).name();

        ReassessmentRun run = runs.ask(Actor.system(), RunMode.FINAL, edition);
        JsonNode done = ended(run.id().toString());
        assertThat(done.get("state").stringValue()).isEqualTo("done");
        assertThat(changed(done, number).get("causeAfter").stringValue()).isEqualTo("misfit");
        assertThat(kept(number)).isEqualTo(before + 1);
        assertThat(assessments.all(id(number)).get(before).body()).isNotBlank();
        assertThat(assessments.all(id(number)).stream().map(k -> k.body())).contains(first);
        assertThat(workshop.get("/api/v1/cases/" + number)
                        .json()
                        .get("assessment")
                        .get("rulebook")
                        .stringValue())
                .isEqualTo(edition);

        ReassessmentRun again = runs.ask(Actor.system(), RunMode.FINAL, edition);
        ended(again.id().toString());
        assertThat(kept(number)).as("the same edition over the same input").isEqualTo(before + 1);
    }

    /** As several nodes would, and with one that gives up in the middle. */
    @Test
    void manyWorkersJudgeEveryCaseOnceAndNoneIsLeftOut() throws Exception {
        Client workshop = server.as(server.newUser(Role.WORKSHOP));
        List<String> numbers = new ArrayList<>();
        for (int i = 0; i < 12; i++) {
            numbers.add(open(workshop));
        }
        Edition edition = keep(EditionTexts.tilted(EditionTexts.name()));
        UUID run = store.ask(RunMode.FINAL, edition.sha256(), "test");
        AtomicInteger asked = new AtomicInteger();
        work.work(run, Duration.ofSeconds(60), () -> asked.incrementAndGet() > 5);
        assertThat(store.find(run).orElseThrow().state()).isEqualTo(RunState.RUNNING);
        String late = open(workshop);

        ExecutorService threads = Executors.newFixedThreadPool(4);
        try {
            Callable<Boolean> worker = () -> work.work(run, Duration.ofSeconds(60), () -> false);
            threads.invokeAll(Collections.nCopies(4, worker))
                    .forEach(done -> assertThat(done).isDone());
        } finally {
            threads.shutdownNow();
        }
        JsonNode done = ended(run.toString());
        assertThat(done.get("casesRead").intValue())
                .isEqualTo(done.get("casesTotal").intValue());
        assertThat(done.get("failedTotal").intValue())
                .as(done.get("failed").toString())
                .isZero();
        List<Integer> appended = db.sql("""
                        select count(a.id) from reassessment_chunk c cross join unnest(c.case_ids) as one
                        left join assessment a on a.case_id = one and a.rulebook_sha256 = ?
                        where c.reassessment_id = ? group by one""")
                .param(edition.sha256().hex())
                .param(run)
                .query(Integer.class)
                .list();
        assertThat(appended).hasSize(done.get("casesTotal").intValue()).containsOnly(1);
        numbers.forEach(number -> assertThat(changed(done, number)).as(number).isNotNull());
        assertThat(changed(done, late)).as("opened meanwhile").isNull();
    }

    @Test
    void aRunIsPausedResumedAndStopped() {
        Edition edition = keep(EditionTexts.draft(EditionTexts.tilted(EditionTexts.name())));
        ReassessmentRun run = runs.ask(Actor.system(), RunMode.TRIAL, edition.name());
        runs.take(Actor.system(), run.id(), RunAction.PAUSE);
        assertThatThrownBy(() -> runs.take(Actor.system(), run.id(), RunAction.PAUSE))
                .isInstanceOf(RequestException.class);
        assertThat(work.work(run.id(), Duration.ofSeconds(1), () -> false)).isFalse();
        assertThat(runs.require(Actor.system(), run.id()).state()).isEqualTo(RunState.PAUSED);
        runs.take(Actor.system(), run.id(), RunAction.RESUME);
        assertThat(ended(run.id().toString()).get("state").stringValue()).isEqualTo("done");

        ReassessmentRun other = runs.ask(Actor.system(), RunMode.TRIAL, edition.name());
        runs.take(Actor.system(), other.id(), RunAction.STOP);
        assertThat(runs.require(Actor.system(), other.id()).endedAt()).isPresent();
        Client admin = server.browser(server.user(Role.ADMIN));
        admin.postForm("/reassessments/" + other.id(), Map.of("step", "resume"));
        assertThat(admin.get("/reassessments/" + other.id()).text()).contains("does not follow");
    }

    @Test
    void whatCannotBeRunIsRefusedWithWords() {
        Client admin = server.as(Role.ADMIN);
        assertThat(admin.postJson("/api/v1/reassessments", "{\"mode\":\"final\",\"rulebook\":\"1999.1\"}")
                        .status())
                .isEqualTo(422);
        assertThat(admin.postJson("/api/v1/reassessments", "{\"rulebook\":7,\"mode\":\"trial\"}")
                        .status())
                .isEqualTo(422);
        String draft =
                keep(EditionTexts.draft(EditionTexts.text(EditionTexts.name()))).name();
        Answer refused = admin.postJson("/api/v1/reassessments", "{\"mode\":\"final\",\"rulebook\":\"" + draft + "\"}");
        assertThat(refused.status()).isEqualTo(409);
        assertThat(refused.json().get("type").stringValue()).endsWith("#edition-in-the-making");
        assertThatThrownBy(() -> runs.ask(Actor.system(), RunMode.FINAL, draft)).isInstanceOf(RequestException.class);
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "update reassessment_change set leaning_after = 'open'",
                "delete from reassessment_change",
                "update reassessment set state = 'running', ended_at = null where state = 'done'",
                "delete from reassessment"
            })
    void whatARunSaidStays(String sql) {
        String edition = keep(EditionTexts.draft(EditionTexts.tilted(EditionTexts.name())))
                .name();
        open(server.as(server.newUser(Role.WORKSHOP)));
        ended(runs.ask(Actor.system(), RunMode.TRIAL, edition).id().toString());
        assertThatThrownBy(() -> db.sql(sql).update())
                .rootCause()
                .hasMessageMatching("(?s).*(permission denied|is refused).*");
    }

    private Edition keep(String text) {
        return editions.keep(Actor.system(), EditionTexts.bytes(text));
    }

    private String open(Client workshop) {
        Answer answer = workshop.postJson(
                "/api/v1/cases", "{\"batterySerial\":\"" + Pairs.serial() + "\",\"vin\":\"" + Pairs.vin() + "\"}");
        assertThat(answer.status()).as(answer.toString()).isEqualTo(201);
        String number = answer.json().get("number").stringValue();
        Answer kept = workshop.upload(
                "/api/v1/cases/" + number + "/evidence", "b.json", BATTERY.getBytes(StandardCharsets.UTF_8), null);
        assertThat(kept.status()).as(kept.toString()).isEqualTo(201);
        return number;
    }

    private UUID id(String number) {
        return cases.require(Actor.system(), CaseNumber.parse(number)).id();
    }

    private int kept(String number) {
        return assessments.all(id(number)).size();
    }

    private static JsonNode changed(JsonNode run, String number) {
        for (JsonNode one : run.get("changed")) {
            if (one.get("case").stringValue().equals(number)) {
                return one;
            }
        }
        return null;
    }

    private JsonNode ended(String id) {
        Client admin = server.as(Role.ADMIN);
        long until = System.nanoTime() + Duration.ofSeconds(180).toNanos();
        while (System.nanoTime() < until) {
            JsonNode run = admin.get("/api/v1/reassessments/" + id).json();
            if (List.of("done", "stopped", "failed").contains(run.get("state").stringValue())) {
                return run;
            }
            try {
                Thread.sleep(200);
            } catch (InterruptedException e) {
                throw new IllegalStateException(e);
            }
        }
        throw new AssertionError(admin.get("/api/v1/reassessments/" + id).text());
    }
}
