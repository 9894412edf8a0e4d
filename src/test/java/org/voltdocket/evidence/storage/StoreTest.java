package org.voltdocket.evidence.storage;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.ByteArrayInputStream;
import java.io.InputStream;
import java.net.URI;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.concurrent.CompletableFuture;
import java.util.zip.ZipEntry;
import java.util.zip.ZipInputStream;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.MethodOrderer;
import org.junit.jupiter.api.Order;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestInstance;
import org.junit.jupiter.api.TestMethodOrder;
import org.junit.jupiter.api.io.TempDir;
import org.voltdocket.evidence.original.ObjectStore;
import org.voltdocket.evidence.original.ObjectStoreUnavailableException;
import org.voltdocket.evidence.original.StoreSettings;
import org.voltdocket.kernel.Sha256;
import org.voltdocket.support.Answer;
import org.voltdocket.support.Client;
import org.voltdocket.support.Node;
import org.voltdocket.support.OwnDatabase;
import org.voltdocket.support.People;
import org.voltdocket.support.S3Server;

/** A server that keeps originals in a store of objects, with a real store over HTTP that goes away, stalls and is damaged. */
@TestInstance(TestInstance.Lifecycle.PER_CLASS)
@TestMethodOrder(MethodOrderer.OrderAnnotation.class)
class StoreTest {

    private Path folder;
    private OwnDatabase database;
    private S3Server store;
    private Node node;
    private People people;
    private Client workshop;
    private String number;
    private byte[] before;
    private byte[] drive;

    @BeforeAll
    void start(@TempDir Path folder) throws Exception {
        this.folder = folder;
        database = new OwnDatabase(folder.resolve("pg"));
        store = new S3Server(folder.resolve("s3"));
        before = People.drive(600);
        drive = People.drive(60_000);
        try (Node without = new Node(database, folder.resolve("without"))) {
            people = new People(without);
            number = people.open(without);
            assertThat(people.workshop(without)
                            .upload(People.evidence(number), "before.csv", before, null)
                            .status())
                    .isEqualTo(201);
        }
        node = new Node(database, folder.resolve("node"), store.options(), S3Server.environment());
        workshop = people.workshop(node);
    }

    @AfterAll
    void end() throws Exception {
        for (AutoCloseable one : new AutoCloseable[] {node, store, database}) {
            if (one != null) {
                one.close();
            }
        }
    }

    @Test
    @Order(1)
    void anArchiveHoldsBothAndEachFileSaysWhereItIs() throws Exception {
        assertThat(upload(number, drive).status()).isEqualTo(201);
        assertThat(upload(number, drive).status()).isEqualTo(200);
        assertThat(store.objects()).containsExactly(object(drive));
        assertThat(object(drive)).hasBinaryContent(drive);
        assertThat(text("select place from raw_file where sha256 = '" + hex(before) + "'"))
                .isEqualTo("database");
        assertThat(text("select place from raw_file where sha256 = '" + hex(drive) + "'"))
                .isEqualTo("store");
        assertThat(text("select count(*) from raw_chunk where sha256 = '" + hex(drive) + "'"))
                .isEqualTo("0");
        for (byte[] file : List.of(before, drive)) {
            Answer content = content(file);
            assertThat(content.status()).isEqualTo(200);
            assertThat(content.body()).isEqualTo(file);
            assertThat(content.header("etag")).contains("\"" + hex(file) + "\"");
        }
        assertThat(originals(workshop.get("/api/v1/cases/" + number + "/bag.zip")))
                .containsExactlyInAnyOrder(hex(before), hex(drive));
        String other = people.open(node);
        assertThat(upload(other, before).status()).isEqualTo(201); // known, so it stays where it is
        assertThat(upload(other, drive).status()).isEqualTo(201);
        assertThat(store.objects()).hasSize(1);
        Node.Said verified = node.command("--verify-evidence");
        assertThat(verified.code()).as(verified.text()).isZero();
        assertThat(verified.text())
                .contains("The evidence is intact: 2 originals", "; 1 of the originals are in the store");
    }

    @Test
    @Order(2)
    void aServerThatNamesNoStoreDoesNotStartOnSuchAnArchive() throws Exception {
        Node.Said said = Node.command(database, List.of("--server.port=0"), Map.of());
        assertThat(said.code()).isEqualTo(1);
        assertThat(said.text())
                .contains("Original files of this archive are in a store of objects, and none is named")
                .contains("VOLTDOCKET_RAW_BUCKET");
        Node.Said verified = Node.command(database, List.of(), Map.of(), "--verify-evidence");
        assertThat(verified.code()).isEqualTo(2);
        assertThat(verified.text()).contains("none is named");
    }

