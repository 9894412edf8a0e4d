package org.voltdocket.diagnosis.quantity.bench;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.voltdocket.diagnosis.Evidence;
import org.voltdocket.diagnosis.EvidenceKind;
import org.voltdocket.diagnosis.Recording;
import org.voltdocket.diagnosis.quantity.Capacity;
import org.voltdocket.diagnosis.quantity.Measurement;
import org.voltdocket.kernel.Interval;

/**
 * Several capacity runs of one battery: whether capacity falls with current, and Peukert's exponent where it does. Where
 * it does not, the battery changed between the runs, and an exponent would be a number without a meaning.
 */
final class CapacityRunComparison {

    /** Currents nearer than this do not tell (ours). */
    private static final double APART = 1.2;
    /** Relative standard error of each run's capacity (common practice). */
    private static final double SE = 0.02;

    private CapacityRunComparison() {}

    /** @param evidence in canonical order */
    static List<Measurement> of(List<Evidence> evidence) {
        List<Capacity.Run> runs = evidence.stream()
                .filter(item -> item.reading().kind() == EvidenceKind.DISCHARGE_RECORDING)
                .map(item -> DischargeRun.of((Recording) item.reading()).run())
                .flatMap(Optional::stream)
                .sorted(Comparator.comparingDouble(Capacity.Run::amperes)
                        .thenComparingDouble(Capacity.Run::ampereHours))
                .toList();
        List<Measurement> out = new ArrayList<>();
        if (runs.size() < 2) {
            return out;
        }
        Capacity.Run slow = runs.get(0);
        Capacity.Run fast = runs.get(runs.size() - 1);
        if (fast.amperes() >= APART * slow.amperes()) {
            double share = 100 * fast.ampereHours() / slow.ampereHours();
            Interval value = Interval.ofStandardError(share, share * SE * Math.sqrt(2));
            out.add(Measurement.of("capacity-at-higher-current", null, value));
            Capacity.peukert(runs).ifPresent(k -> out.add(Measurement.of("peukert-exponent", null, k)));
        }
        return out;
    }
}
