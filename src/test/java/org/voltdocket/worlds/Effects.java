package org.voltdocket.worlds;

/**
 * What a fault changes in battery and vehicle. All sizes are ours; they run from barely noticeable to a car that does not
 * start.
 *
 * @param capacityFactor capacity left, share of that when new
 * @param resistanceFactor resistance, multiple of that when new
 * @param lostCells cells that no longer give voltage, 0 to 1
 * @param sourceShare output left of the charging source, share
 * @param stopsAfterS running time after which the source gives nothing, s
 * @param slipsAboveA output above which the belt slips, A
 * @param overV what the regulator holds too much, V
 * @param heldV what the control unit holds whatever it should, V; NaN where it works
 * @param offsetA what the current sensor reads too high, A
 * @param chargeOhm resistance added between source and vehicle, Ω
 * @param mainOhm resistance added between battery and vehicle, Ω
 * @param drainA current added while the vehicle is asleep, A
 * @param sizeFactor capacity fitted, share of that required
 * @param tripS length of a trip, s; NaN where trips are long enough
 */
public record Effects(
        double capacityFactor,
        double resistanceFactor,
        double lostCells,
        double sourceShare,
        double stopsAfterS,
        double slipsAboveA,
        double overV,
        double heldV,
        double offsetA,
        double chargeOhm,
        double mainOhm,
        double drainA,
        double sizeFactor,
        double tripS) {

    private static final double NEVER = Double.POSITIVE_INFINITY;

    /** Nothing wrong. */
    static final Effects NONE = new Effects(1, 1, 0, 1, NEVER, NEVER, 0, Double.NaN, 0, 0, 0, 0, 1, Double.NaN);

    /**
     * @param strength 0 to 1
     */
    static Effects of(Fault fault, double strength) {
        double s = strength;
        return switch (fault) {
            case HEALTHY_CONVENTIONAL, HEALTHY_MANAGED, HEALTHY_OLD, HEALTHY_COLD, WRONG_TYPE -> NONE;
            case CELL_LOST -> battery(0.8 - 0.3 * s, 1.1 + 0.5 * s, StrictMath.min(1, 0.35 + 0.8 * s));
            case JOINT_BROKEN -> battery(1, 1.6 + 3 * s, 0);
            case WORN -> battery(0.65 - 0.35 * s, 1.40 + 0.9 * s, 0);
            case SOURCE_DEAD -> source(0.08 * (1 - s), NEVER, NEVER, 0);
            case SOURCE_WEAK -> source(0.34 - 0.22 * s, NEVER, NEVER, 0);
            case SOURCE_STOPS -> source(1, 800 - 500 * s, NEVER, 0);
            case BELT_SLIPS -> source(1, NEVER, 50 - 38 * s, 0);
            case SOURCE_OVER -> source(1, NEVER, NEVER, 0.7 + 1.6 * s);
            case SENSOR_HIGH -> vehicle(Double.NaN, 0.6 + 7 * s, 0, 0, 0);
            case SENSOR_LOW -> vehicle(Double.NaN, -0.6 - 7 * s, 0, 0, 0);
            case CONTROL_LOW -> vehicle(13.3 - 0.8 * s, 0, 0, 0, 0);
            case CONTROL_HIGH -> vehicle(14.95 + 0.7 * s, 0, 0, 0, 0);
            case CHARGE_CABLE -> vehicle(Double.NaN, 0, 0.008 + 0.045 * s, 0, 0);
            case MAIN_CABLE -> vehicle(Double.NaN, 0, 0, 0.005 + 0.03 * s, 0);
            case DRAIN -> vehicle(Double.NaN, 0, 0, 0, 0.12 + 1.6 * s);
            case WRONG_SIZE ->
                new Effects(1, 1, 0, 1, NEVER, NEVER, 0, Double.NaN, 0, 0, 0, 0, 0.82 - 0.25 * s, Double.NaN);
            case SHORT_TRIPS -> new Effects(1, 1, 0, 1, NEVER, NEVER, 0, Double.NaN, 0, 0, 0, 0, 1, 280 - 170 * s);
        };
    }

    private static Effects battery(double capacity, double resistance, double cells) {
        return new Effects(capacity, resistance, cells, 1, NEVER, NEVER, 0, Double.NaN, 0, 0, 0, 0, 1, Double.NaN);
    }

    private static Effects source(double share, double stops, double slips, double over) {
        return new Effects(1, 1, 0, share, stops, slips, over, Double.NaN, 0, 0, 0, 0, 1, Double.NaN);
    }

    private static Effects vehicle(double held, double offset, double charge, double main, double drain) {
        return new Effects(1, 1, 0, 1, NEVER, NEVER, 0, held, offset, charge, main, drain, 1, Double.NaN);
    }

    /** Whether trips are too short. */
    boolean shortTrips() {
        return !Double.isNaN(tripS);
    }

    /** What is left of the most the source could give, A, asked for {@code wishA} after {@code runningS} s. */
    double limit(double mostA, double wishA, double runningS) {
        double left = runningS > stopsAfterS ? 0 : mostA * sourceShare;
        return wishA > slipsAboveA ? StrictMath.min(left, 0.7 * slipsAboveA) : left;
    }
}
