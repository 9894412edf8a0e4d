package org.voltdocket.worlds;

/**
 * A stretch of time in the life of a car.
 *
 * @param seconds how long, s
 * @param toKmh speed at its end, km/h
 * @param loadA current of the consumers at 13 V, A
 */
public record Leg(Kind kind, double seconds, double toKmh, double loadA) {

    /** What the car does. */
    public enum Kind {
        /** Locked, all units asleep. */
        ASLEEP,
        /** Ignition on, engine off. */
        AWAKE,
        CRANK,
        DRIVE,
        /** At a halt in traffic, where a stop-start system may stop the engine. */
        HALT
    }
}
