package org.voltdocket.dossier.display;

import java.util.Optional;
import java.util.stream.DoubleStream;
import java.util.stream.Stream;
import org.voltdocket.diagnosis.Assessment.Finding;

/**
 * Where a value, its interval and its limits lie on a line from 0 to 100; drawn beside the numbers.
 *
 * @param limit place of the limit, or the lower of two
 * @param limitHigh place of the upper limit; null where there is one only
 * @param allowedFrom where the allowed stretch begins
 * @param allowedTo where it ends
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
        // of a window the judge names the end that was passed: both are the upper one then
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

    /** Width of the allowed stretch. */
    public double allowed() {
        return allowedTo - allowedFrom;
    }
}
