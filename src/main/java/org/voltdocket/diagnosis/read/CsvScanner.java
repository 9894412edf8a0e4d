package org.voltdocket.diagnosis.read;

import java.io.Closeable;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;

/**
 * Reads RFC 4180 records byte by byte without making an object per cell: a large recording has tens of millions of
 * them. Cells stay in {@link #buffer()} until the next record; lines end in CRLF or LF; a UTF-8 byte order mark is
 * skipped. Every record with a byte above ASCII is checked to be UTF-8. A general CSV library is not used here because
 * an error names line and column of the byte, which none reports; {@code RecordingBench} compares the speed.
 */
public final class CsvScanner implements Closeable {

    /** Longest record, bytes; longer ones come of a quote that nobody closed. */
    static final int MOST_RECORD = 1 << 20;

    private static final byte PLAIN = 0;
    private static final byte QUOTED = 1;
    private static final byte ESCAPED = 2;

    private final InputStream in;
    private final byte delimiter;
    private byte[] buf = new byte[1 << 17];
    private int pos;
    private int limit;
    private int rowStart;
    private int shifted;
    private long line;
    private long nextLine = 1;
    private int cells;
    private int[] starts = new int[16];
    private int[] ends = new int[16];
    private byte[] forms = new byte[16];
    private int bits;
    private int faultAt;
    private String fault;

    /** The record is longer than {@link #MOST_RECORD}. */
    static final class RecordTooLong extends IOException {
        private static final long serialVersionUID = 1L;
        final transient FileError error;

        RecordTooLong(FileError error) {
            super(error.message());
            this.error = error;
        }
    }

    public CsvScanner(InputStream in, char delimiter) throws IOException {
        this.in = in;
        this.delimiter = (byte) delimiter;
        while (limit < 3 && fill()) {
            continue;
        }
        if (limit >= 3 && buf[0] == (byte) 0xef && buf[1] == (byte) 0xbb && buf[2] == (byte) 0xbf) {
            pos = 3;
        }
    }

    /** Moves to the next record; false at the end of the file. */
    public boolean next() throws IOException {
        rowStart = pos;
        line = nextLine;
        cells = 0;
        fault = null;
        bits = 0;
        if (pos == limit && !fill()) {
            return false;
        }
        boolean more = true;
        while (more) {
            more = pos < limit && buf[pos] == '"' ? quoted() : plain();
            if (more && pos == limit && !fill()) {
                keep(pos, pos, PLAIN); // the delimiter was the last byte of the file
                more = false;
            }
        }
        if (bits < 0) {
            checkUtf8();
        }
        return true;
    }

    private boolean plain() throws IOException {
        int from = pos;
        int p = pos;
        int seen = 0;
        final byte d = delimiter;
        while (true) {
            byte[] b = buf;
            int to = limit;
            while (p < to) {
                byte c = b[p++];
                if (c == d) {
                    bits |= seen;
                    pos = p;
                    keep(from, p - 1, PLAIN);
                    return true;
                }
                if (c == '\n') {
                    bits |= seen;
                    pos = p;
                    nextLine++;
                    keep(from, withoutCr(from, p - 1), PLAIN);
                    return false;
                }
                if (c == '"') {
                    blame(
                            p - 1,
                            "A quote stands inside a cell that does not begin with one. Put the whole cell in"
                                    + " quotes and double the inner one.");
                }
                seen |= c;
            }
            pos = p;
            boolean more = fill();
            p = pos;
            from -= shifted;
            if (!more) {
                bits |= seen;
                keep(from, withoutCr(from, p), PLAIN);
                return false;
            }
        }
    }

