package org.voltdocket.diagnosis.read;

import java.io.IOException;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TreeSet;
import org.voltdocket.diagnosis.Channel;

/**
 * The header row of a recording.
 *
 * @param delimiter comma, semicolon or tab
 * @param count cells of the header
 * @param time index of {@code time_s} or {@code time}
 * @param clock whether the column is {@code time}
 * @param channels channel by index, null where the column is none
 * @param mark index of {@code mark}, -1 if there is none
 * @param ignored names of unknown columns
 */
record RecordingHeader(
        char delimiter, int count, int time, boolean clock, Channel[] channels, int mark, List<String> ignored) {

    private static final char[] DELIMITERS = {',', ';', '\t'};
    private static final int MOST = 1000;
    private static final Map<String, Channel> BY_NAME = new HashMap<>();

    static {
        for (Channel channel : Channel.values()) {
            BY_NAME.put(channel.id(), channel);
        }
    }

    /** Number of known channels. */
    int known() {
        int n = 0;
        for (Channel channel : channels) {
            n += channel == null ? 0 : 1;
        }
        return n;
    }

    /** Reads the header of a file; null where {@code faults} says what is wrong. */
    static RecordingHeader read(ByteSource source, FileErrors faults) throws IOException {
        char best = ',';
        int bestKnown = -1;
        int bestCells = 0;
        for (char delimiter : DELIMITERS) {
            try (CsvScanner row = new CsvScanner(source.open(), delimiter)) {
                int known = 0;
                int cells = row.next() ? row.cells() : 0;
                for (int i = 0; i < cells; i++) {
                    known += isKnown(name(row, i)) ? 1 : 0;
                }
                if (known > bestKnown || known == bestKnown && cells > bestCells) {
                    best = delimiter;
                    bestKnown = known;
                    bestCells = cells;
                }
            }
        }
        try (CsvScanner row = new CsvScanner(source.open(), best)) {
            if (!row.next()) {
                faults.add(() -> new FileError(1, 1, "The file is empty."));
                return null;
            }
            return of(row, best, bestKnown, faults);
        }
    }

    private static RecordingHeader of(CsvScanner row, char delimiter, int known, FileErrors faults) {
        if (row.fault() != null) {
            faults.add(row::fault);
            return null;
        }
        for (int i = 0; i < row.cells(); i++) {
            if (row.text(i).indexOf('\r') >= 0) {
                faults.add(() ->
                        new FileError(1, 1, "The lines end in CR alone. Save the file with CRLF or LF line ends."));
                return null;
            }
        }
        if (known == 0) {
            faults.add(() -> new FileError(1, 1, noHeader(row)));
            return null;
        }
        if (row.cells() > MOST) {
            faults.add(() -> row.error(MOST, "A recording has " + MOST + " columns at most."));
            return null;
        }
        Channel[] channels = new Channel[row.cells()];
        Map<String, Integer> seen = new HashMap<>();
        TreeSet<String> ignored = new TreeSet<>();
        for (int i = 0; i < row.cells(); i++) {
            String name = name(row, i);
            if (!isKnown(name)) {
                ignored.add(shown(row.text(i).strip(), i));
                continue;
            }
            channels[i] = BY_NAME.get(name);
            if (seen.putIfAbsent(name, i) != null) {
                int again = i;
                faults.add(() -> row.error(again, "The column " + name + " appears twice. Remove or rename one."));
            }
        }
        Integer seconds = seen.get("time_s");
        Integer clock = seen.get("time");
        if (seconds != null && clock != null) {
            faults.add(
                    () -> row.error(Math.max(seconds, clock), "Both time_s and time are present. Keep one of them."));
        }
        if (seconds == null && clock == null) {
            faults.add(() -> new FileError(
                    1,
                    1,
                    "The header has neither time_s (seconds from the start) nor time"
                            + " (date and time with offset). Name the time column so."));
        }
        if (!seen.containsKey(Channel.MEASURED_V.id())) {
            faults.add(() -> new FileError(
                    1,
                    1,
                    "The header has no measured_v: the voltage at the battery posts by an"
                            + " independent instrument is required. Read here: " + listed(row) + "."));
        }
        if (!faults.none()) {
            return null;
        }
        return new RecordingHeader(
                delimiter,
                row.cells(),
                seconds == null ? clock : seconds,
                seconds == null,
                channels,
                seen.getOrDefault("mark", -1),
                List.copyOf(ignored));
    }

    private static String noHeader(CsvScanner row) {
        return "The first row is not a header: it names none of the columns of a recording, such as time_s and"
                + " measured_v. Read here: " + listed(row) + ".";
    }

    private static String listed(CsvScanner row) {
        List<String> names = new ArrayList<>();
        for (int i = 0; i < Math.min(row.cells(), 12); i++) {
            names.add(shown(row.text(i).strip(), i));
        }
        return String.join(", ", names) + (row.cells() > 12 ? " …" : "");
    }

    private static String shown(String name, int index) {
        String printable = TextCleaner.printable(name);
        if (printable.isBlank()) {
            return "column " + (index + 1) + " without a name";
        }
        return printable.length() <= 60 ? printable : printable.substring(0, 60) + "…";
    }

    private static String name(CsvScanner row, int cell) {
        return row.text(cell).strip().toLowerCase(Locale.ROOT);
    }

    private static boolean isKnown(String name) {
        return BY_NAME.containsKey(name) || name.equals("time_s") || name.equals("time") || name.equals("mark");
    }
}
