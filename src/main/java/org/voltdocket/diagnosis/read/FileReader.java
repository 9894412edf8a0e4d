package org.voltdocket.diagnosis.read;

import static org.voltdocket.diagnosis.read.RejectedFile.Reason.KIND_UNKNOWN;
import static org.voltdocket.diagnosis.read.RejectedFile.Reason.TEST_RECORD;

import java.io.EOFException;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.function.LongConsumer;
import java.util.zip.ZipException;

/** Detects the kind of a file by its first bytes, not by its name, and reads it. */
public final class FileReader {

    private static final int HEAD = 4096;
    private static final String TAKEN =
            " Taken are recordings (CSV, also gzipped), test records (JSON), and documents" + " (PDF, JPEG, PNG).";

    private final Path file;
    private final Instant now;
    private final LongConsumer reserve;

    public FileReader(Path file, Instant now, LongConsumer reserve) {
        this.file = file;
        this.now = now;
        this.reserve = reserve;
    }

    public ReadResult read() throws IOException {
        byte[] head = head(() -> Files.newInputStream(file));
        if (starts(head, 0x25, 0x50, 0x44, 0x46, 0x2d)) {
            return DocumentCheck.pdf(file);
        }
        if (starts(head, 0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a)) {
            return DocumentCheck.png(file);
        }
        if (starts(head, 0xff, 0xd8, 0xff)) {
            return DocumentCheck.jpeg(file);
        }
        if (starts(head, 0x1f, 0x8b)) {
            return unpacked();
        }
        if (firstSign(head) == '{') {
            return testRecord();
        }
        RejectedFile foreign = foreign(head);
        return foreign != null ? foreign : new RecordingReader(() -> Files.newInputStream(file), false, reserve).read();
    }

    private ReadResult unpacked() throws IOException {
        ByteSource source = () -> new GzipInput(Files.newInputStream(file));
        try {
            byte[] head = head(source);
            if (firstSign(head) == '{') {
                return new RejectedFile(
                        KIND_UNKNOWN, "The gzip file holds a JSON object. Send test records as plain JSON.");
            }
            RejectedFile foreign = foreign(head);
            if (foreign != null) {
                return new RejectedFile(KIND_UNKNOWN, "Inside the gzip file: " + foreign.detail());
            }
        } catch (ZipException | EOFException e) {
            return new RejectedFile(
                    RejectedFile.Reason.RECORDING,
                    "The gzip file is damaged or cut short (" + e.getMessage() + "). Compress the recording again.");
        }
        return new RecordingReader(source, true, reserve).read();
    }

    private ReadResult testRecord() throws IOException {
        if (Files.size(file) > FileLimits.TEST_RECORD_BYTES) {
            return new RejectedFile(
                    TEST_RECORD,
                    "A test record has " + FileLimits.TEST_RECORD_MIB
                            + " MiB at most. Send each test as one small object.");
        }
        return new TestRecordReader(now).read(Files.readAllBytes(file));
    }

    /** The rejection of binary data or of another text format; null if it may be CSV. */
    private static RejectedFile foreign(byte[] head) {
        if (starts(head, 0x50, 0x4b, 0x03, 0x04)) {
            return unknown("The file is a ZIP archive or an office file. Unpack it, or export the sheet as CSV.");
        }
        if (starts(head, 0xff, 0xfe) || starts(head, 0xfe, 0xff)) {
            return unknown("The file is UTF-16 text. Save it as UTF-8.");
        }
        int sign = firstSign(head);
        if (sign == '[') {
            return unknown("The file is a JSON array. Send each test record as one object in a file of its own.");
        }
        if (sign == '<') {
            return unknown("The file is a page or XML.");
        }
        for (byte b : head) {
            if (b >= 0 && b < 0x20 && b != '\t' && b != '\n' && b != '\r' && b != 0x0c) {
                return unknown("The file is neither text nor a known document.");
            }
        }
        return null;
    }

    private static RejectedFile unknown(String what) {
        return new RejectedFile(KIND_UNKNOWN, what + TAKEN);
    }

    private static byte[] head(ByteSource source) throws IOException {
        try (InputStream in = source.open()) {
            return in.readNBytes(HEAD);
        }
    }

    private static boolean starts(byte[] head, int... magic) {
        if (head.length < magic.length) {
            return false;
        }
        for (int i = 0; i < magic.length; i++) {
            if ((head[i] & 0xff) != magic[i]) {
                return false;
            }
        }
        return true;
    }

    /** First character that is no blank, after a byte order mark; -1 if there is none. */
    private static int firstSign(byte[] head) {
        String text = new String(head, StandardCharsets.ISO_8859_1);
        String bare = text.startsWith("\u00ef\u00bb\u00bf") ? text.substring(3) : text;
        return bare.stripLeading().isEmpty() ? -1 : bare.stripLeading().charAt(0);
    }
}
