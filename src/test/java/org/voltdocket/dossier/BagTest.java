package org.voltdocket.dossier;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import gov.loc.repository.bagit.domain.Bag;
import gov.loc.repository.bagit.exceptions.CorruptChecksumException;
import gov.loc.repository.bagit.reader.BagReader;
import gov.loc.repository.bagit.verify.BagVerifier;
import java.awt.Color;
import java.awt.image.BufferedImage;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.UUID;
import java.util.stream.Stream;
import java.util.zip.ZipEntry;
import java.util.zip.ZipInputStream;
import javax.imageio.ImageIO;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.springframework.beans.factory.annotation.Autowired;
import org.voltdocket.demo.Scenario;
import org.voltdocket.kernel.Role;
import org.voltdocket.kernel.Sha256;
import org.voltdocket.support.Answer;
import org.voltdocket.support.Client;
import org.voltdocket.support.Server;
import org.voltdocket.support.ServerTest;
import org.voltdocket.support.TestDatabase;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;

/** Unpacks bags and checks them by a reader from elsewhere (Library of Congress, bagit-java). */
@ServerTest
class BagTest {

    @Autowired
    private Server server;

    @TempDir
    private Path folder;

    private Client workshop;
    private SentCase sent;
    private Answer answer;
    private Path bag;

    @BeforeEach
    void pack() throws IOException {
        workshop = server.as(server.newUser(Role.WORKSHOP));
        sent = SentCase.of(workshop, Scenario.SENSOR_READS_HIGH, 189);
        sent.send(workshop, "Prüf foto.jpg", photo(Color.RED), "taken in the yard");
        sent.send(workshop, "prüf_foto.jpg", photo(Color.BLUE), null);
        answer = workshop.get(sent.api() + "/bag.zip");
        assertThat(answer.status()).isEqualTo(200);
        bag = unzip(answer.body());
    }

    @Test
    void anotherReaderFindsItValid() throws Exception {
        assertThat(answer.header("content-type")).hasValue("application/zip");
        assertThat(bag.getFileName()).hasToString("voltdocket-" + sent.number());
        Bag read = new BagReader().read(bag);
        try (BagVerifier verifier = new BagVerifier()) {
            verifier.isValid(read, false);
            assertThat(BagVerifier.canQuickVerify(read)).isTrue();
            BagVerifier.quicklyVerify(read);
        }
        assertThat(read.getVersion()).hasToString("1.0");
        assertThat(read.getPayLoadManifests()).hasSize(2);
        assertThat(read.getTagManifests()).hasSize(2);
        assertThat(read.getMetadata().get("External-Identifier")).containsExactly(sent.number());
    }

    @Test
    void theOtherReaderSeesOneChangedByte() throws Exception {
        Path changed = bag.resolve("data/case.json");
        byte[] bytes = Files.readAllBytes(changed);
        bytes[bytes.length / 2] ^= 1;
        Files.write(changed, bytes);
        Bag read = new BagReader().read(bag);
        try (BagVerifier verifier = new BagVerifier()) {
            assertThatThrownBy(() -> verifier.isValid(read, false)).isInstanceOf(CorruptChecksumException.class);
        }
    }

    @Test
    void holdsEveryOriginalBitForBitAndTheCaseAsServed() throws IOException {
        List<String> digests = new ArrayList<>();
        try (Stream<Path> files = Files.list(bag.resolve("data/evidence"))) {
            for (Path file : files.sorted().toList()) {
                byte[] content = Files.readAllBytes(file);
                digests.add(Sha256.of(content).hex());
                assertThat(content)
                        .isEqualTo(sent.files().get(Sha256.of(content).hex()));
            }
        }
        assertThat(digests).containsExactlyElementsOf(sent.files().keySet());
        assertThat(Files.readAllBytes(bag.resolve("data/case.json")))
                .isEqualTo(workshop.get(sent.api()).body());
        assertThat(Files.readAllBytes(bag.resolve("data/report.pdf")))
                .isEqualTo(workshop.get(sent.api() + "/report.pdf").body());
        JsonNode trail = JsonMapper.shared().readTree(Files.readAllBytes(bag.resolve("data/trail.json")));
        assertThat(trail.get(0).get("act").stringValue()).isEqualTo("case-opened");
        assertThat(trail).hasSize(1 + sent.files().size());
        assertThat(Files.readString(bag.resolve("how-to-verify.txt")))
                .contains(sent.number(), "sha256sum --check manifest-sha256.txt")
                .doesNotContain("{");
    }

