package org.voltdocket.dossier;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.UUID;
import java.util.concurrent.Callable;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.stream.IntStream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.springframework.beans.factory.annotation.Autowired;
import org.voltdocket.kernel.CaseNumber;
import org.voltdocket.kernel.Role;
import org.voltdocket.support.Answer;
import org.voltdocket.support.Client;
import org.voltdocket.support.Server;
import org.voltdocket.support.ServerTest;
import org.voltdocket.trail.Trail;
import org.voltdocket.trail.TrailEntry;
import tools.jackson.databind.JsonNode;

@ServerTest
class CaseApiTest {

    @Autowired
    private Server server;

    @Autowired
    private Trail trail;

    private Server.User workshopUser;
    private Client workshop;
    private Client other;
    private Client clerk;

    @BeforeEach
    void people() {
        workshopUser = server.newUser(Role.WORKSHOP);
        workshop = server.as(workshopUser);
        other = server.as(server.newUser(Role.WORKSHOP));
        clerk = server.as(Role.CLERK);
    }

    @Test
    void opensACaseWithAllItsFactsAndTellsThemBack() {
        String serial = Pairs.serial();
        String vin = Pairs.vin();
        Answer answer = workshop.postJson("/api/v1/cases", """
                {"batterySerial":" %s ","vin":"%s",
                 "battery":{"chemistry":"agm","capacityAh":70,"ratedCrankingA":760.5,"crankingStandard":"EN",
                   "producedOn":"2025-08-01","soldOn":"2025-10-01","fittedOn":"2025-10-05","fittedOdometerKm":81000},
                 "vehicle":{"chargingControl":"managed","stopStart":true,"requiredChemistry":"agm",
                   "requiredCapacityAh":70,"odometerKm":89500},
                 "complaint":"Battery warning lamp, starts poorly","batteriesReplacedBefore":1,
                 "colour":"red","battery2":{}}
                """.formatted(serial.toLowerCase(), vin.toLowerCase()));

        assertThat(answer.status()).as(answer.toString()).isEqualTo(201);
        JsonNode json = answer.json();
        CaseNumber number = CaseNumber.parse(json.get("number").stringValue());
        assertThat(answer.header("location")).contains("/api/v1/cases/" + number);
        assertThat(answer.header("etag")).isPresent();
        assertThat(json.get("batterySerial").stringValue()).isEqualTo(serial);
        assertThat(json.get("vin").stringValue()).isEqualTo(vin);
        assertThat(json.get("battery").toString())
                .isEqualTo("{\"chemistry\":\"agm\",\"capacityAh\":70,\"ratedCrankingA\":760.5,"
                        + "\"crankingStandard\":\"EN\",\"producedOn\":\"2025-08-01\",\"soldOn\":\"2025-10-01\","
                        + "\"fittedOn\":\"2025-10-05\",\"fittedOdometerKm\":81000}");
        assertThat(json.get("vehicle").toString())
                .isEqualTo("{\"chargingControl\":\"managed\",\"stopStart\":true,\"requiredChemistry\":\"agm\","
                        + "\"requiredCapacityAh\":70,\"odometerKm\":89500}");
        assertThat(json.get("batteriesReplacedBefore").intValue()).isOne();
        assertThat(json.get("ignored").toString()).isEqualTo("[\"colour\",\"battery2\"]");
        assertThat(json.get("openedBy").stringValue()).isEqualTo(workshopUser.name());
        assertThat(json.get("vinCheck").get("binds").booleanValue()).isFalse();
        assertThat(json.get("claim").isNull()).isTrue();
        assertThat(workshop.get("/api/v1/cases/" + number)
                        .json()
                        .get("complaint")
                        .stringValue())
                .startsWith("Battery warning");
    }