    private boolean quoted() throws IOException {
        int from = pos + 1;
        int p = from;
        byte form = QUOTED;
        while (true) {
            if (p == limit) {
                pos = p;
                boolean more = fill();
                p = pos;
                from -= shifted;
                if (!more) {
                    blame(from - 1, "This quote is never closed. Close it, or double it if it belongs to the text.");
                    keep(from, p, form);
                    return false;
                }
            }
            byte c = buf[p++];
            bits |= c;
            if (c == '\n') {
                nextLine++;
            } else if (c == '"') {
                if (p == limit) {
                    pos = p;
                    fill();
                    p = pos;
                    from -= shifted;
                }
                if (p == limit || buf[p] != '"') {
                    break;
                }
                form = ESCAPED;
                p++;
            }
        }
        pos = p;
        keep(from, p - 1, form);
        boolean more = plain(); // what follows the closing quote: nothing, if all is well
        cells--;
        if (starts[cells] != ends[cells]) {
            blame(starts[cells], "Text follows the closing quote of a cell. Double the quotes inside the cell.");
        }
        return more;
    }

    private int withoutCr(int from, int to) {
        return to > from && buf[to - 1] == '\r' ? to - 1 : to;
    }

    private void keep(int from, int to, byte form) {
        if (cells == starts.length) {
            starts = Arrays.copyOf(starts, cells * 2);
            ends = Arrays.copyOf(ends, cells * 2);
            forms = Arrays.copyOf(forms, cells * 2);
        }
        starts[cells] = from;
        ends[cells] = to;
        forms[cells++] = form;
    }

    private void blame(int at, String message) {
        if (fault == null) {
            faultAt = at;
            fault = message;
        }
    }

    private void checkUtf8() {
        int wrong = Utf8.firstWrong(buf, rowStart, pos);
        if (wrong >= 0) {
            fault = null;
            blame(wrong, String.format("The byte %02X is not valid UTF-8. Save the file as UTF-8.", buf[wrong]));
        }
    }

    /** Reads on; moves the record under way to the front of the buffer, by {@link #shifted}. False at the end. */
    private boolean fill() throws IOException {
        shifted = rowStart;
        if (rowStart > 0) {
            System.arraycopy(buf, rowStart, buf, 0, limit - rowStart);
            for (int i = 0; i < cells; i++) {
                starts[i] -= shifted;
                ends[i] -= shifted;
            }
            faultAt -= shifted;
            pos -= shifted;
            limit -= shifted;
            rowStart = 0;
        }
        if (limit == buf.length) {
            if (limit >= MOST_RECORD) {
                throw new RecordTooLong(new FileError(
                        line, 1, "This row is longer than 1 MiB. Look for a quote that is opened and never closed."));
            }
            buf = Arrays.copyOf(buf, buf.length * 2);
        }
        int n = in.read(buf, limit, buf.length - limit);
        if (n <= 0) {
            return false;
        }
        limit += n;
        return true;
    }

    /** Line on which the record begins, from 1. */
    long line() {
        return line;
    }

    public int cells() {
        return cells;
    }

    /** Whether the record is an empty line. */
    boolean empty() {
        return cells == 1 && forms[0] == PLAIN && starts[0] == ends[0];
    }

    byte[] buffer() {
        return buf;
    }

    int start(int cell) {
        return starts[cell];
    }

    int end(int cell) {
        return ends[cell];
    }

    /** What breaks RFC 4180 or UTF-8 in this record; null where nothing does. */
    FileError fault() {
        return fault == null ? null : at(faultAt, fault);
    }

    /** The text of a cell, quotes undone. */
    String text(int cell) {
        String raw = new String(buf, starts[cell], ends[cell] - starts[cell], StandardCharsets.UTF_8);
        return forms[cell] == ESCAPED ? raw.replace("\"\"", "\"") : raw;
    }

    /** An error at the beginning of a cell; at its quote if it has one. */
    FileError error(int cell, String message) {
        return at(forms[cell] == PLAIN ? starts[cell] : starts[cell] - 1, message);
    }

    private FileError at(int index, String message) {
        long onLine = line;
        int lineStart = rowStart;
        for (int i = rowStart; i < index; i++) {
            if (buf[i] == '\n') {
                onLine++;
                lineStart = i + 1;
            }
        }
        return new FileError(onLine, Utf8.characters(buf, lineStart, index) + 1, message);
    }

    @Override
    public void close() throws IOException {
        in.close();
    }
}
