package org.voltdocket.returned;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import java.util.stream.StreamSupport;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.dao.DataAccessException;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.voltdocket.kernel.Actor;
import org.voltdocket.kernel.RequestException;
import org.voltdocket.kernel.Role;
import org.voltdocket.returned.lot.Lot;
import org.voltdocket.returned.lot.LotService;
import org.voltdocket.returned.pallet.Pallet;
import org.voltdocket.returned.pallet.PalletDeliveryNote;
import org.voltdocket.returned.pallet.PalletService;
import org.voltdocket.returned.sampling.InspectionLevel;
import org.voltdocket.returned.sampling.RandomDraw;
import org.voltdocket.returned.service.ReturnService;
import org.voltdocket.support.Answer;
import org.voltdocket.support.Client;
import org.voltdocket.support.Server;
import org.voltdocket.support.ServerTest;
import tools.jackson.databind.JsonNode;

/** A battery's way back, over HTTP and on PostgreSQL: arrival, bench, evidence, outcome, lots. */
@ServerTest
class ReturnsServerTest {

    private static final String VIN = "WP0ZZZ99ZTS392124";
    private static final String OTHER_VIN = "1M8GDM9AXKP042788";

    @Autowired
    private Server server;

    @Autowired
    private LotService lots;

    @Autowired
    private PalletService pallets;

    @Autowired
    private ReturnService returns;

    @Autowired
    private JdbcClient db;

    private static String serial() {
        return "RET-" + UUID.randomUUID().toString().substring(0, 13).toUpperCase(java.util.Locale.ROOT);
    }

    private String open(Server.User workshop, String serial, String vin, String battery) {
        Answer opened = server.as(workshop)
                .postJson(
                        "/api/v1/cases",
                        "{\"batterySerial\":\"" + serial + "\",\"vin\":\"" + vin + "\",\"battery\":" + battery + "}");
        assertThat(opened.status()).as(opened.toString()).isEqualTo(201);
        return opened.json().get("number").asString();
    }

    private Client auditor() {
        return server.as(Role.AUDITOR);
    }

    private JsonNode arrive(String serial) {
        Answer arrived = auditor().postJson("/api/v1/returns", "{\"batterySerial\":\"" + serial + "\"}");
        assertThat(arrived.status()).as(arrived.toString()).isEqualTo(201);
        return arrived.json();
    }

    private static List<String> texts(JsonNode list) {
        return StreamSupport.stream(list.spliterator(), false)
                .map(JsonNode::asString)
                .toList();
    }

    @Test
    void arrivalFindsTheCaseAndTellsWhatIsOdd() {
        Server.User workshop = server.newUser(Role.WORKSHOP);
        String serial = serial();
        JsonNode unknown = arrive(serial());
        assertThat(texts(unknown.get("warnings"))).containsExactly("no-case", "never-sold");
        assertThat(unknown.has("case")).isFalse();

        String number = open(workshop, serial, VIN, "{\"soldOn\":\"2025-10-01\"}");
        JsonNode known = arrive(serial);
        assertThat(known.get("case").asString()).isEqualTo(number);
        assertThat(texts(known.get("warnings"))).isEmpty();
        assertThat(known.get("daysHere").asInt()).isZero();

        Answer again = auditor().postJson("/api/v1/returns", "{\"batterySerial\":\" " + serial.toLowerCase() + "\"}");
        assertThat(again.status()).isEqualTo(200);
        assertThat(again.json().get("id")).isEqualTo(known.get("id"));

        String second = open(workshop, serial, OTHER_VIN, "{}");
        JsonNode read =
                auditor().get("/api/v1/returns/" + known.get("id").asString()).json();
        assertThat(texts(read.get("warnings"))).containsExactly("several-cases");
        assertThat(texts(read.get("cases"))).containsExactly(second, number);
        assertThat(read.get("case").asString()).isEqualTo(number);
        assertThat(auditor()
                        .postJson("/api/v1/returns", "{\"batterySerial\":\"?\"}")
                        .status())
                .isEqualTo(400);
    }

