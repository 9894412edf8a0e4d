/**
 * Sampling by attributes, lot by lot: plans, switching rules, operating characteristic and random draw. Pure functions. {@link
 * org.voltdocket.returned.sampling.SamplingPlanTable} says which values are from memory; tests recompute them.
 */
package org.voltdocket.returned.sampling;
