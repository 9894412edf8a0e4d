package org.voltdocket.recovery;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import com.lowagie.text.pdf.PdfReader;
import com.lowagie.text.pdf.parser.PdfTextExtractor;
import de.siegmar.fastcsv.reader.CsvReader;
import de.siegmar.fastcsv.reader.NamedCsvRecord;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.concurrent.Callable;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.jdbc.core.JdbcTemplate;
import org.voltdocket.catalogue.CatalogueService;
import org.voltdocket.dossier.Pairs;
import org.voltdocket.kernel.Role;
import org.voltdocket.kernel.Sha256;
import org.voltdocket.support.Answer;
import org.voltdocket.support.Client;
import org.voltdocket.support.Server;
import org.voltdocket.support.ServerTest;
import org.voltdocket.trail.Trail;
import tools.jackson.databind.JsonNode;

/** Approved claims become a frozen list, a claim is in one live list at most, and what came back adds up. */
@ServerTest
class SupplierRecoveryTest {

    private static final String REASON =
            "The posts show a cell that no longer holds; the test was repeated after a charge.";
    private static int counter;

    @Autowired
    private Server server;

    @Autowired
    private RecoveryService recoveries;

    @Autowired
    private CatalogueService catalogue;

    @Autowired
    private Trail trail;

    @Autowired
    private JdbcTemplate db;

    private final String supplier = "S" + System.nanoTime() % 1_000_000_000L + "X" + counter++;
    private final String today = LocalDate.now(ZoneOffset.UTC).toString();
    private Server.User workshop;

    @BeforeEach
    void catalogue() {
        workshop = server.newUser(Role.WORKSHOP);
        take("supplier,name\n" + supplier + ",Invented Works\n");
        take("type,name,supplier,chemistry,capacity_ah\n" + supplier + ",Invented 70," + supplier + ",agm,70\n");
        take("type,batch,first_serial,last_serial,produced_on,count\n" + supplier + ",B1," + supplier + "-0001,"
                + supplier + "-0099,2025-03-10,99\n");
    }

    @Test
    void approvedClaimsBecomeAFrozenListAndWhatCameBackAddsUp() throws IOException {
        String first = decided("-0001", "100.00", "approve");
        String second = decided("-0002", "50.50", "approve");
        String third = decided("-0003", "80.00", "approve");
        decided("-0004", "70.00", "goodwill");
        decided("-0005", "60.00", "decline");
        decided("-0500", "40.00", "approve"); // in no range: no supplier
        assertThat(money().waiting()).hasToString("230.50 EUR");

        JsonNode list = made(Set.of());
        String number = list.get("number").asString();
        assertThat(list.get("total").asString()).isEqualTo("230.50");
        assertThat(list.get("claims"))
                .extracting(one -> one.get("case").asString())
                .containsExactly(first, second, third);
        assertThat(money().waitingClaims()).isZero();
        assertThat(money().sent()).hasToString("230.50 EUR");

        answered(number, "{\"position\":1,\"outcome\":\"credited\",\"on\":\"" + today + "\"}", 200);
        answered(
                number, "{\"position\":2,\"outcome\":\"credited\",\"amount\":\"30.50\",\"on\":\"" + today + "\"}", 200);
        answered(
                number,
                "{\"position\":3,\"outcome\":\"refused\",\"on\":\"" + today + "\",\"reason\":\"opened case\"}",
                200);
        SupplierBalance after = money();
        assertThat(after.sent()).hasToString("0.00 EUR");
        assertThat(after.credited()).hasToString("130.50 EUR");
        assertThat(after.refused()).hasToString("100.00 EUR");

        // a correction is appended; the last one counts
        answered(
                number,
                "{\"position\":3,\"outcome\":\"credited\",\"on\":\"" + today + "\",\"reason\":\"they looked again\"}",
                200);
        assertThat(money().refused()).hasToString("20.00 EUR");
        SupplierRecovery now = recoveries.of(server.user(Role.AUDITOR).actor(), number);
        assertThat(now.lines().get(2).answers()).hasSize(2);
        assertThat(now.credited()).hasToString("210.50 EUR");
        assertThat(trail.of("recovery/" + number))
                .hasSize(5)
                .last()
                .satisfies(entry -> assertThat(entry.details())
                        .containsEntry(
                                "recovery.answer",
                                Map.of("old", "refused, " + today, "new", "credited 80.00 EUR, " + today)));
        assertThatThrownBy(() -> db.update("update recovery_claim set amount = 1 where recovery_id = ?", now.id()))
                .hasMessageContaining("frozen");
        assertThatThrownBy(() -> db.update("delete from recovery_answer where recovery_id = ?", now.id()))
                .hasStackTraceContaining("permission denied");
    }

