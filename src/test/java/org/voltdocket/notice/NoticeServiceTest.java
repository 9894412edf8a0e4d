package org.voltdocket.notice;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.awt.image.BufferedImage;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.jdbc.core.JdbcTemplate;
import org.springframework.security.access.AccessDeniedException;
import org.voltdocket.casefile.CaseService;
import org.voltdocket.catalogue.CatalogueService;
import org.voltdocket.dossier.Pairs;
import org.voltdocket.kernel.Actor;
import org.voltdocket.kernel.CaseNumber;
import org.voltdocket.kernel.Role;
import org.voltdocket.support.Answer;
import org.voltdocket.support.Client;
import org.voltdocket.support.Server;
import org.voltdocket.support.ServerTest;
import org.voltdocket.trail.Trail;

/** Repeats and patterns are found with their grounds, for the distributor's eyes only, and refuse nothing. */
@ServerTest
class NoticeServiceTest {

    private static int counter;

    @Autowired
    private Server server;

    @Autowired
    private NoticeService notices;

    @Autowired
    private NoticeChecker checker;

    @Autowired
    private NoticeUpdater watch;

    @Autowired
    private CaseService cases;

    @Autowired
    private CatalogueService catalogue;

    @Autowired
    private Trail trail;

    @Autowired
    private JdbcTemplate db;

    private final String oneVin = Pairs.vin();
    private final String otherVin = Pairs.vin();
    private final String mark = "N" + System.nanoTime() % 1_000_000_000L + "X" + counter++;

    @Test
    void theSameSerialClaimedTwiceIsFoundInBothCases() {
        Server.User one = server.newUser(Role.WORKSHOP);
        Server.User other = server.newUser(Role.WORKSHOP);
        String first = open(one, mark, oneVin, "");
        String second = open(other, mark, otherVin, "");
        claim(one, first);
        assertThat(found(first)).isEmpty();
        claim(other, second);
        assertThat(found(second)).singleElement().satisfies(notice -> {
            assertThat(notice.kind()).isEqualTo(NoticeKind.SERIAL_CLAIMED_TWICE);
            assertThat(notice.grounds().get(1)).contains(first).contains(second).contains("129.90 EUR");
            assertThat(notice.others()).containsExactly(new CaseNumber(first));
        });
        assertThat(kinds(first)).containsExactly(NoticeKind.SERIAL_CLAIMED_TWICE);
        // a claim that is taken back is none
        step(other, second, "withdraw");
        assertThat(found(second))
                .singleElement()
                .satisfies(notice -> assertThat(notice.goneAt()).isPresent());
        assertThat(found(first)).allSatisfy(notice -> assertThat(notice.open()).isFalse());
    }

    @Test
    void theSameBytesUnderAnotherSerialAreFoundAndUnderTheSameAreNot() {
        Server.User user = server.newUser(Role.WORKSHOP);
        String first = open(user, mark + "-A", oneVin, "");
        String second = open(user, mark + "-B", oneVin, "");
        String same = open(user, mark + "-A", otherVin, "");
        byte[] drive = drive(mark.hashCode());
        upload(user, first, "drive.csv", drive);
        upload(user, same, "drive.csv", drive);
        assertThat(found(first)).isEmpty();
        upload(user, second, "again.csv", drive);
        assertThat(kinds(second)).containsExactly(NoticeKind.SAME_FILE);
        assertThat(found(second).get(0).grounds().get(1)).contains(first).contains(same);
        assertThat(kinds(first)).containsExactly(NoticeKind.SAME_FILE);
    }

    @Test
    void aPhotoScaledAndCompressedAnewIsFoundUnderAnotherSerial() {
        Server.User user = server.newUser(Role.WORKSHOP);
        String first = open(user, mark + "-A", oneVin, "");
        String second = open(user, mark + "-B", otherVin, "");
        String third = open(user, mark + "-C", otherVin, "");
        BufferedImage photo = Photos.scene(mark.hashCode(), 1200, 900);
        upload(user, first, "label.jpg", Photos.jpeg(photo, 0.9f));
        upload(user, second, "IMG-1.png", Photos.png(Photos.scaled(photo, 640, 480)));
        upload(user, third, "else.jpg", Photos.jpeg(Photos.scene(mark.hashCode() + 1, 1200, 900), 0.9f));
        assertThat(kinds(second)).containsExactly(NoticeKind.NEAR_PHOTO);
        assertThat(kinds(first)).containsExactly(NoticeKind.NEAR_PHOTO);
        assertThat(found(third)).isEmpty();
    }

