package org.voltdocket.server;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.zip.GZIPOutputStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.voltdocket.diagnosis.read.FileLimits;
import org.voltdocket.support.Answer;
import org.voltdocket.support.Client;
import org.voltdocket.support.Node;
import org.voltdocket.support.OwnDatabase;
import org.voltdocket.support.People;
import tools.jackson.databind.JsonNode;

/**
 * Uploads the largest and oddest files that are accepted to a server with a heap of 512 MiB, and then requests every page,
 * report, series and bag of the case: an accepted file must not break its case.
 */
class ExtremeFilesTest {

    @Test
    void everyPageOfACaseWithExtremeFilesIsAnswered(@TempDir Path folder) throws Exception {
        try (OwnDatabase database = new OwnDatabase(folder.resolve("pg"));
                Node node = Node.withRoomForUploads(database, folder.resolve("node"))) {
            People people = new People(node);
            Client workshop = people.workshop(node);
            List<String> wrong = new ArrayList<>();
            for (Map.Entry<String, byte[]> file : files().entrySet()) {
                String number = people.open(node);
                Answer stored =
                        workshop.upload(People.evidence(number), file.getKey(), file.getValue(), "n".repeat(4000));
                assertThat(stored.status())
                        .as(file.getKey()
                                        .substring(0, Math.min(40, file.getKey().length())) + ": " + stored)
                        .isEqualTo(201);
                String id = stored.json().get("id").stringValue();
                request(workshop, api(number, id), number, wrong);
                request(People.pages(node, "shop"), pages(number, id), number, wrong);
                request(People.pages(node, "desk"), pages(number, id), number, wrong);
                JsonNode shown = workshop.get("/api/v1/cases/" + number).json();
                assertThat(shown.has("assessmentFailure")).as(shown.toString()).isFalse();
            }
            assertThat(wrong).isEmpty();
            assertThat(node.management().get("/actuator/health/readiness").status())
                    .isEqualTo(200);
        }
    }

    private static void request(Client client, List<String> paths, String number, List<String> wrong) {
        for (String path : paths) {
            boolean ofRecordings = path.contains("series") || path.contains("summary");
            int status = (path.contains("series") ? client.header("Accept", "application/json") : client)
                    .get(path)
                    .status();
            // other files have none
            if (status != 200 && !(ofRecordings && (status == 400 || status == 404))) {
                wrong.add(path.replace(number, "{number}") + ": " + status);
            }
        }
    }

    private static List<String> api(String number, String id) {
        String file = "/api/v1/cases/" + number;
        return List.of(
                file,
                file + "/report.pdf",
                file + "/bag.zip",
                "/api/v1/cases",
                "/api/v1/evidence/" + id,
                "/api/v1/evidence/" + id + "/content",
                "/api/v1/evidence/" + id + "/series?points=10000");
    }

    private static List<String> pages(String number, String id) {
        String file = "/cases/" + number;
        return List.of(
                "/cases",
                file,
                file + "/compare",
                file + "/report.pdf",
                "/evidence/" + id,
                "/evidence/" + id + "/summary",
                "/evidence/" + id + "/series?points=10000");
    }

    private static Map<String, byte[]> files() throws IOException {
        Map<String, byte[]> files = new LinkedHashMap<>();
        files.put("marks.csv", recording(2000, 1000, "m".repeat(65)));
        files.put("longest.csv.gz", longest());
        files.put("n".repeat(3000) + "\u202e\u2066.csv", recording(20, 0, ""));
        files.put("ignored.json", ignoredMembers(2000));
        files.put("large.pdf", largeDocument());
        return files;
    }

    private static byte[] recording(int rows, int marks, String mark) {
        StringBuilder csv = new StringBuilder("time_s,measured_v,engine_rpm,mark\n");
        for (int i = 0; i < rows; i++) {
            csv.append(i)
                    .append(i < rows / 2 ? ",12.61,0," : ",14.20,850,")
                    .append(i < marks ? mark : "")
                    .append('\n');
        }
        return csv.toString().getBytes(StandardCharsets.US_ASCII);
    }

    /** Five million rows at 10 Hz: six days. */
    private static byte[] longest() throws IOException {
        ByteArrayOutputStream packed = new ByteArrayOutputStream();
        try (OutputStream out = new GZIPOutputStream(packed)) {
            out.write("time_s,measured_v\n".getBytes(StandardCharsets.US_ASCII));
            StringBuilder rows = new StringBuilder();
            for (int i = 0; i < 5_000_000; i++) {
                rows.append(i / 10).append('.').append(i % 10).append(i % 90_000 < 60_000 ? ",12.6\n" : ",14.2\n");
                if (rows.length() > 1 << 16) {
                    out.write(rows.toString().getBytes(StandardCharsets.US_ASCII));
                    rows.setLength(0);
                }
            }
            out.write(rows.toString().getBytes(StandardCharsets.US_ASCII));
        }
        return packed.toByteArray();
    }

    private static byte[] ignoredMembers(int members) {
        StringBuilder json = new StringBuilder("{\"kind\":\"battery-test\",\"takenAt\":\"2026-03-04T08:40:00+01:00\","
                + "\"restVoltageV\":12.71,\"temperatureC\":18");
        for (int i = 0; i < members; i++) {
            json.append(",\"member").append("x".repeat(80)).append(i).append("\":{\"a\":[1,2,3]}");
        }
        return json.append('}').toString().getBytes(StandardCharsets.US_ASCII);
    }

    private static byte[] largeDocument() {
        byte[] document = new byte[(int) FileLimits.FILE_BYTES];
        Arrays.fill(document, (byte) ' ');
        byte[] head = "%PDF-1.7\n1 0 obj\n<< /Type /Catalog >>\nendobj\n%".getBytes(StandardCharsets.US_ASCII);
        byte[] tail = "\ntrailer\n<< /Root 1 0 R >>\nstartxref\n0\n%%EOF\n".getBytes(StandardCharsets.US_ASCII);
        System.arraycopy(head, 0, document, 0, head.length);
        System.arraycopy(tail, 0, document, document.length - tail.length, tail.length);
        return document;
    }
}
