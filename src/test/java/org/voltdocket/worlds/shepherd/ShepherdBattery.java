package org.voltdocket.worlds.shepherd;

import org.voltdocket.worlds.BatteryModel;

/**
 * Shepherd's equation in the form of O. Tremblay and L.-A. Dessaint (Experimental validation of a battery dynamic model for EV
 * applications, World Electric Vehicle Journal 3, 2009), with their constants for a 12 V, 7.2 Ah lead-acid battery. With the
 * current i out of the battery, its filtered value i* and the charge taken out it:
 *
 * <pre>
 * discharge V = E0 − R i − K Q/(Q − it) (it + i*) + Exp
 * charge    V = E0 − R i − K Q/(it + 0.1 Q) i* − K Q/(Q − it) it + Exp
 * dExp/dt = B |i| (A u − Exp), u = 1 in charge and 0 in discharge
 * </pre>
 *
 * <p>Equations and constants are from memory. Another size scales R, K and B with 7.2 Ah / Q. Ours: E0 moves with the
 * chemistry, the shift 0.1 Q is 0.025 Q so that the current of a full battery tapers, R grows in the cold, Exp also fades
 * within hours at rest, and what is charged into a full battery is lost.
 */
public final class ShepherdBattery implements BatteryModel {

    /**
     * Constants.
     *
     * @param e0 V
     * @param r Ω
     * @param k Ω, and V/Ah
     * @param a V
     * @param b 1/Ah
     * @param q Ah
     * @param shift of the charge branch, share of {@code q}
     */
    record Constants(double e0, double r, double k, double a, double b, double q, double shift) {

        /** As published. */
        static final Constants PUBLISHED = new Constants(12.4659, 0.04, 0.047, 0.83, 125, 7.2, 0.1);

        /** The same battery with another capacity, rest voltage and resistance. */
        Constants of(double capacityAh, double e0OfIt, double ohm) {
            double size = q / capacityAh;
            return new Constants(e0OfIt, ohm, k * size, a, b * size, capacityAh, 0.025);
        }
    }

    private static final double FILTER_S = 30;
    private static final double FADES_S = 2.5 * 3600;
    private static final double COLD = 0.010;

    private final Constants of;
    private final double live;
    private final double cold;
    private double takenAh;
    private double filteredA;
    private double exponential;

    /**
     * @param live share of the cells that give voltage, 5/6 to 1
     */
    ShepherdBattery(Constants of, double live, double celsius, double charge) {
        this.of = of;
        this.live = live;
        this.cold = 1 + COLD * Math.max(0, 25 - celsius);
        this.takenAh = (1 - charge) * of.q();
    }

    @Override
    public double charge() {
        return Math.max(0, 1 - takenAh / of.q());
    }

    @Override
    public double voltage(double amperes) {
        double left = Math.max(0.005 * of.q(), of.q() - takenAh);
        double used = of.k() * of.q() / left;
        double polarised = amperes > 0 ? of.k() * of.q() / (takenAh + of.shift() * of.q()) : used;
        double flowing = Math.signum(filteredA) == Math.signum(amperes) ? filteredA : 0;
        double volts = of.e0() - used * takenAh + polarised * flowing + exponential;
        return Math.max(0, live * volts + of.r() * cold * amperes);
    }

    @Override
    public void step(double amperes, double seconds) {
        double hours = seconds / 3600;
        filteredA += (amperes - filteredA) * (1 - StrictMath.exp(-seconds / FILTER_S));
        double to = amperes > 0 ? of.a() : 0;
        double pace = of.b() * Math.abs(amperes) * hours;
        exponential += (to - exponential) * (1 - StrictMath.exp(-pace));
        exponential *= StrictMath.exp(-seconds / FADES_S);
        takenAh = Math.max(0, Math.min(of.q(), takenAh - amperes * hours));
    }
}
