package org.voltdocket;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.InputStream;
import java.net.http.HttpRequest.BodyPublishers;
import java.nio.charset.StandardCharsets;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.UUID;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.web.bind.annotation.RequestMethod;
import org.springframework.web.servlet.mvc.method.annotation.RequestMappingHandlerMapping;
import org.voltdocket.kernel.Actor;
import org.voltdocket.kernel.BatterySerial;
import org.voltdocket.kernel.Role;
import org.voltdocket.returned.lot.Lot;
import org.voltdocket.returned.lot.LotService;
import org.voltdocket.returned.pallet.PalletDeliveryNote;
import org.voltdocket.returned.pallet.PalletService;
import org.voltdocket.returned.sampling.InspectionLevel;
import org.voltdocket.returned.service.ReturnService;
import org.voltdocket.support.Answer;
import org.voltdocket.support.Client;
import org.voltdocket.support.Server;
import org.voltdocket.support.Server.User;
import org.voltdocket.support.ServerTest;

/** Calls every route as everybody and compares with the table {@code routes.txt}. */
@ServerTest
class RoutesTest {

    private static final List<String> WHO = List.of("nobody", "own", "other", "clerk", "auditor", "admin");

    @Autowired
    private Server server;

    @Autowired
    private ReturnService returns;

    @Autowired
    private PalletService pallets;

    @Autowired
    private LotService lots;

    @Autowired
    private RequestMappingHandlerMapping requestMappingHandlerMapping;

    /** A line of the table. */
    record Row(String method, String path, String body, List<Integer> expected) {

        String route() {
            return method + " " + path;
        }

        static Row of(String line) {
            String[] cells = Arrays.stream(line.split("\\|")).map(String::strip).toArray(String[]::new);
            assertThat(cells).as(line).hasSize(2 + WHO.size());
            String[] route = cells[0].split(" ");
            List<Integer> expected =
                    Arrays.stream(cells).skip(2).map(Integer::parseInt).toList();
            return new Row(route[0], route[1], cells[1], expected);
        }
    }

    @Test
    void everyRouteHasARow() {
        Set<String> listed = new LinkedHashSet<>();
        table().forEach(row -> listed.add(row.route()));
        assertThat(listed).containsExactlyInAnyOrderElementsOf(routes());
    }

    @Test
    void everyRouteAnswersEachRoleAsTheTableSays() {
        Map<String, User> users = users();
        Map<String, String> names = fixture(users.get("own"));
        Map<String, Client> pages = new LinkedHashMap<>();
        List<String> wrong = new ArrayList<>();
        for (Row row : table()) {
            for (int i = 0; i < WHO.size(); i++) {
                String who = WHO.get(i);
                Client client = client(row, users.get(who), who, pages);
                Answer answer = call(client, row, names);
                if (answer.status() != row.expected().get(i)) {
                    String text = answer.text();
                    wrong.add(row.route() + " as " + who + ": expected "
                            + row.expected().get(i) + ", was " + answer.status() + " "
                            + text.substring(0, Math.min(300, text.length())));
                }
            }
        }
        assertThat(wrong).isEmpty();
    }

    private Set<String> routes() {
        Set<String> routes = new TreeSet<>();
        requestMappingHandlerMapping.getHandlerMethods().forEach((info, handler) -> {
            if (!handler.getBeanType().getPackageName().startsWith("org.voltdocket")) {
                return;
            }
            Set<RequestMethod> methods = info.getMethodsCondition().getMethods();
            for (String path : info.getPatternValues()) {
                if (methods.isEmpty()) {
                    routes.add("ANY " + path);
                }
                methods.forEach(method -> routes.add(method + " " + path));
            }
        });
        return routes;
    }

    static List<Row> table() {
        try (InputStream in = RoutesTest.class.getResourceAsStream("/routes.txt")) {
            return new String(in.readAllBytes(), StandardCharsets.UTF_8)
                    .lines()
                    .filter(line -> !line.isBlank() && !line.startsWith("#"))
                    .map(Row::of)
                    .toList();
        } catch (IOException e) {
            throw new AssertionError(e);
        }
    }

    private Map<String, User> users() {
        Map<String, User> users = new LinkedHashMap<>();
        users.put("own", server.newUser(Role.WORKSHOP));
        users.put("other", server.newUser(Role.WORKSHOP));
        users.put("clerk", server.newUser(Role.CLERK));
        users.put("auditor", server.newUser(Role.AUDITOR));
        users.put("admin", server.newUser(Role.ADMIN));
        return users;
    }

