package org.voltdocket.evidence;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.stream.Stream;
import java.util.zip.GZIPInputStream;
import org.junit.jupiter.api.Test;
import org.voltdocket.diagnosis.Channel;
import org.voltdocket.diagnosis.Recording;
import org.voltdocket.diagnosis.read.FileReading;
import org.voltdocket.evidence.original.OriginalFileChunk;
import org.voltdocket.evidence.original.OriginalFileStore;
import org.voltdocket.evidence.storage.BlockCodec;

/**
 * What a recording takes in the archive against the CSV text it came as, over every recording in {@code shared/samples}.
 * Writes {@code target/storage.md}.
 */
class StorageShareTest {

    private static final Path SAMPLES = Path.of("shared", "samples");

    /** Original and columns together, as a share of the CSV. */
    private static final double MOST = 0.35;

    /**
     * One recording.
     *
     * @param raw bytes of the original as it is kept when it is sent as plain CSV
     * @param columns bytes of the packed blocks
     */
    private record Size(String name, int rows, long samples, long csv, long raw, long columns) {

        double share() {
            return (double) (raw + columns) / csv;
        }

        String line() {
            return String.format(
                    Locale.ROOT,
                    "| %s | %d | %d | %d | %.2f | %.2f | %.1f %% | %.1f %% | %.1f %% |%n",
                    name,
                    rows,
                    samples,
                    csv,
                    (double) columns / samples,
                    (double) (raw + columns) / samples,
                    100.0 * raw / csv,
                    100.0 * columns / csv,
                    100 * share());
        }
    }

    @Test
    void originalAndColumnsTakeAThirdOfTheText() throws IOException {
        List<Path> files;
        try (Stream<Path> all = Files.walk(SAMPLES)) {
            files = all.filter(file -> file.toString().endsWith(".csv.gz"))
                    .sorted()
                    .toList();
        }
        assertThat(files).hasSizeGreaterThan(10);
        StringBuilder table = new StringBuilder("| recording | rows | samples | CSV, bytes | columns, bytes a sample |"
                + " both, bytes a sample | original | columns | both |\n|---|--:|--:|--:|--:|--:|--:|--:|--:|\n");
        Size all = new Size("all of them", 0, 0, 0, 0, 0);
        for (Path file : files) {
            Size one = size(file);
            table.append(one.line());
            all = new Size(
                    all.name(),
                    all.rows() + one.rows(),
                    all.samples() + one.samples(),
                    all.csv() + one.csv(),
                    all.raw() + one.raw(),
                    all.columns() + one.columns());
            assertThat(one.share()).as(one.name()).isLessThan(MOST);
        }
        table.append(all.line());
        Files.createDirectories(Path.of("target"));
        Files.writeString(Path.of("target", "storage.md"), table);
        assertThat(all.share()).as(table.toString()).isLessThan(MOST);
    }

    private static Size size(Path file) throws IOException {
        byte[] csv;
        try (InputStream in = new GZIPInputStream(Files.newInputStream(file))) {
            csv = in.readAllBytes();
        }
        Recording recording = (Recording) FileReading.of(file);
        long samples = 0;
        long columns = 0;
        for (int from = 0; from < recording.rows(); from += BlockCodec.ROWS) {
            int to = Math.min(from + BlockCodec.ROWS, recording.rows());
            columns += BlockCodec.pack(recording.timeS(), from, to).length;
            for (Channel channel : Channel.values()) {
                if (recording.has(channel)) {
                    columns += BlockCodec.pack(recording.channel(channel), from, to).length;
                    samples += there(recording.channel(channel), from, to);
                }
            }
        }
        return new Size(SAMPLES.relativize(file).toString(), recording.rows(), samples, csv.length, raw(csv), columns);
    }

    private static long there(float[] values, int from, int to) {
        long there = 0;
        for (int i = from; i < to; i++) {
            there += Float.isNaN(values[i]) ? 0 : 1;
        }
        return there;
    }

    /** As {@link OriginalFileStore} cuts and deflates it. */
    private static long raw(byte[] csv) throws IOException {
        long raw = 0;
        InputStream in = new ByteArrayInputStream(csv);
        for (byte[] chunk = in.readNBytes(OriginalFileChunk.MOST);
                chunk.length > 0;
                chunk = in.readNBytes(OriginalFileChunk.MOST)) {
            raw += Math.min(chunk.length, OriginalFileChunk.deflate(chunk).length);
        }
        return raw;
    }
}
