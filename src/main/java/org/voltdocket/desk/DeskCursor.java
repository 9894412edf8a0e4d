package org.voltdocket.desk;

import java.nio.charset.StandardCharsets;
import java.util.Base64;
import org.voltdocket.kernel.RequestException;

/** The end of a page: the order, the value of the last item, and its ordinal. Opaque to callers. */
record DeskCursor(String order, String value, long ordinal) {

    String text() {
        String plain = order + "|" + value + "|" + ordinal;
        return Base64.getUrlEncoder().withoutPadding().encodeToString(plain.getBytes(StandardCharsets.UTF_8));
    }

    /** @throws RequestException if no page of this order gave this text */
    static DeskCursor read(String text, DeskOrder order) {
        try {
            String[] parts = new String(Base64.getUrlDecoder().decode(text), StandardCharsets.UTF_8).split("\\|");
            if (parts.length == 3 && parts[0].equals(order.id()) && fits(order, parts[1])) {
                return new DeskCursor(parts[0], parts[1], Long.parseLong(parts[2]));
            }
        } catch (IllegalArgumentException e) {
            // refused below
        }
        throw RequestException.invalid(
                "desk-refused", "cursor", "'cursor' is not valid; leave it out to start at the top.");
    }

    private static boolean fits(DeskOrder order, String value) {
        return switch (order.type) {
            case "date" -> value.matches("\\d{4}-\\d\\d-\\d\\d");
            case "timestamptz" -> value.matches("\\d{4}-\\d\\d-\\d\\dT[\\d:.]+Z");
            default -> value.matches("\\d{1,12}(\\.\\d+)?(E-?\\d{1,3})?");
        };
    }

    static DeskCursor after(DeskItem last, DeskOrder order) {
        String value = switch (order.column) {
            case "rank" ->
                Double.toString((last.probability() == null ? 0 : last.probability()) + (last.answered() ? 1 : 0));
            case "due_on" -> last.dueOn().toString();
            case "amount" -> last.amount().toPlainString();
            default -> last.waitingSince().toString();
        };
        return new DeskCursor(order.id(), value, last.ordinal());
    }
}
