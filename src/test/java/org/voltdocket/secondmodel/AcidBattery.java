package org.voltdocket.secondmodel;

/**
 * A 12 V lead-acid battery as acid in three zones (at the plate, in the pores, between the plates), with charge transfer
 * by a sinh law, a limit on charge acceptance, gassing and a double layer.
 *
 * <p>Open-circuit voltage of six cells from the acid's density at the plate: 6·(density + 0.84), a rule of the trade
 * (from memory). Current is positive into the battery, A; charge Ah; time s; temperature °C.
 */
final class AcidBattery {

    /** Shares of the acid in the three zones. */
    private static final double[] SHARE = {0.08, 0.27, 0.65};

    private static final double TRANSFER_OUT_V = 0.12;
    private static final double TRANSFER_IN_V = 0.35;
    private static final double GAS_V = 0.60;
    private static final double GAS_FROM_V = 13.0;

    /** Capacity the battery really has, Ah. */
    final double capacityAh;
    /** Ohmic part at 25 °C and full charge, Ω. */
    final double ohmic;
    /** V missing at rest, from a cell that is shorted. */
    final double lostCellV;

    private final double emptyDensity;
    private final double fullDensity;
    private final double[] zone;
    private final double farad;
    private double inner;
    private double gassedAh;
    private double temperature;

    AcidBattery(
            double capacityAh,
            double ohmic,
            double lostCellV,
            double emptyDensity,
            double fullDensity,
            double charge,
            double temperature) {
        this.capacityAh = capacityAh;
        this.ohmic = ohmic;
        this.lostCellV = lostCellV;
        this.emptyDensity = emptyDensity;
        this.fullDensity = fullDensity;
        this.zone = new double[] {charge, charge, charge};
        this.farad = 3.0 * capacityAh;
        this.temperature = temperature;
        this.inner = openVoltage();
    }

    /** The same battery at another charge, long at rest. */
    AcidBattery rested(double charge, double celsius) {
        return new AcidBattery(capacityAh, ohmic, lostCellV, emptyDensity, fullDensity, charge, celsius);
    }

    /** The same battery with another capacity, {@code share} of what it has. */
    AcidBattery holding(double share) {
        return new AcidBattery(capacityAh * share, ohmic, lostCellV, emptyDensity, fullDensity, charge(), temperature);
    }

    /** State of charge, 0 to about 1, of the capacity it has. */
    double charge() {
        return SHARE[0] * zone[0] + SHARE[1] * zone[1] + SHARE[2] * zone[2];
    }

    /** Charge lost to gas so far, Ah. */
    double gassedAh() {
        return gassedAh;
    }

    /** Charge held in the double layer beyond an inner voltage of 0, Ah. */
    double layerAh() {
        return farad * inner / 3600;
    }

    void temperature(double celsius) {
        temperature = celsius;
    }

    double temperature() {
        return temperature;
    }

    /** Voltage behind the ohmic part, V. */
    double inner() {
        return inner;
    }

    /** Open-circuit voltage of the acid at the plates, V. */
    double openVoltage() {
        return openVoltage(zone[0]);
    }

    private double openVoltage(double level) {
        double density = emptyDensity + (fullDensity - emptyDensity) * level;
        return 6 * (density + 0.84) + 0.0011 * (temperature - 25) - lostCellV;
    }

    /** Ohmic part now, Ω: grows in the cold and with discharge. */
    double resistance() {
        double lack = Math.max(0, 1 - charge());
        return ohmic * (1 + 0.008 * Math.max(-10, 25 - temperature)) * (1 + 0.5 * lack * lack);
    }

    /** Voltage at the posts under a current, V. */
    double terminal(double current) {
        return inner + resistance() * current;
    }

    /** Goes on by {@code dt} s with this current at the posts. */
    void step(double current, double dt) {
        double reaction = reaction(inner);
        double gas = gas(inner);
        double slope = (reaction(inner + 0.002) + gas(inner + 0.002) - reaction - gas) / 0.002;
        double rise = dt * (current - reaction - gas) / (farad + dt * slope);
        double used = current - farad * rise / dt;
        double gasUsed = gas + (gas(inner + 0.002) - gas) / 0.002 * rise;
        inner += rise;
        gassedAh += gasUsed * dt / 3600;
        diffuse((used - gasUsed) * dt / 3600, dt);
    }

    private void diffuse(double intoPlateAh, double dt) {
        double warm = Math.exp(0.02 * (temperature - 25));
        double near = capacityAh * 5.3e-4 * warm * (zone[0] - zone[1]) * dt;
        double far = capacityAh * 9e-5 * warm * (zone[1] - zone[2]) * dt;
        zone[0] += (intoPlateAh - near) / (capacityAh * SHARE[0]);
        zone[1] += (near - far) / (capacityAh * SHARE[1]);
        zone[2] += far / (capacityAh * SHARE[2]);
    }

    private double reaction(double innerVoltage) {
        double over = innerVoltage - openVoltage();
        double warm = Math.exp(0.03 * (temperature - 25));
        if (over <= 0) {
            double scarce = Math.min(1, Math.max(1e-5, zone[0] * 8));
            return 2 * 0.05 * capacityAh * warm * scarce * Math.sinh(Math.max(-8, over / TRANSFER_OUT_V));
        }
        double free = 2 * 0.02 * capacityAh * warm * Math.sinh(Math.min(12, over / TRANSFER_IN_V));
        double lack = 1 - zone[0];
        double most = capacityAh * warm * (lack > 0 ? 0.012 + 1.5 * lack : 0.012 * Math.exp(lack / 0.02));
        return 1 / (1 / (free + 1e-12) + 1 / most);
    }

    private double gas(double innerVoltage) {
        double none = Math.exp((GAS_FROM_V - 14.2) / GAS_V);
        double drive = Math.exp((innerVoltage + lostCellV - 14.2) / GAS_V) - none;
        return Math.max(0, drive) * 0.004 * capacityAh * Math.exp(0.04 * (temperature - 25));
    }
}
