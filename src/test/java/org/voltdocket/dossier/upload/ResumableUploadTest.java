package org.voltdocket.dossier.upload;

import static org.assertj.core.api.Assertions.assertThat;

import java.net.http.HttpRequest.BodyPublishers;
import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.util.Arrays;
import java.util.Base64;
import java.util.HexFormat;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.voltdocket.dossier.SentCase;
import org.voltdocket.kernel.Role;
import org.voltdocket.support.Answer;
import org.voltdocket.support.Client;
import org.voltdocket.support.Server;
import org.voltdocket.support.ServerTest;

/**
 * Resumable uploads, checked against tus 1.0.0 (https://tus.io/protocols/resumable-upload): core protocol, creation, checksum,
 * expiration, termination.
 */
@ServerTest
class ResumableUploadTest {

    private static final String PART = "application/offset+octet-stream";

    @Autowired
    private Server server;

    private Server.User user;
    private Client tus;
    private SentCase sent;

    @BeforeEach
    void open() {
        user = server.newUser(Role.WORKSHOP);
        tus = server.as(user).header("Tus-Resumable", "1.0.0");
        sent = SentCase.open(server.as(user));
    }

    @Test
    void describesItself() {
        Answer options = send(server.as(user), "OPTIONS", "/api/v1/uploads", new byte[0]);
        assertThat(options.status()).isEqualTo(204);
        assertThat(options.header("tus-version")).contains("1.0.0");
        assertThat(options.header("tus-extension").orElseThrow().split(","))
                .contains("creation", "checksum", "expiration", "termination");
        assertThat(options.header("tus-max-size")).contains("67108864");
    }

    @Test
    void partsBecomeEvidenceWithTheLastByte() {
        byte[] file = recording();
        String address = create(file.length, "filename " + base64("drive.csv") + ",note " + base64("cold start"));
        assertThat(append(address, 0, Arrays.copyOf(file, 1000)).header("upload-offset"))
                .contains("1000");
        Answer head = send(tus, "HEAD", address, new byte[0]);
        assertThat(head.header("upload-offset")).contains("1000");
        assertThat(head.header("upload-length")).contains(Integer.toString(file.length));
        assertThat(head.header("cache-control").orElseThrow()).contains("no-store");
        assertThat(evidence()).as("half a file is no evidence").isEqualTo(0);

        Answer wrong = append(address, 400, new byte[] {1});
        assertThat(wrong.status()).isEqualTo(409);
        assertThat(wrong.json().get("received").asLong()).isEqualTo(1000);

        Answer last = append(address, 1000, Arrays.copyOfRange(file, 1000, file.length));
        assertThat(last.status()).as(last.toString()).isEqualTo(204);
        String item = last.header("content-location").orElseThrow();
        assertThat(server.as(user).get(item + "/content").body()).isEqualTo(file);
        assertThat(server.as(user).get(item).json().get("kind").stringValue()).isEqualTo("standing-recording");
        Answer again = send(tus, "POST", address + "/evidence", new byte[0]);
        assertThat(again.status()).isEqualTo(204);
        assertThat(again.header("content-location")).contains(item);
        assertThat(evidence()).isEqualTo(1);
    }

    @Test
    void aDamagedPartIsNotStored() throws Exception {
        byte[] file = recording();
        String address = create(file.length, "");
        byte[] part = Arrays.copyOf(file, 500);
        String digest = Base64.getEncoder()
                .encodeToString(MessageDigest.getInstance("SHA-1").digest(part));
        part[7] ^= 1;
        Answer damaged = append(tus.header("Upload-Checksum", "sha1 " + digest), address, 0, part);
        assertThat(damaged.status()).isEqualTo(460);
        part[7] ^= 1;
        assertThat(append(tus.header("Upload-Checksum", "sha1 " + digest), address, 0, part)
                        .header("upload-offset"))
                .contains("500");
    }

