package org.voltdocket.worlds.shepherd;

import org.voltdocket.worlds.ChargeController;

/**
 * Managed: the voltage follows what is missing of the charge it believes in, and a refresh charge comes every 40 minutes of
 * running.
 */
final class ProportionalController implements ChargeController {

    private static final double REFRESH_EVERY_S = 2400;
    private static final double REFRESH_S = 300;

    private final double target;
    private final double gain;
    private double now = 14.2;

    /**
     * @param target charge to keep, 0 to 1
     * @param gain V for each unit of charge missing
     */
    ProportionalController(double target, double gain) {
        this.target = target;
        this.gain = gain;
    }

    @Override
    public double volts(View view, double seconds) {
        boolean refresh = view.runningS() % REFRESH_EVERY_S < REFRESH_S;
        double missing = target - view.believed();
        double braking = view.accelerationKmhPerS() < -1 ? 0.6 : 0;
        double wanted = 13.1 + gain * missing + braking - 0.005 * (view.celsius() - 25);
        double held = refresh ? 14.4 : Math.max(12.5, Math.min(14.9, wanted));
        double most = 0.15 * seconds;
        now += Math.max(-most, Math.min(most, held - now));
        return now;
    }
}
