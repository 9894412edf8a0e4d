package org.voltdocket.desk;

import java.util.Arrays;
import java.util.stream.Collectors;
import org.voltdocket.kernel.RequestException;

/** The orders of the desk. Claims with equal values are ordered by their opening in the same direction. */
public enum DeskOrder {
    /** Answered claims first, then by the probability of the first cause. */
    CLEAREST("clearest", "rank", "double precision", false),
    LEAST_CLEAR("least-clear", "rank", "double precision", true),
    /** Only claims that are due. */
    DUE("due", "due_on", "date", true),
    OLDEST("oldest", "waiting_since", "timestamptz", true),
    NEWEST("newest", "waiting_since", "timestamptz", false),
    LARGEST("largest", "amount", "numeric", false),
    SMALLEST("smallest", "amount", "numeric", true);

    private final String id;
    final String column;
    final String type;
    final boolean rising;

    DeskOrder(String id, String column, String type, boolean rising) {
        this.id = id;
        this.column = column;
        this.type = type;
        this.rising = rising;
    }

    /** The stable identifier used in addresses. */
    public String id() {
        return id;
    }

    static DeskOrder of(String id) {
        return Arrays.stream(values())
                .filter(order -> order.id.equals(id))
                .findFirst()
                .orElseThrow(() -> RequestException.invalid(
                        "desk-refused",
                        "order",
                        "The order is one of "
                                + Arrays.stream(values()).map(DeskOrder::id).collect(Collectors.joining(", "))
                                + "; read '" + id + "'."));
    }
}