    @Test
    void aRecordingThinnedTrimmedAndRoundedIsFoundUnderAnotherSerial() {
        Server.User user = server.newUser(Role.WORKSHOP);
        String first = open(user, mark + "-A", oneVin, "");
        String second = open(user, mark + "-B", otherVin, "");
        upload(user, first, "drive.csv", wave(mark.hashCode(), 1, 0, "%.2f"));
        assertThat(found(first)).isEmpty();
        upload(user, second, "mine.csv", wave(mark.hashCode(), 5, 200, "%.1f"));
        assertThat(kinds(second)).containsExactly(NoticeKind.NEAR_RECORDING);
        assertThat(kinds(first)).containsExactly(NoticeKind.NEAR_RECORDING);
        assertThat(found(first).get(0).grounds().get(1)).contains(second);
        assertThat(found(first).get(0).grounds().get(2)).contains("correlation 0.9");
    }

    @Test
    void readingsRepeatedToTheLastDigitAndTestsWithinAMinuteAreFound() {
        Server.User user = server.newUser(Role.WORKSHOP);
        String first = open(user, mark + "-A", oneVin, "");
        String second = open(user, mark + "-B", otherVin, "");
        String third = open(user, mark + "-C", otherVin, "");
        upload(user, first, "a.json", test("2026-03-04T08:40:00+01:00", 12.61, 612, 5.1));
        upload(user, second, "b.json", test("2026-03-09T15:01:30+01:00", 12.61, 612, 5.1));
        upload(user, third, "c.json", test("2026-03-09T14:02:10Z", 12.4, 580, 5.6));
        assertThat(kinds(first)).containsExactly(NoticeKind.SAME_READINGS);
        assertThat(kinds(second)).containsExactlyInAnyOrder(NoticeKind.SAME_READINGS, NoticeKind.SAME_MOMENT);
        assertThat(kinds(third)).containsExactly(NoticeKind.SAME_MOMENT);
    }

    @Test
    void serialsAndDaysThatDoNotFitTheCatalogueAreFound() {
        take("supplier,name\n" + mark + ",Invented Works\n");
        take("type,name,supplier,chemistry,capacity_ah,serial_prefix\n" + mark + ",Invented 70," + mark + ",agm,70,"
                + mark + "\n");
        take("type,batch,first_serial,last_serial,produced_on,count\n" + mark + ",B1," + mark + "-0001," + mark
                + "-0099,2025-03-10,99\n");
        Server.User user = server.newUser(Role.WORKSHOP);
        String out = open(user, mark + "-0500", oneVin, "");
        assertThat(kinds(out)).containsExactly(NoticeKind.SERIAL_OUT_OF_RANGE);
        String early = open(user, mark + "-0005", oneVin, ",\"battery\":{\"soldOn\":\"2025-02-01\"}");
        assertThat(kinds(early)).containsExactly(NoticeKind.SOLD_BEFORE_PRODUCED);
        // mended facts take the grounds away; the notice stays, with the moment it went
        server.as(user).patchJson("/api/v1/cases/" + early, "{\"battery\":{\"soldOn\":\"2025-04-01\"}}");
        assertThat(found(early))
                .singleElement()
                .satisfies(notice -> assertThat(notice.goneAt()).isPresent());
        String fine = open(user, mark + "-0006", oneVin, "");
        assertThat(found(fine)).isEmpty();
    }

    @Test
    void aClaimBeforeTheSaleIsFound() {
        Server.User user = server.newUser(Role.WORKSHOP);
        String number = open(user, mark, oneVin, "");
        claim(user, number);
        UUID id = id(number);
        db.update("update case_file set sold_on = current_date + 3 where id = ?", id);
        db.update(
                "insert into pending_notice_check values (?, clock_timestamp(), true)"
                        + " on conflict (case_id) do update set since = clock_timestamp()",
                id);
        assertThat(kinds(number)).containsExactly(NoticeKind.CLAIMED_BEFORE_SALE);
    }

