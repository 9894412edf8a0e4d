package org.voltdocket.desk;

import java.math.BigDecimal;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import org.springframework.web.util.UriComponentsBuilder;
import org.voltdocket.claim.ClaimState;
import org.voltdocket.diagnosis.Cause;
import org.voltdocket.diagnosis.Leaning;
import org.voltdocket.kernel.RequestException;

/**
 * What the desk shows, as it stands in the address.
 *
 * @param q text for {@link org.voltdocket.casefile.search.CaseSearchText}; blank for all
 * @param state a claim's state, {@link #OPEN} or {@link #ALL}
 * @param leaning of the case; blank for any, {@code none} for those not judged
 * @param cause first cause; blank for any
 * @param least least probability of the first cause, per cent; null for any
 * @param workshop part of the workshop's name; blank for any
 * @param age least working days since it was handed in; null for any
 * @param due {@code over}, {@code today} or {@code week} (within 5 working days); blank for any
 * @param from least amount in the claim's currency; null for any
 * @param to largest amount in the claim's currency; null for any
 * @param taker who took it last: {@code me}, {@code nobody}; {@code second} where a decision waits for the reader as
 *     the second person; blank for any
 * @param look {@code open} for cases with a notice that waits for a person (passed over for workshops), {@code objection} for
 *     claims with an objection that waits for its answer; blank for any
 */
public record DeskFilter(
        String q,
        String state,
        String leaning,
        String cause,
        Integer least,
        String workshop,
        Integer age,
        String due,
        BigDecimal from,
        BigDecimal to,
        String taker,
        String look,
        DeskOrder order) {

    /** Handed in, in review, or waiting for the workshop. */
    public static final String OPEN = "open";

    /** Whatever the state. */
    public static final String ALL = "all";

    private static final int MOST_TEXT = 60;

    /**
     * Reads the parameters of an address; those that mean nothing here are passed over.
     *
     * @throws RequestException if one cannot be right
     */
    public static DeskFilter read(Map<String, String> given) {
        return new DeskFilter(
                text(given, "q"),
                one(given, "state", OPEN, id -> id.equals(OPEN) || id.equals(ALL) || ClaimState.of(id) != null),
                one(given, "leaning", "", id -> id.equals("none") || Leaning.of(id) != null),
                one(given, "cause", "", id -> Cause.of(id) != null),
                whole(given, "least", 100),
                text(given, "workshop"),
                whole(given, "age", 5000),
                one(given, "due", "", Arrays.asList("over", "today", "week")::contains),
                amount(given, "from"),
                amount(given, "to"),
                one(given, "taker", "", Arrays.asList("me", "nobody", "second")::contains),
                one(given, "look", "", Arrays.asList("open", "objection")::contains),
                DeskOrder.of(text(given, "order").isEmpty() ? "clearest" : text(given, "order")));
    }

    private interface Check {
        boolean fits(String id);
    }

    private static String one(Map<String, String> given, String name, String otherwise, Check check) {
        String id = text(given, name);
        if (id.isEmpty()) {
            return otherwise;
        }
        try {
            if (check.fits(id)) {
                return id;
            }
        } catch (IllegalArgumentException e) {
            throw RequestException.invalid("desk-refused", name, "'" + name + "': " + e.getMessage());
        }
        throw RequestException.invalid("desk-refused", name, "'" + name + "' has no value '" + id + "'.");
    }

    private static Integer whole(Map<String, String> given, String name, int most) {
        String text = text(given, name);
        if (text.isEmpty()) {
            return null;
        }
        if (text.matches("\\d{1,5}") && Integer.parseInt(text) <= most) {
            return Integer.parseInt(text);
        }
        throw RequestException.invalid(
                "desk-refused", name, "'" + name + "' is a whole number from 0 to " + most + "; read '" + text + "'.");
    }

    private static BigDecimal amount(Map<String, String> given, String name) {
        String text = text(given, name).replace(',', '.');
        if (text.isEmpty()) {
            return null;
        }
        if (text.matches("\\d{1,10}(\\.\\d{1,2})?")) {
            return new BigDecimal(text);
        }
        throw RequestException.invalid(
                "desk-refused", name, "'" + name + "' is an amount such as 100 or 129.90; read '" + text + "'.");
    }

    private static String text(Map<String, String> given, String name) {
        String text = given.getOrDefault(name, "").strip();
        if (text.length() > MOST_TEXT || text.indexOf(0) >= 0) {
            throw RequestException.invalid(
                    "desk-refused", name, "'" + name + "' has at most " + MOST_TEXT + " characters.");
        }
        return text;
    }

    /** Whether anything narrows the queue beside state and leaning. */
    public boolean narrowed() {
        Map<String, String> params = params();
        return params.keySet().stream()
                .anyMatch(name -> !name.equals("state") && !name.equals("leaning") && !name.equals("order"));
    }

    /** The parameters of the address, without those that say nothing. */
    public Map<String, String> params() {
        Map<String, Object> all = new LinkedHashMap<>();
        all.put("q", q);
        all.put("state", state.equals(OPEN) ? "" : state);
        all.put("leaning", leaning);
        all.put("cause", cause);
        all.put("least", least);
        all.put("workshop", workshop);
        all.put("age", age);
        all.put("due", due);
        all.put("from", from == null ? null : from.toPlainString());
        all.put("to", to == null ? null : to.toPlainString());
        all.put("taker", taker);
        all.put("look", look);
        all.put("order", order == DeskOrder.CLEAREST ? "" : order.id());
        return all.entrySet().stream()
                .filter(entry ->
                        entry.getValue() != null && !entry.getValue().toString().isEmpty())
                .collect(Collectors.toMap(
                        Map.Entry::getKey, entry -> entry.getValue().toString(), (a, b) -> a, LinkedHashMap::new));
    }

    /** An address of this filter with one parameter set, or removed where the value is blank; it starts at the top. */
    public String with(String path, String name, String value) {
        UriComponentsBuilder address = UriComponentsBuilder.fromPath(path);
        Map<String, String> params = new LinkedHashMap<>(params());
        params.put(name, value);
        params.forEach((key, text) ->
                Optional.of(text).filter(t -> !t.isEmpty()).ifPresent(t -> address.queryParam(key, "{" + key + "}")));
        params.values().removeIf(String::isEmpty);
        return address.encode().buildAndExpand(params).toUriString();
    }

    /** The filter as a query string, without the question mark. */
    public String query() {
        String address = with("/", "", "");
        return address.contains("?") ? address.substring(address.indexOf('?') + 1) : "";
    }
}