    @Test
    void theSamePairIsTheSameCaseAndItsBlanksAreFilled() {
        String number = open(workshop, "");
        JsonNode first = workshop.get("/api/v1/cases/" + number).json();
        Answer again = workshop.postJson("/api/v1/cases", body(first, ",\"battery\":{\"capacityAh\":60}"));
        assertThat(again.status()).isEqualTo(200);
        assertThat(again.json().get("number").stringValue()).isEqualTo(number);
        assertThat(again.json().get("battery").get("capacityAh").intValue()).isEqualTo(60);
        assertThat(acts(number)).containsExactly("case-opened", "facts-filled");
    }

    @Test
    void aConflictNamesEachFieldAndChangesNothing() {
        String number = open(workshop, ",\"battery\":{\"capacityAh\":60,\"chemistry\":\"efb\"}");
        JsonNode before = workshop.get("/api/v1/cases/" + number).json();
        Answer answer = workshop.postJson(
                "/api/v1/cases",
                body(before, ",\"battery\":{\"capacityAh\":70,\"chemistry\":\"agm\",\"ratedCrankingA\":600}"));
        assertThat(answer.status()).isEqualTo(409);
        assertProblem(answer, "conflicting-facts");
        assertThat(fields(answer)).containsExactly("battery.chemistry", "battery.capacityAh");
        JsonNode error = answer.json().get("errors").get(1);
        assertThat(error.get("known").intValue()).isEqualTo(60);
        assertThat(error.get("given").intValue()).isEqualTo(70);
        assertThat(workshop.get("/api/v1/cases/" + number).json().get("battery"))
                .isEqualTo(before.get("battery"));
        assertThat(acts(number)).containsExactly("case-opened");
    }

    @Test
    void unknownChargingControlIsABlank() {
        String number = open(workshop, ",\"vehicle\":{\"chargingControl\":\"unknown\"}");
        JsonNode first = workshop.get("/api/v1/cases/" + number).json();
        Answer told = workshop.postJson("/api/v1/cases", body(first, ",\"vehicle\":{\"chargingControl\":\"managed\"}"));
        assertThat(told.status()).isEqualTo(200);
        Answer untold =
                workshop.postJson("/api/v1/cases", body(first, ",\"vehicle\":{\"chargingControl\":\"unknown\"}"));
        assertThat(untold.json().get("vehicle").get("chargingControl").stringValue())
                .isEqualTo("managed");
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            quoteCharacter = '`',
            value = {
                "battery.capacityAh | {\"battery\":{\"capacityAh\":0.5}}",
                "battery.capacityAh | {\"battery\":{\"capacityAh\":\"70\"}}",
                "battery.capacityAh | {\"battery\":{\"capacityAh\":1e999}}",
                "battery.ratedCrankingA | {\"battery\":{\"ratedCrankingA\":3001}}",
                "battery.crankingStandard | {\"battery\":{\"crankingStandard\":\"CCA\"}}",
                "battery.chemistry | {\"battery\":{\"chemistry\":\"lithium\"}}",
                "battery.chemistry | {\"battery\":{\"chemistry\":7}}",
                "battery.producedOn | {\"battery\":{\"producedOn\":\"01.08.2025\"}}",
                "battery.producedOn | {\"battery\":{\"producedOn\":\"2999-01-01\"}}",
                "battery.soldOn | {\"battery\":{\"producedOn\":\"2025-08-01\",\"soldOn\":\"2025-07-31\"}}",
                "battery | {\"battery\":\"agm\"}",
                "vehicle.stopStart | {\"vehicle\":{\"stopStart\":\"yes\"}}",
                "vehicle.odometerKm | {\"vehicle\":{\"odometerKm\":-1}}",
                "complaint | {\"complaint\":7}",
                "batteriesReplacedBefore | {\"batteriesReplacedBefore\":21}",
                "batteriesReplacedBefore | {\"batteriesReplacedBefore\":1.5}"
            })
    void aFactThatCannotBeRightIsRefusedByName(String field, String json) {
        String rest = json.substring(1, json.length() - 1);
        Answer answer = workshop.postJson(
                "/api/v1/cases",
                "{\"batterySerial\":\"%s\",\"vin\":\"%s\",%s}".formatted(Pairs.serial(), Pairs.vin(), rest));
        assertThat(answer.status()).as(answer.toString()).isEqualTo(400);
        assertProblem(answer, "facts-refused");
        assertThat(fields(answer)).containsExactly(field);
    }