    @Test
    @Order(3)
    void aStoreThatIsGoneRefusesFilesAtOnceLosesNothingAndStopsNothingElse() throws Exception {
        String claimed = people.claimed(node);
        byte[] file = People.drive(900);
        store.kill();
        Answer refused = upload(number, file);
        assertThat(refused.status()).as(refused.toString()).isEqualTo(503);
        assertThat(refused.json().get("type").stringValue()).endsWith("#store-away");
        assertThat(refused.json().get("detail").stringValue()).contains("was not kept", "Send it again");
        assertThat(refused.header("retry-after")).contains("30");
        Answer unread = content(drive);
        assertThat(unread.status()).isEqualTo(503);
        assertThat(unread.header("content-type")).contains("application/problem+json");
        assertThat(workshop.get("/api/v1/cases/" + number + "/bag.zip").status())
                .isEqualTo(503);
        assertThat(content(before).body()).isEqualTo(before);
        assertThat(workshop.get("/api/v1/cases/" + number).json().get("evidence"))
                .hasSize(2);
        assertThat(people.decline(node, claimed).status()).isEqualTo(200);
        Answer ready = node.management().get("/actuator/health/readiness");
        assertThat(ready.status()).isEqualTo(200);
        assertThat(ready.text()).isEqualTo("{\"status\":\"LIMITED\"}");
        assertThat(people.admin(node)
                        .at(node.management())
                        .get("/actuator/prometheus")
                        .text())
                .contains("voltdocket_originals_store_up 0.0", "act=\"put\"");
        assertThat(People.pages(node, Node.ADMIN).get("/watch").text())
                .contains("the object store does not answer", S3Server.BUCKET)
                .doesNotContain("??", S3Server.SECRET);
        Node.Said unknown = node.command("--verify-evidence");
        assertThat(unknown.code()).as(unknown.text()).isEqualTo(2);
        assertThat(unknown.text()).contains("cannot be verified", "does not answer");

        store.start();
        assertThat(upload(number, file).status()).isEqualTo(201);
        assertThat(content(drive).body()).isEqualTo(drive);
    }

    @Test
    @Order(4)
    void whatIsPutAndThenNotKeptIsNamedAndUsedAgain() throws Exception {
        byte[] file = People.drive(700);
        execute("alter table evidence add constraint on_purpose check (file_name <> 'x.csv') not valid");
        assertThat(workshop.upload(People.evidence(number), "x.csv", file, null).status())
                .isGreaterThanOrEqualTo(400);
        execute("alter table evidence drop constraint on_purpose");
        assertThat(text("select count(*) from raw_file where sha256 = '" + hex(file) + "'"))
                .isEqualTo("0");
        Node.Said verified = node.command("--verify-evidence");
        assertThat(verified.code()).as(verified.text()).isZero();
        assertThat(verified.text())
                .contains("Objects in the store that are no evidence: 1.", ObjectStore.name(Sha256.of(file)));
        int objects = store.objects().size();
        assertThat(upload(number, file).status()).isEqualTo(201);
        assertThat(store.objects()).hasSize(objects);
    }

    @Test
    @Order(5)
    void noConnectionToTheDatabaseWaitsForAStoreThatStalls() throws Exception {
        store.stall();
        List<CompletableFuture<Answer>> uploads = new ArrayList<>();
        for (int i = 0; i < 4; i++) {
            byte[] file = People.drive(800);
            uploads.add(CompletableFuture.supplyAsync(() -> upload(number, file)));
        }
        Thread.sleep(2000); // to come as far as the store, whose silence is borne for ten seconds
        List<String> held = new ArrayList<>();
        for (int i = 0; i < 5; i++) {
            held.add(text("select count(*) from pg_stat_activity where state like 'idle in transaction%'"));
            assertThat(workshop.get("/api/v1/cases/" + number).status()).isEqualTo(200);
        }
        assertThat(held).contains("0"); // work of the server's own may be seen in one of them, the four would be in all
        assertThat(uploads).noneMatch(CompletableFuture::isDone);
        store.goOn();
        for (CompletableFuture<Answer> upload : uploads) {
            assertThat(upload.get().status()).as(upload.get().toString()).isEqualTo(201);
        }
    }

