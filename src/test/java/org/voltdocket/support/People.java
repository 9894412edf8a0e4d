package org.voltdocket.support;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.function.BooleanSupplier;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.voltdocket.assessment.edition.EditionTexts;
import org.voltdocket.dossier.Pairs;
import tools.jackson.databind.JsonNode;

/** The people of a {@link Node}'s database: administrator, a workshop and a clerk, with tokens that every node takes. */
public final class People {

    private static final Duration PATIENCE = Duration.ofSeconds(120);
    private static final AtomicInteger FILES = new AtomicInteger();

    private record Caller(Node node, String token) {}

    private final Map<Caller, Client> clients = new ConcurrentHashMap<>();
    private final String adminToken;
    private final String workshopToken;
    private final String clerkToken;

    /** Makes the workshop's and the clerk's accounts, and a token for each. */
    public People(Node node) {
        Client pages = pages(node, Node.ADMIN);
        pages.postForm("/accounts/workshops", Map.of("workshop", "Faulty Towers Garage"));
        Matcher id = Pattern.compile("<option value=\"([0-9a-f-]{36})\"")
                .matcher(pages.get("/accounts").text());
        assertThat(id.find()).isTrue();
        account(pages, "shop", "WORKSHOP", id.group(1));
        account(pages, "desk", "CLERK", "");
        this.adminToken = token(node, Node.ADMIN);
        this.workshopToken = token(node, "shop");
        this.clerkToken = token(node, "desk");
    }

    public Client admin(Node node) {
        return as(node, adminToken);
    }

    public Client workshop(Node node) {
        return as(node, workshopToken);
    }

    public Client clerk(Node node) {
        return as(node, clerkToken);
    }

    /** Pages in a session of that account; forms may be sent with its CSRF token. */
    public static Client pages(Node node, String account) {
        Client pages = node.client().header("Accept", "text/html");
        pages.postForm("/sign-in", Map.of("username", account, "password", Server.PASSWORD));
        return pages.header("X-CSRF-TOKEN", pages.csrf());
    }

    /** A new case of the workshop. */
    public String open(Node node) {
        Answer answer = workshop(node)
                .postJson(
                        "/api/v1/cases",
                        "{\"batterySerial\":\"" + Pairs.serial() + "\",\"vin\":\"" + Pairs.vin() + "\"}");
        assertThat(answer.status()).as(answer.toString()).isEqualTo(201);
        return answer.json().get("number").stringValue();
    }

    /** A new case with a battery test and a claim that the clerk has taken. */
    public String claimed(Node node) {
        String number = open(node);
        assertThat(workshop(node)
                        .upload(evidence(number), "b.json", battery(), null)
                        .status())
                .isEqualTo(201);
        claim(node, number);
        return number;
    }

    /** Claims for a case, hands the claim in and takes it. */
    public void claim(Node node, String number) {
        String claim = "/api/v1/cases/" + number + "/claim";
        assertThat(workshop(node)
                        .postJson(claim, "{\"amount\":\"99.00\",\"currency\":\"EUR\"}")
                        .status())
                .isEqualTo(201);
        assertThat(workshop(node).postJson(claim + "/submit", "{}").status()).isEqualTo(200);
        assertThat(clerk(node).postJson(claim + "/take", "{}").status()).isEqualTo(200);
    }

    /** The clerk declines the claim of a case. */
    public Answer decline(Node node, String number) {
        return clerk(node)
                .postJson(
                        "/api/v1/cases/" + number + "/claim/decline",
                        "{\"reason\":\"The battery passed every test, and the vehicle is the likelier cause here.\"}");
    }

    /** Uploads an edition of that name that judges every case otherwise, and runs it over the archive for good. */
    public String startRun(Node node, String edition) {
        String page = pages(node, Node.ADMIN)
                .upload("/editions", "e.yaml", EditionTexts.bytes(EditionTexts.tilted(edition)), null)
                .header("location")
                .orElseThrow();
        assertThat(page).contains("/editions/");
        return admin(node)
                .postJson("/api/v1/reassessments", "{\"mode\":\"final\",\"rulebook\":\"" + edition + "\"}")
                .json()
                .get("id")
                .stringValue();
    }

    /** How a run over the archive stands. */
    public JsonNode run(Node node, String run) {
        return admin(node).get("/api/v1/reassessments/" + run).json();
    }

    public static String evidence(String number) {
        return "/api/v1/cases/" + number + "/evidence";
    }

    /** A battery test of a sound battery, other bytes each time. */
    public static byte[] battery() {
        return ("{\"kind\":\"battery-test\",\"takenAt\":\"2026-03-04T08:40:00+01:00\",\"restVoltageV\":12.71,"
                        + "\"temperatureC\":18,\"note\":\"" + FILES.incrementAndGet() + "\"}")
                .getBytes(StandardCharsets.UTF_8);
    }

    /** A drive at one sample a second, other bytes each time. */
    public static byte[] drive(int rows) {
        int own = FILES.incrementAndGet();
        StringBuilder csv = new StringBuilder("time_s,measured_v,engine_rpm\n");
        for (int i = own; i < own + rows; i++) {
            csv.append(i).append(i < own + 120 ? ",12.61,0\n" : ",14.2" + i % 7 + ",850\n");
        }
        return csv.toString().getBytes(StandardCharsets.UTF_8);
    }

    /** Waits for something that takes its time in another process. */
    public static void await(BooleanSupplier reached) throws InterruptedException {
        long until = System.nanoTime() + PATIENCE.toNanos();
        while (!reached.getAsBoolean()) {
            assertThat(System.nanoTime()).as("waited in vain").isLessThan(until);
            Thread.sleep(20);
        }
    }

    private Client as(Node node, String token) {
        return clients.computeIfAbsent(
                new Caller(node, token), one -> node.client().header("Authorization", "Bearer " + token));
    }

    private static String token(Node node, String user) {
        Answer made = node.client().basic(user, Server.PASSWORD).postJson("/api/v1/tokens", "{\"name\":\"faults\"}");
        assertThat(made.status()).as(made.toString()).isEqualTo(201);
        return made.json().get("token").stringValue();
    }

    /** Invites somebody from the page of an administrator, and sets the password by the link. */
    public static void account(Client pages, String name, String role, String of) {
        Answer invited = pages.postForm("/accounts", Map.of("name", name, "role", role, "of", of));
        Matcher link = Pattern.compile("(/invitation/[\\w-]+)<").matcher(invited.text());
        assertThat(link.find()).as(invited.toString()).isTrue();
        Answer set = pages.postForm(link.group(1), Map.of("password", Server.PASSWORD));
        assertThat(set.status()).as(set.toString()).isEqualTo(302);
    }
}
