package org.voltdocket.diagnosis.quantity.drive;

import java.util.ArrayList;
import java.util.List;
import org.voltdocket.diagnosis.signal.Robust;
import org.voltdocket.kernel.Interval;

/**
 * Usual length of the trips in a recording, s, for those whose start and end it shows. Stops of a few minutes do not end a
 * trip.
 */
final class TripLength {

    /** A longer pause ends a trip, s (as a stop in traffic). */
    private static final double PAUSE_S = 60;
    /** A shorter run is no trip, s (ours). */
    private static final double SHORTEST_S = 20;
    /** Relative standard error (ours): the state of the engine is not known to the second. */
    private static final double SE = 0.05;
    /** Trust in a single trip: it may be an exception (ours). */
    private static final double SINGLE = 0.6;

    private TripLength() {}

    static void measure(DriveContext context) {
        boolean[] running = context.drive.running();
        double step = context.drive.grid().stepS();
        List<Double> trips = new ArrayList<>();
        int from = -1;
        int last = -1;
        for (int k = 0; k <= running.length; k++) {
            boolean on = k < running.length && running[k];
            if (on) {
                from = from < 0 ? k : from;
                last = k;
            } else if (from >= 0 && (k - last) * step > PAUSE_S) {
                add(trips, from, (last - from + 1) * step);
                from = -1;
            }
        }
        if (!trips.isEmpty()) {
            double length = Robust.median(
                    trips.stream().mapToDouble(Double::doubleValue).toArray());
            context.addGiven(
                    trips.size() > 1 ? 1 : SINGLE, "trip-length", Interval.ofStandardError(length, SE * length));
        }
    }

    /** A trip that the recording does not begin in. */
    private static void add(List<Double> trips, int from, double seconds) {
        if (from > 0 && seconds >= SHORTEST_S) {
            trips.add(seconds);
        }
    }
}
