package org.voltdocket.worlds.ciemat;

import org.voltdocket.worlds.ChargeController;

/**
 * Managed: charges until the charge it believes in suffices, then rests at a low voltage until the battery gives too much, the
 * charge falls or much is switched on (service texts on economy mode: battery 0 to 80 °C, current −8 to +15 A, charge of
 * 80 % and more).
 */
final class EconomyController implements ChargeController {

    private final double high;
    private final double low;
    private final double enough;
    private boolean resting;
    private double meanA;
    private double now = 13.5;

    /**
     * @param high V while charging
     * @param low V while resting
     * @param enough charge from which it rests, 0 to 1
     */
    EconomyController(double high, double low, double enough) {
        this.high = high;
        this.low = low;
        this.enough = enough;
    }

    @Override
    public double volts(View view, double seconds) {
        meanA += (view.sensedA() - meanA) * Math.min(1, seconds / 10);
        boolean heavy = view.loadA() > 45;
        if (resting) {
            resting = !heavy && view.believed() > enough - 0.05 && meanA > -12;
        } else {
            resting = view.runningS() > 120 && view.celsius() > 0 && !heavy && view.believed() > enough && meanA < 15;
        }
        double wanted = resting ? low : high - 0.006 * (view.celsius() - 25);
        now += (wanted - now) * Math.min(1, seconds / 4);
        return now;
    }
}
