package org.voltdocket.evidence;

import java.util.List;

/**
 * Which stretch to draw.
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
}