    /** One case with one recording, of the workshop {@code own}; and the names that stand for it in the table. */
    private Map<String, String> fixture(User own) {
        String serial = "ROUTES-" + System.nanoTime();
        String vin = "WP0ZZZ99ZTS392124";
        Client api = server.as(own);
        Answer opened = api.postJson("/api/v1/cases", "{\"batterySerial\":\"" + serial + "\",\"vin\":\"" + vin + "\"}");
        assertThat(opened.status()).as(opened.toString()).isEqualTo(201);
        String number = opened.json().get("number").asString();
        Answer kept = api.upload(
                "/api/v1/cases/" + number + "/evidence",
                "drive.csv",
                recording().getBytes(StandardCharsets.UTF_8),
                null);
        assertThat(kept.status()).as(kept.toString()).isEqualTo(201);
        Map<String, String> names = new LinkedHashMap<>();
        names.put("{number}", number);
        names.put("{id}", kept.json().get("id").asString());
        names.put("{*serial}", "/" + serial);
        names.put("{serial}", serial);
        names.put("{vin}", vin);
        names.put("{action}", "submit");
        names.put("{code}", "NONE-SUCH");
        names.put("{secret}", "none");
        names.put("{mark}", "none");
        names.put("{topic}", "causes");
        names.put("{list}", "R-00000");
        names.put("{position}", "1");
        names.put("{place}", "1");
        names.put("{link}", new UUID(0, 3).toString());
        names.put("{secret}", "none-such");
        names.put("{upload}", new UUID(0, 2).toString());
        names.put("{kind}", "battery-test");
        names.put("{currency}", "ISK");
        names.put("{page}", "problems");
        names.put("{name}", "battery-test.json");
        names.put("{sha256}", "0".repeat(64));
        names.put("{claim}", new UUID(0, 1).toString());
        returned(own, serial, names);
        names.put("{workshop}", own.actor().workshop().orElseThrow().toString());
        return names;
    }

    /** The battery of the case and another of the workshop came back, on a pallet that lists neither, and were drawn as a lot. */
    private void returned(User own, String serial, Map<String, String> names) {
        Actor auditor = server.user(Role.AUDITOR).actor();
        String second = serial + "-B";
        server.as(own)
                .postJson("/api/v1/cases", "{\"batterySerial\":\"" + second + "\",\"vin\":\"1M8GDM9AXKP042788\"}");
        names.put(
                "{returned}",
                returns.arrive(auditor, BatterySerial.parse(serial), Optional.empty())
                        .battery()
                        .id()
                        .toString());
        returns.arrive(auditor, BatterySerial.parse(second), Optional.empty());
        PalletDeliveryNote note =
                PalletDeliveryNote.parse(serial + "/P", "Somebody", "", serial + "-X", LocalDate.now());
        names.put("{pallet}", pallets.note(auditor, note).id().toString());
        String workshop = own.actor().workshop().orElseThrow().toString();
        Lot.Request wish = new Lot.Request(Lot.Scope.WORKSHOP, workshop, InspectionLevel.II, 2.5, false);
        names.put("{lot}", lots.draw(auditor, wish).id().toString());
    }

    /** Two minutes at rest, then two with the engine running. */
    static String recording() {
        StringBuilder csv = new StringBuilder("time_s,measured_v,engine_rpm\n");
        for (int s = 0; s < 240; s++) {
            csv.append(s).append(s < 120 ? ",12.61,0\n" : ",14.20,850\n");
        }
        return csv.toString();
    }

    private Client client(Row row, User user, String who, Map<String, Client> pages) {
        boolean api = row.path().startsWith("/api/");
        if (user == null) {
            return api ? server.anonymous() : server.anonymous().header("Accept", "text/html");
        }
        return api ? server.as(user) : pages.computeIfAbsent(who, name -> server.browser(user));
    }

    static Answer call(Client client, Row row, Map<String, String> names) {
        String path = named(row.path().replace("/{*serial}", "{*serial}"), names);
        String[] body = named(row.body(), names).split(" ", 2);
        String method = row.method().equals("ANY") ? "GET" : row.method();
        return switch (body[0]) {
            case "none" -> client.send(method, path, BodyPublishers.noBody(), null);
            case "script" -> client.header("Accept", "application/json").get(path);
            case "json" -> client.send(method, path, BodyPublishers.ofString(body[1]), "application/json");
            case "patch" -> client.patchJson(path, body[1]);
            case "form" -> client.postForm(path, form(body.length > 1 ? body[1] : ""));
            case "file" ->
                client.header("X-CSRF-TOKEN", client.csrf())
                        .upload(path, "drive.csv", recording().getBytes(StandardCharsets.UTF_8), null);
            default -> throw new AssertionError("no such body: " + row.body());
        };
    }

    private static Map<String, String> form(String text) {
        Map<String, String> fields = new LinkedHashMap<>();
        for (String pair : text.isBlank() ? new String[0] : text.split("&")) {
            String[] parts = pair.split("=", 2);
            fields.put(parts[0], Optional.of(parts[1]).orElse(""));
        }
        return fields;
    }

    static String named(String text, Map<String, String> names) {
        String result = text;
        for (Map.Entry<String, String> name : names.entrySet()) {
            result = result.replace(name.getKey(), name.getValue());
        }
        return result;
    }
}
