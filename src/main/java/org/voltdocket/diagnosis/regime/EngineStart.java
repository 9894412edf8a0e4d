package org.voltdocket.diagnosis.regime;

/**
 * One start of the engine.
 *
 * @param fromS first sample pulled down, s
 * @param toS last sample pulled down, s
 * @param beforeV voltage just before, V
 * @param minimumV least voltage, V
 * @param afterV voltage in the three seconds after, V; NaN where not recorded
 */
public record EngineStart(double fromS, double toS, double beforeV, double minimumV, double afterV) {}
