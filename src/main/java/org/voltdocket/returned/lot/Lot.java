package org.voltdocket.returned.lot;

import java.time.Instant;
import java.util.List;
import java.util.UUID;
import org.voltdocket.kernel.RequestException;
import org.voltdocket.returned.BenchOutcome;
import org.voltdocket.returned.ReturnErrors;
import org.voltdocket.returned.ReturnListItem;
import org.voltdocket.returned.sampling.InspectionLevel;
import org.voltdocket.returned.sampling.InspectionSeverity;
import org.voltdocket.returned.sampling.SamplingPlan;
import org.voltdocket.returned.sampling.SwitchingRules;

/**
 * A lot of returned batteries of which a sample is tested.
 *
 * @param scope what its batteries share
 * @param key identifier of the workshop or batch
 * @param name for display
 * @param aql acceptance quality limit, per cent nonconforming
 * @param seed what the order of the draw follows from, with the numbers of the returns
 */
public record Lot(
        UUID id,
        String number,
        Scope scope,
        String key,
        String name,
        int size,
        InspectionLevel level,
        double aql,
        InspectionSeverity severity,
        SamplingPlan plan,
        long seed,
        Instant drawnAt,
        String drawnBy,
        Progress progress) {

    /** What the batteries of a lot have in common; it decides which outcomes are nonconforming. */
    public enum Scope {
        /** Returned by one workshop: a battery without a warranty defect is nonconforming. */
        WORKSHOP("workshop", List.of(BenchOutcome.NO_FAULT_FOUND, BenchOutcome.DAMAGED_BY_USE)),
        /** From one production batch: a defective battery is nonconforming. */
        BATCH("batch", List.of(BenchOutcome.DEFECT_CONFIRMED));

        private final String id;
        private final List<BenchOutcome> nonconforming;

        Scope(String id, List<BenchOutcome> nonconforming) {
            this.id = id;
            this.nonconforming = nonconforming;
        }

        /** The stable identifier. */
        public String id() {
            return id;
        }

        /** Whether this outcome is nonconforming. */
        public boolean counts(BenchOutcome finding) {
            return nonconforming.contains(finding);
        }

        /** @throws RequestException (400) if there is none of this name */
        public static Scope of(String id) {
            for (Scope scope : values()) {
                if (scope.id.equals(id)) {
                    return scope;
                }
            }
            throw ReturnErrors.invalid("scope", "'scope' is 'workshop' or 'batch'; read '" + id + "'");
        }
    }

    /** Whether a lot is accepted. */
    public enum Disposition {
        OPEN("open"),
        ACCEPTED("accepted"),
        NOT_ACCEPTED("not-accepted");

        private final String id;

        Disposition(String id) {
            this.id = id;
        }

        /** The stable identifier. */
        public String id() {
            return id;
        }
    }

    /**
     * Progress of a lot.
     *
     * @param tested how many of the sample have an outcome
     * @param nonconforming how many of those count against it
     * @param replaced how many of those drawn could not be tested, so that the next of the order took their place
     */
    public record Progress(int tested, int nonconforming, int replaced, Disposition disposition) {}

    /** A battery in the order drawn. */
    public record Ranked(int rank, boolean inSample, ReturnListItem battery) {}

    /** A lot with its batteries in the order drawn. */
    public record Details(Lot lot, List<Ranked> order) {}

    /**
     * A workshop or batch with pending batteries and its state by the switching rules.
     *
     * @param waiting how many have no outcome and were drawn for no lot
     */
    public record Source(Scope scope, String key, String name, int waiting, SwitchingRules.State switching) {}

    /**
     * A request to draw a lot.
     *
     * @param reducedAgreed whether a person agrees to reduced inspection where the switching rules allow it
     */
    public record Request(Scope scope, String key, InspectionLevel level, double aql, boolean reducedAgreed) {}
}
