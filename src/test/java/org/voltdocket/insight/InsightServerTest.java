package org.voltdocket.insight;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.ByteArrayInputStream;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.UUID;
import java.util.concurrent.atomic.AtomicInteger;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.security.access.AccessDeniedException;
import org.voltdocket.assessment.CaseEditService;
import org.voltdocket.casefile.CaseReference;
import org.voltdocket.casefile.CaseService;
import org.voltdocket.casefile.NewCase;
import org.voltdocket.catalogue.CatalogueService;
import org.voltdocket.claim.ClaimAction;
import org.voltdocket.claim.ClaimStepRequest;
import org.voltdocket.claim.service.ClaimStepService;
import org.voltdocket.diagnosis.Chemistry;
import org.voltdocket.diagnosis.Facts;
import org.voltdocket.diagnosis.Origin;
import org.voltdocket.evidence.Upload;
import org.voltdocket.kernel.Actor;
import org.voltdocket.kernel.BatterySerial;
import org.voltdocket.kernel.Role;
import org.voltdocket.kernel.Vin;
import org.voltdocket.returned.BenchOutcome;
import org.voltdocket.returned.service.ReturnService;
import org.voltdocket.support.Server;
import org.voltdocket.support.ServerTest;

/** Statistics over a small archive of this test's own, among whatever other tests have left. */
@ServerTest
class InsightServerTest {

    private static final AtomicInteger COUNTER = new AtomicInteger();
    private static final LocalDate TODAY = LocalDate.now(ZoneOffset.UTC);
    private static final LocalDate MADE = TODAY.minusDays(200);
    private static final LocalDate SOLD = TODAY.minusDays(120).withDayOfMonth(10);

    @Autowired
    private Server server;

    @Autowired
    private InsightService insights;

    @Autowired
    private CatalogueService catalogue;

    @Autowired
    private CaseService cases;

    @Autowired
    private CaseEditService caseEdits;

    @Autowired
    private ClaimStepService claims;

    @Autowired
    private ReturnService returns;

    private Server.User workshop;
    private Actor auditor;
    private String type;
    private int made;

    @BeforeEach
    void anArchive() {
        workshop = server.newUser(Role.WORKSHOP);
        auditor = server.user(Role.AUDITOR).actor();
        type = "INS" + System.nanoTime() % 1_000_000 + COUNTER.incrementAndGet();
        made = 0;
        take("supplier,name\n" + type + ",Invented\n");
        take("type,name,supplier,chemistry,capacity_ah\n" + type + ",Invented,TT,agm,70\n".replace("TT", type));
        take("type,batch,first_serial,last_serial,produced_on,count\n" + type + ",B1," + serial(1) + "," + serial(400)
                + "," + MADE + ",400\n");
        take("type,batch,month,sold\n" + type + ",B1," + SOLD.toString().substring(0, 7) + ",300\n");
    }

    @Test
    void aWorkshopIsShownWithItsShareAndTheCasesBehindIt() {
        claimed(BenchOutcome.NO_FAULT_FOUND);
        CaseReference defect = claimed(BenchOutcome.DEFECT_CONFIRMED);
        claimed(BenchOutcome.NOT_TESTED);
        InsightQuery query = query(Topic.NO_FAULT, "outcome");
        String key = workshop.actor().workshop().orElseThrow().toString();
        TopicTable.Row row = row(Topic.NO_FAULT, query, key);
        assertThat(row.cells().get(1).value()).contains(1L);
        assertThat(row.cells().get(2).value()).contains(2L);
        CaseSelection behind =
                insights.cases(auditor, Topic.NO_FAULT, query, key).orElseThrow();
        assertThat(behind.all()).isEqualTo(1);
        assertThat(behind.listed())
                .noneMatch(line -> line.number().equals(defect.number().value()));
    }

    @Test
    void livesAreCountedFromSaleWithThoseStillInService() {
        for (int i = 0; i < 4; i++) {
            claimed(null);
        }
        TopicTable.Row row = row(Topic.TIME_TO_CLAIM, query(Topic.TIME_TO_CLAIM, "batch"), type + " B1");
        assertThat(row.cells().get(1).value()).as("sold").contains(300L);
        assertThat(row.cells().get(2).value()).as("claimed").contains(4L);
        CaseSelection behind = insights.cases(
                        auditor, Topic.TIME_TO_CLAIM, query(Topic.TIME_TO_CLAIM, "batch"), type + " B1")
                .orElseThrow();
        assertThat(behind.all()).isEqualTo(4);
        assertThat(behind.listed()).allSatisfy(line -> assertThat(line.soldOn()).contains(SOLD));
    }

    @Test
    void aWeekOfProductionCountsItsClaims() {
        claimed(null);
        claimed(null);
        InsightQuery query = query(Topic.PRODUCTION, "claimed");
        String monday = MADE.with(java.time.DayOfWeek.MONDAY).toString();
        TopicTable.Row row = row(Topic.PRODUCTION, query, monday);
        assertThat((Long) row.cells().get(1).value().orElseThrow()).isGreaterThanOrEqualTo(2);
        assertThat(insights.cases(auditor, Topic.PRODUCTION, query, monday)
                        .orElseThrow()
                        .all())
                .isEqualTo(row.cells().get(1).value().orElseThrow());
    }

    /** Of a serial without a number at its end no batch can be told, and nothing else fails for it. */
    @Test
    void aSerialThatEndsInNoNumberIsOfNoBatch() {
        caseEdits.open(
                workshop.actor(),
                new NewCase(new BatterySerial(type + "-END"), new Vin("XX7ENDLESS0000001"), Facts.UNKNOWN));
        claimed(null);
        assertThat(insights.of(auditor, Topic.TIME_TO_CLAIM, query(Topic.TIME_TO_CLAIM, "batch"))
                        .table()
                        .rows())
                .anyMatch(row -> row.key().equals(Optional.of(type + " B1")));
    }

