/**
 * Which of many batteries are tested: sampling by attributes, lot by lot (ISO 2859-1). Pure arithmetic; the tables are from
 * memory where {@link org.voltdocket.returned.sampling.SamplingPlanTable} says so.
 */
package org.voltdocket.returned.sampling;
