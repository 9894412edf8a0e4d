package org.voltdocket.casefile.search;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;

/**
 * A {@link CaseSearchText} as SQL over a table with the columns {@code battery_serial}, {@code number} and {@code vin}, which has
 * the indexes of {@code V011__casefile_search.sql}.
 */
public final class CaseSearchCondition {

    /** Parts of this length or longer have an index over substrings of this length. */
    private static final int SIX = 6;

    private static final int TRIGRAM = 3;
    private static final int VIN_LENGTH = 17;

    private final String table;
    private final List<Alternative> alternatives = new ArrayList<>();
    private final Map<String, Object> params = new LinkedHashMap<>();

    /** @param table its alias in the statement */
    public CaseSearchCondition(CaseSearchText text, String table) {
        this.table = table;
        text.serialPart().ifPresent(this::addSerial);
        text.number().ifPresent(number -> add(table + ".number = :number", "number", number.value()));
        text.vin().ifPresent(vin -> add(vinColumn(vin) + " = :vin", "vin", vin));
        if (text.isMeaningless()) {
            alternatives.add(new Alternative("false", "false"));
        }
    }

    private record Alternative(String indexed, String plain) {}

    /** One condition per meaning of the text, each served by its own index. */
    public List<String> indexed() {
        return alternatives.stream().map(Alternative::indexed).toList();
    }

    /** All meanings in one condition, for rows that another index finds. */
    public String plain() {
        return alternatives.stream().map(Alternative::plain).collect(Collectors.joining(" or ", "(", ")"));
    }

    /** The named parameters of both forms. */
    public Map<String, Object> params() {
        return params;
    }

    private String vinColumn(String vin) {
        return vin.length() == VIN_LENGTH ? table + ".vin" : "right(" + table + ".vin, " + vin.length() + ")";
    }

    /** No index finds one or two characters in the middle of a serial. */
    private void addSerial(String part) {
        if (part.length() < TRIGRAM) {
            add(table + ".battery_serial like :begin", "begin", part + "%");
            add("reverse(" + table + ".battery_serial) like :end", "end", new StringBuilder(part).reverse() + "%");
            return;
        }
        String plain = "strpos(" + table + ".battery_serial, :part) > 0";
        params.put("part", part);
        if (part.length() < SIX) {
            params.put("like", "%" + part + "%");
            alternatives.add(new Alternative(table + ".battery_serial like :like", plain));
        } else {
            params.put("sixes", sixes(part));
            alternatives.add(new Alternative(
                    "(serial_sixes(" + table + ".battery_serial) @> cast(:sixes as text[]) and " + plain + ")", plain));
        }
    }

    /** The smallest number of substrings of six characters that cover the part. */
    private static String[] sixes(String part) {
        List<String> sixes = new ArrayList<>();
        for (int from = 0; from + SIX < part.length(); from += SIX) {
            sixes.add(part.substring(from, from + SIX));
        }
        sixes.add(part.substring(part.length() - SIX));
        return sixes.toArray(String[]::new);
    }

    private void add(String condition, String name, Object value) {
        alternatives.add(new Alternative(condition, condition));
        params.put(name, value);
    }
}
