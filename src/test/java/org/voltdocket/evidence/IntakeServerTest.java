package org.voltdocket.evidence;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import java.util.UUID;
import java.util.concurrent.CyclicBarrier;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.voltdocket.assessment.CaseEditService;
import org.voltdocket.assessment.EvidenceUploadService;
import org.voltdocket.casefile.CaseReference;
import org.voltdocket.casefile.CaseService;
import org.voltdocket.casefile.NewCase;
import org.voltdocket.diagnosis.Channel;
import org.voltdocket.diagnosis.Evidence;
import org.voltdocket.diagnosis.EvidenceKind;
import org.voltdocket.diagnosis.Facts;
import org.voltdocket.diagnosis.Origin;
import org.voltdocket.diagnosis.Recording;
import org.voltdocket.diagnosis.read.Csv;
import org.voltdocket.diagnosis.read.FileLimits;
import org.voltdocket.diagnosis.read.ParsedFile;
import org.voltdocket.diagnosis.read.RejectedFile;
import org.voltdocket.diagnosis.read.TestRecordReader;
import org.voltdocket.evidence.original.OriginalFileStore;
import org.voltdocket.kernel.Actor;
import org.voltdocket.kernel.BatterySerial;
import org.voltdocket.kernel.RequestException;
import org.voltdocket.kernel.Role;
import org.voltdocket.kernel.Sha256;
import org.voltdocket.kernel.Vin;
import org.voltdocket.support.Server;
import org.voltdocket.support.ServerTest;
import org.voltdocket.trail.Trail;
import org.voltdocket.trail.TrailEntry;

/** The way in and out, on a real database. */
@ServerTest
class IntakeServerTest {

    private static final AtomicInteger NEXT = new AtomicInteger();

    @Autowired
    private EvidenceUploadService uploads;

    @Autowired
    private EvidenceArchive archive;

    @Autowired
    private SeriesService recordings;

    @Autowired
    private OriginalFileStore raw;

    @Autowired
    private CaseService cases;

    @Autowired
    private CaseEditService caseEdits;

    @Autowired
    private Trail trail;

    @Autowired
    private Server server;

    @Autowired
    private JdbcClient jdbc;

    private Actor actor;
    private CaseReference file;

    @BeforeEach
    void openACase() {
        actor = server.user(Role.WORKSHOP).actor();
        file = newCase();
    }

    private CaseReference newCase() {
        String serial = String.format("INTAKE-%06d", NEXT.incrementAndGet());
        return caseEdits
                .open(actor, new NewCase(new BatterySerial(serial), Vin.parse("WP0ZZZ99ZTS392124"), Facts.UNKNOWN))
                .ref();
    }

    private IntakeResult send(CaseReference to, String name, byte[] bytes) {
        return uploads.receive(actor, to, new Upload(name, new ByteArrayInputStream(bytes), null, Origin.WORKSHOP));
    }

    private EvidenceItem kept(String name, byte[] bytes) {
        IntakeResult received = send(file, name, bytes);
        assertThat(received).isInstanceOf(Stored.class);
        return ((Stored) received).item();
    }

    private byte[] content(UUID id) {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        archive.writeContent(id, out);
        return out.toByteArray();
    }

    private static byte[] sample(String name) throws IOException {
        return Files.readAllBytes(Path.of("shared/samples", name));
    }

