package org.voltdocket.returned;

import java.time.Instant;
import java.util.List;
import java.util.UUID;
import org.voltdocket.kernel.RequestException;
import org.voltdocket.returned.sampling.InspectionLevel;
import org.voltdocket.returned.sampling.InspectionSeverity;
import org.voltdocket.returned.sampling.SamplingPlan;
import org.voltdocket.returned.sampling.SwitchingRules;

/**
 * A lot of returned batteries of which a sample is tested.
 *
 * @param scope what its batteries share
 * @param key identifier of the workshop or batch
 * @param name as people call it
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

    /** What the batteries of a lot share, and with it what counts against the lot. */
    public enum Scope {
        /** Sent in by one workshop: a battery counts against it that is no warranty case. */
        WORKSHOP("workshop", List.of(BenchOutcome.NO_FAULT_FOUND, BenchOutcome.DAMAGED_BY_USE)),
        /** Made in one batch: a battery counts against it that is defective. */
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

        /** Whether such an outcome counts against the lot. */
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

    /** What became of a lot. */
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
     * How far it is.
     *
     * @param tested how many of the sample have an outcome
     * @param nonconforming how many of those count against it
     * @param replaced how many of those drawn could not be tested, so that the next of the order took their place
     */
    public record Progress(int tested, int nonconforming, int replaced, Disposition disposition) {}

    /** A battery in the order drawn. */
    public record Ranked(int rank, boolean inSample, ReturnListItem battery) {}

    /** With every battery in the order drawn. */
    public record Details(Lot lot, List<Ranked> order) {}

    /**
     * A workshop or batch of which batteries wait, with what the switching rules say.
     *
     * @param waiting how many have no outcome and were drawn for no lot
     */
    public record Source(Scope scope, String key, String name, int waiting, SwitchingRules.State switching) {}

    /**
     * What is asked for.
     *
     * @param reducedAgreed whether a person agrees to reduced inspection where the switching rules allow it
     */
    public record Request(Scope scope, String key, InspectionLevel level, double aql, boolean reducedAgreed) {}
}