    @Test
    void aFileThatIsNotTheOneAnnouncedIsNotStored() throws Exception {
        byte[] file = recording();
        String digest =
                HexFormat.of().formatHex(MessageDigest.getInstance("SHA-256").digest(new byte[3]));
        String address = create(file.length, "sha256 " + base64(digest));
        Answer refused = append(address, 0, file);
        assertThat(refused.status()).isEqualTo(409);
        assertThat(refused.json().get("type").stringValue()).endsWith("#upload-checksum");
        assertThat(evidence()).isEqualTo(0);
    }

    @Test
    void aRefusedFileNamesItsPlaces() {
        byte[] file = new String(recording(), StandardCharsets.UTF_8)
                .replaceFirst("\n3,12.61", "\n3,twelve")
                .getBytes(StandardCharsets.UTF_8);
        Answer refused = append(create(file.length, ""), 0, file);
        assertThat(refused.status()).isEqualTo(422);
        assertThat(refused.json().get("errors").get(0).get("line").asInt()).isEqualTo(5);
    }

    @Test
    void nobodyElseSeesAnUpload() {
        String address = create(10, "");
        Client other = server.as(server.newUser(Role.WORKSHOP)).header("Tus-Resumable", "1.0.0");
        assertThat(send(other, "HEAD", address, new byte[0]).status()).isEqualTo(404);
        assertThat(send(other, "POST", sent.api() + "/uploads", new byte[0], "Upload-Length", "10")
                        .status())
                .isEqualTo(404);
        assertThat(send(tus, "DELETE", address, new byte[0]).status()).isEqualTo(204);
        assertThat(send(tus, "HEAD", address, new byte[0]).status()).isEqualTo(404);
    }

    @Test
    void badAnnouncementsAreRefused() {
        assertThat(send(server.as(user), "POST", sent.api() + "/uploads", new byte[0], "Upload-Length", "10")
                        .status())
                .as("no version")
                .isEqualTo(412);
        assertThat(create(Long.toString(65L << 20), "").status()).isEqualTo(413);
        assertThat(create("0", "").status()).isEqualTo(400);
        assertThat(create("10", "filename *").status()).isEqualTo(400);
        for (int i = 0; i < ResumableUploadService.OPEN; i++) {
            assertThat(create("10", "").status()).isEqualTo(201);
        }
        assertThat(create("10", "").status()).isEqualTo(429);
    }

    private int evidence() {
        return server.as(user).get(sent.api()).json().get("evidence").size();
    }

    private String create(long length, String metadata) {
        Answer created = create(Long.toString(length), metadata);
        assertThat(created.status()).as(created.toString()).isEqualTo(201);
        assertThat(created.header("upload-expires")).isPresent();
        return created.header("location").orElseThrow();
    }

    private Answer create(String length, String metadata) {
        return send(
                tus.header("Upload-Metadata", metadata),
                "POST",
                sent.api() + "/uploads",
                new byte[0],
                "Upload-Length",
                length);
    }

    private Answer append(String address, long offset, byte[] part) {
        return append(tus, address, offset, part);
    }

    private static Answer append(Client client, String address, long offset, byte[] part) {
        return client.header("Upload-Offset", Long.toString(offset))
                .send("PATCH", address, BodyPublishers.ofByteArray(part), PART);
    }

    private static Answer send(Client client, String method, String path, byte[] body, String... header) {
        Client with = header.length == 0 ? client : client.header(header[0], header[1]);
        return with.send(
                method, path, body.length == 0 ? BodyPublishers.noBody() : BodyPublishers.ofByteArray(body), null);
    }

    private static String base64(String text) {
        return Base64.getEncoder().encodeToString(text.getBytes(StandardCharsets.UTF_8));
    }

    /** Ten minutes at rest. */
    private static byte[] recording() {
        StringBuilder csv = new StringBuilder("time_s,measured_v\n");
        for (int s = 0; s < 600; s++) {
            csv.append(s).append(",12.61\n");
        }
        return csv.toString().getBytes(StandardCharsets.UTF_8);
    }
}
