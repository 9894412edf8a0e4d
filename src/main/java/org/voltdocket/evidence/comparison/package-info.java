/**
 * Finds recordings of different cases with the same course of voltage, even if one was cut, resampled or rounded.
 *
 * <p>{@code VoltageOutline} is a recording in coarse even steps, {@code Landmarks} the numbers by which the index of the database
 * finds it, {@code CurveSimilarity} the best alignment of two outlines, and {@code CopyCriterion} decides whether one is a copy.
 * Start reading at {@code DuplicateRecordingFinder}.
 */
package org.voltdocket.evidence.comparison;
