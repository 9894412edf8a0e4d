package org.voltdocket.assessment.edition;

import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.stream.Collectors;
import org.yaml.snakeyaml.LoaderOptions;
import org.yaml.snakeyaml.Yaml;
import org.yaml.snakeyaml.constructor.SafeConstructor;

/**
 * The differences of two editions, by row and member.
 *
 * @param general members outside the rows: issue, methods, starting odds
 * @param added rows that only the new one has
 * @param removed rows that only the old one has
 * @param changed rows that both have, with what differs
 */
public record EditionDiff(List<Line> general, List<Row> added, List<Row> removed, List<Row> changed) {

    /**
     * A member that differs.
     *
     * @param member its name, such as {@code weights.above.wiring}
     * @param old null where only the new one has it
     * @param now null where only the old one has it
     */
    public record Line(String member, String old, String now) {}

    /** A row with the members that differ, or all of a row that the other has not. */
    public record Row(String id, List<Line> lines) {}

    public boolean isEmpty() {
        return general.isEmpty() && added.isEmpty() && removed.isEmpty() && changed.isEmpty();
    }

    /** Compares two texts that {@link EditionValidator} found right. */
    static EditionDiff between(byte[] old, byte[] now) {
        Map<String, Object> before = tree(old);
        Map<String, Object> after = tree(now);
        Map<String, Map<?, ?>> oldRows = rows(before);
        Map<String, Map<?, ?>> newRows = rows(after);
        List<Row> added = new ArrayList<>();
        List<Row> changed = new ArrayList<>();
        newRows.forEach((id, row) -> {
            List<Line> lines = lines(flat(oldRows.get(id)), flat(row));
            if (!oldRows.containsKey(id)) {
                added.add(new Row(id, lines));
            } else if (!lines.isEmpty()) {
                changed.add(new Row(id, lines));
            }
        });
        List<Row> removed = oldRows.keySet().stream()
                .filter(id -> !newRows.containsKey(id))
                .map(id -> new Row(id, lines(flat(oldRows.get(id)), Map.of())))
                .toList();
        before.remove("rules");
        after.remove("rules");
        return new EditionDiff(lines(flat(before), flat(after)), added, removed, changed);
    }

    private static Map<String, Object> tree(byte[] text) {
        return new LinkedHashMap<>(new Yaml(new SafeConstructor(new LoaderOptions()))
                .<Map<String, Object>>load(new String(text, StandardCharsets.UTF_8)));
    }

    private static Map<String, Map<?, ?>> rows(Map<String, Object> tree) {
        Map<String, Map<?, ?>> rows = new LinkedHashMap<>();
        for (Object row : (List<?>) tree.get("rules")) {
            rows.put(String.valueOf(((Map<?, ?>) row).get("id")), (Map<?, ?>) row);
        }
        return rows;
    }

    private static List<Line> lines(Map<String, String> old, Map<String, String> now) {
        Set<String> members = new LinkedHashSet<>(old.keySet());
        members.addAll(now.keySet());
        return members.stream()
                .filter(member -> !Objects.equals(old.get(member), now.get(member)))
                .map(member -> new Line(member, old.get(member), now.get(member)))
                .toList();
    }

    private static Map<String, String> flat(Map<?, ?> members) {
        Map<String, String> flat = new LinkedHashMap<>();
        if (members != null) {
            members.forEach((name, value) -> flatten(String.valueOf(name), value, flat));
        }
        return flat;
    }

    private static void flatten(String name, Object value, Map<String, String> into) {
        if (value instanceof Map<?, ?> map) {
            map.forEach((key, inner) -> flatten(name + "." + key, inner, into));
        } else {
            into.put(name, plain(value));
        }
    }

    /** A value on one line; 1 and 1.0 are the same number. */
    private static String plain(Object value) {
        if (value instanceof List<?> list) {
            return list.stream().map(EditionDiff::plain).collect(Collectors.joining("; "));
        }
        if (value instanceof Map<?, ?> map) {
            return map.values().stream().map(EditionDiff::plain).collect(Collectors.joining(" "));
        }
        if (value instanceof Number number) {
            return new java.math.BigDecimal(number.toString())
                    .stripTrailingZeros()
                    .toPlainString();
        }
        return String.valueOf(value);
    }
}
