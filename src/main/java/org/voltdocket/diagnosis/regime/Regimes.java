package org.voltdocket.diagnosis.regime;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.voltdocket.diagnosis.Assessment.RegimeSpan;
import org.voltdocket.diagnosis.Regime;
import org.voltdocket.diagnosis.signal.Grid;

/** Divides a recording into regimes. */
public final class Regimes {

    /** A stretch shorter than this joins the one before it, s. */
    private static final double SHORTEST_S = 4;
    /** The same in rows of the recording (ours). */
    private static final double SHORTEST_ROWS = 2.5;
    /** A stop longer than this is no stop in traffic, s. */
    private static final double TRAFFIC_STOP_S = 180;

    private Regimes() {}

    /**
     * @param flow for each step, the regime while the engine runs: {@link Regime#CHARGING}, {@link Regime#HOLDING},
     *     {@link Regime#DISCHARGING} or {@link Regime#UNKNOWN}
     * @return spans in order, covering the recording without gap
     */
    public static List<RegimeSpan> cut(Grid grid, List<EngineStart> starts, boolean[] running, Regime[] flow) {
        int n = grid.steps();
        Regime[] by = new Regime[n];
        for (int k = 0; k < n; k++) {
            by[k] = Double.isNaN(grid.voltage()[k]) ? Regime.UNKNOWN : running[k] ? flow[k] : null;
        }
        nameStops(by, running, grid.stepS());
        double shortest = Math.max(SHORTEST_S, SHORTEST_ROWS * grid.rowS());
        joinShort(by, (int) Math.round(shortest / grid.stepS()));
        return spans(grid, starts, by);
    }

    private static void nameStops(Regime[] by, boolean[] running, double stepS) {
        int n = by.length;
        for (int k = 0; k < n; ) {
            if (running[k]) {
                k++;
                continue;
            }
            int end = k;
            while (end < n && !running[end]) {
                end++;
            }
            boolean traffic = k > 0 && end < n && (end - k) * stepS <= TRAFFIC_STOP_S;
            for (int j = k; j < end; j++) {
                by[j] = by[j] == Regime.UNKNOWN ? Regime.UNKNOWN : traffic ? Regime.STOPPED : Regime.REST;
            }
            k = end;
        }
    }

    private static void joinShort(Regime[] by, int shortest) {
        int from = 0;
        for (int k = 1; k <= by.length; k++) {
            if (k < by.length && by[k] == by[from]) {
                continue;
            }
            if (isFlow(by[from]) && k - from < shortest && from > 0 && isFlow(by[from - 1])) {
                Arrays.fill(by, from, k, by[from - 1]);
            }
            from = k;
        }
    }

    private static boolean isFlow(Regime regime) {
        return regime == Regime.CHARGING || regime == Regime.HOLDING || regime == Regime.DISCHARGING;
    }

    private static List<RegimeSpan> spans(Grid grid, List<EngineStart> starts, Regime[] by) {
        double[] time = grid.recording().timeS();
        double first = time[0];
        double last = time[time.length - 1];
        List<RegimeSpan> out = new ArrayList<>();
        double from = first;
        for (int k = 1; k <= by.length; k++) {
            if (k < by.length && by[k] == by[k - 1]) {
                continue;
            }
            double to = k == by.length ? last : Math.min(last, grid.timeOf(k));
            if (to > from) {
                out.add(new RegimeSpan(from, to, by[k - 1]));
                from = to;
            }
        }
        if (out.isEmpty()) {
            out.add(new RegimeSpan(first, last, by[0]));
        }
        for (EngineStart start : starts) {
            out = laidOver(out, Math.max(first, start.fromS()), Math.min(last, start.toS() + 0.1));
        }
        return List.copyOf(merged(out));
    }

    private static List<RegimeSpan> laidOver(List<RegimeSpan> spans, double from, double to) {
        List<RegimeSpan> out = new ArrayList<>();
        for (RegimeSpan span : spans) {
            if (span.to() <= from || span.from() >= to) {
                out.add(span);
                continue;
            }
            if (span.from() < from) {
                out.add(new RegimeSpan(span.from(), from, span.regime()));
            }
            out.add(new RegimeSpan(Math.max(span.from(), from), Math.min(span.to(), to), Regime.CRANKING));
            if (span.to() > to) {
                out.add(new RegimeSpan(to, span.to(), span.regime()));
            }
        }
        return out;
    }

    private static List<RegimeSpan> merged(List<RegimeSpan> spans) {
        List<RegimeSpan> out = new ArrayList<>();
        for (RegimeSpan span : spans) {
            int end = out.size() - 1;
            if (end >= 0 && out.get(end).regime() == span.regime()) {
                out.set(end, new RegimeSpan(out.get(end).from(), span.to(), span.regime()));
            } else {
                out.add(span);
            }
        }
        return out;
    }
}
