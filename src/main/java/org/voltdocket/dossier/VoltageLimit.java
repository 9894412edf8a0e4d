package org.voltdocket.dossier;

import java.util.Comparator;
import java.util.List;
import java.util.Set;
import java.util.stream.Stream;
import org.voltdocket.diagnosis.Assessment.Finding;

/**
 * A limit on the voltage scale of a recording, which can be drawn in its chart.
 *
 * @param quantity as the rule book names it
 * @param minimum whether the voltage must reach the limit; otherwise it must not exceed it
 */
public record VoltageLimit(double value, String unit, String quantity, boolean minimum) {

    private static final int MOST = 6;
    /** Quantities that are a voltage at the posts. */
    private static final Set<String> LEVELS = Set.of("highest-charging-voltage", "lift-when-low", "cranking-minimum");

    /** The voltage limits of these findings, lowest first. */
    public static List<VoltageLimit> of(List<Finding> findings) {
        return findings.stream()
                .filter(f -> f.limit() != null && isLevel(f))
                .flatMap(VoltageLimit::limits)
                .distinct()
                .sorted(Comparator.comparingDouble(VoltageLimit::value))
                .limit(MOST)
                .toList();
    }

    private static Stream<VoltageLimit> limits(Finding f) {
        boolean minimum = !"at-most".equals(f.comparison()) && !f.limit().equals(f.limitHigh());
        Stream<VoltageLimit> first = Stream.of(new VoltageLimit(f.limit(), f.unit(), f.quantity(), minimum));
        return f.limitHigh() == null
                ? first
                : Stream.concat(first, Stream.of(new VoltageLimit(f.limitHigh(), f.unit(), f.quantity(), false)));
    }

    /** Only limits of the voltage itself can be drawn, not those of a difference or share. */
    private static boolean isLevel(Finding finding) {
        return "V".equals(finding.unit()) && LEVELS.contains(finding.quantity().replaceAll("/\\d+$", ""));
    }
}
