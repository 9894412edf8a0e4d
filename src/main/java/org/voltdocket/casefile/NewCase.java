package org.voltdocket.casefile;

import org.voltdocket.diagnosis.Facts;
import org.voltdocket.kernel.BatterySerial;
import org.voltdocket.kernel.Vin;

/**
 * A case to open, or to find and complete.
 *
 * @param facts what is known of it; {@link Facts#UNKNOWN} where nothing is
 */
public record NewCase(BatterySerial serial, Vin vin, Facts facts) {}
