package org.voltdocket.evidence;

import java.util.List;
import java.util.Map;
import org.voltdocket.kernel.RequestException;

/**
 * The section to draw.
 *
 * @param channels channel identifiers; empty for all that were recorded
 * @param from s; null for the first row
 * @param to s; null for the last row
 * @param points about how many points per channel, {@value #LEAST} to {@value #MOST}; null for {@value #USUAL}
 */
public record SeriesQuery(List<String> channels, Double from, Double to, Integer points) {

    public static final int LEAST = 2;
    public static final int MOST = 10_000;
    public static final int USUAL = 1000;

    /** The refusal of a query, with the parameter that is invalid. */
    public static RequestException invalid(String parameter, String message) {
        return RequestException.of(400, "series-refused", message)
                .with("errors", List.of(Map.of("parameter", parameter, "message", message)));
    }
}
