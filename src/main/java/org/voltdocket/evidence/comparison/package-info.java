/**
 * Whether two recordings show one and the same course of voltage, whoever cut, thinned or rounded it: pure arithmetic.
 *
 * <p>Offers {@link org.voltdocket.evidence.comparison.VoltageOutline} (a recording in coarse even steps), {@link
 * org.voltdocket.evidence.comparison.Landmarks} (what an index finds it by) and {@link
 * org.voltdocket.evidence.comparison.CurveSimilarity} (whether two outlines are one course). Imports {@code diagnosis} and {@code
 * kernel} only. Start reading at {@code Outline}.
 */
package org.voltdocket.evidence.comparison;
