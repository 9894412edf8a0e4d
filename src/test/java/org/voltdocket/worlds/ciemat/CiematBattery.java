package org.voltdocket.worlds.ciemat;

import org.voltdocket.worlds.BatteryModel;

/**
 * The CIEMAT model of J. B. Copetti, E. Lorenzo and F. Chenlo (A general battery model for PV system simulation, Progress in
 * Photovoltaics 1, 1993). Per cell of 2 V, with ΔT = θ − 25 °C:
 *
 * <pre>
 * discharge V = 2.085 − 0.12 (1 − SOC) − (I/C10)(4/(1 + I^1.3) + 0.27/SOC^1.5 + 0.02)(1 − 0.007 ΔT)
 * charge    V = 2 + 0.16 SOC + (I/C10)(6/(1 + I^0.86) + 0.48/(1 − SOC)^1.2 + 0.036)(1 − 0.025 ΔT)
 * gassing   from Vg = (2.24 + 1.97 ln(1 + I/C10))(1 − 0.002 ΔT)
 *           towards Vec = (2.45 + 2.011 ln(1 + I/C10))(1 − 0.002 ΔT) with τ = 17.3/(1 + 852 (I/C10)^1.67) h
 * capacity  C/C10 = 1.67/(1 + 0.67 (I/I10)^0.9) (1 + 0.005 ΔT)
 * efficiency of charge η = 1 − exp(20.73 (SOC − 1)/(I/I10 + 0.55))
 * </pre>
 *
 * <p>The equations are from memory; a public program for a lecture on photovoltaics has the same charge, gassing, capacity
 * and efficiency. Ours, for starter batteries, whose thin plates crank with 5 to 10 times the capacity: the ohmic terms 0.27,
 * 0.02 and 0.036 shrink, the term 0.48 shrinks to a third, and the capacity falls with a tenth of the current. The constant
 * 2.085 moves with the chemistry; between charge and discharge the voltage follows with an hour, so that a charged battery
 * comes to rest.
 */
public final class CiematBattery implements BatteryModel {

    /** Time constant of coming to rest, s. */
    private static final double REST_S = 3600;
    /** Current within which the two branches pass into each other, share of C10. */
    private static final double PASSING = 0.01;

    private static final double FULLEST = 0.995;

    /**
     * How a battery differs from the published one.
     *
     * @param shift of the rest voltage, V per cell
     * @param ohmic factor of the ohmic terms
     * @param acceptance factor of the term that limits charging
     * @param rate factor of the current in the equation of the capacity
     * @param left capacity left, share of that when new
     */
    record Make(double shift, double ohmic, double acceptance, double rate, double left) {

        /** As published. */
        static final Make PUBLISHED = new Make(0, 1, 1, 1, 1);

        /** A starter battery. */
        static Make starter(double shift, double ohmic, double left) {
            return new Make(shift, ohmic, 0.35, 0.1, left);
        }
    }

    private final double c10;
    private final Make make;
    private final double cells;
    private final double warmth;
    private final double fullAh;
    private double extractedAh;
    private double meanA;
    private double gassing;
    private double towardsCharge;
    /** What follows from the charge, kept until the next step: shares and V per cell and share of C10. */
    private double usable;

    private double dischargeTerm;
    private double chargeTerm;

    /**
     * @param c10 capacity in 10 h when new, Ah
     * @param cells that give voltage, 5 to 6
     */
    CiematBattery(double c10, Make make, double cells, double celsius, double charge) {
        this.c10 = c10;
        this.make = make;
        this.cells = cells;
        this.warmth = celsius - 25;
        this.fullAh = capacityAh(c10 / 20);
        this.extractedAh = (1 - charge) * fullAh;
        refresh();
    }

    /** The charge left at the present current is less when much is drawn. */
    private void refresh() {
        double amperes = Math.max(c10 / 20, -meanA);
        double capacity = amperes > c10 / 20 ? capacityAh(amperes) : fullAh;
        usable = Math.max(0.01, Math.min(FULLEST, 1 - extractedAh / capacity));
        dischargeTerm = make.ohmic() * (0.27 / StrictMath.pow(usable, 1.5) + 0.02);
        chargeTerm = make.acceptance() * 0.48 / StrictMath.pow(1 - usable, 1.2) + make.ohmic() * 0.036;
    }

    /** Capacity at a discharge current, Ah. */
    double capacityAh(double amperes) {
        double published = make.left() * 1.67 * c10 / fall(0.5) * (1 + 0.005 * warmth);
        return published * fall(0.5 * make.rate()) / fall(make.rate() * amperes / (c10 / 10));
    }

    private static double fall(double current) {
        return 1 + 0.67 * StrictMath.pow(current, 0.9);
    }

    @Override
    public double charge() {
        return Math.max(0, 1 - extractedAh / fullAh);
    }

    @Override
    public double voltage(double amperes) {
        double share = Math.max(0, Math.min(1, 0.5 + amperes / (2 * PASSING * c10)));
        double still = Math.abs(2 * share - 1);
        double mixed = still * share + (1 - still) * towardsCharge;
        double in = mixed > 0 ? mixed * charging(Math.max(0, amperes)) : 0;
        double out = mixed < 1 ? (1 - mixed) * discharging(Math.max(0, -amperes)) : 0;
        return Math.max(0, cells * (in + out));
    }

    /** Voltage on the discharge branch, V per cell. */
    double discharging(double amperes) {
        double inner = 4 / (1 + StrictMath.pow(amperes, 1.3)) + dischargeTerm;
        return 2.085 + make.shift() - 0.12 * (1 - usable) - amperes / c10 * inner * (1 - 0.007 * warmth);
    }

    /** Voltage on the charge branch, gassing included, V per cell. */
    double charging(double amperes) {
        double inner = 6 / (1 + StrictMath.pow(amperes, 0.86)) + chargeTerm;
        double volts = 2 + make.shift() + 0.16 * usable + amperes / c10 * inner * (1 - 0.025 * warmth);
        double begins = gassingV(2.24, 1.97, amperes);
        double ends = gassingV(2.45, 2.011, amperes);
        return volts < begins ? volts : Math.min(volts, begins + (ends - begins) * gassing);
    }

    private double gassingV(double base, double slope, double amperes) {
        return (base + slope * StrictMath.log(1 + amperes / c10)) * (1 - 0.002 * warmth);
    }

    /** Share of a charge current that is stored. */
    double efficiency(double amperes) {
        return 1 - StrictMath.exp(20.73 * (charge() - 1) / (amperes / (c10 / 10) + 0.55));
    }

    @Override
    public void step(double amperes, double seconds) {
        double hours = seconds / 3600;
        boolean gases = amperes > 0 && voltage(amperes) / cells >= gassingV(2.24, 1.97, amperes);
        double tau = 17.3 / (1 + 852 * StrictMath.pow(Math.max(0, amperes) / c10, 1.67));
        gassing += ((gases ? 1 : 0) - gassing) * Math.min(1, hours / (gases ? tau : 0.5));
        double pace = 1 / REST_S + Math.abs(amperes) / (36 * c10);
        double to = amperes > PASSING * c10 ? 1 : 0;
        towardsCharge += (to - towardsCharge) * (1 - StrictMath.exp(-seconds * pace));
        meanA += (amperes - meanA) * Math.min(1, seconds / 60);
        double stored = amperes > 0 ? amperes * efficiency(amperes) : amperes;
        extractedAh = Math.max(0, extractedAh - stored * hours);
        refresh();
    }
}