    /** 49 CFR 565.15(c): 1M8GDM9AXKP042788 is the regulation's example; O for 0 is a common misreading. */
    @Test
    void aMisreadVinIsRefusedWithASuggestion() {
        Answer answer = workshop.postJson(
                "/api/v1/cases", "{\"batterySerial\":\"" + Pairs.serial() + "\",\"vin\":\"1M8GDM9AXKPO42788\"}");
        assertThat(answer.status()).isEqualTo(400);
        assertThat(answer.json().get("suggestion").stringValue()).isEqualTo("1M8GDM9AXKP042788");
        assertThat(answer.json().get("detail").stringValue()).contains("position 12");
    }

    @Test
    void bothKeysAreNamedWhenBothAreWrong() {
        assertThat(fields(workshop.postJson("/api/v1/cases", "{\"batterySerial\":\"A_1\"}")))
                .containsExactly("batterySerial", "vin");
        assertThat(workshop.postJson("/api/v1/cases", "[1]").status()).isEqualTo(400);
        assertThat(workshop.postJson("/api/v1/cases", "{\"batterySerial\":").status())
                .isEqualTo(400);
    }

    @Test
    void threadsThatOpenTheSamePairGetOneCase() throws Exception {
        String body = "{\"batterySerial\":\"" + Pairs.serial() + "\",\"vin\":\"" + Pairs.vin() + "\"}";
        ExecutorService threads = Executors.newFixedThreadPool(8);
        try {
            List<Callable<Answer>> calls = new ArrayList<>();
            for (int i = 0; i < 16; i++) {
                calls.add(() -> workshop.postJson("/api/v1/cases", body));
            }
            Set<String> numbers = new HashSet<>();
            List<Integer> statuses = new ArrayList<>();
            for (Future<Answer> future : threads.invokeAll(calls)) {
                Answer answer = future.get();
                assertThat(answer.status()).as(answer.toString()).isIn(200, 201);
                statuses.add(answer.status());
                numbers.add(answer.json().get("number").stringValue());
            }
            assertThat(numbers).hasSize(1);
            assertThat(statuses).containsOnlyOnce(201);
            assertThat(acts(numbers.iterator().next())).containsOnlyOnce("case-opened");
        } finally {
            threads.shutdownNow();
        }
    }

    @Test
    void aMergePatchSetsAndRemovesAndTheTrailKeepsBothValues() {
        String number = open(workshop, ",\"battery\":{\"capacityAh\":60,\"chemistry\":\"efb\"},\"complaint\":\"slow\"");
        Answer answer = workshop.patchJson(
                "/api/v1/cases/" + number,
                "{\"battery\":{\"capacityAh\":70,\"chemistry\":null},\"vehicle\":{\"stopStart\":true},\"x\":1}");
        assertThat(answer.status()).as(answer.toString()).isEqualTo(200);
        assertThat(answer.json().get("battery").toString()).isEqualTo("{\"capacityAh\":70}");
        assertThat(answer.json().get("ignored").toString()).isEqualTo("[\"x\"]");
        assertThat(answer.json().get("complaint").stringValue()).isEqualTo("slow");
        TrailEntry entry = trail.of(number).get(1);
        assertThat(entry.act()).isEqualTo("facts-edited");
        Map<?, ?> change = (Map<?, ?>) entry.details().get("battery.capacityAh");
        assertThat(change.get("old")).hasToString("60");
        assertThat(change.get("new")).hasToString("70");
        assertThat(entry.details()).containsOnlyKeys("battery.capacityAh", "battery.chemistry", "vehicle.stopStart");

        assertThat(workshop.patchJson("/api/v1/cases/" + number, "{\"battery\":null}")
                        .json()
                        .get("battery")
                        .isEmpty())
                .isTrue();
        workshop.patchJson("/api/v1/cases/" + number, "{\"battery\":{\"capacityAh\":null}}");
        assertThat(acts(number)).containsExactly("case-opened", "facts-edited", "facts-edited");
    }

