package org.voltdocket.secondmodel;

import java.util.Arrays;
import org.voltdocket.diagnosis.Regime;

/** What truly happened, on the model's own irregular steps. */
final class Trace {

    /** Columns. */
    enum Of {
        TIME,
        POST_V,
        BATTERY_A,
        VEHICLE_V,
        SENSED_A,
        SENSED_CHARGE,
        RPM,
        SPEED,
        COOLANT,
        CHARGE
    }

    private final double[][] column = new double[Of.values().length][4096];
    private Regime[] regime = new Regime[4096];
    private int rows;

    void add(Regime label, double... row) {
        if (rows == regime.length) {
            for (int c = 0; c < column.length; c++) {
                column[c] = Arrays.copyOf(column[c], rows * 2);
            }
            regime = Arrays.copyOf(regime, rows * 2);
        }
        for (int c = 0; c < column.length; c++) {
            column[c][rows] = row[c];
        }
        regime[rows++] = label;
    }

    int rows() {
        return rows;
    }

    double get(Of what, int row) {
        return column[what.ordinal()][row];
    }

    Regime regime(int row) {
        return regime[row];
    }

    double endS() {
        return get(Of.TIME, rows - 1);
    }

    /** Row in force at a time. */
    int at(double timeS) {
        int found = Arrays.binarySearch(column[0], 0, rows, timeS);
        return found >= 0 ? found : Math.max(0, -found - 2);
    }

    /** Least voltage at the posts as a meter with 60 ms to settle holds it, V, while cranking. */
    double crankMinimum() {
        double least = 99;
        double smooth = 99;
        for (int i = 0; i < rows; i++) {
            if (regime[i] == Regime.CRANKING) {
                double v = get(Of.POST_V, i);
                smooth = smooth > 50 ? v : smooth + 0.033 * (v - smooth);
                least = Math.min(least, smooth);
            } else {
                smooth = 99;
            }
        }
        return least;
    }
}
