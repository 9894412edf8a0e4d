package org.voltdocket.returned.sampling;

import java.util.List;

/**
 * Single sampling plans by lot size, level and AQL (ISO 2859-1:1999, tables 1, 2-A, 2-B and 2-C). From memory: table 1, the
 * normal and tightened tables, which agree with the values the project was given for level II; the reduced table is from memory
 * alone, and for that reason is used only where a person agrees to it.
 *
 * <p>The tables repeat along their diagonals: with every step of the AQL the acceptance numbers move up one code letter. So one
 * sequence per severity, placed by the letter whose acceptance number is 0, is the whole table.
 */
public final class SamplingPlanTable {

    /** AQLs of the columns, per cent nonconforming. */
    public static final List<Double> AQLS = List.of(0.10, 0.15, 0.25, 0.40, 0.65, 1.0, 1.5, 2.5, 4.0, 6.5, 10.0);

    private static final String LETTERS = "ABCDEFGHJKLMNPQR";
    private static final int[] UP_TO = {
        8, 15, 25, 50, 90, 150, 280, 500, 1200, 3200, 10_000, 35_000, 150_000, 500_000, Integer.MAX_VALUE
    };
    private static final String LEVEL_1 = "AABCCDEFGHJKLMN";
    private static final String LEVEL_2 = "ABCDEFGHJKLMNPQ";
    private static final String LEVEL_3 = "BCDEFGHJKLMNPQR";
    private static final int[] SIZES = {2, 3, 5, 8, 13, 20, 32, 50, 80, 125, 200, 315, 500, 800, 1250, 2000};
    private static final int[] REDUCED_SIZES = {2, 2, 2, 3, 5, 8, 13, 20, 32, 50, 80, 125, 200, 315, 500, 800};

    private static final int UP = -1;
    private static final int DOWN = -2;
    private static final int[] NORMAL = {0, UP, DOWN, 1, 2, 3, 5, 7, 10, 14, 21};
    private static final int[] TIGHTENED = {0, DOWN, DOWN, 1, 2, 3, 5, 8, 12, 18};
    private static final int[] REDUCED = {0, UP, DOWN, DOWN, 1, 2, 3, 4, 6, 8, 10};
    /** Index of the letter whose acceptance number is 0 in the normal table at AQL 0.10: K. */
    private static final int ZERO_AT_FIRST = 9;

    private SamplingPlanTable() {}

    /**
     * Code letter of a lot, table 1.
     *
     * @param lotSize 2 or more
     */
    public static char letter(InspectionLevel level, int lotSize) {
        if (lotSize < 2) {
            throw new IllegalArgumentException("a lot has two or more, not " + lotSize);
        }
        int row = 0;
        while (lotSize > UP_TO[row]) {
            row++;
        }
        return switch (level) {
            case I -> LEVEL_1.charAt(row);
            case II -> LEVEL_2.charAt(row);
            case III -> LEVEL_3.charAt(row);
        };
    }

    /**
     * The plan for a lot. Where the sample would be as large as the lot or larger, all are tested.
     *
     * @param lotSize 2 or more
     * @param aql one of {@link #AQLS}, per cent
     */
    public static SamplingPlan plan(InspectionSeverity severity, InspectionLevel level, int lotSize, double aql) {
        SamplingPlan plan = plan(severity, letter(level, lotSize), aql);
        return new SamplingPlan(plan.letter(), Math.min(plan.sampleSize(), lotSize), plan.acceptance());
    }

    /** The plan that a code letter leads to, arrows followed. */
    public static SamplingPlan plan(InspectionSeverity severity, char letter, double aql) {
        int column = AQLS.indexOf(aql);
        int asked = LETTERS.indexOf(letter);
        if (column < 0 || asked < 0) {
            throw new IllegalArgumentException("no plan for letter " + letter + " and AQL " + aql);
        }
        int[] numbers = numbers(severity);
        int zero = ZERO_AT_FIRST - column + (severity == InspectionSeverity.TIGHTENED ? 1 : 0);
        int place = Math.max(0, Math.min(asked - zero, numbers.length - 1));
        if (numbers[place] == UP) {
            // the row above A does not exist: then the arrow points down
            place += zero + place - 1 < 0 ? 1 : -1;
        }
        while (numbers[place] == DOWN || numbers[place] == UP || zero + place < 0) {
            place++;
        }
        int row = zero + place;
        int[] sizes = severity == InspectionSeverity.REDUCED ? REDUCED_SIZES : SIZES;
        return new SamplingPlan(LETTERS.charAt(row), sizes[row], numbers[place]);
    }

    /** The next tighter AQL, or the same where there is none. */
    public static double tighter(double aql) {
        return AQLS.get(Math.max(0, AQLS.indexOf(aql) - 1));
    }

    private static int[] numbers(InspectionSeverity severity) {
        return switch (severity) {
            case NORMAL -> NORMAL;
            case TIGHTENED -> TIGHTENED;
            case REDUCED -> REDUCED;
        };
    }
}
