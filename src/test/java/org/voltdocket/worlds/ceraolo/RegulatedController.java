package org.voltdocket.worlds.ceraolo;

import org.voltdocket.worlds.ChargeController;

/**
 * Conventional: one voltage at 25 °C that falls with temperature by 10 mV/K (common practice).
 *
 * @param volts at 25 °C, V
 */
record RegulatedController(double volts) implements ChargeController {

    @Override
    public double volts(View view, double seconds) {
        return volts - 0.010 * (view.celsius() - 25);
    }
}
