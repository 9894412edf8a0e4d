package org.voltdocket.worlds;

/** Says what voltage the charging source shall hold. */
public interface ChargeController {

    /**
     * What it sees.
     *
     * @param celsius temperature of the battery
     * @param speedKmh km/h
     * @param accelerationKmhPerS km/h per s, negative while braking
     * @param believed state of charge it believes in, 0 to 1
     * @param sensedA battery current that its sensor reads, A
     * @param loadA current of the consumers, A
     * @param runningS time since the start, s
     */
    record View(
            double celsius,
            double speedKmh,
            double accelerationKmhPerS,
            double believed,
            double sensedA,
            double loadA,
            double runningS) {}

    /** Voltage to hold, V, after {@code seconds} more. */
    double volts(View view, double seconds);
}
