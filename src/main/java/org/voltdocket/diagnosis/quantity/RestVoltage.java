package org.voltdocket.diagnosis.quantity;

import org.voltdocket.diagnosis.Chemistry;
import org.voltdocket.kernel.Interval;

/**
 * State of charge of a 12 V lead-acid battery from its voltage at rest, and back.
 *
 * <p>Tables: flooded and gel, ElectricalAge2 battery charts at 26.7 °C; AGM and EFB, common practice (no single
 * source). Temperature: +1.1 mV/K near 25 °C and +2.2 mV/K on average from 26.7 to -1.1 °C (same charts), joined by a
 * parabola. Published charts differ by up to 0.3 V at the ends, so every answer carries an uncertainty.
 */
public final class RestVoltage {

    private static final double[] CHARGE = {0, 25, 50, 75, 100};
    private static final LookupTable FLOODED =
            new LookupTable(CHARGE, new double[] {11.89, 12.06, 12.24, 12.45, 12.65});
    private static final LookupTable GEL = new LookupTable(CHARGE, new double[] {11.80, 12.00, 12.40, 12.60, 12.80});
    private static final LookupTable AGM = new LookupTable(CHARGE, new double[] {11.80, 12.00, 12.30, 12.60, 12.90});
    private static final LookupTable EFB = new LookupTable(CHARGE, new double[] {11.80, 12.00, 12.20, 12.45, 12.75});

    /** A battery below this state of charge is low and a working vehicle charges it, % (common practice: targets are 75 to 85 %). */
    public static final double LOW_CHARGE = 68;

    /** Temperature of the tables, °C. */
    public static final double TABLE_C = 26.7;

    private static final double NEAR_V_PER_K = 0.0011;
    private static final double AVERAGE_V_PER_K = 0.0022;
    private static final double SPAN_K = 27.8;
    /** Standard error of the tables away from their ends, V (ours). */
    private static final double TABLE_SE_V = 0.07;
    /** The same where the chemistry is not known, V (ours). */
    private static final double UNKNOWN_SE_V = 0.09;

    /** How far published charts differ at their ends, V. */
    private static final double CHART_SPREAD_V = 0.3;
    /** Least width of an interval at the ends of the table, % (ours). */
    private static final double LEAST_WIDTH = 5;

    private RestVoltage() {}

    /** Table of a chemistry, % to V at {@link #TABLE_C}; EFB where it is null. */
    public static LookupTable table(Chemistry chemistry) {
        if (chemistry == null) {
            return EFB;
        }
        return switch (chemistry) {
            case FLOODED -> FLOODED;
            case GEL -> GEL;
            case AGM -> AGM;
            case EFB -> EFB;
        };
    }

    /**
     * Voltage at rest, V.
     *
     * @param charge state of charge, %, 0 to 100
     * @param temperatureC °C
     */
    public static double at(Chemistry chemistry, double charge, double temperatureC) {
        return table(chemistry).at(charge) - coldDrop(temperatureC);
    }

    /**
     * State of charge, %, 0 to 100, with its 95 % interval. What lies above the table is surface charge: its lower end is no
     * higher than that of a full battery's voltage.
     *
     * @param volts rest voltage, V
     * @param standardError of that voltage, V
     * @param unrestedV how much of the voltage may still be surface charge, V, 0 or more; widens the low end only
     */
    public static Interval charge(
            Chemistry chemistry, double volts, double temperatureC, double standardError, double unrestedV) {
        LookupTable inverse = table(chemistry).inverse();
        double drop = coldDrop(temperatureC);
        double table = chemistry == null ? UNKNOWN_SE_V : TABLE_SE_V;
        double se = Math.sqrt(table * table + standardError * standardError + 0.09 * drop * drop);
        double v = volts + drop;
        double value = inverse.at(v);
        double rested = Math.min(v, table(chemistry).at(100));
        double low = inverse.at(rested - Interval.Z95 * se - unrestedV);
        double high = inverse.at(v + Interval.Z95 * se);
        return new Interval(
                value, Math.min(low, Math.min(value, 100 - LEAST_WIDTH)), Math.max(high, Math.max(value, LEAST_WIDTH)));
    }

    /**
     * Whether a rest voltage lies below the table by more than published charts differ at their ends (0.3 V): no state of
     * charge explains it.
     *
     * @param volts rest voltage, V
     */
    public static boolean belowTable(Chemistry chemistry, double volts, double temperatureC) {
        return volts + coldDrop(temperatureC) < table(chemistry).at(0) - CHART_SPREAD_V;
    }

    /** How much lower than at {@link #TABLE_C} a battery rests, V; negative above it. */
    static double coldDrop(double temperatureC) {
        double d = TABLE_C - temperatureC;
        if (d <= 0) {
            return NEAR_V_PER_K * d;
        }
        double bend = (AVERAGE_V_PER_K - NEAR_V_PER_K) / SPAN_K;
        double within = Math.min(d, SPAN_K);
        double beyond = d - within;
        double slopeThere = NEAR_V_PER_K + 2 * bend * SPAN_K;
        return NEAR_V_PER_K * within + bend * within * within + slopeThere * beyond;
    }

    /** Slope of rest voltage, V per % of charge, around a state of charge. */
    public static double slope(Chemistry chemistry, double charge) {
        LookupTable table = table(chemistry);
        double low = Math.max(0, Math.min(charge, 100) - 20);
        double high = Math.min(100, low + 40);
        return (table.at(high) - table.at(high - 40)) / 40;
    }
}
