package org.voltdocket;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeSet;
import java.util.UUID;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.voltdocket.RoutesTest.Row;
import org.voltdocket.dossier.Pairs;
import org.voltdocket.kernel.CaseNumber;
import org.voltdocket.kernel.Role;
import org.voltdocket.support.Answer;
import org.voltdocket.support.Client;
import org.voltdocket.support.Server;
import org.voltdocket.support.Server.User;
import org.voltdocket.support.ServerTest;

/**
 * Every route of {@code routes.txt}, as every role, with the ids of another workshop: the answer is the one for ids that do not
 * exist, so that nobody learns that they do. Where a path has several ids, each is replaced alone, too.
 */
@ServerTest
class ForeignIdsTest {

    private static final Pattern VARIABLE = Pattern.compile("\\{[*a-zA-Z0-9-]+}");

    /** Ids that belong to a workshop; other variables of a path name a place in it, a page or an action. */
    private static final List<String> IDS =
            List.of("{number}", "{id}", "{*serial}", "{serial}", "{vin}", "{claim}", "{returned}", "{pallet}", "{lot}");

    @Autowired
    private Server server;

    @Test
    void idsOfAnotherWorkshopAreAnsweredLikeIdsThatDoNotExist() {
        User caller = server.newUser(Role.WORKSHOP);
        Map<String, String> own = fixture(caller);
        Map<String, String> foreign = fixture(server.newUser(Role.WORKSHOP));
        List<String> wrong = new ArrayList<>();
        int requests = 0;
        Client pages = server.browser(caller);
        for (Row row : RoutesTest.table()) {
            for (List<String> replaced : combinations(row.path())) {
                Client client = row.path().startsWith("/api/") ? server.as(caller) : pages;
                Map<String, String> absent = absent();
                Answer strange = RoutesTest.call(client, row, with(row, own, foreign, replaced));
                Answer none = RoutesTest.call(client, row, with(row, own, absent, replaced));
                requests++;
                if (strange.status() != none.status()
                        || !List.of(403, 404, 412).contains(strange.status())
                        || !text(strange, foreign).equals(text(none, absent))) {
                    wrong.add(
                            row.route() + " with another's " + replaced + ": " + strange + "\n  but of none: " + none);
                }
            }
        }
        assertThat(wrong).isEmpty();
        assertThat(requests).as("routes with an id").isGreaterThan(80);
    }

    /** An id of one case below the number of another one; the distributor's people see both. */
    @Test
    void anIdOfAnotherCaseIsNotFoundBelowACase() {
        Map<String, String> first = fixture(server.newUser(Role.WORKSHOP));
        Map<String, String> second = fixture(server.newUser(Role.WORKSHOP));
        List<String> wrong = new ArrayList<>();
        for (Role role : List.of(Role.CLERK, Role.AUDITOR, Role.ADMIN)) {
            Client pages = server.browser(server.user(role));
            for (Row row : RoutesTest.table()) {
                List<String> ids = ids(row.path());
                if (ids.size() > 1 && ids.contains("{number}")) {
                    Client client = row.path().startsWith("/api/") ? server.as(role) : pages;
                    List<String> others =
                            ids.stream().filter(id -> !id.equals("{number}")).toList();
                    Answer answer = RoutesTest.call(client, row, with(row, first, second, others));
                    if (answer.status() != 404 && answer.status() != 403) {
                        wrong.add(row.route() + " as " + role + ": " + answer);
                    }
                }
            }
        }
        assertThat(wrong).isEmpty();
    }

    private static List<String> ids(String path) {
        List<String> ids = new ArrayList<>();
        Matcher found = VARIABLE.matcher(path);
        while (found.find()) {
            if (IDS.contains(found.group())) {
                ids.add(found.group());
            }
        }
        return ids;
    }

    /** All ids of the path together, and each alone. */
    private static List<List<String>> combinations(String path) {
        List<String> ids = ids(path);
        List<List<String>> all = new ArrayList<>();
        if (!ids.isEmpty()) {
            all.add(ids);
        }
        if (ids.size() > 1) {
            ids.forEach(id -> all.add(List.of(id)));
        }
        return all;
    }