    @Test
    void twoScansAtOnceBookInOnce() throws Exception {
        String serial = serial();
        List<Thread> threads = new ArrayList<>();
        List<Integer> statuses = java.util.Collections.synchronizedList(new ArrayList<>());
        for (int i = 0; i < 4; i++) {
            Thread thread = new Thread(() -> statuses.add(auditor()
                    .postJson("/api/v1/returns", "{\"batterySerial\":\"" + serial + "\"}")
                    .status()));
            thread.start();
            threads.add(thread);
        }
        for (Thread thread : threads) {
            thread.join();
        }
        assertThat(statuses).containsExactlyInAnyOrder(201, 200, 200, 200);
    }

    @Test
    void benchEvidenceJoinsTheCaseAndIsJudged() {
        Server.User workshop = server.newUser(Role.WORKSHOP);
        String serial = serial();
        String number = open(
                workshop,
                serial,
                VIN,
                "{\"chemistry\":\"agm\",\"capacityAh\":70,\"ratedCrankingA\":700,"
                        + "\"crankingStandard\":\"EN\",\"soldOn\":\"2025-10-01\"}");
        String at = "/api/v1/returns/" + arrive(serial).get("id").asString();
        Answer kept = auditor().upload(at + "/evidence", "bench.json", test(12.85, 700), "after charge and rest");
        assertThat(kept.status()).as(kept.toString()).isEqualTo(201);
        assertThat(kept.json().get("origin").asString()).isEqualTo("bench");
        assertThat(kept.json().get("findings")).isNotEmpty();
        assertThat(auditor()
                        .upload(at + "/evidence", "bench.json", test(12.85, 700), null)
                        .status())
                .isEqualTo(200);
        assertThat(auditor()
                        .upload(
                                at + "/evidence",
                                "x.json",
                                "{\"kind\":\"battery-test\"}".getBytes(StandardCharsets.UTF_8),
                                null)
                        .status())
                .isEqualTo(422);
        JsonNode file = server.as(workshop).get("/api/v1/cases/" + number).json();
        assertThat(file.get("assessment").get("batteryVerdict").asString()).isEqualTo("sound");
        assertThat(auditor().get(at).json().get("evidence")).hasSize(1);
        assertThat(auditor().get(at + "/evidence").json()).hasSize(1);
    }

    @Test
    void withoutACaseNothingOfAFileIsKeptAndTheAnswerSaysWhatToDo() {
        String at = "/api/v1/returns/" + arrive(serial()).get("id").asString();
        Answer refused = auditor().upload(at + "/evidence", "bench.json", test(12.6, 600), null);
        assertThat(refused.status()).isEqualTo(409);
        assertThat(refused.json().get("type").asString()).endsWith("#return-without-case");
    }

    private static byte[] test(double volts, double amperes) {
        return ("{\"kind\":\"battery-test\",\"takenAt\":\"2026-03-04T08:40:00Z\",\"restVoltageV\":" + volts
                        + ",\"temperatureC\":25,\"crankingCurrentA\":" + amperes
                        + ",\"crankingStandard\":\"EN\",\"hoursSinceEngineStop\":48,\"chargedBefore\":true,"
                        + "\"instrument\":{\"serial\":\"BENCH-1\",\"calibratedOn\":\"2026-01-10\"}}")
                .getBytes(StandardCharsets.UTF_8);
    }

    @Test
    void theProcedureHoldsOverHttp() {
        Server.User workshop = server.newUser(Role.WORKSHOP);
        String serial = serial();
        open(workshop, serial, VIN, "{\"chemistry\":\"flooded\",\"capacityAh\":60}");
        String at = "/api/v1/returns/" + arrive(serial).get("id").asString();
        Answer early = step(at, "charge", "start", null);
        assertThat(early.status()).isEqualTo(409);
        assertThat(early.json().get("blockedBy").toString()).contains("look");
        assertThat(auditor()
                        .postJson(at + "/condition", "{\"terminals\":\"sound\"}")
                        .status())
                .isEqualTo(200);
        assertThat(step(at, "charge", "start", null).status()).isEqualTo(200);
        Answer tooSoon = step(at, "charge", "finish", null);
        assertThat(tooSoon.status()).isEqualTo(409);
        assertThat(tooSoon.json().get("detail").asString()).contains("may be finished from");
        assertThat(step(
                                at,
                                "charge",
                                "finish",
                                Instant.now().plus(2, ChronoUnit.DAYS).toString())
                        .status())
                .isEqualTo(400);
        assertThat(step(at, "charge", "break-off", null).status()).isEqualTo(200);

        auditor().postJson(at + "/condition", "{\"terminals\":\"sound\",\"leaking\":true}");
        Answer blocked = step(at, "charge", "start", null);
        assertThat(blocked.status()).isEqualTo(409);
        assertThat(blocked.json().get("detail").asString()).contains("Never charge or load-test");
        assertThat(auditor().get(at).json().get("procedure").get(2).get("state").asString())
                .isEqualTo("blocked");
    }