    @Test
    void aWorkshopWhoseTestsNeverFailIsFoundInItsCases() {
        UUID odd = server.newWorkshop();
        UUID rest = server.newWorkshop();
        judged(odd, 40, 0);
        judged(rest, 400, 300);
        watch.updateWorkshops();
        List<Notice> of = notices.open(clerk(), java.util.Optional.of(NoticeKind.WORKSHOP_NEVER_FAILS), 100);
        String name = db.queryForObject("select name from workshop where id = ?", String.class, odd);
        Notice notice = of.stream()
                .filter(one -> one.workshop().orElse("").equals(name))
                .findFirst()
                .orElseThrow();
        assertThat(notice.grounds()).contains(name, "40");
        assertThat(of)
                .noneMatch(one -> one.workshop()
                        .orElse("")
                        .equals(db.queryForObject("select name from workshop where id = ?", String.class, rest)));
    }

    @Test
    void aPersonLooksOnceWithAReasonAndNothingIsRemoved() {
        String number = twice();
        Notice notice = found(number).get(0);
        Client clerk = server.as(Role.CLERK);
        assertThat(clerk.postJson("/api/v1/notices/" + notice.id(), "{\"reason\":\" \"}")
                        .status())
                .isEqualTo(400);
        Answer kept = clerk.postJson(
                "/api/v1/notices/" + notice.id(), "{\"reason\":\"Both vehicles are of one fleet; label read twice.\"}");
        assertThat(kept.status()).isEqualTo(200);
        assertThat(kept.json().get("lookedReason").asString()).contains("one fleet");
        assertThat(clerk.postJson("/api/v1/notices/" + notice.id(), "{\"reason\":\"again\"}")
                        .status())
                .isEqualTo(409);
        assertThat(clerk.get("/api/v1/cases/" + number + "/notices").json()).hasSize(1);
        assertThat(trail.of("notice/" + number))
                .singleElement()
                .satisfies(entry -> assertThat(entry.act()).isEqualTo("notice-looked-at"));
        assertThatThrownBy(() -> db.update("delete from claim_notice where id = ?", notice.id()))
                .hasStackTraceContaining("permission denied");
        assertThatThrownBy(() -> db.update("update claim_notice set looked_reason = 'x' where id = ?", notice.id()))
                .hasMessageContaining("looked at once");
    }

    @Test
    void noWorkshopSeesAny() {
        Server.User user = server.newUser(Role.WORKSHOP);
        String number = twice(user);
        assertThat(found(number)).isNotEmpty();
        assertThat(server.browser(user).get("/cases/" + number).text()).doesNotContain("id=\"notices\"");
        assertThat(server.as(user).get("/api/v1/cases/" + number).text()).doesNotContain("claimed-twice");
        assertThat(server.as(user).get("/api/v1/cases/" + number + "/notices").status())
                .isEqualTo(403);
        assertThatThrownBy(() -> notices.ofCase(user.actor(), id(number))).isInstanceOf(AccessDeniedException.class);
        Client page = server.browser(server.user(Role.CLERK));
        assertThat(page.get("/cases/" + number).text())
                .contains("id=\"notices\"")
                .contains("More than one claim was submitted for battery");
        assertThat(page.get("/notices?kind=serial-claimed-twice").text()).contains(number);
        assertThat(page.get("/desk?look=open&q=" + number).text()).contains("1 unusual");
        assertThat(server.browser(user).get("/desk?look=open&q=" + number).text())
                .contains(number)
                .doesNotContain("unusual");
        UUID notice = found(number).get(0).id();
        assertThat(page.postForm("/notices/" + notice, Map.of("reason", "seen", "from", number))
                        .header("location"))
                .hasValueSatisfying(to -> assertThat(to).endsWith("/cases/" + number + "#notices"));
        assertThat(page.get("/cases/" + number).text()).contains("seen");
        assertThat(page.get("/desk?look=open&q=" + number).text()).doesNotContain("1 unusual");
    }

    private String twice() {
        return twice(server.newUser(Role.WORKSHOP));
    }

    private String twice(Server.User user) {
        String first = open(user, mark, oneVin, "");
        String second = open(user, mark, otherVin, "");
        claim(user, first);
        claim(user, second);
        return first;
    }

    private String open(Server.User user, String serial, String vin, String more) {
        Answer opened = server.as(user)
                .postJson(
                        "/api/v1/cases", "{\"batterySerial\":\"" + serial + "\",\"vin\":\"" + vin + "\"" + more + "}");
        assertThat(opened.status()).as(opened.toString()).isEqualTo(201);
        return opened.json().get("number").asString();
    }

