package org.voltdocket.evidence;

import static java.nio.charset.StandardCharsets.US_ASCII;

import de.siegmar.fastcsv.reader.CsvReader;
import de.siegmar.fastcsv.reader.CsvRecord;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.InputStreamReader;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.concurrent.TimeUnit;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;
import org.voltdocket.diagnosis.Channel;
import org.voltdocket.diagnosis.assess.Diagnosis;
import org.voltdocket.diagnosis.EvidenceKind;
import org.voltdocket.diagnosis.Recording;
import org.voltdocket.diagnosis.read.ByteSource;
import org.voltdocket.diagnosis.read.CsvScanner;
import org.voltdocket.diagnosis.read.ParsedFile;
import org.voltdocket.diagnosis.read.ReadResult;
import org.voltdocket.diagnosis.read.RecordingReader;
import org.voltdocket.evidence.storage.BlockCodec;
import org.voltdocket.secondmodel.HourDrive;
import org.voltdocket.support.Done;

/**
 * The way of a recording from CSV bytes to columns and into blocks, on a drive of ten hours (20 MB). {@code fastCsv} is
 * the measure of comparison: a well-kept reader and the library's own parsing of numbers, without any check.
 */
@BenchmarkMode(Mode.Throughput)
@OutputTimeUnit(TimeUnit.MICROSECONDS)
@Fork(value = 1, jvmArgs = {"-Xmx512m", "-XX:+UseSerialGC"})
@State(Scope.Benchmark)
public class RecordingBench {

    private static final int HOURS = 10;

    private byte[] csv;
    private ByteSource source;
    private Recording recording;
    private final List<byte[]> packed = new ArrayList<>();

    @Setup
    public void write() throws IOException {
        Recording hour = HourDrive.recording(true);
        StringBuilder text = new StringBuilder("time_s");
        for (Channel channel : Channel.values()) {
            text.append(hour.has(channel) ? "," + channel.id() : "");
        }
        text.append('\n');
        for (int row = 0; row < HOURS * hour.rows(); row++) {
            int of = row % hour.rows();
            double ago = row / hour.rows() * (hour.durationS() + 1);
            text.append(String.format(Locale.ROOT, "%.3f", ago + hour.timeS()[of]));
            for (Channel channel : Channel.values()) {
                if (hour.has(channel)) {
                    text.append(',').append(cell(hour.channel(channel)[of]));
                }
            }
            text.append('\n');
        }
        csv = text.toString().getBytes(US_ASCII);
        source = () -> new ByteArrayInputStream(csv);
        recording = read();
        for (Channel channel : Channel.values()) {
            if (recording.has(channel)) {
                packed.add(BlockCodec.pack(recording.channel(channel), 0, BlockCodec.ROWS));
            }
        }
        System.out.printf("%d bytes of CSV, %d rows%n", csv.length, recording.rows());
    }

    private static String cell(float value) {
        if (Float.isNaN(value)) {
            return "";
        }
        return value == Math.rint(value) ? Integer.toString((int) value) : String.format(Locale.ROOT, "%.3f", value);
    }

    private Recording read() throws IOException {
        ReadResult outcome = new RecordingReader(source, false, size -> {}).read();
        return (Recording) ((ParsedFile) outcome).reading();
    }

    @Benchmark
    public Recording columns(Done done) throws IOException {
        Recording columns = read();
        done.add(csv.length, columns.rows());
        return columns;
    }

    @Benchmark
    public long scanOnly(Done done) throws IOException {
        long cells = 0;
        try (CsvScanner scanner = new CsvScanner(source.open(), ',')) {
            while (scanner.next()) {
                cells += scanner.cells();
            }
        }
        done.add(csv.length, recording.rows());
        return cells;
    }

    @Benchmark
    public double fastCsv(Done done) throws IOException {
        double sum = 0;
        try (CsvReader<CsvRecord> rows =
                CsvReader.builder().ofCsvRecord(new InputStreamReader(source.open(), US_ASCII))) {
            boolean header = true;
            for (CsvRecord row : rows) {
                for (int i = 0; !header && i < row.getFieldCount(); i++) {
                    String cell = row.getField(i);
                    sum += cell.isEmpty() ? 0 : Double.parseDouble(cell);
                }
                header = false;
            }
        }
        done.add(csv.length, recording.rows());
        return sum;
    }

    @Benchmark
    public EvidenceKind kind(Done done) {
        EvidenceKind kind = Diagnosis.kindOf(recording);
        done.add(csv.length, recording.rows());
        return kind;
    }

    @Benchmark
    public long pack(Done done) {
        long packed = 0;
        for (int from = 0; from < recording.rows(); from += BlockCodec.ROWS) {
            int to = Math.min(from + BlockCodec.ROWS, recording.rows());
            packed += BlockCodec.pack(recording.timeS(), from, to).length;
            for (Channel channel : Channel.values()) {
                packed += recording.has(channel) ? BlockCodec.pack(recording.channel(channel), from, to).length : 0;
            }
        }
        done.add(csv.length, recording.rows());
        return packed;
    }

    /** One block of each channel; bytes are those of the columns. */
    @Benchmark
    public float[] unpack(Done done) {
        float[] column = new float[BlockCodec.ROWS];
        for (byte[] block : packed) {
            BlockCodec.unpack(block, column, 0, BlockCodec.ROWS);
        }
        done.add(packed.size() * BlockCodec.ROWS * Float.BYTES, BlockCodec.ROWS);
        return column;
    }
}
