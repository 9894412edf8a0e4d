package org.voltdocket.worlds;

/** A 12 V battery as an electrical model. Currents are positive into the battery. */
public interface BatteryModel {

    /** Voltage at the posts if this current flowed now, V. */
    double voltage(double amperes);

    /** Lets a current flow for some seconds. */
    void step(double amperes, double seconds);

    /** State of charge, 0 to 1 of the capacity it has. */
    double charge();
}
