package org.voltdocket.returned.sampling;

/**
 * A single sampling plan.
 *
 * @param letter code letter of the plan used, A to R without I and O; where an arrow of the table led elsewhere, that of the place
 *     it led to
 * @param sampleSize how many are tested, at most the lot
 * @param acceptance most nonconforming ones with which the lot is accepted
 */
public record SamplingPlan(char letter, int sampleSize, int acceptance) {}