    @Test
    void aPatchCannotChangeTheKeysNorMakeFactsImpossible() {
        String number = open(workshop, ",\"battery\":{\"producedOn\":\"2025-08-01\"}");
        String path = "/api/v1/cases/" + number;
        JsonNode now = workshop.get(path).json();
        assertThat(fields(workshop.patchJson(path, "{\"vin\":\"" + Pairs.vin() + "\"}")))
                .containsExactly("vin");
        assertThat(fields(workshop.patchJson(path, "{\"batterySerial\":null}"))).containsExactly("batterySerial");
        assertThat(workshop.patchJson(path, "{\"vin\":\"" + now.get("vin").stringValue() + "\"}")
                        .status())
                .isEqualTo(200);
        assertThat(fields(workshop.patchJson(path, "{\"battery\":{\"soldOn\":\"2025-01-01\"}}")))
                .containsExactly("battery.soldOn");
    }

    @Test
    void ifMatchKeepsTwoFromOverwritingEachOther() {
        String number = open(workshop, "");
        String path = "/api/v1/cases/" + number;
        String tag = workshop.get(path).header("etag").orElseThrow();
        assertThat(workshop.header("If-None-Match", tag).get(path).status()).isEqualTo(304);
        Client held = workshop.header("If-Match", tag);
        assertThat(held.patchJson(path, "{\"complaint\":\"first\"}").status()).isEqualTo(200);
        Answer second = held.patchJson(path, "{\"complaint\":\"second\"}");
        assertThat(second.status()).isEqualTo(412);
        assertProblem(second, "changed-since-read");
        assertThat(workshop.get(path).json().get("complaint").stringValue()).isEqualTo("first");
    }

    @Test
    void anotherWorkshopFindsNothingAnywhere() {
        String number = open(workshop, "");
        JsonNode mine = workshop.get("/api/v1/cases/" + number).json();
        String path = "/api/v1/cases/" + number;
        assertThat(other.get(path).status()).isEqualTo(404);
        assertThat(other.patchJson(path, "{\"complaint\":\"x\"}").status()).isEqualTo(404);
        assertThat(other.upload(path + "/evidence", "a.json", "{}".getBytes(), null)
                        .status())
                .isEqualTo(404);
        assertThat(other.postJson(path + "/workshops", "{\"workshop\":\"" + UUID.randomUUID() + "\"}")
                        .status())
                .isEqualTo(404);
        assertThat(numbers(other.get("/api/v1/cases?q=" + number))).isEmpty();
        assertThat(numbers(
                        other.get("/api/v1/cases?q=" + mine.get("batterySerial").stringValue())))
                .isEmpty();
        Answer foreign = other.postJson("/api/v1/cases", body(mine, ""));
        assertThat(foreign.status()).isEqualTo(409);
        assertProblem(foreign, "case-with-another-workshop");
        assertThat(foreign.text()).doesNotContain(number);
        assertThat(server.anonymous().get(path).status()).isEqualTo(401);
        // the same words for what is not there and what is not yours
        Answer absent = other.get("/api/v1/cases/" + CaseNumber.of(887_000_000L));
        assertThat(absent.json().get("title")).isEqualTo(other.get(path).json().get("title"));
    }

    @Test
    void anotherWorkshopFindsNoEvidence() {
        String number = open(workshop, "");
        byte[] test = """
                {"kind":"cranking-test","takenAt":"2026-03-04T08:50:00+01:00","minimumVoltageV":10.3,"temperatureC":12}""".getBytes(StandardCharsets.UTF_8);
        Answer kept = workshop.upload("/api/v1/cases/" + number + "/evidence", "c.json", test, "cold start");
        assertThat(kept.status()).as(kept.toString()).isEqualTo(201);
        assertThat(kept.json().get("note").stringValue()).isEqualTo("cold start");
        String path = kept.header("location").orElseThrow();
        Answer again = workshop.upload("/api/v1/cases/" + number + "/evidence", "d.json", test, null);
        assertThat(again.status()).isEqualTo(200);
        assertThat(again.json()).isEqualTo(kept.json());
        assertThat(clerk.get(path).json()).isEqualTo(kept.json());
        assertThat(other.get(path).status()).isEqualTo(404);
    }

