package org.voltdocket.diagnosis.read;

import static org.voltdocket.diagnosis.read.RejectedFile.Reason.RECORDING;
import static org.voltdocket.diagnosis.read.RejectedFile.Reason.SYSTEM_24V;
import static org.voltdocket.diagnosis.read.RejectedFile.Reason.TOO_LARGE;

import java.io.IOException;
import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import org.voltdocket.diagnosis.Channel;
import org.voltdocket.diagnosis.EvidenceKind;
import org.voltdocket.diagnosis.Recording;
import org.voltdocket.diagnosis.Recording.Mark;
import org.voltdocket.diagnosis.assess.Diagnosis;

/** Fills the columns of a recording from its rows and says what is wrong with them. */
final class RowReader {

    private static final int LEAST_ROWS = 20;
    private static final double LEAST_SECONDS = 10;
    private static final double MOST_TIME_S = 1e10;
    private static final int MOST_MARKS = 1000;
    private static final int MOST_MARK_LENGTH = 1000;

    /** Characters of all marks of a recording: a page and a report show them all. */
    private static final int MOST_MARK_TEXT = 65_536;
    /** Between a full 12 V battery on charge (below 16 V) and an empty 24 V one (above 20 V). */
    private static final double SYSTEM_24_V = 18;

    private final RecordingHeader columns;
    private final int room;
    private final FileErrors faults;
    private final Decimal decimal;
    private final ClockTime clock = new ClockTime();
    private final double[] time;
    private final float[][] values;
    private final PlausibleRange[] plausible;
    private final List<Mark> marks = new ArrayList<>();
    private int markText;
    private final int measured;
    private int rows;
    private double lastTime = Double.NEGATIVE_INFINITY;
    private long startNanos = ClockTime.NONE;
    private OffsetDateTime startedAt;
    private long above18;
    private long sampled;
    private long lastLine = 1;

    RowReader(RecordingHeader columns, int room, FileErrors faults) {
        this.columns = columns;
        this.room = room;
        this.faults = faults;
        this.decimal = new Decimal(columns.delimiter() != ',');
        this.time = new double[room];
        this.values = new float[columns.count()][];
        this.plausible = new PlausibleRange[columns.count()];
        int index = 0;
        for (int i = 0; i < columns.count(); i++) {
            Channel channel = columns.channels()[i];
            plausible[i] = channel == null ? null : PlausibleRange.of(channel);
            index = channel == Channel.MEASURED_V ? i : index;
        }
        this.measured = index;
    }

    /** Reads all rows after the header; null if nothing is wrong. */
    RejectedFile read(CsvScanner csv) throws IOException {
        csv.next();
        long emptyLine = 0;
        while (csv.next()) {
            if (csv.empty()) {
                emptyLine = emptyLine == 0 ? csv.line() : emptyLine;
                continue;
            }
            if (emptyLine != 0) {
                long line = emptyLine;
                faults.add(() -> new FileError(line, 1, "This line is empty, yet rows follow. Remove it."));
                emptyLine = 0;
            }
            if (rows == FileLimits.ROWS) {
                return new RejectedFile(
                        TOO_LARGE,
                        "The recording has more than " + FileLimits.ROWS
                                + " rows. Cut it into several, or thin it out.",
                        new FileError(csv.line(), 1, "This is row " + (FileLimits.ROWS + 1) + "."));
            }
            lastLine = csv.line();
            row(csv);
            rows++;
        }
        return verdict();
    }

    private void row(CsvScanner csv) {
        if (csv.fault() != null) {
            faults.add(csv::fault);
            return;
        }
        if (csv.cells() != columns.count()) {
            int at = Math.min(csv.cells(), columns.count() + 1) - 1;
            faults.add(() ->
                    csv.error(at, "This row has " + csv.cells() + " cells, the header has " + columns.count() + "."));
            return;
        }
        double at = time(csv);
        for (int i = 0; i < plausible.length; i++) {
            if (plausible[i] != null) {
                cell(csv, i);
            }
        }
        if (columns.mark() >= 0) {
            mark(csv, at);
        }
    }

    private double time(CsvScanner csv) {
        int cell = columns.time();
        byte[] b = csv.buffer();
        int from = from(b, csv.start(cell), csv.end(cell));
        int to = to(b, from, csv.end(cell));
        double at = from == to ? Double.NaN : columns.clock() ? clock(csv, b, from, to) : decimal.parse(b, from, to);
        if (Double.isNaN(at)) {
            faults.add(() -> csv.error(cell, from == to ? "The time is blank. Every row needs one." : noTime(csv)));
        } else if (!(at >= 0 || columns.clock()) || at > MOST_TIME_S) {
            faults.add(() -> csv.error(
                    cell,
                    "The time " + csv.text(cell).strip() + " s is not within 0 to 10000000000 s from the start."));
        } else if (!(at > lastTime)) {
            double before = lastTime;
            faults.add(() -> csv.error(
                    cell,
                    "Time does not increase: " + csv.text(cell).strip() + " comes after "
                            + (columns.clock() ? before + " s from the start" : before + " s") + "."));
        } else {
            lastTime = at;
            time[rows] = at;
        }
        return at;
    }