    private void claim(Server.User user, String number) {
        Answer opened = server.as(user)
                .postJson("/api/v1/cases/" + number + "/claim", "{\"amount\":\"129.90\",\"currency\":\"EUR\"}");
        assertThat(opened.status()).as(opened.toString()).isEqualTo(201);
        step(user, number, "submit");
    }

    private void step(Server.User user, String number, String action) {
        Answer done = server.as(user).postJson("/api/v1/cases/" + number + "/claim/" + action, "{}");
        assertThat(done.status()).as(done.toString()).isEqualTo(200);
    }

    private void upload(Server.User user, String number, String name, byte[] content) {
        Answer kept = server.as(user).upload("/api/v1/cases/" + number + "/evidence", name, content, null);
        assertThat(kept.status()).as(kept.toString()).isEqualTo(201);
    }

    private byte[] test(String at, double volts, int amperes, double milliohm) {
        return ("{\"kind\":\"battery-test\",\"takenAt\":\"" + at + "\",\"restVoltageV\":" + volts
                        + ",\"temperatureC\":18,\"crankingCurrentA\":" + amperes
                        + ",\"crankingStandard\":\"EN\",\"internalResistanceMilliohm\":" + milliohm
                        + ",\"instrument\":{\"serial\":\"" + mark + "\"}}")
                .getBytes(StandardCharsets.UTF_8);
    }

    private static byte[] drive(int seed) {
        java.util.Random chance = new java.util.Random(seed);
        StringBuilder csv = new StringBuilder("time_s,measured_v,engine_rpm\n");
        for (int s = 0; s < 240; s++) {
            csv.append(s)
                    .append(String.format(
                            java.util.Locale.ROOT,
                            s < 120 ? ",%.3f,0%n" : ",%.3f,850%n",
                            (s < 120 ? 12.6 : 14.2) + chance.nextGaussian() / 100));
        }
        return csv.toString().getBytes(StandardCharsets.UTF_8);
    }

    /** Loads switch on and off by chance; every so many rows of it from a second on. */
    private static byte[] wave(long seed, int every, int fromS, String form) {
        java.util.Random chance = new java.util.Random(seed);
        StringBuilder csv = new StringBuilder("time_s,measured_v\n");
        double load = 0;
        int left = 0;
        for (int row = 0; row < 2400; row++) {
            if (left-- <= 0) {
                load = 0.5 * chance.nextDouble();
                left = 5 + chance.nextInt(60);
            }
            double volts = 13.9 - load + 0.005 * chance.nextGaussian();
            if (row % every == 0 && row >= 2 * fromS) {
                csv.append(row / 2.0 - fromS)
                        .append(',')
                        .append(String.format(java.util.Locale.ROOT, form, volts))
                        .append('\n');
            }
        }
        return csv.toString().getBytes(StandardCharsets.UTF_8);
    }

    /** Cases of a workshop as the judge left them. */
    private void judged(UUID workshop, int cases, int defective) {
        for (int i = 0; i < cases; i++) {
            long ordinal = db.queryForObject("select nextval('case_ordinal')", Long.class);
            db.update(
                    "insert into case_file (id, number, battery_serial, vin, opened_at, opened_by, opened_workshop, leaning,"
                            + " battery_verdict, first_cause, probability, assessed_at) values"
                            + " (gen_random_uuid(), ?, ?, ?, now() - interval '1 year', 'test', ?, 'open',"
                            + " ?, 'none', 0.5, now())",
                    CaseNumber.of(ordinal).value(),
                    mark + "-" + workshop.toString().substring(0, 6).toUpperCase(java.util.Locale.ROOT) + "-" + i,
                    Pairs.vin(),
                    workshop,
                    i < defective ? "failed" : "sound");
        }
    }

    private void take(String csv) {
        catalogue.take(server.user(Role.ADMIN).actor(), "file.csv", csv.getBytes(StandardCharsets.UTF_8));
    }

    /** All of a case after what is due was looked at. */
    private List<Notice> found(String number) {
        checker.checkPending(() -> false);
        return notices.ofCase(clerk(), id(number)).stream()
                .filter(notice -> notice.number().isPresent())
                .toList();
    }

    private List<NoticeKind> kinds(String number) {
        return found(number).stream().map(Notice::kind).toList();
    }

    private UUID id(String number) {
        return cases.require(clerk(), new CaseNumber(number)).id();
    }

    private Actor clerk() {
        return server.user(Role.CLERK).actor();
    }
}
