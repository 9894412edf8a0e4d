package org.voltdocket.evidence;

import de.siegmar.fastcsv.reader.CsvReader;
import de.siegmar.fastcsv.reader.CsvRecord;
import java.io.BufferedWriter;
import java.io.IOException;
import java.lang.management.ManagementFactory;
import java.lang.management.ThreadMXBean;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Locale;
import java.util.Random;
import org.voltdocket.diagnosis.Channel;
import org.voltdocket.diagnosis.Diagnosis;
import org.voltdocket.diagnosis.Recording;

/**
 * How fast a recording of 64 MiB is read: {@code mvn -q -Pbench test-compile exec:java}. Prints the best and the median
 * of nine runs each, in MB of CSV (10^6 bytes) per second of this thread's processor time, so that a busy machine does
 * not count.
 */
public final class RecordingBench {

    private static final int RUNS = 9;
    private static final ThreadMXBean CPU = ManagementFactory.getThreadMXBean();

    private RecordingBench() {}

    private interface Work {
        long run() throws IOException;
    }

    public static void main(String[] args) throws IOException {
        Path file = Files.createTempFile("bench", ".csv");
        try {
            long bytes = write(file);
            Source source = () -> Files.newInputStream(file);
            measure("scan records only", bytes, () -> scan(source));
            measure("read into a recording", bytes, () -> rows(source));
            measure("FastCSV records, Double.parseDouble", bytes, () -> fastCsv(file));
            Recording recording =
                    (Recording) ((Parsed) new RecordingReader(source, false, size -> {}).read()).reading();
            measure("tell the kind", bytes, () -> Diagnosis.kindOf(recording).ordinal());
            measure("pack into blocks", bytes, () -> pack(recording));
        } finally {
            Files.deleteIfExists(file);
        }
    }

    private static long write(Path file) throws IOException {
        Random random = new Random(1);
        try (BufferedWriter out = Files.newBufferedWriter(file)) {
            out.write("time_s,measured_v,measured_a,reported_v,reported_a,engine_rpm,speed_kmh,coolant_c\n");
            long bytes = 0;
            for (int i = 0; bytes < Intake.MOST_BYTES - 200; i++) {
                String row = String.format(
                        Locale.ROOT,
                        "%.2f,%.3f,%.2f,%s,%s,%s,%s,%s%n",
                        i * 0.02,
                        12.4 + random.nextGaussian() * 0.3,
                        random.nextGaussian() * 20,
                        i % 5 == 0 ? String.format(Locale.ROOT, "%.3f", 12.3 + random.nextGaussian() * 0.2) : "",
                        i % 5 == 0 ? String.format(Locale.ROOT, "%.2f", random.nextGaussian() * 20) : "",
                        i % 10 == 0 ? String.valueOf(800 + random.nextInt(2000)) : "",
                        i % 10 == 0 ? String.valueOf(random.nextInt(120)) : "",
                        i % 50 == 0 ? "88" : "");
                out.write(row);
                bytes += row.length();
            }
        }
        return Files.size(file);
    }

    private static long scan(Source source) throws IOException {
        long cells = 0;
        try (CsvScanner csv = new CsvScanner(source.open(), ',')) {
            while (csv.next()) {
                cells += csv.cells();
            }
        }
        return cells;
    }

    private static long rows(Source source) throws IOException {
        Outcome outcome = new RecordingReader(source, false, size -> {}).read();
        return ((Recording) ((Parsed) outcome).reading()).rows();
    }

    private static long fastCsv(Path file) throws IOException {
        double sum = 0;
        try (CsvReader<CsvRecord> csv = CsvReader.builder().ofCsvRecord(file)) {
            boolean header = true;
            for (CsvRecord row : csv) {
                for (int i = 0; !header && i < row.getFieldCount(); i++) {
                    String cell = row.getField(i);
                    sum += cell.isEmpty() ? 0 : Double.parseDouble(cell);
                }
                header = false;
            }
        }
        return (long) sum;
    }

    private static long pack(Recording recording) {
        long packed = 0;
        for (int from = 0; from < recording.rows(); from += BlockCodec.ROWS) {
            int to = Math.min(from + BlockCodec.ROWS, recording.rows());
            packed += BlockCodec.pack(recording.timeS(), from, to).length;
            for (Channel channel : Channel.values()) {
                packed += recording.has(channel) ? BlockCodec.pack(recording.channel(channel), from, to).length : 0;
            }
        }
        return packed;
    }

    private static void measure(String what, long bytes, Work work) throws IOException {
        double[] rates = new double[RUNS];
        long result = 0;
        for (int i = -3; i < RUNS; i++) {
            long start = CPU.getCurrentThreadCpuTime();
            result = work.run();
            if (i >= 0) {
                rates[i] = bytes / 1e6 / ((CPU.getCurrentThreadCpuTime() - start) / 1e9);
            }
        }
        java.util.Arrays.sort(rates);
        System.out.printf(
                Locale.ROOT,
                "%-40s best %7.1f MB/s  median %7.1f MB/s  (%d)%n",
                what,
                rates[RUNS - 1],
                rates[RUNS / 2],
                result);
    }
}