    @Test
    void theDistributorLetsAWorkshopIn() {
        String number = open(workshop, "");
        Server.User guest = server.newUser(Role.WORKSHOP);
        String path = "/api/v1/cases/" + number;
        String add = "{\"workshop\":\"" + guest.actor().workshop().orElseThrow() + "\"}";
        assertThat(workshop.postJson(path + "/workshops", add).status()).isEqualTo(404);
        assertThat(clerk.postJson(path + "/workshops", add).status()).isEqualTo(204);
        assertThat(server.as(guest).get(path).json().get("workshops").size()).isEqualTo(2);
        assertThat(numbers(server.as(guest).get("/api/v1/cases"))).containsExactly(number);
        Answer nobody = clerk.postJson(path + "/workshops", "{\"workshop\":\"" + UUID.randomUUID() + "\"}");
        assertThat(nobody.status()).isEqualTo(400);
    }

    @Test
    void anAuditorLooksButDoesNotTouch() {
        String number = open(workshop, "");
        Client auditor = server.as(Role.AUDITOR);
        assertThat(auditor.get("/api/v1/cases/" + number).status()).isEqualTo(200);
        assertThat(auditor.patchJson("/api/v1/cases/" + number, "{}").status()).isEqualTo(403);
        assertThat(auditor.upload("/api/v1/cases/" + number + "/evidence", "a.json", "{}".getBytes(), null)
                        .status())
                .isEqualTo(403);
        assertThat(auditor.postJson(
                                "/api/v1/cases",
                                "{\"batterySerial\":\"" + Pairs.serial() + "\",\"vin\":\"" + Pairs.vin() + "\"}")
                        .status())
                .isEqualTo(403);
    }

    @Test
    void findsBySerialVinAndNumberInAnyTypedForm() {
        String serial = Pairs.serial();
        String vin = Pairs.vin();
        String number = open(workshop, serial, vin, "");
        open(workshop, "");
        for (String q : List.of(
                serial,
                serial.toLowerCase(),
                serial.substring(2, 9),
                vin,
                vin.substring(11),
                vin.substring(9).toLowerCase(),
                number,
                number.toLowerCase().replace("-", ""),
                number.substring(2).replace("-", "%20"))) {
            assertThat(numbers(workshop.get("/api/v1/cases?q=" + q))).as(q).containsExactly(number);
        }
        assertThat(numbers(workshop.get("/api/v1/cases?q=%25"))).isEmpty();
        assertThat(numbers(workshop.get("/api/v1/cases?q=" + serial + "X"))).isEmpty();
    }

    @Test
    void pagesFollowEachOtherNewestFirstWithoutGapOrRepeat() {
        List<String> opened = new ArrayList<>(
                IntStream.range(0, 7).mapToObj(i -> open(workshop, "")).toList());
        java.util.Collections.reverse(opened);
        List<String> seen = new ArrayList<>();
        String cursor = "";
        do {
            Answer page = workshop.get("/api/v1/cases?limit=3" + cursor);
            assertThat(page.status()).as(page.toString()).isEqualTo(200);
            seen.addAll(numbers(page));
            if (seen.size() == 3) {
                open(workshop, ""); // what comes in meanwhile is newer and moves nothing
            }
            JsonNode next = page.json().get("nextCursor");
            cursor = next.isNull() ? null : "&cursor=" + next.stringValue();
        } while (cursor != null);
        assertThat(seen).isEqualTo(opened);
        assertThat(workshop.get("/api/v1/cases?state=none&limit=1")
                        .json()
                        .get("cases")
                        .size())
                .isOne();
        assertThat(numbers(workshop.get("/api/v1/cases?state=submitted"))).isEmpty();
    }

