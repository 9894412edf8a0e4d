package org.voltdocket.worlds.ciemat;

import org.voltdocket.worlds.ChargeController;

/**
 * Conventional, with a soft start of ten seconds, 7 mV/K, and 0.15 V less once it is warm.
 *
 * @param volts cold, at 25 °C, V
 */
record SteppedController(double volts) implements ChargeController {

    @Override
    public double volts(View view, double seconds) {
        double soft = Math.min(1, view.runningS() / 10);
        double warm = Math.min(1, view.runningS() / 900);
        double held = volts - 0.15 * warm - 0.007 * (view.celsius() - 25);
        return 12.5 + (held - 12.5) * soft;
    }
}