    private double clock(CsvScanner csv, byte[] b, int from, int to) {
        long nanos = clock.parse(b, from, to);
        if (nanos == ClockTime.NONE) {
            return Double.NaN;
        }
        if (startNanos == ClockTime.NONE) {
            startNanos = nanos;
            startedAt = ClockTime.offsetDateTime(csv.text(columns.time()));
        }
        return (nanos - startNanos) / 1e9;
    }

    private String noTime(CsvScanner csv) {
        String text = csv.text(columns.time());
        if (!columns.clock()) {
            return decimal.complaint(text);
        }
        return "'" + (text.length() > 40 ? text.substring(0, 40) + "…" : text)
                + "' is not a date and time with offset. Write it like 2026-03-04T08:40:00.250+01:00 or …Z.";
    }

    private void cell(CsvScanner csv, int i) {
        byte[] b = csv.buffer();
        int from = from(b, csv.start(i), csv.end(i));
        int to = to(b, from, csv.end(i));
        if (from == to) {
            return;
        }
        double value = decimal.parse(b, from, to);
        if (Double.isNaN(value)) {
            faults.add(() -> csv.error(i, name(i) + ": " + decimal.complaint(csv.text(i))));
        } else if (!plausible[i].holds(value)) {
            faults.add(() -> csv.error(
                    i,
                    name(i) + " " + csv.text(i).strip() + " is outside " + plausible[i].range()
                            + ". Check the unit and the decimal mark."));
        } else {
            if (values[i] == null) {
                values[i] = new float[room];
                Arrays.fill(values[i], Float.NaN);
            }
            values[i][rows] = decimal.toFloat(value, b, from, to);
            if (i == measured) {
                sampled++;
                above18 += value > SYSTEM_24_V ? 1 : 0;
            }
        }
    }

    private void mark(CsvScanner csv, double at) {
        int cell = columns.mark();
        if (csv.start(cell) == csv.end(cell)) {
            return;
        }
        String text = csv.text(cell).strip();
        if (text.length() > MOST_MARK_LENGTH) {
            faults.add(() -> csv.error(cell, "A mark has " + MOST_MARK_LENGTH + " characters at most."));
        } else if (marks.size() == MOST_MARKS) {
            faults.add(() -> csv.error(cell, "A recording has " + MOST_MARKS + " marks at most."));
        } else if (markText + text.length() > MOST_MARK_TEXT) {
            faults.add(() -> csv.error(
                    cell, "All marks of a recording have " + MOST_MARK_TEXT + " characters together at most."));
        } else if (!text.isEmpty()) {
            markText += text.length();
            marks.add(new Mark(at, TextCleaner.lines(text)));
        }
    }

    private RejectedFile verdict() {
        if (sampled > 0 && above18 * 2 > sampled) {
            return faults.refuse(
                    SYSTEM_24V,
                    "More than half of measured_v lies above 18 V: this is a 24 V system, and only 12 V systems are"
                            + " judged here. Measure one 12 V battery at its own posts.");
        }
        if (faults.none() && rows > 0 && sampled == 0) {
            faults.add(() -> new FileError(1, 1, "The column measured_v holds no value."));
        }
        if (rows < LEAST_ROWS) {
            faults.add(() -> new FileError(
                    lastLine, 1, "The recording ends here after " + rows + " rows; it needs " + LEAST_ROWS + "."));
        } else if (faults.none() && time[rows - 1] - time[0] < LEAST_SECONDS) {
            faults.add(() -> new FileError(
                    lastLine, 1, "The recording ends here after " + (time[rows - 1] - time[0]) + " s; it needs 10 s."));
        }
        return faults.none()
                ? null
                : faults.refuse(
                        RECORDING, "Nothing of the file was stored. Correct the listed errors and upload it again.");
    }

    /** The recording, once {@link #read} found nothing wrong. */
    Recording finish() {
        double[] t = rows == room ? time : Arrays.copyOf(time, rows);
        Map<Channel, float[]> channels = new EnumMap<>(Channel.class);
        for (int i = 0; i < values.length; i++) {
            if (values[i] != null) {
                channels.put(columns.channels()[i], rows == room ? values[i] : Arrays.copyOf(values[i], rows));
                values[i] = null;
            }
        }
        Recording unnamed = new Recording(EvidenceKind.DRIVE_RECORDING, startedAt, t, channels, marks);
        return unnamed.as(Diagnosis.kindOf(unnamed));
    }

    private String name(int column) {
        return columns.channels()[column].id();
    }

    private static int from(byte[] b, int from, int end) {
        int i = from;
        while (i < end && (b[i] == ' ' || b[i] == '\t')) {
            i++;
        }
        return i;
    }

    private static int to(byte[] b, int from, int end) {
        int i = end;
        while (i > from && (b[i - 1] == ' ' || b[i - 1] == '\t')) {
            i--;
        }
        return i;
    }
}
