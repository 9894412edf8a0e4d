package org.voltdocket.dossier.display;

import java.util.Optional;
import java.util.stream.DoubleStream;
import java.util.stream.Stream;
import org.voltdocket.diagnosis.Assessment.Finding;

/**
 * Positions of a value, its interval and its limits on a scale from 0 to 100, drawn next to the numbers.
 *
 * @param limit position of the limit, or of the lower of two
 * @param limitHigh position of the upper limit; null where there is only one
 * @param allowedFrom start of the allowed range
 * @param allowedTo end of the allowed range
 */
public record LimitScale(
        double value, double low, double high, double limit, Double limitHigh, double allowedFrom, double allowedTo) {

    private static final double AIR = 0.15;
    private static final double FULL = 100;

    /** Empty where the finding has no number or no limit. */
    static Optional<LimitScale> of(Finding f) {
        if (f.value() == null || f.limit() == null) {
            return Optional.empty();
        }
        double low = f.low() == null ? f.value() : f.low();
        double high = f.high() == null ? f.value() : f.high();
        double[] all = Stream.of(f.value(), low, high, f.limit(), f.limitHigh())
                .filter(v -> v != null)
                .mapToDouble(Double::doubleValue)
                .toArray();
        double least = DoubleStream.of(all).min().orElse(0);
        double most = DoubleStream.of(all).max().orElse(1);
        double span = most > least ? most - least : Math.max(1, Math.abs(most));
        double from = least - AIR * span;
        double scale = FULL / ((1 + 2 * AIR) * span);
        double limit = (f.limit() - from) * scale;
        Double upper = f.limitHigh() == null ? null : (f.limitHigh() - from) * scale;
        boolean floor = "at-least".equals(f.comparison());
        // if a window's upper end was passed, the assessment sets both limits to the upper end
        boolean ceiling = "at-most".equals(f.comparison()) || f.limit().equals(f.limitHigh());
        double allowedFrom = ceiling ? 0 : limit;
        double allowedTo = floor ? FULL : upper != null ? upper : limit;
        return Optional.of(new LimitScale(
                (f.value() - from) * scale,
                (low - from) * scale,
                (high - from) * scale,
                limit,
                upper,
                allowedFrom,
                allowedTo));
    }

    /** Width of the interval. */
    public double width() {
        return high - low;
    }

    /** Width of the allowed range. */
    public double allowed() {
        return allowedTo - allowedFrom;
    }
}
