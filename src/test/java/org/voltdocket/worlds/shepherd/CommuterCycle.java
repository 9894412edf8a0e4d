package org.voltdocket.worlds.shepherd;

import java.util.ArrayList;
import java.util.List;
import org.voltdocket.worlds.Chance;
import org.voltdocket.worlds.DriveCycle;
import org.voltdocket.worlds.Leg;
import org.voltdocket.worlds.Leg.Kind;

/** Drives to work: residential streets, a main road with lights, a motorway with waves of traffic, and back to streets. */
final class CommuterCycle implements DriveCycle {

    private static final double[][] STAGES = {{0.15, 28, 12}, {0.25, 52, 25}, {0.45, 105, 0}, {0.15, 35, 15}};

    @Override
    public List<Leg> drives(int trips, double seconds, double crankS, double loadA, Chance chance) {
        List<Leg> legs = new ArrayList<>();
        legs.add(new Leg(Kind.ASLEEP, chance.between(30, 600), 0, 0));
        for (int trip = 0; trip < trips; trip++) {
            legs.add(new Leg(Kind.AWAKE, chance.between(2, 15), 0, chance.between(5, 15)));
            legs.add(new Leg(Kind.CRANK, crankS, 0, 0));
            legs.add(new Leg(Kind.DRIVE, chance.between(5, 40), 0, loadA + chance.between(0, 15)));
            double length = seconds * chance.between(0.9, 1.1);
            double blower = chance.between(0, 14);
            for (double[] stage : STAGES) {
                double extra = blower + (chance.happens(0.4) ? chance.between(5, 25) : 0);
                stage(legs, stage, length, loadA + extra, chance);
            }
            legs.add(new Leg(Kind.DRIVE, 6, 0, loadA));
            legs.add(new Leg(Kind.ASLEEP, chance.between(120, 900), 0, 0));
        }
        return legs;
    }

    private static void stage(List<Leg> legs, double[] stage, double length, double load, Chance chance) {
        double left = stage[0] * length;
        while (left > 0) {
            double top = stage[1] * chance.between(0.75, 1.15);
            double seconds = Math.min(left, chance.between(12, 70));
            legs.add(new Leg(Kind.DRIVE, seconds, top, load));
            left -= seconds;
            if (stage[2] > 0 && left > 0 && chance.happens(0.6)) {
                double halt = stage[2] * chance.between(0.3, 2.5);
                legs.add(new Leg(Kind.DRIVE, 7, 0, load));
                legs.add(new Leg(Kind.HALT, halt, 0, load));
                left -= 7 + halt;
            }
        }
    }

    @Override
    public double rpm(double speedKmh) {
        return speedKmh < 2 ? 720 : speedKmh < 20 ? 1400 : speedKmh < 60 ? 1750 : 1300 + 9 * speedKmh;
    }
}
