package org.voltdocket.assessment;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.StandardCharsets;
import java.util.Locale;
import java.util.Random;
import java.util.UUID;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.voltdocket.dossier.Pairs;
import org.voltdocket.evidence.DuplicateRecordings;
import org.voltdocket.kernel.Role;
import org.voltdocket.support.Answer;
import org.voltdocket.support.Client;
import org.voltdocket.support.Server;
import org.voltdocket.support.ServerTest;
import tools.jackson.databind.JsonNode;

/** One drive under two serials: the later case becomes contradictory, and neither workshop learns of the other. */
@ServerTest
class SameRecordingTest {

    @Autowired
    private Server server;

    @Autowired
    private DuplicateRecordings fingerprints;

    @Autowired
    private PendingAssessmentService service;

    @Autowired
    private JdbcClient db;

    private Client one;
    private Client other;

    @BeforeEach
    void people() {
        one = server.as(server.newUser(Role.WORKSHOP));
        other = server.as(server.newUser(Role.WORKSHOP));
    }

    @Test
    void theLaterCaseBecomesContradictoryAndNeitherNamesTheOther() {
        long seed = new Random().nextLong();
        String serial = Pairs.serial();
        String first = open(one, serial);
        String second = open(other, Pairs.serial());
        upload(one, first, drive(seed, 1, 0, 1200, "%.2f"));
        assertThat(leaning(one, first)).isEqualTo("open");
        upload(other, second, drive(seed, 5, 200, 1100, "%.1f"));
        JsonNode later = read(other, second).get("assessment");
        assertThat(later.get("leaning").stringValue()).isEqualTo("contradictory");
        assertThat(later.get("findings").toString()).contains("for another battery serial");
        assertThat(leaning(one, first)).as("the case that was there first").isEqualTo("open");
        assertThat(read(one, first).toString()).doesNotContain(second);
        assertThat(read(other, second).toString()).doesNotContain(first).doesNotContain(serial);
    }

    @Test
    void theOrderOfArrivalDoesNotChangeTheMatch() {
        long seed = new Random().nextLong();
        String original = drive(seed, 1, 0, 1200, "%.2f");
        String copy = drive(seed, 3, 100, 1200, "%.2f");
        String a = open(one, Pairs.serial());
        String b = open(one, Pairs.serial());
        upload(one, a, original);
        upload(one, b, copy);
        double forward = fingerprints.like(item(one, a)).get(0).correlation();
        String c = open(other, Pairs.serial());
        String d = open(other, Pairs.serial());
        upload(other, d, copy);
        upload(other, c, original);
        double back = fingerprints.like(item(other, c)).stream()
                .filter(twin -> twin.otherId().equals(item(other, d)))
                .findFirst()
                .orElseThrow()
                .correlation();
        assertThat(back).isEqualTo(forward);
        assertThat(leaning(one, a)).isEqualTo("open");
        assertThat(leaning(one, b)).isEqualTo("contradictory");
        assertThat(leaning(other, c)).isEqualTo("contradictory");
    }

    @Test
    void anotherDriveIsNoCopy() {
        long seed = new Random().nextLong();
        String first = open(one, Pairs.serial());
        String second = open(one, Pairs.serial());
        upload(one, first, drive(seed, 1, 0, 1200, "%.2f"));
        upload(one, second, drive(seed + 1, 1, 0, 1200, "%.2f"));
        assertThat(fingerprints.like(item(one, first))).isEmpty();
        assertThat(leaning(one, first)).isEqualTo("open");
    }

    @Test
    void whatACrashLeftUncomparedIsComparedAtTheNextStart() {
        long seed = new Random().nextLong();
        String first = open(one, Pairs.serial());
        String second = open(one, Pairs.serial());
        upload(one, first, drive(seed, 1, 0, 1200, "%.2f"));
        // as an older server leaves it, which kept no outlines
        String kept = drive(seed, 1, 50, 1200, "%.2f");
        upload(one, second, kept);
        UUID id = item(one, second);
        assertThat(fingerprints.like(id)).hasSize(1);
        db.sql("insert into recording_to_compare select id, case_id, true from evidence where id = ?")
                .param(id)
                .update();
        service.resume();
        assertThat(fingerprints.casesToCompare()).isEmpty();
        assertThat(fingerprints.like(id)).as("comparing again changes nothing").hasSize(1);
    }

    private static String drive(long seed, int every, int fromS, int toS, String form) {
        Random chance = new Random(seed);
        StringBuilder text = new StringBuilder("time_s,measured_v\n");
        double load = 0;
        int left = 0;
        for (int row = 0; row < 2400; row++) {
            if (left-- <= 0) {
                load = 0.5 * chance.nextDouble();
                left = 5 + chance.nextInt(60);
            }
            double volts = 13.9 - load + 0.005 * chance.nextGaussian();
            double t = row / 2.0;
            if (row % every == 0 && t >= fromS && t <= toS) {
                text.append(t - fromS)
                        .append(',')
                        .append(String.format(Locale.ROOT, form, volts))
                        .append('\n');
            }
        }
        return text.toString();
    }

    private static String open(Client client, String serial) {
        Answer answer = client.postJson(
                "/api/v1/cases", "{\"batterySerial\":\"" + serial + "\",\"vin\":\"" + Pairs.vin() + "\"}");
        assertThat(answer.status()).as(answer.toString()).isEqualTo(201);
        return answer.json().get("number").stringValue();
    }

    private static void upload(Client client, String number, String csv) {
        Answer answer = client.upload(
                "/api/v1/cases/" + number + "/evidence", "drive.csv", csv.getBytes(StandardCharsets.UTF_8), null);
        assertThat(answer.status()).as(answer.toString()).isEqualTo(201);
    }

    private static JsonNode read(Client client, String number) {
        return client.get("/api/v1/cases/" + number).json();
    }

    private static String leaning(Client client, String number) {
        return read(client, number).get("assessment").get("leaning").stringValue();
    }

    private static UUID item(Client client, String number) {
        return UUID.fromString(
                read(client, number).get("evidence").get(0).get("id").stringValue());
    }
}