    private Answer step(String at, String step, String act, String when) {
        return auditor()
                .postJson(
                        at + "/steps",
                        "{\"step\":\"" + step + "\",\"act\":\"" + act + "\""
                                + (when == null ? "" : ",\"at\":\"" + when + "\"") + "}");
    }

    @Test
    void anOutcomeNeedsAReasonAndACorrectionKeepsWhatWasThere() {
        String at = "/api/v1/returns/" + arrive(serial()).get("id").asString() + "/outcome";
        assertThat(auditor().postJson(at, "{\"outcome\":\"no-fault-found\"}").status())
                .isEqualTo(400);
        assertThat(auditor()
                        .postJson(at, "{\"outcome\":\"fine\",\"reason\":\"x\"}")
                        .status())
                .isEqualTo(400);
        assertThat(auditor()
                        .postJson(at, "{\"outcome\":\"no-fault-found\",\"reason\":\"sound\"}")
                        .status())
                .isEqualTo(200);
        JsonNode second = auditor()
                .postJson(at, "{\"outcome\":\"damaged-by-use\",\"reason\":\"post was hammered\"}")
                .json();
        assertThat(second.get("outcome").get("outcome").asString()).isEqualTo("damaged-by-use");
        assertThat(second.get("earlierOutcomes").get(0).get("outcome").asString())
                .isEqualTo("no-fault-found");
        assertThatThrownBy(() ->
                        db.sql("update returned_outcome set reason = 'other'").update())
                .isInstanceOf(DataAccessException.class);
    }

    @Test
    void aPalletKnowsWhatIsMissingAndWhatItDoesNotList() {
        Actor auditor = server.user(Role.AUDITOR).actor();
        String first = serial();
        String number = serial();
        LocalDate day = LocalDate.now(java.time.ZoneOffset.UTC).minusDays(3);
        Pallet pallet = pallets.note(
                auditor,
                PalletDeliveryNote.parse(
                        number, "Copper Quay", day.toString(), first + "\n" + serial(), LocalDate.now()));
        Answer arrived = auditor()
                .postJson("/api/v1/returns", "{\"batterySerial\":\"" + first + "\",\"pallet\":\"" + number + "\"}");
        assertThat(arrived.json().get("daysHere").asInt()).isBetween(2, 3);
        Answer stray = auditor()
                .postJson("/api/v1/returns", "{\"batterySerial\":\"" + serial() + "\",\"pallet\":\"" + number + "\"}");
        assertThat(texts(stray.json().get("warnings"))).contains("not-on-list");
        Pallet.Details whole = pallets.whole(auditor, pallet.id());
        assertThat(whole.pallet().listed() - whole.pallet().arrived()).isEqualTo(1);
        assertThat(whole.pallet().unlisted()).isEqualTo(1);
        assertThat(whole.lines()).hasSize(3);
        assertThat(auditor()
                        .postJson("/api/v1/returns", "{\"batterySerial\":\"" + serial() + "\",\"pallet\":\"NONE\"}")
                        .status())
                .isEqualTo(400);
    }

    @Test
    void theDrawAsCsvHoldsNoFormula() {
        Server.User workshop = server.newUser(Role.WORKSHOP);
        String serial = "-2-" + serial();
        for (String one : List.of(serial, serial())) {
            open(workshop, one, VIN, "{}");
            arrive(one);
        }
        String key = workshop.actor().workshop().orElseThrow().toString();
        Lot lot = lots.draw(
                server.user(Role.AUDITOR).actor(),
                new Lot.Request(Lot.Scope.WORKSHOP, key, InspectionLevel.II, 2.5, false));
        assertThat(server.browser(server.user(Role.AUDITOR))
                        .get("/returns/lots/" + lot.id() + "/draw.csv")
                        .text())
                .contains(",'" + serial + ",");
    }

