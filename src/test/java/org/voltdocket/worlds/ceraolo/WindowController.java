package org.voltdocket.worlds.ceraolo;

import org.voltdocket.worlds.ChargeController;

/**
 * Managed: high while coasting, low while accelerating, and between them by the charge it believes in (common practice, from
 * memory). Values change by at most 0.5 V/s.
 */
final class WindowController implements ChargeController {

    private final double high;
    private final double low;
    private final double target;
    private double now = 14.0;

    /**
     * @param high V while coasting
     * @param low V while cruising with enough charge
     * @param target charge to keep, 0 to 1
     */
    WindowController(double high, double low, double target) {
        this.high = high;
        this.low = low;
        this.target = target;
    }

    @Override
    public double volts(View view, double seconds) {
        double wanted = wanted(view);
        double most = 0.5 * seconds;
        now += Math.max(-most, Math.min(most, wanted - now));
        return now;
    }

    private double wanted(View view) {
        if (view.runningS() < 30 || view.believed() < target - 0.08) {
            return high - 0.3;
        }
        if (view.accelerationKmhPerS() < -0.5 && view.speedKmh() > 10) {
            return high;
        }
        if (view.accelerationKmhPerS() > 1 && view.believed() > target) {
            return low - 0.3;
        }
        return view.believed() > target ? low : high - 0.3;
    }
}