    @Test
    void aDecidedClaimIsInItWithItsLetterAndReportAsKept() throws Exception {
        Client clerk = server.as(Role.CLERK);
        workshop.postJson(sent.api() + "/claim", "{\"amount\":\"129.90\",\"currency\":\"EUR\"}");
        workshop.postJson(sent.api() + "/claim/submit", "{}");
        clerk.postJson(sent.api() + "/claim/take", "{}");
        clerk.postJson(sent.api() + "/claim/goodwill", "{\"reason\":\"A good customer.\"}");
        Path decided = unzip(workshop.get(sent.api() + "/bag.zip").body());
        try (BagVerifier verifier = new BagVerifier()) {
            verifier.isValid(new BagReader().read(decided), false);
        }
        JsonNode claim = JsonMapper.shared().readTree(Files.readAllBytes(decided.resolve("data/claim.json")));
        assertThat(claim).isEqualTo(workshop.get(sent.api()).json().get("claim"));
        for (String kind : List.of("letter", "report")) {
            byte[] paper = Files.readAllBytes(decided.resolve("data/claim/" + kind + ".pdf"));
            assertThat(Sha256.of(paper).hex())
                    .isEqualTo(claim.at("/decision/" + kind + "Sha256").stringValue());
        }
    }

    @Test
    void theSameCaseGivesTheSameBytes() {
        assertThat(workshop.get(sent.api() + "/bag.zip").body()).isEqualTo(answer.body());
    }

    @Test
    void aDamagedOriginalGivesAProblemAndNoBag() throws SQLException {
        Sha256 digest = Sha256.of(send(UUID.randomUUID() + ".json"));
        damage(digest);
        Answer refused = workshop.get(sent.api() + "/bag.zip");
        assertThat(refused.status()).isEqualTo(500);
        assertThat(refused.header("content-type")).hasValue("application/problem+json");
        assertThat(workshop.get(sent.api() + "/report.pdf").status()).isEqualTo(200);
    }

    private byte[] send(String instrument) {
        byte[] test = ("{\"kind\":\"battery-test\",\"takenAt\":\"2026-03-04T08:40:00+01:00\",\"restVoltageV\":12.61,"
                        + "\"temperatureC\":18,\"instrument\":{\"serial\":\"" + instrument + "\"}}")
                .getBytes(StandardCharsets.UTF_8);
        sent.send(workshop, "test.json", test, null);
        return test;
    }

    /** Changes a kept byte behind the server's back; as the owner, with the triggers that refuse it put aside. */
    private void damage(Sha256 digest) throws SQLException {
        try (Connection owner = TestDatabase.shared().connectAsOwner("postgres");
                Statement statement = owner.createStatement()) {
            statement.execute("set session_replication_role = replica");
            assertThat(statement.executeUpdate(
                            "update raw_chunk set data = set_byte(data, 5, get_byte(data, 5) # 1) where sha256 = '"
                                    + digest.hex() + "'"))
                    .isOne();
        }
    }

    private static byte[] photo(Color colour) throws IOException {
        BufferedImage image = new BufferedImage(8, 8, BufferedImage.TYPE_INT_RGB);
        image.setRGB(3, 3, colour.getRGB());
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        ImageIO.write(image, "jpeg", out);
        return out.toByteArray();
    }

    /** Unpacks by the plain zip reader; nothing may leave the folder, and no name comes twice. */
    private Path unzip(byte[] bytes) throws IOException {
        Path base = null;
        Set<String> seen = new HashSet<>();
        try (ZipInputStream zip = new ZipInputStream(new ByteArrayInputStream(bytes), StandardCharsets.UTF_8)) {
            for (ZipEntry entry = zip.getNextEntry(); entry != null; entry = zip.getNextEntry()) {
                Path file = folder.resolve(entry.getName()).normalize();
                assertThat(file).startsWithRaw(folder);
                assertThat(seen.add(entry.getName().toLowerCase(Locale.ROOT))).isTrue();
                Files.createDirectories(file.getParent());
                Files.write(file, zip.readAllBytes());
                base = folder.resolve(folder.relativize(file).getName(0));
            }
        }
        return base;
    }
}