    @Test
    void aLotIsDrawnByItsSeedAndDecidedByItsSample() {
        Server.User workshop = server.newUser(Role.WORKSHOP);
        Actor auditor = server.user(Role.AUDITOR).actor();
        for (int i = 0; i < 20; i++) {
            String serial = serial();
            open(workshop, serial, VIN, "{}");
            arrive(serial);
        }
        String key = workshop.actor().workshop().orElseThrow().toString();
        assertThat(lots.sources(auditor)).anySatisfy(source -> {
            assertThat(source.key()).isEqualTo(key);
            assertThat(source.waiting()).isEqualTo(20);
        });
        // 20 of them: letter C, 5 tested, none allowed at AQL 2.5 (ISO 2859-1, level II, from memory)
        Lot lot = lots.draw(auditor, new Lot.Request(Lot.Scope.WORKSHOP, key, InspectionLevel.II, 2.5, false));
        assertThat(lot.plan().sampleSize()).isEqualTo(5);
        Lot.Details whole = lots.whole(auditor, lot.id());
        List<String> numbers =
                whole.order().stream().map(one -> one.battery().number()).toList();
        assertThat(RandomDraw.order(lot.seed(), numbers)).isEqualTo(numbers);
        assertThatThrownBy(() ->
                        lots.draw(auditor, new Lot.Request(Lot.Scope.WORKSHOP, key, InspectionLevel.II, 2.5, false)))
                .isInstanceOf(RequestException.class);

        // the first cannot be tested: the sixth takes its place
        conclude(auditor, whole.order().get(0), BenchOutcome.NOT_TESTED);
        for (int i = 1; i < 5; i++) {
            conclude(auditor, whole.order().get(i), BenchOutcome.DEFECT_CONFIRMED);
        }
        Lot.Progress open = lots.whole(auditor, lot.id()).lot().progress();
        assertThat(open).isEqualTo(new Lot.Progress(4, 0, 1, Lot.Disposition.OPEN));
        assertThat(lots.whole(auditor, lot.id()).order().get(5).inSample()).isTrue();
        conclude(auditor, whole.order().get(5), BenchOutcome.NO_FAULT_FOUND);
        assertThat(lots.whole(auditor, lot.id()).lot().progress())
                .isEqualTo(new Lot.Progress(5, 1, 1, Lot.Disposition.NOT_ACCEPTED));
        assertThatThrownBy(() -> db.sql("delete from sampling_rank where lot_id = ?")
                        .param(lot.id())
                        .update())
                .isInstanceOf(DataAccessException.class);
    }

    private void conclude(Actor auditor, Lot.Ranked one, BenchOutcome finding) {
        returns.recordOutcome(auditor, one.battery().id(), finding, "as tested");
    }

    @Test
    void thePagesAnswerAndTheLabelIsAPdf() {
        Server.User workshop = server.newUser(Role.WORKSHOP);
        String serial = serial();
        open(workshop, serial, VIN, "{\"chemistry\":\"agm\",\"capacityAh\":70,\"soldOn\":\"2025-10-01\"}");
        Client page = server.browser(server.user(Role.AUDITOR));
        Answer scanned = page.postForm("/returns", Map.of("serial", serial.toLowerCase()));
        assertThat(scanned.status()).isEqualTo(302);
        assertThat(page.get("/returns").text()).contains(serial).doesNotContain("??");
        String id = arriveAgain(serial);
        assertThat(page.get("/returns/" + id).text()).contains("14.80 V").doesNotContain("??");
        Answer label = page.get("/returns/" + id + "/label.pdf");
        assertThat(label.text()).startsWith("%PDF-1.7");
        assertThat(page.get("/returns/" + id + "/label.pdf?width=20").status()).isEqualTo(400);
        assertThat(page.postForm("/returns", Map.of("serial", "?")).text()).contains("A battery serial is 4 to 40");
    }

    private String arriveAgain(String serial) {
        return auditor()
                .postJson("/api/v1/returns", "{\"batterySerial\":\"" + serial + "\"}")
                .json()
                .get("id")
                .asString();
    }
}