    @Test
    void outcomesAreSetAgainstWhatWasStatedBeforeTheBench() {
        claimed(BenchOutcome.NO_FAULT_FOUND);
        TopicResult odds = insights.of(auditor, Topic.LEARNING, query(Topic.LEARNING, "odds"));
        TopicTable.Row row = odds.table().rows().stream()
                .filter(one -> one.key().equals(Optional.of("agm, unknown.no-fault-found")))
                .findFirst()
                .orElseThrow();
        long counted = (Long) row.cells().get(2).value().orElseThrow();
        assertThat(counted).isPositive();
        assertThat(insights.cases(auditor, Topic.LEARNING, query(Topic.LEARNING, "odds"), "agm, unknown.no-fault-found")
                        .orElseThrow()
                        .all())
                .isEqualTo(counted);
    }

    @Test
    void everyTopicAnswersAndEveryRowLeadsToAsManyCasesAsItCounts() {
        claimed(BenchOutcome.WEAR_CONFIRMED);
        for (Topic topic : Topic.values()) {
            for (String by : InsightQuery.groupings(topic)) {
                InsightQuery query = query(topic, by);
                TopicResult insight = insights.of(auditor, topic, query);
                assertThat(insight.statements()).as(topic + " " + by).isNotEmpty();
                for (TopicTable.Row row : insight.table().rows()) {
                    row.key()
                            .ifPresent(key -> assertThat(insights.cases(auditor, topic, query, key))
                                    .as(topic + " " + key)
                                    .isPresent());
                }
                insight.drawing()
                        .ifPresent(drawing -> assertThat(drawing.png(360)).startsWith(0x89, 'P', 'N', 'G'));
            }
        }
    }

    @Test
    void aWorkshopSeesNoStatistics() {
        assertThatThrownBy(() -> insights.of(workshop.actor(), Topic.MONEY, query(Topic.MONEY, "all")))
                .isInstanceOf(AccessDeniedException.class);
        assertThatThrownBy(() -> insights.cases(workshop.actor(), Topic.MONEY, query(Topic.MONEY, "all"), "none.EUR"))
                .isInstanceOf(AccessDeniedException.class);
    }

    @Test
    void aTableIsHadAsCsvThatNoSpreadsheetTakesForAFormula() {
        assertThat(server.as(Role.AUDITOR).get("/insight/causes/table.csv").status())
                .isNotEqualTo(200);
        var csv = server.browser(server.user(Role.AUDITOR)).get("/insight/money/table.csv?from=2020-01-01");
        assertThat(csv.status()).isEqualTo(200);
        assertThat(csv.text()).startsWith("cause,currency,claimed,approved,goodwill,declined,undecided\r\n");
        var wrong = server.browser(server.user(Role.AUDITOR)).get("/insight/money?from=2026-02-01&to=2026-01-01");
        assertThat(wrong.status()).isEqualTo(400);
        assertThat(wrong.text()).contains("lies before the first");
    }

    private static InsightQuery query(Topic topic, String by) {
        return InsightQuery.of(topic, TODAY.minusYears(1), TODAY, by);
    }

    private TopicTable.Row row(Topic topic, InsightQuery query, String key) {
        return insights.of(auditor, topic, query).table().rows().stream()
                .filter(row -> row.key().equals(Optional.of(key)))
                .findFirst()
                .orElseThrow();
    }

    private void take(String csv) {
        catalogue.take(server.user(Role.ADMIN).actor(), "some.csv", csv.getBytes(UTF_8));
    }

    private String serial(int number) {
        return type + "-" + String.format("%04d", number);
    }

    /** A case with a test and a claim, and where a finding is given the battery back on the bench. */
    private CaseReference claimed(BenchOutcome finding) {
        BatterySerial serial = new BatterySerial(serial(++made));
        Facts.BatteryFacts battery = new Facts.BatteryFacts(Chemistry.AGM, 70.0, null, null, MADE, SOLD, SOLD, null);
        Vin vin = new Vin(String.format("XX7%08d%06d", System.nanoTime() % 100_000_000, made));
        CaseReference ref = caseEdits
                .open(workshop.actor(), new NewCase(serial, vin, new Facts(battery, null, null, null)))
                .ref();
        server.as(workshop)
                .upload(
                        "/api/v1/cases/" + ref.number() + "/evidence",
                        "test.json",
                        ("{\"kind\":\"battery-test\",\"takenAt\":\"" + TODAY
                                        + "T00:00:00Z\",\"restVoltageV\":12.4,\"temperatureC\":20}")
                                .getBytes(UTF_8),
                        null);
        claims.open(workshop.actor(), ref.number(), "100.00", "EUR", null);
        claims.act(
                workshop.actor(),
                ref.number(),
                new ClaimStepRequest(
                        ClaimAction.SUBMIT,
                        null,
                        List.of(),
                        List.of(),
                        Optional.empty(),
                        OptionalLong.empty(),
                        Optional.empty()));
        if (finding != null) {
            UUID id =
                    returns.arrive(auditor, serial, Optional.empty()).battery().id();
            returns.receive(
                    auditor,
                    id,
                    new Upload(
                            "bench.json",
                            new ByteArrayInputStream(("{\"kind\":\"battery-test\",\"takenAt\":\"" + TODAY
                                            + "T00:00:01Z\",\"restVoltageV\":12.8,\"temperatureC\":22}")
                                    .getBytes(UTF_8)),
                            null,
                            Origin.BENCH));
            returns.recordOutcome(auditor, id, finding, "Seen on the bench.");
        }
        return ref;
    }
}
