package org.voltdocket.diagnosis.quantity.drive;

import java.util.ArrayList;
import java.util.List;
import org.voltdocket.diagnosis.Channel;
import org.voltdocket.diagnosis.regime.EngineStart;
import org.voltdocket.diagnosis.signal.Robust;
import org.voltdocket.diagnosis.signal.RobustLine;
import org.voltdocket.kernel.Interval;

/**
 * Stop-start: minimum voltage of the restarts, its trend over the drive, and stops that the vehicle does not make although
 * the engine is warm, the vehicle stands and reports enough charge.
 */
final class Restarts {

    /** A longer stop is no stop in traffic, s (ours). */
    private static final double TRAFFIC_STOP_S = 180;
    /** A slower recording may miss the least voltage of a restart, s between rows (ours). */
    private static final double FAST_ENOUGH_S = 0.12;

    private static final double SE_V = 0.05;
    private static final int FEWEST_FOR_TREND = 4;
    /** Stop-start wants a coolant of 40 to 60 °C and a charge of 65 to 70 % (common practice); warmer and fuller here. */
    private static final double WARM_C = 65;

    private static final double ENOUGH_CHARGE = 80;
    /** Engines that stop do so within seconds of standing, s (ours). */
    private static final double STANDS_S = 10;

    private static final double STANDING_KMH = 1;

    private final DriveContext context;

    private Restarts(DriveContext context) {
        this.context = context;
    }

    static void measure(DriveContext context) {
        Restarts all = new Restarts(context);
        List<EngineStart> restarts = all.restarts();
        all.minima(restarts);
        if (Boolean.TRUE.equals(context.reference.facts().vehicle().stopStart())) {
            all.refusals(restarts);
        }
    }

    /** Starts not long after the engine ran. */
    private List<EngineStart> restarts() {
        List<EngineStart> out = new ArrayList<>();
        boolean[] running = context.drive.running();
        for (EngineStart start : context.drive.starts()) {
            int step = context.drive.grid().stepOf(start.fromS()) - 1;
            int earliest = (int)
                    Math.max(0, step - TRAFFIC_STOP_S / context.drive.grid().stepS());
            while (step > earliest && !running[step]) {
                step--;
            }
            if (step >= 0 && running[step] && !context.drive.starts().get(0).equals(start)) {
                out.add(start);
            }
        }
        return out;
    }

    private void minima(List<EngineStart> restarts) {
        double interval = context.drive.grid().recording().durationS()
                / Math.max(1, context.drive.grid().recording().rows() - 1);
        if (restarts.isEmpty() || interval > FAST_ENOUGH_S) {
            return;
        }
        double[] order = new double[restarts.size()];
        double[] least = new double[restarts.size()];
        for (int i = 0; i < order.length; i++) {
            order[i] = i;
            least[i] = restarts.get(i).minimumV();
        }
        context.add("restart-minimum", Interval.ofStandardError(Robust.quantile(least, 0), SE_V));
        RobustLine trend = order.length < FEWEST_FOR_TREND ? null : RobustLine.through(order, least);
        if (trend != null) {
            double last = order.length - 1;
            double se = Math.hypot(trend.slopeSe() * last, SE_V);
            context.add("restart-trend", Interval.ofStandardError(trend.slope() * last, se));
        }
    }

    /** Standings with a warm engine that went on running though the vehicle reports charge enough; 0 where it ever stopped. */
    private void refusals(List<EngineStart> restarts) {
        double[] speed = context.drive.speed();
        double[] charge = context.drive.reportedSoc();
        double[] coolant = context.drive.grid().held(Channel.COOLANT, 0);
        if (speed == null || charge == null || coolant == null) {
            return;
        }
        int standings = 0;
        int lasting = 0;
        int wanted = (int) Math.ceil(STANDS_S / context.drive.grid().stepS());
        for (int k = 0; k < speed.length; k++) {
            boolean could = context.drive.running()[k]
                    && speed[k] < STANDING_KMH
                    && charge[k] >= ENOUGH_CHARGE
                    && coolant[k] >= WARM_C;
            lasting = could ? lasting + 1 : 0;
            standings += lasting == wanted ? 1 : 0;
        }
        if (standings > 0 || !restarts.isEmpty()) {
            context.add("stop-refusals", Interval.exact(restarts.isEmpty() ? standings : 0));
        }
    }
}
