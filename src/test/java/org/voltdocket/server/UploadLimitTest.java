package org.voltdocket.server;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.beans.factory.annotation.Value;
import org.springframework.util.unit.DataSize;
import org.voltdocket.diagnosis.read.FileLimits;
import org.voltdocket.kernel.Role;
import org.voltdocket.support.Answer;
import org.voltdocket.support.Client;
import org.voltdocket.support.Server;
import org.voltdocket.support.ServerTest;

/** 64 MiB and not one byte more; the limit is this project's own. */
@ServerTest
class UploadLimitTest {

    private static final int LIMIT = 64 * 1024 * 1024;

    @Autowired
    private Server server;

    @Test
    void theConfiguredLimitIsThatOfTheReader(@Value("${spring.servlet.multipart.max-file-size}") DataSize configured) {
        assertThat(configured.toBytes()).isEqualTo(FileLimits.FILE_BYTES).isEqualTo(LIMIT);
    }

    @Test
    void sixtyFourMebibytesAreTakenAndOneByteMoreIsAProblem() {
        Client workshop = server.as(server.newUser(Role.WORKSHOP));
        String number = workshop.postJson(
                        "/api/v1/cases",
                        "{\"batterySerial\":\"LIMIT-" + System.nanoTime() + "\",\"vin\":\"1M8GDM9AXKP042788\"}")
                .json()
                .get("number")
                .asString();
        String evidence = "/api/v1/cases/" + number + "/evidence";

        Answer over = workshop.upload(evidence, "over.pdf", document(LIMIT + 1), null);
        assertThat(over.status()).as(over.toString()).isEqualTo(413);
        assertThat(over.header("content-type").orElse("")).startsWith("application/problem+json");
        assertThat(over.json().get("type").asString()).isEqualTo("/manual/problems#too-large");
        assertThat(over.json().get("detail").asString()).contains("64 MiB", "67108864");

        Answer exact = workshop.upload(evidence, "exact.pdf", document(LIMIT), null);
        assertThat(exact.status()).as(exact.toString()).isEqualTo(201);
        assertThat(exact.json().get("bytes").asLong()).isEqualTo(LIMIT);
        assertThat(workshop.get("/api/v1/cases/" + number).json().get("evidence"))
                .as("nothing of the refused file")
                .hasSize(1);
    }

    @Test
    void aPageAndItsScriptAreToldTheLimitToo() {
        Client page = server.browser(server.newUser(Role.CLERK));
        Client form = page.header("X-CSRF-TOKEN", page.csrf());
        String evidence = "/cases/V-000-001-6/evidence";
        Answer shown = form.upload(evidence, "over.pdf", document(LIMIT + 1), null);
        assertThat(shown.status()).isEqualTo(413);
        assertThat(shown.text())
                .contains("<h1>The file is too large</h1>", "67108864")
                .doesNotContain("??");
        Answer told =
                form.header("X-Requested-With", "voltdocket").upload(evidence, "over.pdf", document(LIMIT + 1), null);
        assertThat(told.status()).isEqualTo(413);
        assertThat(told.json().get("detail").asString()).contains("67108864");
    }

    /** As much of a PDF as tells its kind, filled up with a comment. */
    private static byte[] document(int bytes) {
        byte[] document = new byte[bytes];
        Arrays.fill(document, (byte) ' ');
        byte[] head = "%PDF-1.7\n1 0 obj\n<< /Type /Catalog >>\nendobj\n%".getBytes(StandardCharsets.US_ASCII);
        byte[] tail = "\ntrailer\n<< /Root 1 0 R >>\nstartxref\n0\n%%EOF\n".getBytes(StandardCharsets.US_ASCII);
        System.arraycopy(head, 0, document, 0, head.length);
        System.arraycopy(tail, 0, document, bytes - tail.length, tail.length);
        return document;
    }
}
