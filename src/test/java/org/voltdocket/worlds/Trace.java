package org.voltdocket.worlds;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/** What truly happened, on the steps of the simulation. */
public final class Trace {

    /** Columns; units as in a recording, charge as a share. */
    public enum Of {
        TIME,
        POST_V,
        AMPERES,
        VEHICLE_V,
        SENSED_A,
        BELIEVED,
        RPM,
        SPEED,
        COOLANT,
        RIPPLE_V,
        CHARGE,
        CHARGED_AH
    }

    /**
     * Something the driver could note.
     *
     * @param started true where the engine started, false where it was switched off
     */
    public record Event(double atS, boolean started) {}

    private final double[][] column = new double[Of.values().length][2048];
    private final List<Event> events = new ArrayList<>();
    private int rows;

    void add(double... row) {
        for (int c = 0; c < column.length; c++) {
            if (rows == column[c].length) {
                column[c] = Arrays.copyOf(column[c], 2 * rows);
            }
            column[c][rows] = row[c];
        }
        rows++;
    }

    void add(Event event) {
        events.add(event);
    }

    public List<Event> events() {
        return events;
    }

    public int rows() {
        return rows;
    }

    public double get(Of what, int row) {
        return column[what.ordinal()][row];
    }

    /** Value in force at a time. */
    public double at(Of what, double timeS) {
        return get(what, rowAt(timeS));
    }

    /** Row in force at a time that is not before the time of an earlier row. */
    int rowAfter(int earlier, double timeS) {
        int row = earlier;
        while (row + 1 < rows && column[0][row + 1] <= timeS) {
            row++;
        }
        return row;
    }

    public double endS() {
        return get(Of.TIME, rows - 1);
    }

    private int rowAt(double timeS) {
        int found = Arrays.binarySearch(column[0], 0, rows, timeS);
        return found >= 0 ? found : Math.max(0, -found - 2);
    }

    /** Least voltage at the posts in the trace, as a meter with 50 ms to settle holds it, V. */
    public double settledMinimum() {
        double settled = get(Of.POST_V, 0);
        double least = settled;
        for (int i = 1; i < rows; i++) {
            double dt = get(Of.TIME, i) - get(Of.TIME, i - 1);
            settled += (get(Of.POST_V, i) - settled) * Math.min(1, dt / 0.05);
            least = Math.min(least, settled);
        }
        return least;
    }
}
