package org.voltdocket.assessment.web;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.springframework.core.io.ClassPathResource;

/**
 * How accurate an edition was on generated cases, as its file {@code shared/rulebook/<edition>.evaluation.csv} says: lines of
 * section, quantity, world, channels, cases, of cases, separated by semicolons. Lines that begin with # are remarks.
 *
 * @param remarks when and how it was measured
 */
record EvaluationReport(List<String> remarks, List<Section> sections) {

    /**
     * One table for one set of channels.
     *
     * @param channels {@code all}, {@code reported} or {@code voltage}
     * @param worlds the columns
     */
    public record Section(String title, String channels, List<String> worlds, List<Row> rows) {}

    /** A quantity with a count for each world; null where there is none. */
    public record Row(String quantity, List<Count> counts) {}

    /** So many of so many cases. */
    public record Count(long part, long whole) {

        public double share() {
            return (double) part / whole;
        }
    }

    /** The report of an edition; empty for one that has none, such as an edition that a person uploaded. */
    static Optional<EvaluationReport> of(String edition) {
        ClassPathResource file = new ClassPathResource("shared/rulebook/" + edition + ".evaluation.csv");
        if (!file.exists()) {
            return Optional.empty();
        }
        try {
            return Optional.of(
                    of(file.getContentAsString(StandardCharsets.UTF_8).lines().toList()));
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    static EvaluationReport of(List<String> lines) {
        List<String> remarks = new ArrayList<>();
        Map<String, Map<String, Map<String, Count>>> tables = new LinkedHashMap<>();
        for (String line : lines) {
            if (line.startsWith("#")) {
                remarks.add(line.substring(1).strip());
                continue;
            }
            String[] cell = line.split(";");
            Count count = new Count(Long.parseLong(cell[4]), Long.parseLong(cell[5]));
            Map<String, Count> row = tables.computeIfAbsent(cell[0] + ";" + cell[3], t -> new LinkedHashMap<>())
                    .computeIfAbsent(cell[1], q -> new LinkedHashMap<>());
            if (count.whole() > 0) {
                row.put(cell[2], count);
            }
        }
        List<Section> sections = new ArrayList<>();
        tables.forEach((name, rows) -> sections.add(section(name.split(";"), rows)));
        return new EvaluationReport(remarks, sections);
    }

    private static Section section(String[] name, Map<String, Map<String, Count>> rows) {
        Set<String> worlds = new LinkedHashSet<>();
        rows.values().forEach(row -> worlds.addAll(row.keySet()));
        List<Row> out = new ArrayList<>();
        rows.forEach((quantity, row) -> {
            if (!row.isEmpty()) {
                out.add(new Row(quantity, worlds.stream().map(row::get).toList()));
            }
        });
        return new Section(name[0], name[1], List.copyOf(worlds), out);
    }
}
