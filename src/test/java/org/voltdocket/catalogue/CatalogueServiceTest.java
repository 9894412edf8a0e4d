package org.voltdocket.catalogue;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.charset.StandardCharsets;
import java.time.LocalDate;
import java.time.YearMonth;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.jdbc.core.JdbcTemplate;
import org.springframework.security.access.AccessDeniedException;
import org.voltdocket.kernel.BatterySerial;
import org.voltdocket.kernel.Role;
import org.voltdocket.support.Answer;
import org.voltdocket.support.Client;
import org.voltdocket.support.Server;
import org.voltdocket.support.ServerTest;
import org.voltdocket.trail.Trail;
import org.voltdocket.trail.TrailEntry;

/** A file fills the catalogue whole or not at all, a serial tells what it is, and what stood before is kept. */
@ServerTest
class CatalogueServiceTest {

    private static final String RANGES = "type,batch,first_serial,last_serial,produced_on,count\n";

    private static int counter;

    @Autowired
    private Server server;

    @Autowired
    private CatalogueService catalogue;

    @Autowired
    private Trail trail;

    @Autowired
    private JdbcTemplate db;

    /** Codes and serials of this test alone. */
    private final String mark = "C" + System.nanoTime() % 1_000_000_000L + "X" + counter++;

    @Test
    void aSerialTellsTypeBatchAndSupplier() {
        fill();
        Product found = catalogue.of(serial("-0150")).orElseThrow();
        assertThat(found.supplier().name()).isEqualTo("Invented Works");
        assertThat(found.type().code()).isEqualTo(mark + "-T");
        assertThat(found.type().capacityAh()).isEqualTo(70.5);
        assertThat(found.batch()).isEqualTo("B2");
        assertThat(found.range().producedOn()).isEqualTo(LocalDate.of(2025, 2, 3));
        assertThat(catalogue.of(serial("-0099")).orElseThrow().batch()).isEqualTo("B1");
        assertThat(catalogue.of(serial("-0100")).orElseThrow().batch()).isEqualTo("B2");
        assertThat(catalogue.of(serial("-0200"))).isEmpty();
        // as many digits are part of the form: 0150 and 00150 are two serials
        assertThat(catalogue.of(serial("-00150"))).isEmpty();
        assertThat(catalogue.sales(mark + "-T"))
                .containsExactly(new SoldMonth(mark + "-T", "B1", YearMonth.of(2025, 3), 40));
    }

    @Test
    void outOfRangeIsSaidOnlyWhereATypeHasRanges() {
        take("supplier,name\n" + mark + ",Invented Works\n");
        take("type,name,supplier,chemistry,capacity_ah,serial_prefix\n" + mark + "-T,Invented 70," + mark + ",agm,70,"
                + mark + "\n");
        assertThat(catalogue.outOfRange(serial("-0300"))).isEmpty();
        take(RANGES + mark + "-T,B1," + mark + "-0001," + mark + "-0099,2025-01-03,99\n");
        assertThat(catalogue.outOfRange(serial("-0300")).orElseThrow().code()).isEqualTo(mark + "-T");
        assertThat(catalogue.outOfRange(serial("-0050"))).isEmpty();
        assertThat(catalogue.outOfRange(new BatterySerial("OTHER-" + mark))).isEmpty();
    }

    @Test
    void aCorrectionTakesThePlaceOfTheRowAndKeepsIt() {
        fill();
        // each of both corrections alone would overlap what the other one ends
        ImportResult done =
                take("type,batch,first_serial,last_serial,produced_on,count,withdrawn\n" + mark + "-T,B1," + mark
                        + "-0001," + mark + "-0149,2025-01-03,99,\n" + mark + "-T,B2," + mark + "-0150," + mark
                        + "-0199,2025-02-03,50,\n" + mark + "-T,B2," + mark + "-0100,,,,yes\n");
        assertThat(done).isEqualTo(new ImportResult("ranges", 1, 1, 0, 1));
        assertThat(catalogue.of(serial("-0120")).orElseThrow().batch()).isEqualTo("B1");
        assertThat(catalogue.of(serial("-0150")).orElseThrow().batch()).isEqualTo("B2");
        assertThat(catalogue.ranges(mark + "-T"))
                .extracting(
                        range -> range.last().value() + " " + range.endedAt().isPresent())
                .containsExactly(mark + "-0099 true", mark + "-0149 false", mark + "-0199 true", mark + "-0199 false");
        List<TrailEntry> entries = trail.of("catalogue");
        TrailEntry last = entries.get(entries.size() - 1);
        assertThat(last.act()).isEqualTo("catalogue-imported");
        assertThat(last.details().get(mark + "-T B1 " + mark + "-0001").toString())
                .contains(mark + "-0099")
                .contains(mark + "-0149");
        // the same once more changes nothing
        assertThat(take(RANGES + mark + "-T,B1," + mark + "-0001," + mark + "-0149,2025-01-03,99\n"))
                .isEqualTo(new ImportResult("ranges", 0, 0, 1, 0));
        assertThatThrownBy(() -> db.update("update produced_range set count = 1 where type = ?", mark + "-T"))
                .hasMessageContaining("a row can end, and nothing else");
        assertThatThrownBy(() -> db.update("delete from produced_range where type = ?", mark + "-T"))
                .hasStackTraceContaining("permission denied");
    }

