package org.voltdocket.diagnosis.quantity;

import java.util.Arrays;
import java.util.List;
import org.voltdocket.diagnosis.Channel;
import org.voltdocket.diagnosis.Recording;
import org.voltdocket.diagnosis.regime.EngineStart;
import org.voltdocket.diagnosis.regime.EngineStartDetector;
import org.voltdocket.diagnosis.regime.EngineState;
import org.voltdocket.diagnosis.signal.Delay;
import org.voltdocket.diagnosis.signal.Grid;
import org.voltdocket.diagnosis.signal.Robust;

/** Signals of a recording on a 1 s grid, with the delays of slow channels removed, and with starts and engine state. */
public final class DriveSignals {

    private static final double STEP_S = 1;
    /** Coarsest resolution of a voltage in use, V (common practice). */
    public static final double COARSEST_V = 0.1;
    /** Fewer rows with both voltages do not show a copy (ours). */
    private static final int FEWEST_PAIRS = 50;
    /** Two instruments agree to the last digit in a smaller share of the rows (ours). */
    private static final double COPIED = 0.98;
    /** Between rows further apart than this, steps, a voltage is a mixture where the engine starts or stops. */
    private static final int MOST_ROW_STEPS = 1;
    /** Seconds around a start that no comparison uses. */
    private static final int START_MARGIN_STEPS = 5;

    private final Grid grid;
    private final List<EngineStart> starts;
    private final boolean[] running;
    private final double[] voltage;
    private final double[] measuredA;
    private final double[] reportedA;
    private final double[] reportedV;
    private final double[] reportedSoc;
    private final double[] speed;
    private final double temperatureC;
    private final boolean[] nearStart;
    private final double identicalShare;
    private final double resolutionV;

    /**
     * @param fallbackTemperatureC °C where the recording tells none
     */
    public DriveSignals(Recording recording, double fallbackTemperatureC) {
        this.grid = Grid.of(recording, STEP_S);
        this.starts = EngineStartDetector.in(grid);
        this.running = EngineState.running(grid, starts);
        this.voltage = Robust.medianOfThree(grid.voltage());
        this.measuredA = grid.mean(Channel.MEASURED_A);
        Delay delays = new Delay(recording);
        this.reportedA = grid.held(Channel.REPORTED_A, delays.of(Channel.REPORTED_A));
        this.identicalShare = identicalShare(recording);
        this.reportedV = copied() ? null : grid.held(Channel.REPORTED_V, delays.of(Channel.REPORTED_V));
        this.reportedSoc = grid.held(Channel.REPORTED_SOC, 0);
        this.speed = grid.held(Channel.SPEED, 0);
        this.temperatureC = ambient(recording, fallbackTemperatureC);
        this.nearStart = aroundStarts();
        this.resolutionV = Robust.resolution(recording.channel(Channel.MEASURED_V), COARSEST_V);
    }

    /** Share of the rows with both voltages in which they are equal to the last digit; NaN below {@link #FEWEST_PAIRS}. */
    private static double identicalShare(Recording recording) {
        float[] measured = recording.channel(Channel.MEASURED_V);
        float[] reported = recording.channel(Channel.REPORTED_V);
        int pairs = 0;
        int same = 0;
        for (int row = 0; reported != null && row < measured.length; row++) {
            if (!Float.isNaN(measured[row]) && !Float.isNaN(reported[row])) {
                pairs++;
                same += measured[row] == reported[row] ? 1 : 0;
            }
        }
        return pairs < FEWEST_PAIRS ? Double.NaN : (double) same / pairs;
    }

    /** Whether the reported voltage is a copy of the measured one and not a second instrument. */
    private boolean copied() {
        return identicalShare > COPIED;
    }

    /** Share of rows in which measured and reported voltage are equal to the last digit; NaN where that is not known. */
    public double identicalShare() {
        return identicalShare;
    }

    private static double ambient(Recording recording, double fallback) {
        float[] ambient = recording.channel(Channel.AMBIENT);
        if (ambient != null) {
            double median = Robust.median(ambient);
            if (!Double.isNaN(median)) {
                return median;
            }
        }
        return fallback;
    }

    private boolean[] aroundStarts() {
        boolean[] near = new boolean[grid.steps()];
        for (EngineStart start : starts) {
            int from = Math.max(0, grid.stepOf(start.fromS()) - 2);
            int to = Math.min(near.length, grid.stepOf(start.toS()) + START_MARGIN_STEPS + 1);
            Arrays.fill(near, from, to, true);
        }
        int row = (int) Math.ceil(grid.rowS() / grid.stepS());
        for (int k = 1; row > MOST_ROW_STEPS && k < near.length; k++) {
            if (running[k] != running[k - 1]) {
                Arrays.fill(near, Math.max(0, k - row), Math.min(near.length, k + row), true);
            }
        }
        return near;
    }

    public Grid grid() {
        return grid;
    }

    public List<EngineStart> starts() {
        return starts;
    }

    /** Whether the engine runs, by step. */
    public boolean[] running() {
        return running;
    }

    /** Measured voltage, V, spikes taken out, NaN in gaps. */
    public double[] voltage() {
        return voltage;
    }

    /** Clamp current, A into the battery; null where not recorded. */
    public double[] measuredA() {
        return measuredA;
    }

    /** Current the vehicle reports, A into the battery, its delay taken off; null where not recorded. */
    public double[] reportedA() {
        return reportedA;
    }

    /** Voltage the vehicle reports, V, its delay taken off; null where not recorded. */
    public double[] reportedV() {
        return reportedV;
    }

    /** State of charge the vehicle reports, %; null where not recorded. */
    public double[] reportedSoc() {
        return reportedSoc;
    }

    /** km/h; null where not recorded. */
    public double[] speed() {
        return speed;
    }

    /** Ambient, °C; NaN where nothing tells it. */
    public double temperatureC() {
        return temperatureC;
    }

    /** Resolution of the measured voltage, V. */
    public double resolutionV() {
        return resolutionV;
    }

    /** Whether a step is within a few seconds of a start, or between slow rows of which the engine runs in one only. */
    public boolean nearStart(int step) {
        return nearStart[step];
    }

    /** Whether the engine runs at a step that no start disturbs and that has a voltage. */
    public boolean steady(int step) {
        return running[step] && !nearStart[step] && !Double.isNaN(voltage[step]);
    }

    /** Steps with {@link #steady}. */
    public int steadySteps() {
        int n = 0;
        for (int k = 0; k < grid.steps(); k++) {
            n += steady(k) ? 1 : 0;
        }
        return n;
    }

    /** The values at steady steps only, NaN elsewhere; a copy. */
    public double[] steadyOnly(double[] values) {
        double[] out = new double[values.length];
        for (int k = 0; k < out.length; k++) {
            out[k] = steady(k) ? values[k] : Double.NaN;
        }
        return out;
    }

    /** Means over blocks of steps; NaN where less than half of a block has a value. */
    public static double[] blocks(double[] values, int size) {
        double[] out = new double[values.length / size];
        for (int b = 0; b < out.length; b++) {
            double sum = 0;
            int n = 0;
            for (int k = b * size; k < (b + 1) * size; k++) {
                if (!Double.isNaN(values[k])) {
                    sum += values[k];
                    n++;
                }
            }
            out[b] = 2 * n >= size ? sum / n : Double.NaN;
        }
        return out;
    }
}
