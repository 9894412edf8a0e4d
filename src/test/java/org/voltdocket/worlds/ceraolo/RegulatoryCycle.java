package org.voltdocket.worlds.ceraolo;

import java.util.ArrayList;
import java.util.List;
import org.voltdocket.worlds.Chance;
import org.voltdocket.worlds.DriveCycle;
import org.voltdocket.worlds.Leg;
import org.voltdocket.worlds.Leg.Kind;

/**
 * Drives made of the elementary urban cycle (195 s) and the extra-urban cycle (400 s) of UN Regulation 83 (from memory; gear
 * changes are not told apart), with speeds that vary a little from drive to drive.
 */
final class RegulatoryCycle implements DriveCycle {

    /** Seconds and speed at the end, km/h. */
    static final double[][] URBAN = {
        {11, 0}, {4, 15}, {8, 15}, {5, 0}, {21, 0}, {12, 32}, {24, 32}, {11, 0}, {21, 0}, {26, 50}, {12, 50}, {8, 35},
        {13, 35}, {12, 0}, {7, 0}
    };

    static final double[][] EXTRA_URBAN = {
        {20, 0}, {41, 70}, {50, 70}, {8, 50}, {69, 50}, {13, 70}, {50, 70}, {35, 100}, {30, 100}, {20, 120}, {10, 120},
        {16, 80}, {8, 50}, {10, 0}, {20, 0}
    };

    @Override
    public List<Leg> drives(int trips, double seconds, double crankS, double loadA, Chance chance) {
        List<Leg> legs = new ArrayList<>();
        legs.add(new Leg(Kind.ASLEEP, chance.between(60, 900), 0, 0));
        for (int trip = 0; trip < trips; trip++) {
            legs.add(new Leg(Kind.AWAKE, chance.between(4, 30), 0, chance.between(4, 9)));
            legs.add(new Leg(Kind.CRANK, crankS, 0, 0));
            double left = seconds * chance.between(0.9, 1.1);
            double load = loadA;
            while (left > 0) {
                boolean town = left < 400 || chance.happens(0.6);
                double[][] part = town ? URBAN : EXTRA_URBAN;
                double pace = chance.between(0.85, 1.1);
                load = chance.happens(0.4) ? loadA + chance.between(0, 35) : load;
                left -= add(legs, part, pace, load, left);
            }
            legs.add(new Leg(Kind.AWAKE, chance.between(2, 20), 0, chance.between(4, 9)));
            legs.add(new Leg(Kind.ASLEEP, chance.between(60, 600), 0, 0));
        }
        return legs;
    }

    private static double add(List<Leg> legs, double[][] part, double pace, double load, double most) {
        double spent = 0;
        double speed = 0;
        for (double[] row : part) {
            if (spent > most) {
                break;
            }
            double to = row[1] * pace;
            boolean halt = to == 0 && speed == 0;
            legs.add(new Leg(halt ? Kind.HALT : Kind.DRIVE, row[0], to, load));
            spent += row[0];
            speed = to;
        }
        return spent;
    }

    @Override
    public double rpm(double speedKmh) {
        if (speedKmh < 3) {
            return 790;
        }
        double[] perKmh = {130, 70, 46, 35, 28};
        int gear = speedKmh < 15 ? 0 : speedKmh < 32 ? 1 : speedKmh < 50 ? 2 : speedKmh < 75 ? 3 : 4;
        return Math.max(850, speedKmh * perKmh[gear]);
    }
}
