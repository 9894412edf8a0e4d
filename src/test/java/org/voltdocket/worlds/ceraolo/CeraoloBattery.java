package org.voltdocket.worlds.ceraolo;

import org.voltdocket.worlds.BatteryModel;

/**
 * The third-order network of M. Ceraolo (New dynamical models of lead-acid batteries, IEEE Transactions on Power Systems 15,
 * 2000) with the parameters of R. A. Jackey (A simple, effective lead-acid battery modeling process, SAE 2007-01-0778, the
 * 50 Ah example). Per cell:
 *
 * <pre>
 * Em = Em0 − KE (273 + θ)(1 − SOC)          R0 = R00 (1 + A0 (1 − SOC))
 * R1 = −R10 ln DOC, τ1                      R2 = R20 exp(A21 (1 − SOC)) / (1 + exp(A22 Im / I*))
 * C(I, θ) = Kc C0* Kt(θ) / (1 + (Kc − 1)(|I| / I*)^δ)
 * Ip = V Gp0 exp(V / Vp0 + Ap (1 − θ / θf)), the voltage of the cell through a delay τp
 * </pre>
 *
 * <p>The equations are from memory, the parameters as published with a demo of the model. Two choices are ours: the
 * parasitic branch takes the whole voltage of the cell (less its Ep it would carry nothing, with it 0.6 A at 2.4 V,
 * which is the size of gassing), the voltage collapses when less than 2 % of the charge is left, and the network of another
 * size scales charges and currents with the capacity and resistances against it. The temperature of the battery stays what it is: 15 kg warm up by few degrees in a drive.
 */
public final class CeraoloBattery implements BatteryModel {

    /**
     * Parameters.
     *
     * @param em0 V per cell when full
     * @param r00 Ω per cell
     * @param floor of the factor that limits charging when little charge is there; none as published
     */
    record Parameters(double em0, double r00, double floor) {

        /** As published for the 50 Ah example. */
        static final Parameters JACKEY = new Parameters(2.18, 0.0042, 0);
    }

    private static final double KE = 0.0006;
    private static final double A0 = -0.6;
    private static final double R10 = 0.0010;
    private static final double TAU1_S = 100;
    private static final double R20 = 0.11;
    private static final double A21 = -10;
    private static final double A22 = -8.75;
    private static final double GP0 = 2e-11;
    private static final double VP0 = 0.12;
    private static final double AP = 2.0;
    private static final double TAUP_S = 3;
    private static final double EP = 1.95;
    private static final double KC = 1.2;
    private static final double C0_AS = 1.8e5;
    private static final double[] KT_C = {-40, 25, 40, 60, 75};
    private static final double[] KT = {0, 0.80, 1.10, 1.20, 1.12};
    private static final double DELTA = 0.73;
    private static final double I_STAR = 15;
    private static final double FREEZING_C = -40;
    /** Ohmic resistance grows by this share per kelvin of cold (common practice, about 1 %). */
    private static final double COLD = 0.009;

    private final double size;
    private final double cells;
    private final double celsius;
    private final Parameters parameters;
    private final double fullAs;
    private final double cold;
    private double extractedAs;
    private double overR1;
    private double delayed;
    private double meanA;
    /** What follows from the charge, kept until the next step: V, Ω, Ω, A and a share. */
    private double electromotive;

    private double ohmic;
    private double mainOhm;
    private double parasiticA;
    private double depth;

    /**
     * @param size capacity against the published battery
     * @param cells that give voltage, 5 to 6
     */
    CeraoloBattery(Parameters parameters, double size, double cells, double celsius, double charge) {
        this.parameters = parameters;
        this.size = size;
        this.cells = cells;
        this.celsius = celsius;
        this.cold = 1 + COLD * Math.max(0, 25 - celsius);
        this.fullAs = capacityAs(0);
        this.extractedAs = (1 - charge) * fullAs;
        this.delayed = parameters.em0() - KE * (273 + celsius) * (1 - charge);
        refresh();
    }

    private void refresh() {
        double missing = 1 - charge();
        electromotive = parameters.em0() - KE * (273 + celsius) * missing;
        ohmic = parameters.r00() * (1 + A0 * missing) * cold;
        mainOhm = R20 / size * (StrictMath.exp(A21 * missing) + parameters.floor());
        double gas = StrictMath.exp(delayed / VP0 + AP * (1 - celsius / FREEZING_C));
        parasiticA = delayed <= EP ? 0 : delayed * GP0 * size * gas;
        depth = 1 - extractedAs / (meanA < 0 ? capacityAs(meanA) : fullAs);
    }

    /** Capacity at a current, As. */
    double capacityAs(double amperes) {
        double load = StrictMath.pow(Math.abs(amperes) / (I_STAR * size), DELTA);
        return KC * C0_AS * size * kt() / (1 + (KC - 1) * load);
    }

    private double kt() {
        int i = 1;
        while (i < KT.length - 1 && celsius > KT_C[i]) {
            i++;
        }
        return KT[i - 1] + (KT[i] - KT[i - 1]) * (celsius - KT_C[i - 1]) / (KT_C[i] - KT_C[i - 1]);
    }

    @Override
    public double charge() {
        return Math.max(0, 1 - extractedAs / fullAs);
    }

    /** Resistance of the main branch at a current, Ω per cell. */
    double mainBranchOhm(double amperes) {
        double direction = Math.max(-60, Math.min(60, A22 * amperes / (I_STAR * size)));
        return mainOhm / (1 + StrictMath.exp(direction));
    }

    @Override
    public double voltage(double amperes) {
        double main = amperes - parasiticA;
        double volts = electromotive + overR1 + main * mainBranchOhm(main) + amperes * ohmic;
        return Math.max(0, cells * (volts - collapse()));
    }

    /** Voltage lost when the acid is used up, V per cell. */
    private double collapse() {
        return 25 * Math.max(0, 0.02 - depth);
    }

    /** Current that makes gas instead of charge, A. */
    double parasiticA() {
        return parasiticA;
    }

    @Override
    public void step(double amperes, double seconds) {
        double volts = voltage(amperes) / cells;
        double main = amperes - parasiticA;
        double ohm = R10 / size * -StrictMath.log(Math.max(0.001, Math.min(1, depth)));
        delayed += (volts - delayed) * Math.min(1, seconds / TAUP_S);
        meanA += (amperes - meanA) * Math.min(1, seconds / 60);
        overR1 += (main * ohm - overR1) * (1 - StrictMath.exp(-seconds / TAU1_S));
        extractedAs = Math.max(0, extractedAs - main * seconds);
        refresh();
    }
}