    @Test
    void pdfAndCsvSayTheSameAndKeepTheirDigests() throws IOException {
        String first = decided("-0011", "100.00", "approve");
        decided("-0012", "29.90", "approve");
        JsonNode list = made(Set.of());
        String number = list.get("number").asString();
        Client clerk = server.as(Role.CLERK);
        byte[] pdf = clerk.get("/api/v1/recoveries/" + number + "/list.pdf").body();
        byte[] csv = clerk.get("/api/v1/recoveries/" + number + "/list.csv").body();
        assertThat(Sha256.of(pdf).hex()).isEqualTo(list.get("pdfSha256").asString());
        assertThat(Sha256.of(csv).hex()).isEqualTo(list.get("csvSha256").asString());
        List<NamedCsvRecord> rows;
        try (CsvReader<NamedCsvRecord> reader =
                CsvReader.builder().ofNamedCsvRecord(new String(csv, StandardCharsets.UTF_8))) {
            rows = reader.stream().toList();
        }
        assertThat(rows).hasSize(2);
        assertThat(rows.get(0).getField("case")).isEqualTo(first);
        assertThat(rows.get(0).getField("battery_serial")).isEqualTo(supplier + "-0011");
        assertThat(rows.get(1).getField("amount")).isEqualTo("29.90");
        String text = text(pdf).replaceAll("\\s+", "");
        for (NamedCsvRecord row : rows) {
            assertThat(text)
                    .contains(row.getField("case"))
                    .contains(row.getField("battery_serial"))
                    .contains(row.getField("amount"));
        }
        assertThat(text)
                .contains("129.90EUR")
                .contains(number)
                .contains(Sha256.of(csv).hex());
    }

    @Test
    void aClaimIsInOneLiveListAtMostEvenWhenTwoClerksAreEquallyFast() throws Exception {
        decided("-0021", "10.00", "approve");
        decided("-0022", "20.00", "approve");
        ExecutorService pool = Executors.newFixedThreadPool(2);
        Callable<Integer> make = () -> makeCall(Set.of()).status();
        List<Future<Integer>> both = pool.invokeAll(List.of(make, make));
        pool.shutdown();
        assertThat(List.of(both.get(0).get(), both.get(1).get())).containsExactlyInAnyOrder(201, 409);
        assertThat(makeCall(Set.of()).json().get("type").asString()).endsWith("#recovery-conflict");
    }

    @Test
    void aWithdrawnListSetsItsClaimsFreeAndAnAnsweredOneStays() {
        decided("-0031", "10.00", "approve");
        String number = made(Set.of()).get("number").asString();
        Client clerk = server.as(Role.CLERK);
        assertThat(clerk.postJson("/api/v1/recoveries/" + number + "/withdraw", "{}")
                        .status())
                .isEqualTo(400);
        assertThat(clerk.postJson("/api/v1/recoveries/" + number + "/withdraw", "{\"reason\":\"wrong supplier\"}")
                        .status())
                .isEqualTo(200);
        assertThat(money().waiting()).hasToString("10.00 EUR");
        answered(number, "{\"position\":1,\"outcome\":\"credited\",\"on\":\"" + today + "\"}", 409);
        String again = made(Set.of()).get("number").asString();
        answered(again, "{\"position\":1,\"outcome\":\"credited\",\"on\":\"" + today + "\"}", 200);
        assertThat(clerk.postJson("/api/v1/recoveries/" + again + "/withdraw", "{\"reason\":\"late\"}")
                        .status())
                .isEqualTo(409);
    }

    @Test
    void answersThatCannotBeRightAreNamed() {
        decided("-0041", "10.00", "approve");
        String number = made(Set.of()).get("number").asString();
        for (String wrong : List.of(
                "{\"position\":2,\"outcome\":\"credited\",\"on\":\"" + today + "\"}",
                "{\"position\":1,\"outcome\":\"maybe\",\"on\":\"" + today + "\"}",
                "{\"position\":1,\"outcome\":\"refused\",\"on\":\"" + today + "\"}",
                "{\"position\":1,\"outcome\":\"credited\",\"on\":\"2999-01-01\"}",
                "{\"position\":1,\"outcome\":\"credited\",\"on\":\"2001-01-01\"}",
                "{\"position\":1,\"outcome\":\"credited\",\"amount\":\"10.01\",\"on\":\"" + today + "\"}",
                "{\"position\":1,\"outcome\":\"credited\",\"amount\":\"-1\",\"on\":\"" + today + "\"}")) {
            answered(number, wrong, 400);
        }
        assertThat(money().sent()).hasToString("10.00 EUR");
    }

