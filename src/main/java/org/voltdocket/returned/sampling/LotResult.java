package org.voltdocket.returned.sampling;

/**
 *  The result of a decided lot.
 *
 * @param acceptance acceptance number of its plan
 * @param accepted whether it was accepted
 * @param acceptedTighter whether the plan of the next tighter AQL would have accepted it too
 */
public record LotResult(InspectionSeverity severity, int acceptance, boolean accepted, boolean acceptedTighter) {}
