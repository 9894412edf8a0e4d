package org.voltdocket.diagnosis;

import java.util.Arrays;
import java.util.function.Function;
import java.util.stream.Collectors;

/** Finds constants by their stable identifiers. */
final class Ids {

    private Ids() {}

    static <E> E find(E[] all, Function<E, String> idOf, String id) {
        for (E one : all) {
            if (idOf.apply(one).equals(id)) {
                return one;
            }
        }
        throw new IllegalArgumentException(
                "'" + id + "' is none of " + Arrays.stream(all).map(idOf).collect(Collectors.joining(", ")) + ".");
    }
}