    @Test
    @Order(6)
    void damageInTheStoreIsNeverTakenForTheFileAndIsNamed() throws Exception {
        byte[] damaged = drive.clone();
        damaged[damaged.length - 2] ^= 1;
        Files.write(object(drive), damaged);
        Answer content = content(drive);
        assertThat(content.status()).isEqualTo(500);
        assertThat(content.header("content-type")).contains("application/problem+json");
        assertThat(workshop.get("/api/v1/cases/" + number + "/bag.zip").status())
                .isEqualTo(500);
        Node.Said changed = node.command("--verify-evidence");
        assertThat(changed.code()).isEqualTo(1);
        assertThat(changed.text()).contains("DAMAGED: 1 places", hex(drive), "store's own backup");
        Files.delete(object(drive));
        Node.Said missing = node.command("--verify-evidence");
        assertThat(missing.code()).isEqualTo(1);
        assertThat(missing.text()).contains("DAMAGED: 1 places", "has no object " + ObjectStore.name(Sha256.of(drive)));
        Files.write(object(drive), drive);
        assertThat(content(drive).body()).isEqualTo(drive);
    }

    @Test
    @Order(7)
    void aStoreThatRefusesTheCredentialsOrHasNoSuchBucketSaysSo() throws Exception {
        Path file = Files.write(folder.resolve("file"), before);
        StoreSettings wrong = new StoreSettings(
                URI.create(store.endpoint()), "us-east-1", S3Server.BUCKET, true, S3Server.KEY, "another secret");
        try (ObjectStore refusing = new ObjectStore(wrong)) {
            assertThatThrownBy(() -> refusing.put(Sha256.of(before), file))
                    .isInstanceOf(ObjectStoreUnavailableException.class)
                    .hasMessageContaining("403");
            assertThat(refusing.state().answers()).isFalse();
        }
        StoreSettings nowhere = new StoreSettings(
                URI.create(store.endpoint()), "us-east-1", "no-such-bucket", true, S3Server.KEY, S3Server.SECRET);
        try (ObjectStore empty = new ObjectStore(nowhere)) {
            assertThatThrownBy(() -> empty.put(Sha256.of(before), file))
                    .isInstanceOf(ObjectStoreUnavailableException.class);
        }
    }

    @Test
    @Order(8)
    void theLargestFileGoesThereAndBack() throws Exception {
        byte[] bytes = new byte[64 << 20];
        new Random(1).nextBytes(bytes);
        Path file = Files.write(folder.resolve("largest"), bytes);
        StoreSettings settings = new StoreSettings(
                URI.create(store.endpoint()), "us-east-1", S3Server.BUCKET, true, S3Server.KEY, S3Server.SECRET);
        try (ObjectStore objects = new ObjectStore(settings)) {
            objects.put(Sha256.of(bytes), file);
            assertThat(object(bytes)).hasSize(bytes.length);
            try (InputStream back = objects.open(Sha256.of(bytes))) {
                assertThat(Sha256.of(back.readAllBytes())).isEqualTo(Sha256.of(bytes));
            }
        }
    }

    private Answer upload(String to, byte[] file) {
        return workshop.upload(People.evidence(to), "drive.csv", file, null);
    }

    private Answer content(byte[] file) throws Exception {
        return workshop.get("/api/v1/evidence/"
                + text("select e.id from evidence e join case_file c on c.id = e.case_id where c.number = '" + number
                        + "' and e.sha256 = '" + hex(file) + "'")
                + "/content");
    }

    private Path object(byte[] file) {
        return store.object(ObjectStore.name(Sha256.of(file)));
    }

    private static String hex(byte[] file) {
        return Sha256.of(file).hex();
    }

    /** Digests of what a bag holds as evidence. */
    private static List<String> originals(Answer bag) throws Exception {
        assertThat(bag.status()).isEqualTo(200);
        List<String> found = new ArrayList<>();
        try (ZipInputStream zip = new ZipInputStream(new ByteArrayInputStream(bag.body()))) {
            for (ZipEntry entry = zip.getNextEntry(); entry != null; entry = zip.getNextEntry()) {
                if (entry.getName().contains("/data/evidence/")) {
                    found.add(hex(zip.readAllBytes()));
                }
            }
        }
        return found;
    }

    private void execute(String sql) throws SQLException {
        try (Connection connection = database.connect();
                Statement statement = connection.createStatement()) {
            statement.execute(sql);
        }
    }

    private String text(String sql) throws SQLException {
        try (Connection connection = database.connect();
                Statement statement = connection.createStatement();
                ResultSet rows = statement.executeQuery(sql)) {
            rows.next();
            return rows.getString(1);
        }
    }
}
