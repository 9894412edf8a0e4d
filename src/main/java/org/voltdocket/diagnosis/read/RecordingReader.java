package org.voltdocket.diagnosis.read;

import static org.voltdocket.diagnosis.read.RejectedFile.Reason.RECORDING;
import static org.voltdocket.diagnosis.read.RejectedFile.Reason.TOO_LARGE;

import java.io.EOFException;
import java.io.IOException;
import java.io.InputStream;
import java.util.Locale;
import java.util.function.LongConsumer;
import java.util.zip.ZipException;
import org.voltdocket.diagnosis.Recording;

/**
 * Reads a recording, CSV by RFC 4180, into its columns. Two passes over the file, one to count and one
 * to fill, keep the use of memory near the size of the columns.
 */
public final class RecordingReader {

    private static final String MEDIA_TYPE = "text/csv";

    private final ByteSource source;
    private final boolean gzip;
    private final LongConsumer reserve;

    /**
     * @param source the rows, unpacked
     * @param gzip whether the original is gzipped
     * @param reserve receives the size of the columns in bytes before they are allocated
     */
    public RecordingReader(ByteSource source, boolean gzip, LongConsumer reserve) {
        this.source = source;
        this.gzip = gzip;
        this.reserve = reserve;
    }

    public ReadResult read() throws IOException {
        try {
            return parse();
        } catch (CsvScanner.RecordTooLong e) {
            return new RejectedFile(RECORDING, "The file is not a table: " + e.error.message(), e.error);
        } catch (ZipException | EOFException e) {
            return new RejectedFile(
                    RECORDING,
                    "The gzip file is damaged or cut short (" + e.getMessage() + "). Compress the recording again and"
                            + " upload it anew.");
        }
    }

    private ReadResult parse() throws IOException {
        long lines = 1;
        long bytes = 0;
        boolean open = false;
        try (InputStream in = source.open()) {
            byte[] block = new byte[1 << 16];
            for (int n = in.read(block); n >= 0; n = in.read(block)) {
                bytes += n;
                for (int i = 0; i < n; i++) {
                    lines += block[i] == '\n' ? 1 : 0;
                }
                open = n > 0 ? block[n - 1] != '\n' : open;
                if (bytes > FileLimits.UNPACKED_BYTES) {
                    return new RejectedFile(
                            TOO_LARGE,
                            String.format(
                                    Locale.ROOT,
                                    "The recording unpacks to more than %1$d GiB (limit of the file as sent: %2$d MiB,"
                                            + " unpacked: %1$d GiB and %3$d rows). Cut it into several recordings.",
                                    FileLimits.UNPACKED_GIB,
                                    FileLimits.FILE_MIB,
                                    FileLimits.ROWS),
                            new FileError(
                                    lines,
                                    1,
                                    "The limit of " + FileLimits.UNPACKED_GIB + " GiB is passed on this line."));
                }
            }
        }
        if (bytes == 0) {
            return new RejectedFile(RECORDING, "The file is empty. Export the recording again.");
        }
        FileErrors faults = new FileErrors();
        RecordingHeader columns = RecordingHeader.read(source, faults);
        if (columns == null) {
            return faults.refuse(
                    RECORDING, "The header of the recording is invalid. Correct it and upload the file again.");
        }
        long most = lines - 1 - (open ? 0 : 1); // without the header, and what follows the last line end
        int room = (int) Math.max(0, Math.min(most, FileLimits.ROWS));
        reserve.accept(room * (Double.BYTES + (long) Float.BYTES * columns.known()));
        RowReader rows = new RowReader(columns, room, faults);
        try (CsvScanner csv = new CsvScanner(source.open(), columns.delimiter())) {
            RejectedFile refused = rows.read(csv);
            if (refused != null) {
                return refused;
            }
        }
        Recording recording = rows.finish();
        return new ParsedFile(
                recording.kind(),
                gzip ? "application/gzip" : MEDIA_TYPE,
                recording,
                columns.ignored(),
                recording.startedAt().orElse(null));
    }
}