    @Test
    void aFileWithErrorsChangesNothingAndNamesEachWithItsPlace() {
        fill();
        Answer answer = sent(RANGES + mark + "-T,B3," + mark + "-0300," + mark + "-0399,2025-03-03,100\n" + mark
                + "-T,B4,"
                + mark + "-0150," + mark + "-0250,2025-03-03,50\n" + mark + "-T,B5," + mark + "-0400," + mark
                + "-0401,2025-03-03,3\n\"" + mark + "-U\",B6," + mark + "-0500," + mark + "-0501,2025-03-03,2\n" + mark
                + "-T,B7," + mark + "-0601," + mark + "-0600,2025-03-03,1\n" + mark + "-T,B8," + mark + "-0700," + mark
                + "-0701,2999-03-03,1\n");
        assertThat(answer.status()).isEqualTo(422);
        assertThat(answer.json().get("type").asString()).endsWith("#catalogue-refused");
        assertThat(answer.json().get("errors")).hasSize(5);
        String errors = answer.json().get("errors").toString();
        assertThat(errors)
                .contains("some of these belong to batch B2 of " + mark + "-T")
                .contains("the range numbers 2 batteries; read 3")
                .contains("there is no type " + mark + "-U")
                .contains("does not come before it")
                .contains("is in the future");
        assertThat(answer.json().get("errors").get(0).get("line").asInt()).isEqualTo(3);
        // the third cell begins after the type, the batch and two commas
        assertThat(answer.json().get("errors").get(0).get("column").asInt()).isEqualTo(mark.length() + 7);
        assertThat(catalogue.ranges(mark + "-T")).hasSize(2);
    }

    @Test
    void cellsThatCannotBeReadAreNamedByLineAndColumn() {
        fill();
        Answer answer = sent("type,batch,month,sold\n" + mark + "-T,B1,2025-13,1\n" + mark + "-T,,2025-04,-1\n");
        assertThat(answer.status()).isEqualTo(422);
        assertThat(answer.json().get("errors")).hasSize(3);
        assertThat(answer.json().get("errors").get(0).get("message").asString())
                .isEqualTo("month: a month such as 2026-03 is required; read '2025-13'");
        assertThat(sent("a,b\n1,2\n").json().get("errors").get(0).get("message").asString())
                .contains("header matches no table");
        assertThat(sent("").status()).isEqualTo(422);
        assertThat(sent("supplier,name\n").status()).isEqualTo(422);
        assertThat(sent("supplier,name\nA,\"b\n").status()).isEqualTo(422);
        assertThat(sent("supplier,name\n" + mark + ",One\n" + mark + ",Two\n").text())
                .contains("already has a row with this key");
        assertThat(sent("type,batch,month,sold\n" + mark + "-T,B1,2024-12,1\n").text())
                .contains("before it is made");
        assertThat(sent("supplier,name,withdrawn\n" + mark + ",x,1\n").text()).contains("withdraw those first");
    }

    @Test
    void onlyAnAdministratorTakesAFileIn() {
        for (Role role : List.of(Role.WORKSHOP, Role.CLERK, Role.AUDITOR)) {
            assertThatThrownBy(() -> catalogue.take(server.user(role).actor(), "x.csv", new byte[0]))
                    .isInstanceOf(AccessDeniedException.class);
        }
    }

    @Test
    void pagesAndApiShowWhatStands() {
        fill();
        Client admin = server.browser(server.user(Role.ADMIN));
        assertThat(admin.get("/catalogue?serial=" + mark + "-0150").text())
                .contains("Invented Works")
                .contains("B2");
        assertThat(admin.get("/catalogue?serial=" + mark + "-0900").text()).contains("none of its production ranges");
        assertThat(admin.get("/catalogue/" + mark + "-T").text()).contains(mark + "-0199");
        Answer product = server.as(Role.CLERK).get("/api/v1/catalogue/product?serial=" + mark + "-0150");
        assertThat(product.json().get("batch").asString()).isEqualTo("B2");
        assertThat(product.json().get("type").get("chemistry").asString()).isEqualTo("agm");
        assertThat(server.as(Role.CLERK)
                        .get("/api/v1/catalogue/product?serial=" + mark + "-0900")
                        .status())
                .isEqualTo(404);
        assertThat(server.as(Role.CLERK).get("/api/v1/catalogue").text()).contains(mark + "-T");
        Answer refused = admin.header("X-CSRF-TOKEN", admin.csrf())
                .upload("/catalogue", "x.csv", "a,b\n1,2\n".getBytes(StandardCharsets.UTF_8), null);
        assertThat(refused.status()).isEqualTo(422);
        assertThat(refused.text()).contains("Line 1, column 1:");
    }

    private Answer sent(String csv) {
        return server.as(Role.ADMIN)
                .upload("/api/v1/catalogue", "file.csv", csv.getBytes(StandardCharsets.UTF_8), null);
    }

    private void fill() {
        take("supplier,name\n" + mark + ",Invented Works\n");
        take("type;name;supplier;chemistry;capacity_ah;rated_cranking_a;cranking_standard;serial_prefix\n" + mark
                + "-T;Invented 70;" + mark + ";AGM;70,5;700;EN;" + mark + "\n");
        take(RANGES + mark + "-T,B1," + mark + "-0001," + mark + "-0099,2025-01-03,99\n" + mark + "-T,B2," + mark
                + "-0100," + mark + "-0199,2025-02-03,90\n");
        take("type,batch,month,sold\n" + mark + "-T,B1,2025-03,40\n");
    }

    private ImportResult take(String csv) {
        return catalogue.take(server.user(Role.ADMIN).actor(), "file.csv", csv.getBytes(StandardCharsets.UTF_8));
    }

    private BatterySerial serial(String end) {
        return new BatterySerial(mark + end);
    }
}