    private static byte[] bytes(String text) {
        return text.getBytes(StandardCharsets.UTF_8);
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "battery-test.json",
                "cranking-test.json",
                "charging-test.json",
                "standing-comma.csv",
                "standing-semicolon.csv",
                "standing-tab.csv"
            })
    void givesBackTheSamplesBitForBit(String name) throws IOException {
        byte[] sample = sample(name);
        EvidenceItem item = kept("C:\\logs\\" + name, sample);
        assertThat(content(item.id())).isEqualTo(sample);
        assertThat(item.sha256()).isEqualTo(Sha256.of(sample));
        assertThat(item.fileName()).isEqualTo(name);
        assertThat(item.bytes()).isEqualTo(sample.length);
        String key = file.serial() + "|" + file.vin() + "|" + item.sha256();
        assertThat(item.id()).isEqualTo(UUID.nameUUIDFromBytes(bytes(key)));
        assertThat(archive.item(actor, item.id())).isEqualTo(item);
        assertThat(archive.ofCase(file.id())).containsExactly(item);
    }

    @Test
    void givesBackReadingsAsTheyWereRead() throws IOException {
        kept("a.json", sample("battery-test.json"));
        kept("b.csv", sample("standing-tab.csv"));
        kept("c.pdf", pdf());
        List<Evidence> readings = archive.readings(file.id());
        assertThat(readings).hasSize(2).isSortedAccordingTo(java.util.Comparator.comparing(Evidence::sha256));
        for (Evidence evidence : readings) {
            if (evidence.reading() instanceof Recording recording) {
                same(recording, (Recording)
                        Csv.parsed(sample("standing-tab.csv")).reading());
            } else {
                ParsedFile parsed =
                        (ParsedFile) new TestRecordReader(java.time.Instant.now()).read(sample("battery-test.json"));
                assertThat(evidence.reading()).isEqualTo(parsed.reading());
            }
        }
    }

    @Test
    void keepsALongRecordingToTheLastBit() {
        byte[] csv = bytes(longRecording(150_000));
        EvidenceItem item = kept("long.csv", csv);
        assertThat(item.rows()).isEqualTo(150_000);
        assertThat(item.channels()).containsExactly(Channel.MEASURED_V, Channel.REPORTED_V);
        assertThat(content(item.id())).isEqualTo(csv);
        same((Recording) archive.reading(item.id()).orElseThrow(), (Recording)
                Csv.parsed(csv).reading());
    }

    private static void same(Recording one, Recording other) {
        assertThat(one.kind()).isEqualTo(other.kind());
        assertThat(one.startedAt()).isEqualTo(other.startedAt());
        assertThat(one.timeS()).isEqualTo(other.timeS());
        assertThat(one.marks()).isEqualTo(other.marks());
        for (Channel channel : Channel.values()) {
            assertThat(one.channel(channel)).isEqualTo(other.channel(channel));
        }
    }

    private static String longRecording(int rows) {
        Random random = new Random(3);
        StringBuilder text = new StringBuilder("time_s,measured_v,reported_v\n");
        for (int i = 0; i < rows; i++) {
            text.append(i * 0.02)
                    .append(',')
                    .append((float) (12.5 + random.nextGaussian() * 0.1))
                    .append(',');
            text.append(i % 50 == 0 ? String.valueOf((float) (12.4 + random.nextGaussian() * 0.1)) : "")
                    .append('\n');
        }
        return text.toString();
    }

    @Test
    void theSameBytesAgainAreKnown() {
        byte[] csv = bytes(Csv.steady(12.5));
        EvidenceItem first = kept("one.csv", csv);
        IntakeResult again = send(file, "two.csv", csv);
        assertThat(again).isEqualTo(new AlreadyStored(first));
        assertThat(archive.ofCase(file.id())).hasSize(1);
        CaseReference other = newCase();
        assertThat(send(other, "one.csv", csv)).isInstanceOf(Stored.class);
        Integer chunks = jdbc.sql("select count(*) from raw_chunk where sha256 = ?")
                .param(first.sha256().hex())
                .query(Integer.class)
                .single();
        assertThat(chunks).isEqualTo(1);
    }

    @Test
    void uploadsOfTheSameBytesAtOnceGiveOneItem() throws Exception {
        int threads = 6;
        CyclicBarrier start = new CyclicBarrier(threads);
        ExecutorService pool = Executors.newFixedThreadPool(threads);
        try {
            for (int turn = 0; turn < 5; turn++) {
                byte[] csv = bytes(longRecording(20_000 + turn));
                List<Future<IntakeResult>> all = new ArrayList<>();
                for (int i = 0; i < threads; i++) {
                    all.add(pool.submit(() -> {
                        start.await();
                        return send(file, "same.csv", csv);
                    }));
                }
                int keptCount = 0;
                for (Future<IntakeResult> one : all) {
                    keptCount += one.get() instanceof Stored ? 1 : 0;
                }
                assertThat(keptCount).isEqualTo(1);
                assertThat(archive.ofCase(file.id())).hasSize(turn + 1);
            }
        } finally {
            pool.shutdownNow();
        }
    }

    @Test
    void uploadsOfTheSameBytesToTwoCasesAtOnceShareThem() throws Exception {
        CaseReference other = newCase();
        byte[] csv = bytes(longRecording(30_000));
        CyclicBarrier start = new CyclicBarrier(2);
        ExecutorService pool = Executors.newFixedThreadPool(2);
        try {
            List<Future<IntakeResult>> both = new ArrayList<>();
            for (CaseReference to : List.of(file, other)) {
                both.add(pool.submit(() -> {
                    start.await();
                    return send(to, "same.csv", csv);
                }));
            }
            for (Future<IntakeResult> one : both) {
                assertThat(one.get()).isInstanceOf(Stored.class);
                assertThat(content(((Stored) one.get()).item().id())).isEqualTo(csv);
            }
        } finally {
            pool.shutdownNow();
        }
    }

    @Test
    void whatFailsHalfwayLeavesNothing() {
        byte[] csv = bytes(longRecording(2000));
        Upload withoutOrigin = new Upload("x.csv", new ByteArrayInputStream(csv), null, null);
        assertThatThrownBy(() -> uploads.receive(actor, file, withoutOrigin)).isInstanceOf(NullPointerException.class);
        assertThat(rawFiles(Sha256.of(csv))).isZero();
        assertThat(send(file, "x.csv", csv)).isInstanceOf(Stored.class);
    }

    private int rawFiles(Sha256 sha256) {
        return jdbc.sql("select count(*) from raw_file where sha256 = ?")
                .param(sha256.hex())
                .query(Integer.class)
                .single();
    }

    @Test
    void damagedBytesAreNeverServedAsWhole() {
        byte[] bytes = bytes("as it came " + UUID.randomUUID());
        Sha256 sha256 = Sha256.of(bytes);
        jdbc.sql("insert into raw_file values (?, ?)")
                .params(sha256.hex(), (long) bytes.length)
                .update();
        bytes[3] ^= 1;
        jdbc.sql("insert into raw_chunk values (?, 0, ?)")
                .params(sha256.hex(), bytes)
                .update();
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        assertThatThrownBy(() -> raw.write(sha256, out)).hasMessageContaining("no longer give this digest");
        assertThat(out.size()).isZero();
    }

    @Test
    void aRefusalIsInTheTrailAndNowhereElse() {
        byte[] csv = bytes(Csv.with(7, line -> "5,12.x"));
        IntakeResult received = send(file, "/home/me/bad.csv", csv);
        assertThat(received).isInstanceOf(Rejected.class);
        assertThat(archive.ofCase(file.id())).isEmpty();
        assertThat(rawFiles(Sha256.of(csv))).isZero();
        TrailEntry entry = last("evidence-refused");
        assertThat(entry.toString())
                .contains("bad.csv", Sha256.of(csv).hex(), "recording-refused", "'12.x' is not a number", "line")
                .doesNotContain("/home/me");
    }

    @Test
    void whatIsKeptIsInTheTrail() {
        EvidenceItem item = kept("good.csv", bytes(Csv.steady(12.5)));
        assertThat(last("evidence-kept").toString())
                .contains("good.csv", item.sha256().hex(), item.id().toString());
    }

    private TrailEntry last(String act) {
        return trail.of(file.number().value()).stream()
                .filter(entry -> entry.act().equals(act))
                .reduce((a, b) -> b)
                .orElseThrow();
    }

    @Test
    void exactly64MiBAreTakenAndOneByteMoreIsNot() {
        byte[] pdf = new byte[(int) FileLimits.FILE_BYTES];
        byte[] head = bytes("%PDF-1.7\n");
        byte[] tail = bytes("startxref\n9\n%%EOF\n");
        System.arraycopy(head, 0, pdf, 0, head.length);
        System.arraycopy(tail, 0, pdf, pdf.length - tail.length, tail.length);
        EvidenceItem item = kept("large.pdf", pdf);
        assertThat(Sha256.of(content(item.id()))).isEqualTo(item.sha256());
        byte[] more = java.util.Arrays.copyOf(pdf, pdf.length + 1);
        IntakeResult received = send(newCase(), "larger.pdf", more);
        assertThat(((Rejected) received).file().reason()).isEqualTo(RejectedFile.Reason.TOO_LARGE);
    }

    @Test
    void aSenderThatBreaksOffLeavesNothing() throws IOException {
        InputStream broken = new InputStream() {
            private int left = 1000;

            @Override
            public int read() throws IOException {
                if (left-- == 0) {
                    throw new IOException("connection reset");
                }
                return 'a';
            }

            @Override
            public int read(byte[] into, int from, int most) throws IOException {
                into[from] = (byte) read();
                return 1;
            }
        };
        long before = spools();
        assertThatThrownBy(() -> uploads.receive(actor, file, new Upload("x", broken, null, Origin.WORKSHOP)))
                .isInstanceOf(UncheckedIOException.class);
        assertThat(archive.ofCase(file.id())).isEmpty();
        assertThat(spools()).isEqualTo(before);
    }

    private static long spools() throws IOException {
        try (Stream<Path> files = Files.list(Path.of(System.getProperty("java.io.tmpdir")))) {
            return files.filter(path -> path.getFileName().toString().matches("voltdocket-.*\\.upload"))
                    .count();
        }
    }

    @Test
    void anotherWorkshopSeesNothing() {
        EvidenceItem item = kept("good.csv", bytes(Csv.steady(12.5)));
        Actor stranger = new Actor("stranger", Role.WORKSHOP, Optional.of(UUID.randomUUID()));
        assertThatThrownBy(() -> archive.item(stranger, item.id())).isInstanceOf(RequestException.class);
        assertThatThrownBy(() -> recordings.read(stranger, item.id(), new SeriesQuery(List.of(), null, null, null)))
                .isInstanceOf(RequestException.class);
        Upload upload = new Upload("x.csv", new ByteArrayInputStream(bytes("x")), null, Origin.WORKSHOP);
        assertThatThrownBy(() -> uploads.receive(stranger, file, upload)).isInstanceOf(RequestException.class);
        assertThatThrownBy(() -> archive.item(actor, UUID.randomUUID())).isInstanceOf(RequestException.class);
        Server.User other = server.newUser(Role.WORKSHOP);
        assertThat(server.as(other)
                        .get("/api/v1/evidence/" + item.id() + "/content")
                        .status())
                .isEqualTo(404);
        assertThat(server.as(other)
                        .get("/api/v1/evidence/" + item.id() + "/series")
                        .status())
                .isEqualTo(404);
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "raw_file",
                "raw_chunk",
                "evidence",
                "test_reading",
                "recording",
                "recording_channel",
                "recording_block",
                "recording_mark"
            })
    void theDatabaseRefusesToChangeWhatIsKept(String table) throws IOException {
        kept("a.json", sample("battery-test.json"));
        kept("b.csv", sample("standing-comma.csv"));
        String column = table.startsWith("raw") ? "sha256" : table.equals("evidence") ? "id" : "evidence_id";
        for (String change : new String[] {
            "update " + table + " set " + column + " = " + column,
            "delete from " + table,
            "truncate " + table + " cascade"
        }) {
            assertThatThrownBy(() -> jdbc.sql(change).update()).hasStackTraceContaining("permission denied");
        }
    }

    @Test
    void servesTheOriginalWithItsDigest() {
        byte[] csv = bytes(Csv.steady(12.5));
        EvidenceItem item = kept("Fahrt \"ä\".csv", csv);
        String path = "/api/v1/evidence/" + item.id() + "/content";
        var answer = server.as(Role.WORKSHOP).get(path);
        assertThat(answer.status()).isEqualTo(200);
        assertThat(answer.body()).isEqualTo(csv);
        String digest =
                java.util.Base64.getEncoder().encodeToString(Sha256.of(csv).bytes());
        assertThat(answer.header("repr-digest")).contains("sha-256=:" + digest + ":");
        assertThat(answer.header("digest")).contains("sha-256=" + digest);
        assertThat(answer.header("etag")).contains("\"" + item.sha256().hex() + "\"");
        assertThat(answer.header("content-type").orElse("")).startsWith("text/csv");
        assertThat(answer.header("content-disposition").orElse(""))
                .startsWith("attachment;")
                .contains("%C3%A4");
        var again = server.as(Role.WORKSHOP)
                .header("If-None-Match", "\"" + item.sha256().hex() + "\"")
                .get(path);
        assertThat(again.status()).isEqualTo(304);
        var page = server.browser(server.user(Role.WORKSHOP)).get("/evidence/" + item.id() + "/content");
        assertThat(page.body()).isEqualTo(csv);
    }

    @Test
    void servesSeriesAndNamesBadParameters() {
        EvidenceItem item = kept("long.csv", bytes(longRecording(70_000)));
        String path = "/api/v1/evidence/" + item.id() + "/series";
        var series = server.as(Role.WORKSHOP).get(path + "?channels=measured_v,reported_v&from=10&to=1390&points=100");
        assertThat(series.status()).isEqualTo(200);
        assertThat(series.json().get("rows").asInt()).isEqualTo(69_001);
        assertThat(series.json().get("from").asDouble()).isEqualTo(10);
        assertThat(series.json().get("channels").get("measured_v").get("t").size())
                .isBetween(50, 102);
        assertThat(series.json().get("channels").get("reported_v").get("v").size())
                .isBetween(50, 102);
        for (String bad :
                new String[] {"points=1", "points=10001", "points=x", "from=x", "from=20&to=10", "channels=a"}) {
            var answer = server.as(Role.WORKSHOP).get(path + "?" + bad);
            assertThat(answer.status()).as(bad).isEqualTo(400);
            String parameter = bad.startsWith("from=20") ? "to" : bad.substring(0, bad.indexOf('='));
            assertThat(answer.json().get("errors").get(0).get("parameter").asString())
                    .isEqualTo(parameter);
        }
    }

    private static byte[] pdf() {
        return bytes("%PDF-1.4\n1 0 obj<<>>endobj\ntrailer<<>>\nstartxref\n9\n%%EOF\n");
    }

    @Test
    void tellsKindsByContentNotByName() throws IOException {
        assertThat(kept("x.csv", pdf()).kind()).isEqualTo(EvidenceKind.DOCUMENT);
        assertThat(kept("y.pdf", sample("battery-test.json")).kind()).isEqualTo(EvidenceKind.BATTERY_TEST);
        assertThat(kept(null, bytes(Csv.steady(12.6))).mediaType()).isEqualTo("text/csv");
    }
}