    @Test
    void thePagesLeadFromOpenMoneyToTheAnswer() {
        String number = decided("-0051", "99.00", "approve");
        Client clerk = server.browser(server.user(Role.CLERK));
        assertThat(clerk.get("/recoveries").text()).contains(number).contains("99.00 EUR");
        Answer made = clerk.postForm("/recoveries", Map.of("supplier", supplier, "currency", "EUR"));
        String list = made.header("location").orElseThrow().replaceAll("^.*(/recoveries/.*)$", "$1");
        assertThat(clerk.get(list).text()).contains(supplier + "-0051").contains("no answer yet");
        Answer refused = clerk.postForm(list + "/answers", Map.of("position", "1", "outcome", "refused", "on", today));
        assertThat(refused.status()).isEqualTo(400);
        assertThat(refused.text()).contains("a refusal or a correction needs a reason");
        clerk.postForm(
                list + "/answers", Map.of("position", "1", "outcome", "credited", "amount", "90,50", "on", today));
        assertThat(clerk.get(list).text()).contains("credited 90.50 EUR on " + today);
    }

    private SupplierBalance money() {
        return recoveries.money(server.user(Role.CLERK).actor()).stream()
                .filter(one -> one.supplier().equals(supplier))
                .findFirst()
                .orElseThrow();
    }

    private JsonNode made(Set<String> claims) {
        Answer answer = makeCall(claims);
        assertThat(answer.status()).as(answer.toString()).isEqualTo(201);
        return answer.json();
    }

    private Answer makeCall(Set<String> claims) {
        return server.as(Role.CLERK)
                .postJson(
                        "/api/v1/recoveries",
                        "{\"supplier\":\"" + supplier + "\",\"currency\":\"EUR\",\"claims\":" + claims + "}");
    }

    private void answered(String number, String body, int status) {
        Answer answer = server.as(Role.CLERK).postJson("/api/v1/recoveries/" + number + "/answers", body);
        assertThat(answer.status()).as(body + " " + answer).isEqualTo(status);
    }

    /** A case with one test, whose claim is handed in and decided. */
    private String decided(String end, String amount, String decision) {
        Client api = server.as(workshop);
        String number = api.postJson(
                        "/api/v1/cases",
                        "{\"batterySerial\":\"" + supplier + end + "\",\"vin\":\"" + Pairs.vin() + "\"}")
                .json()
                .get("number")
                .asString();
        String test = "{\"kind\":\"battery-test\",\"takenAt\":\"2026-03-04T08:40:00+01:00\",\"restVoltageV\":12.1,"
                + "\"temperatureC\":18,\"note\":\"" + supplier + end + "\"}";
        api.upload("/api/v1/cases/" + number + "/evidence", "t.json", test.getBytes(StandardCharsets.UTF_8), null);
        api.postJson("/api/v1/cases/" + number + "/claim", "{\"amount\":\"" + amount + "\",\"currency\":\"EUR\"}");
        api.postJson("/api/v1/cases/" + number + "/claim/submit", "{}");
        Client clerk = server.as(Role.CLERK);
        clerk.postJson("/api/v1/cases/" + number + "/claim/take", "{}");
        Answer done =
                clerk.postJson("/api/v1/cases/" + number + "/claim/" + decision, "{\"reason\":\"" + REASON + "\"}");
        assertThat(done.status()).as(done.toString()).isEqualTo(200);
        return number;
    }

    private static String text(byte[] pdf) throws IOException {
        PdfReader reader = new PdfReader(pdf);
        StringBuilder all = new StringBuilder();
        for (int page = 1; page <= reader.getNumberOfPages(); page++) {
            all.append(new PdfTextExtractor(reader).getTextFromPage(page));
        }
        reader.close();
        return all.toString();
    }

    private void take(String csv) {
        catalogue.take(server.user(Role.ADMIN).actor(), "file.csv", csv.getBytes(StandardCharsets.UTF_8));
    }
}
