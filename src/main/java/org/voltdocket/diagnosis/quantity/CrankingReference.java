package org.voltdocket.diagnosis.quantity;

import java.util.Optional;
import java.util.OptionalDouble;
import org.voltdocket.diagnosis.CrankingStandard;
import org.voltdocket.kernel.Interval;

/**
 * Cranking: least voltage by temperature, and a measured cranking current against its rating.
 */
public final class CrankingReference {

    /**
     * Least voltage under half the rated current for 15 s by temperature (vehicle workshop manuals, 2007 and 2009);
     * straight lines between the points are our choice.
     */
    private static final LookupTable HALF_RATING = new LookupTable(
            new double[] {-18, -12, -7, -1, 4, 10, 16, 21}, new double[] {8.5, 8.7, 8.9, 9.1, 9.3, 9.4, 9.5, 9.6});

    private static final double SAME_STANDARD_SE = 0.05;
    private static final double CONVERTED_SE = 0.10;

    /** Usual rating by EN 50342-1, A per Ah (common practice: 7.5 to 10.5), and its relative standard error. */
    private static final double USUAL_A_PER_AH = 8.8;

    private static final double USUAL_BY_SIZE_SE = 0.15;
    /** Usual rating of a passenger car battery, A (common practice: 400 to 850), and its relative standard error. */
    private static final double USUAL_A = 600;

    private static final double USUAL_SE = 0.25;

    private CrankingReference() {}

    /** Least voltage, V, at a battery temperature, °C. */
    public static double leastVoltage(double temperatureC) {
        return HALF_RATING.at(temperatureC);
    }

    /**
     * Measured cranking current as a share of the rated one, %, with its 95 % interval. Where the standards differ both
     * are brought to EN 50342-1 by the rough factors of the trade (EN ≈ 0.92 SAE; DIN ≈ 0.58 EN, from memory), and the
     * interval says how rough.
     *
     * @return empty where no factor joins the two standards
     */
    public static Optional<Interval> shareOfRating(
            double measuredA, CrankingStandard measuredBy, double ratedA, CrankingStandard ratedBy) {
        double share;
        double relative;
        if (measuredBy == ratedBy) {
            share = 100 * measuredA / ratedA;
            relative = SAME_STANDARD_SE;
        } else {
            OptionalDouble measured = toEn(measuredBy);
            OptionalDouble rated = toEn(ratedBy);
            if (measured.isEmpty() || rated.isEmpty()) {
                return Optional.empty();
            }
            share = 100 * measuredA * measured.getAsDouble() / (ratedA * rated.getAsDouble());
            relative = CONVERTED_SE;
        }
        return Optional.of(Interval.ofStandardError(share, relative * share));
    }

    /**
     * Measured cranking current as a share of the usual rating of a battery's size, %, with its 95 % interval.
     *
     * @param standard null where not known
     * @param capacityAh nominal capacity, Ah; null where not known
     */
    public static Interval shareOfUsual(double measuredA, CrankingStandard standard, Double capacityAh) {
        double usual = capacityAh == null ? USUAL_A : USUAL_A_PER_AH * capacityAh;
        double relative = capacityAh == null ? USUAL_SE : USUAL_BY_SIZE_SE;
        double factor = standard == null ? 1 : toEn(standard).orElse(1);
        double share = 100 * measuredA * factor / usual;
        return Interval.ofStandardError(share, relative * share);
    }

    private static OptionalDouble toEn(CrankingStandard standard) {
        return switch (standard) {
            case EN -> OptionalDouble.of(1);
            case SAE -> OptionalDouble.of(0.92);
            case DIN -> OptionalDouble.of(1 / 0.58);
            case IEC, JIS -> OptionalDouble.empty();
        };
    }
}
