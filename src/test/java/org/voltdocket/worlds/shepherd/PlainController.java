package org.voltdocket.worlds.shepherd;

import org.voltdocket.worlds.ChargeController;

/**
 * Conventional: one voltage, less in the heat.
 *
 * @param volts at 20 °C, V
 * @param perKelvin V/K
 */
record PlainController(double volts, double perKelvin) implements ChargeController {

    @Override
    public double volts(View view, double seconds) {
        return volts - perKelvin * (view.celsius() - 20);
    }
}
