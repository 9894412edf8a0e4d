package org.voltdocket.worlds;

import java.util.List;

/** Makes drives. */
public interface DriveCycle {

    /**
     * Drives one after the other, each with its start, engine off between them.
     *
     * @param trips how many, 1 or more
     * @param seconds about how long each
     * @param crankS how long the starter turns, s
     * @param loadA current of the consumers that are always on, A
     */
    List<Leg> drives(int trips, double seconds, double crankS, double loadA, Chance chance);

    /** Engine speed at a speed, 1/min. */
    double rpm(double speedKmh);
}
