package org.voltdocket.insight.estimate;

import java.util.ArrayList;
import java.util.List;
import java.util.SortedMap;
import java.util.TreeMap;

/**
 * Service lives: failures by age, and units still in service by age (right-censored).
 * Ages are in one unit, greater than 0.
 */
public final class Lifetimes {

    /**
     * One age.
     *
     * @param age in the unit of the caller, greater than 0
     * @param failed how many failed at it
     * @param alive units still in service at that age
     */
    public record At(double age, long failed, long alive) {}

    private final List<At> ages;

    private Lifetimes(List<At> ages) {
        this.ages = List.copyOf(ages);
    }

    /** Every age that occurs, rising. */
    public List<At> ages() {
        return ages;
    }

    /** Everything that was watched. */
    public long watched() {
        return ages.stream().mapToLong(at -> at.failed() + at.alive()).sum();
    }

    /** Everything that failed. */
    public long failed() {
        return ages.stream().mapToLong(At::failed).sum();
    }

    /** Collects lives in any order. */
    public static final class Collector {

        private final SortedMap<Double, long[]> counts = new TreeMap<>();

        /** @throws IllegalArgumentException if the age is not above 0 or the count is negative */
        public Collector failed(double age, long count) {
            return add(age, count, 0);
        }

        /** @throws IllegalArgumentException if the age is not above 0 or the count is negative */
        public Collector alive(double age, long count) {
            return add(age, count, 1);
        }

        public Lifetimes lives() {
            List<At> ages = new ArrayList<>();
            counts.forEach((age, n) -> ages.add(new At(age, n[0], n[1])));
            return new Lifetimes(ages);
        }

        private Collector add(double age, long count, int where) {
            if (!(age > 0) || Double.isInfinite(age) || count < 0) {
                throw new IllegalArgumentException("no life: " + count + " at age " + age);
            }
            if (count > 0) {
                counts.computeIfAbsent(age, none -> new long[2])[where] += count;
            }
            return this;
        }
    }
}
