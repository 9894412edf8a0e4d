package org.voltdocket.catalogue;

import de.siegmar.fastcsv.reader.CsvParseException;
import de.siegmar.fastcsv.reader.CsvReader;
import de.siegmar.fastcsv.reader.CsvRecord;
import java.nio.ByteBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.stream.Collectors;

/**
 * A CSV file of the catalogue (RFC 4180; UTF-8, header row, delimiter comma, semicolon or tab).
 *
 * @param rows in the order of the file
 */
record CatalogueFile(CatalogueTable table, List<CatalogueRow> rows) {

    private static final int MOST_ROWS = 20_000;

    /** @throws org.voltdocket.kernel.RequestException (422) with every line that cannot be read */
    static CatalogueFile read(byte[] content) {
        String text = text(content);
        String head = text.lines().findFirst().orElse("");
        char delimiter = head.indexOf('\t') >= 0 ? '\t' : head.indexOf(';') >= 0 ? ';' : ',';
        List<CsvRecord> records = records(text, delimiter);
        if (records.isEmpty()) {
            throw FileError.refused(1, "the file is empty; it must start with a header row. " + headers());
        }
        Map<String, Integer> places = places(records.get(0));
        CatalogueTable table = CatalogueTable.of(places.keySet())
                .orElseThrow(() -> FileError.refused(1, "the header matches no table of the catalogue. " + headers()));
        if (records.size() - 1 > MOST_ROWS) {
            throw FileError.refused(
                    records.get(MOST_ROWS + 1).getStartingLineNumber(),
                    "a file has at most " + MOST_ROWS + " rows. Split it");
        }
        String[] lines = text.split("\r\n|\n|\r", -1);
        List<CatalogueRow> rows = new ArrayList<>();
        List<FileError> errors = new ArrayList<>();
        for (CsvRecord one : records.subList(1, records.size())) {
            String line = lines[(int) one.getStartingLineNumber() - 1];
            rows.add(new RowReader(table, places, delimiter, one, line, errors).row());
        }
        if (!errors.isEmpty()) {
            throw FileError.refused(errors);
        }
        if (rows.isEmpty()) {
            throw FileError.refused(1, "there is no row below the header");
        }
        return new CatalogueFile(table, rows);
    }

    private static String text(byte[] content) {
        try {
            String text = StandardCharsets.UTF_8
                    .newDecoder()
                    .decode(ByteBuffer.wrap(content))
                    .toString();
            return text.startsWith("\uFEFF") ? text.substring(1) : text;
        } catch (CharacterCodingException e) {
            throw FileError.refused(1, "the file is not UTF-8 text. Save it as CSV in UTF-8");
        }
    }

    private static List<CsvRecord> records(String text, char delimiter) {
        if (text.chars().filter(c -> c == '"').count() % 2 != 0) {
            throw FileError.refused(1, "the file is not valid CSV: a quote is opened and never closed");
        }
        try (CsvReader<CsvRecord> reader =
                CsvReader.builder().fieldSeparator(delimiter).ofCsvRecord(text)) {
            return reader.stream().toList();
        } catch (CsvParseException | java.io.IOException e) {
            throw FileError.refused(1, "the file is not valid CSV: " + e.getMessage());
        }
    }

    private static Map<String, Integer> places(CsvRecord header) {
        Map<String, Integer> places = new LinkedHashMap<>();
        for (int i = 0; i < header.getFieldCount(); i++) {
            String name = header.getField(i).strip().toLowerCase(Locale.ROOT);
            if (places.put(name, i) != null) {
                throw FileError.refused(1, "the column '" + name + "' is there twice");
            }
        }
        return places;
    }

    private static String headers() {
        return "Known are: "
                + java.util.Arrays.stream(CatalogueTable.values())
                        .map(table -> table.columns.stream()
                                .map(c -> c.required() ? c.name() : "[" + c.name() + "]")
                                .collect(Collectors.joining(",")))
                        .collect(Collectors.joining("; "));
    }

    /** Reads one record; what is wrong goes into the list. */
    private record RowReader(
            CatalogueTable table,
            Map<String, Integer> places,
            char delimiter,
            CsvRecord record,
            String line,
            List<FileError> errors) {

        CatalogueRow row() {
            boolean withdrawn = !cell(CatalogueTable.WITHDRAWN).isEmpty();
            List<Object> values = new ArrayList<>();
            List<Integer> cells = new ArrayList<>();
            for (int i = 0; i < table.columns.size(); i++) {
                CatalogueTable.Column column = table.columns.get(i);
                cells.add(start(places.getOrDefault(column.name(), 0)));
                values.add(withdrawn && i >= table.keys ? null : value(column, cells.get(i)));
            }
            return new CatalogueRow(record.getStartingLineNumber(), cells, values, withdrawn);
        }

        private Object value(CatalogueTable.Column column, int at) {
            String text = cell(column.name());
            if (text.isEmpty()) {
                if (column.required()) {
                    error(at, column.name() + " is missing");
                }
                return null;
            }
            try {
                return column.cell().read(text);
            } catch (IllegalArgumentException e) {
                error(at, column.name() + ": " + e.getMessage());
                return null;
            }
        }

        private String cell(String name) {
            Integer place = places.get(name);
            return place == null || place >= record.getFieldCount()
                    ? ""
                    : record.getField(place).strip();
        }

        private void error(int column, String message) {
            errors.add(new FileError(record.getStartingLineNumber(), column, message));
        }

        /** Where the cell begins, in characters from 1; a delimiter inside quotes does not count. */
        private int start(int place) {
            int seen = 0;
            boolean quoted = false;
            for (int i = 0; i < line.length() && seen < place; i++) {
                char c = line.charAt(i);
                if (c == '"') {
                    quoted = !quoted;
                } else if (c == delimiter && !quoted && ++seen == place) {
                    return i + 2;
                }
            }
            return 1;
        }
    }
}
