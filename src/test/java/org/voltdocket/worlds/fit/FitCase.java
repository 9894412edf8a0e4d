package org.voltdocket.worlds.fit;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.voltdocket.diagnosis.Cause;

/**
 * What the fit of the weights needs of a case: its true cause, and on which side of its limits each rule found its
 * measurements.
 *
 * @param channels which channels of the recordings were kept
 */
public record FitCase(String world, String channels, String fault, long seed, Cause cause, List<Look> looks) {

    /**
     * One measurement of a rule. The likelihood ratio of a cause is 1 + Σ share·(ratio − 1), where the ratio is that of
     * the rule's weight on the side.
     *
     * @param below share of the weight below the limits that counts, 0 to 1
     * @param inside the same inside
     * @param above the same above
     */
    public record Look(String rule, double below, double inside, double above) {

        double[] shares() {
            return new double[] {below, inside, above};
        }
    }

    /** Name of the generated case, whatever its channels. */
    String origin() {
        return world + " " + fault + " " + seed;
    }

    /** One line of text. */
    public String line() {
        StringBuilder out = new StringBuilder(String.join("\t", world, channels, fault, "" + seed, cause.id()));
        for (Look look : looks) {
            out.append(String.format(
                    Locale.ROOT, "\t%s=%.4f,%.4f,%.4f", look.rule(), look.below(), look.inside(), look.above()));
        }
        return out.toString();
    }

    /** The case of a line that {@link #line()} wrote. */
    public static FitCase of(String line) {
        String[] cells = line.split("\t");
        List<Look> looks = new ArrayList<>();
        for (int i = 5; i < cells.length; i++) {
            String[] look = cells[i].split("[=,]");
            looks.add(new Look(
                    look[0], Double.parseDouble(look[1]), Double.parseDouble(look[2]), Double.parseDouble(look[3])));
        }
        return new FitCase(cells[0], cells[1], cells[2], Long.parseLong(cells[3]), Cause.of(cells[4]), looks);
    }
}
