package org.voltdocket.worlds.ciemat;

import java.util.ArrayList;
import java.util.List;
import org.voltdocket.worlds.Chance;
import org.voltdocket.worlds.DriveCycle;
import org.voltdocket.worlds.Leg;
import org.voltdocket.worlds.Leg.Kind;

/** Drives as a chain of random stretches between halts, in town or across country. Consumers are switched one by one. */
final class TrafficCycle implements DriveCycle {

    @Override
    public List<Leg> drives(int trips, double seconds, double crankS, double loadA, Chance chance) {
        List<Leg> legs = new ArrayList<>();
        for (int trip = 0; trip < trips; trip++) {
            legs.add(new Leg(Kind.ASLEEP, chance.between(120, 1500), 0, 0));
            legs.add(new Leg(Kind.AWAKE, chance.between(3, 60), 0, chance.between(5, 12)));
            legs.add(new Leg(Kind.CRANK, crankS, 0, 0));
            new Trip(legs, loadA, chance).drive(seconds * chance.between(0.85, 1.15));
            legs.add(new Leg(Kind.AWAKE, chance.between(3, 90), 0, chance.between(5, 12)));
        }
        legs.add(new Leg(Kind.ASLEEP, chance.between(60, 1200), 0, 0));
        return legs;
    }

    @Override
    public double rpm(double speedKmh) {
        return speedKmh < 4 ? 840 : Math.min(3200, 1250 + 11 * speedKmh + 350 * (speedKmh % 28) / 28);
    }

    /** One trip. */
    private static final class Trip {
        private final List<Leg> legs;
        private final double baseA;
        private final Chance chance;
        private double extraA;
        private double left;

        Trip(List<Leg> legs, double baseA, Chance chance) {
            this.legs = legs;
            this.baseA = baseA;
            this.chance = chance;
        }

        void drive(double seconds) {
            left = seconds;
            boolean town = chance.happens(0.6);
            add(Kind.HALT, chance.between(5, 25), 0);
            while (left > 0) {
                town = chance.happens(0.15) != town;
                double top = town ? chance.between(18, 58) : chance.between(60, 118);
                add(Kind.DRIVE, top / chance.between(3, 7), top);
                for (int i = chance.below(4); i >= 0; i--) {
                    add(Kind.DRIVE, chance.between(8, town ? 30 : 120), top * chance.between(0.8, 1.1));
                }
                add(Kind.DRIVE, top / chance.between(4, 9), 0);
                add(Kind.HALT, chance.between(2, town ? 45 : 15), 0);
            }
        }

        private void add(Kind kind, double seconds, double toKmh) {
            if (chance.happens(0.12)) {
                extraA = chance.happens(0.5) ? 0 : chance.between(6, 38);
            }
            if (left > 0) {
                legs.add(new Leg(kind, seconds, toKmh, baseA + extraA));
                left -= seconds;
            }
        }
    }
}
