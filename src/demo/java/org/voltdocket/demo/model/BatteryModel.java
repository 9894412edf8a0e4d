package org.voltdocket.demo.model;

import org.voltdocket.diagnosis.Chemistry;

/**
 * A 12 V lead-acid battery as an equivalent circuit: open-circuit voltage by charge, ohmic resistance, a fast pair (tens
 * of seconds) whose resistance on charge follows the charge acceptance, a surface charge in two layers (minutes and hours)
 * and an activation drop. Current is positive into the battery.
 *
 * <p>Open-circuit points: flooded and gel as published with the ElectricalAge2 data; AGM and EFB are values of practice
 * (from memory). The surface is set so that a rest after a charge at 14.95 V looks like the published
 * one (13.66, 13.41, 13.28, 13.23 V after 1, 10, 60, 160 min).
 */
final class BatteryModel {

    private static final double[] FLOODED = {11.89, 12.06, 12.24, 12.45, 12.65};
    private static final double[] GEL = {11.80, 12.00, 12.40, 12.60, 12.80};
    private static final double[] AGM = {11.80, 12.00, 12.30, 12.60, 12.90};
    private static final double[] EFB = {11.80, 12.00, 12.20, 12.45, 12.75};

    private static final double FAST_S = 20;
    /** Share of the charging over-voltage that the surface keeps, in each of its two layers. */
    private static final double KEPT = 0.17;

    private static final double OUTER_FILLS_S = 900;
    private static final double OUTER_FADES_S = 480;
    private static final double INNER_FILLS_S = 3600;
    private static final double INNER_FADES_S = 21600;
    private static final double ACTIVATION_S = 0.3;

    private final ModelSettings setup;
    private final double[] open;
    private final double capacityAh;
    private double charge;
    private double temperatureC;
    private double fast;
    private double outer;
    private double inner;
    private double activation;
    private double terminal;
    /** Recent voltage over the open circuit, V. */
    private double over;

    private double keep = 1;
    private double gain;

    BatteryModel(ModelSettings setup) {
        this.setup = setup;
        this.open = openTable(setup.chemistry);
        this.capacityAh = setup.capacityAh * setup.capacityLeft;
        this.charge = setup.charge;
        this.temperatureC = setup.temperatureC;
        this.terminal = openCircuit();
    }

    static double[] openTable(Chemistry chemistry) {
        return switch (chemistry) {
            case FLOODED -> FLOODED;
            case GEL -> GEL;
            case AGM -> AGM;
            case EFB -> EFB;
        };
    }

    /** Rested voltage at the present charge and temperature, V. */
    double openCircuit() {
        double at = Math.max(0, Math.min(0.999999, charge)) * 4;
        int i = (int) at;
        double volts = open[i] + (open[i + 1] - open[i]) * (at - i);
        if (charge < 0) {
            volts += charge * 40; // empty: it collapses
        }
        return volts + 0.0012 * (temperatureC - 25) - setup.missingCellV;
    }

    /** Ohmic resistance, Ω: that of a new one scaled by size, construction, cold, low charge and age. */
    double ohmic() {
        double construction = switch (setup.chemistry) {
            case FLOODED -> 1;
            case EFB -> 0.9;
            case GEL -> 1.05;
            case AGM -> 0.72;
        };
        double fresh = 0.0048 * 70 / setup.capacityAh * construction;
        double cold = StrictMath.exp(-0.012 * (temperatureC - 25));
        double empty = 1 + 0.8 * StrictMath.pow(Math.max(0, 1 - charge), 1.5);
        return fresh * cold * empty * setup.resistanceFactor + setup.strapOhm;
    }

    /** Fixes the length of the coming step, s; the fast pair is solved implicitly. */
    void prepare(double dt) {
        keep = 1 / (1 + dt / FAST_S);
        gain = dt / FAST_S * keep;
    }

    /** Voltage at the posts while this current flows, V. */
    double terminal(double currentA) {
        return emf() + currentA * ohm(currentA > 0);
    }

    /** Inner voltage of the coming step, V. */
    double emf() {
        return openCircuit() + keep * fast + outer + inner + activation;
    }

    /** Inner resistance of the coming step, Ω. */
    double ohm(boolean charging) {
        return ohmic() + gain * fastOhm(charging);
    }

    /** Lets the current flow for the step. */
    void advance(double currentA, double dt) {
        terminal = terminal(currentA);
        over += (terminal - openCircuit() - over) * Math.min(1, dt / 1.5);
        fast = keep * fast + gain * fastOhm(currentA > 0) * currentA;
        surface(currentA, dt);
        double wanted = currentA < 0 ? 0.10 * asinh(currentA / (0.1 * setup.capacityAh)) : 0;
        activation += (wanted - activation) * Math.min(1, dt / ACTIVATION_S);
        double efficiency = currentA > 0 ? Math.max(0.02, Math.min(1, (1.005 - charge) / 0.12)) : 1;
        double net = currentA * efficiency - setup.selfDischargeA;
        charge = Math.min(1, charge + net * dt / 3600 / capacityAh);
    }

    /** Warms or cools, K. */
    void warm(double kelvin) {
        temperatureC += kelvin;
    }

    /** What an earlier charge left at the surface, V. */
    void surface(double volts) {
        inner = volts;
    }

    /** Charging fills the surface; rest lets it fade, a discharge strips it and then starves it. */
    private void surface(double currentA, double dt) {
        if (currentA > 0) {
            outer += (KEPT * Math.max(0, over) - outer) * dt / OUTER_FILLS_S;
            inner += (KEPT * Math.max(0, over) - inner) * dt / INNER_FILLS_S;
        } else {
            double rate = -currentA / (0.05 * capacityAh);
            double starved = 0.10 * asinh(-rate);
            outer += (starved - outer) * dt / (OUTER_FADES_S + (rate > 0.2 ? 900 : 0));
            inner -= inner * dt * (1 / INNER_FADES_S + rate / 1500);
        }
    }

    double charge() {
        return charge;
    }

    double temperatureC() {
        return temperatureC;
    }

    /**
     * Resistance of the fast pair. On charge it is what lets a steady 14.4 V drive the charge acceptance, which falls
     * with charge and cold; the last floor is gassing, which grows with voltage. Little over the open circuit the battery
     * takes much less than in proportion, so the resistance is the higher the smaller that voltage is.
     */
    private double fastOhm(boolean charging) {
        if (!charging) {
            return 0.8 * ohmic();
        }
        double rate = switch (setup.chemistry) {
            case FLOODED -> 1.6;
            case GEL -> 1.8;
            case EFB -> 2.1;
            case AGM -> 2.8;
        };
        double warm = StrictMath.exp(0.035 * (temperatureC - 25));
        double lacking = StrictMath.pow(Math.max(0, 1 - charge), 1.25);
        double gassing = 0.004 * StrictMath.exp((terminal + setup.missingCellV - 14.4) / 0.3);
        double most = Math.min(0.06, gassing) * (setup.chemistry == Chemistry.AGM ? 0.5 : 1);
        double accepted = capacityAh * (Math.min(0.22 * rate, rate * lacking) * warm + most);
        double drive = 14.4 - openCircuit() - setup.missingCellV;
        double share = Math.max(0.15, Math.min(1, over / drive));
        return Math.max(0.004, (drive - 0.5) / accepted / share - ohmic());
    }

    private static double asinh(double x) {
        double size = Math.abs(x);
        return Math.signum(x) * StrictMath.log(size + StrictMath.sqrt(size * size + 1));
    }
}