    @ParameterizedTest
    @CsvSource({"limit=0", "limit=201", "limit=many", "cursor=abc", "leaning=left", "cause=gremlins"})
    void aListThatCannotBeIsRefused(String query) {
        Answer answer = workshop.get("/api/v1/cases?" + query);
        assertThat(answer.status()).isEqualTo(400);
        assertThat(answer.header("content-type").orElse("")).startsWith("application/problem+json");
        assertThat(answer.json().get("detail").stringValue()).contains(query.substring(0, query.indexOf('=')));
    }

    @Test
    void historyCrossesCasesAndAWorkshopCountsThoseOfOthersWithoutTheirNumbers() {
        String vin = Pairs.vin();
        String serial = Pairs.serial();
        String mine = open(workshop, serial, vin, "");
        String second = open(workshop, Pairs.serial(), vin, "");
        String foreign = open(other, Pairs.serial(), vin, "");
        String elsewhere = open(other, serial, Pairs.vin(), "");

        JsonNode history = workshop.get("/api/v1/cases/" + mine).json().get("history");
        assertThat(history.get("batteriesInVehicle").findValuesAsString("number"))
                .containsExactly(second);
        assertThat(history.get("batteriesInVehicleElsewhere").intValue()).isOne();
        assertThat(history.get("vehiclesOfBattery").isEmpty()).isTrue();
        assertThat(history.get("vehiclesOfBatteryElsewhere").intValue()).isOne();
        assertThat(history.toString()).doesNotContain(foreign, elsewhere);

        JsonNode all = clerk.get("/api/v1/cases/" + mine).json().get("history");
        assertThat(all.get("batteriesInVehicle").findValuesAsString("number")).containsExactly(foreign, second);
        assertThat(all.get("vehiclesOfBattery").findValuesAsString("number")).containsExactly(elsewhere);
    }

    @Test
    void whatIsNoNumberIsNotFound() {
        assertThat(workshop.get("/api/v1/cases/V-000-001-7").status()).isEqualTo(404);
        assertThat(workshop.get("/api/v1/cases/nonsense").status()).isEqualTo(404);
        assertThat(workshop.get("/api/v1/evidence/nonsense").status()).isEqualTo(404);
        assertThat(workshop.get("/api/v1/evidence/" + UUID.randomUUID()).status())
                .isEqualTo(404);
    }

    private static String open(Client client, String more) {
        return open(client, Pairs.serial(), Pairs.vin(), more);
    }

    private static String open(Client client, String serial, String vin, String more) {
        Answer answer = client.postJson(
                "/api/v1/cases", "{\"batterySerial\":\"" + serial + "\",\"vin\":\"" + vin + "\"" + more + "}");
        assertThat(answer.status()).as(answer.toString()).isEqualTo(201);
        return answer.json().get("number").stringValue();
    }

    private static String body(JsonNode known, String more) {
        return "{\"batterySerial\":\"" + known.get("batterySerial").stringValue() + "\",\"vin\":\""
                + known.get("vin").stringValue() + "\"" + more + "}";
    }

    private List<String> acts(String number) {
        return trail.of(number).stream().map(TrailEntry::act).toList();
    }

    private static List<String> numbers(Answer list) {
        assertThat(list.status()).as(list.toString()).isEqualTo(200);
        return list.json().get("cases").findValuesAsString("number");
    }

    private static List<String> fields(Answer problem) {
        assertThat(problem.json().has("errors")).as(problem.toString()).isTrue();
        return problem.json().get("errors").findValuesAsString("field");
    }

    private static void assertProblem(Answer answer, String slug) {
        assertThat(answer.header("content-type").orElse("")).startsWith("application/problem+json");
        assertThat(answer.json().get("type").stringValue()).isEqualTo("/manual/problems#" + slug);
        assertThat(answer.json().get("status").intValue()).isEqualTo(answer.status());
    }
}
