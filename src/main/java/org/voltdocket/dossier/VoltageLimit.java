package org.voltdocket.dossier;

import java.util.Comparator;
import java.util.List;
import java.util.Objects;
import java.util.Set;
import java.util.stream.Stream;
import org.voltdocket.diagnosis.Assessment.Finding;

/**
 * A limit that lies on the scale of a recording's voltage, so that it can be drawn there.
 *
 * @param quantity as the rule book names it
 */
public record VoltageLimit(double value, String unit, String quantity) {

    private static final int MOST = 6;
    /** Quantities that are a voltage at the posts. */
    private static final Set<String> LEVELS = Set.of("highest-charging-voltage", "lift-when-low", "cranking-minimum");

    /** The levels among the limits of these findings, lowest first. */
    public static List<VoltageLimit> of(List<Finding> findings) {
        return findings.stream()
                .filter(f -> f.limit() != null && isLevel(f))
                .flatMap(f -> Stream.of(f.limit(), f.limitHigh())
                        .filter(Objects::nonNull)
                        .map(v -> new VoltageLimit(v, f.unit(), f.quantity())))
                .distinct()
                .sorted(Comparator.comparingDouble(VoltageLimit::value))
                .limit(MOST)
                .toList();
    }

    /** Only a limit of the voltage itself lies on the panel's scale, not one of a difference or share. */
    private static boolean isLevel(Finding finding) {
        return "V".equals(finding.unit()) && LEVELS.contains(finding.quantity().replaceAll("/\\d+$", ""));
    }
}