    /** Names of all variables of the path; those that name no row of the fixture name nothing. */
    private static Map<String, String> with(
            Row row, Map<String, String> own, Map<String, String> other, List<String> replaced) {
        Map<String, String> names = new LinkedHashMap<>(own);
        replaced.forEach(id -> names.put(id, other.get(id)));
        Matcher variables = VARIABLE.matcher(row.path());
        while (variables.find()) {
            names.putIfAbsent(variables.group(), "none-such");
        }
        return names;
    }

    /** A case with a recording and a decided claim, and the names that stand for it in the table. */
    private Map<String, String> fixture(User workshop) {
        Client api = server.as(workshop);
        String serial = Pairs.serial();
        String vin = Pairs.vin();
        Answer opened = api.postJson("/api/v1/cases", "{\"batterySerial\":\"" + serial + "\",\"vin\":\"" + vin + "\"}");
        assertThat(opened.status()).as(opened.toString()).isEqualTo(201);
        String number = opened.json().get("number").asString();
        String at = "/api/v1/cases/" + number;
        byte[] drive = RoutesTest.recording().getBytes(StandardCharsets.UTF_8);
        Answer kept = api.upload(at + "/evidence", "drive.csv", drive, null);
        assertThat(kept.status()).as(kept.toString()).isEqualTo(201);
        Client clerk = server.as(server.newUser(Role.CLERK));
        for (Answer step : List.of(
                api.postJson(at + "/claim", "{\"amount\":\"99.00\",\"currency\":\"EUR\"}"),
                api.postJson(at + "/claim/submit", "{}"),
                clerk.postJson(at + "/claim/take", "{}"),
                clerk.postJson(
                        at + "/claim/decline",
                        "{\"reason\":\"The evidence does not show a defect of the battery at all.\"}"))) {
            assertThat(step.status()).as(step.toString()).isBetween(200, 201);
        }
        Map<String, String> names = names(number, kept.json().get("id").asString(), serial, vin);
        names.put("{workshop}", workshop.actor().workshop().orElseThrow().toString());
        return names;
    }

    private static Map<String, String> absent() {
        String number =
                CaseNumber.of(880_000_000L + (System.nanoTime() & 0xFFFFF)).value();
        Map<String, String> names = names(number, UUID.randomUUID().toString(), Pairs.serial(), Pairs.vin());
        names.put("{workshop}", UUID.randomUUID().toString());
        return names;
    }

    private static Map<String, String> names(String number, String evidence, String serial, String vin) {
        Map<String, String> names = new LinkedHashMap<>();
        names.put("{number}", number);
        names.put("{id}", evidence);
        names.put("{*serial}", "/" + serial);
        names.put("{serial}", serial);
        names.put("{vin}", vin);
        names.put("{action}", "approve");
        names.put("{code}", "NONE-SUCH");
        names.put("{topic}", "causes");
        names.put("{list}", "R-00000");
        names.put("{position}", "1");
        names.put("{place}", "1");
        names.put("{currency}", "ISK");
        names.put("{page}", "problems");
        names.put("{name}", "battery-test.json");
        names.put("{sha256}", "0".repeat(64));
        for (String id : List.of("{claim}", "{returned}", "{pallet}", "{lot}")) {
            names.put(id, UUID.randomUUID().toString());
        }
        return names;
    }

    /** The body without what differs from request to request: the ids, and the token of the session. */
    private static String text(Answer answer, Map<String, String> names) {
        String text = answer.text();
        for (String value : new TreeSet<>(names.values())) {
            if (value.length() > 6) {
                text = text.replace(value, "ID");
            }
        }
        return text.replaceAll("(name=\"_csrf\"[^>]*value=|name=\"csrf-token\" content=)\"[^\"]*\"", "$1")
                .replaceAll("/?ID", "ID");
    }
}
