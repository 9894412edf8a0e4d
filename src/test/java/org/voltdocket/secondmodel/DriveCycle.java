package org.voltdocket.secondmodel;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;

/** A drive as a Markov chain of phases with its own speeds and engine speeds. */
final class DriveCycle {

    enum Phase {
        ASLEEP,
        AWAKE,
        CRANK,
        IDLE,
        ACCELERATE,
        CRUISE,
        COAST,
        STOP
    }

    /**
     * One stretch.
     *
     * @param toSpeed km/h reached at its end
     */
    record Leg(Phase phase, double seconds, double toSpeed) {}

    private DriveCycle() {}

    /** Wait, start, drive, park; several times over. */
    static List<Leg> trips(Random chance, int trips, double driveSeconds, boolean town, double crankS) {
        List<Leg> legs = new ArrayList<>();
        if (chance.nextBoolean()) {
            legs.add(new Leg(Phase.ASLEEP, 20 + 160 * chance.nextDouble(), 0));
        }
        for (int trip = 0; trip < trips; trip++) {
            legs.add(new Leg(Phase.AWAKE, 8 + 40 * chance.nextDouble(), 0));
            legs.add(new Leg(Phase.CRANK, crankS * (0.8 + 0.4 * chance.nextDouble()), 0));
            drive(chance, legs, driveSeconds, town);
            legs.add(new Leg(Phase.AWAKE, 15 + 45 * chance.nextDouble(), 0));
            legs.add(new Leg(Phase.ASLEEP, 240 + 480 * chance.nextDouble(), 0));
        }
        return legs;
    }

    private static void drive(Random chance, List<Leg> legs, double driveSeconds, boolean town) {
        Phase phase = Phase.IDLE;
        double speed = 0;
        double spent = 0;
        while (spent < driveSeconds || speed > 0) {
            Leg leg = leg(chance, phase, speed, town, spent >= driveSeconds);
            legs.add(leg);
            spent += leg.seconds();
            speed = leg.toSpeed();
            phase = next(chance, phase, speed, spent >= driveSeconds);
        }
        legs.add(new Leg(Phase.IDLE, 4 + 12 * chance.nextDouble(), 0));
    }

    private static Leg leg(Random chance, Phase phase, double speed, boolean town, boolean home) {
        return switch (phase) {
            case IDLE -> new Leg(phase, 8 + 30 * chance.nextDouble(), 0);
            case STOP -> new Leg(phase, 6 + 40 * chance.nextDouble(), 0);
            case CRUISE -> new Leg(phase, 10 + 70 * chance.nextDouble(), speed * (0.93 + 0.14 * chance.nextDouble()));
            case ACCELERATE -> {
                double top = town ? 28 + 35 * chance.nextDouble() : 45 + 80 * chance.nextDouble();
                double to = Math.max(top, speed + 10);
                yield new Leg(phase, 2 + (to - speed) / (4 + 4 * chance.nextDouble()), to);
            }
            default -> {
                double to = home || chance.nextDouble() < 0.6 ? 0 : speed * (0.3 + 0.4 * chance.nextDouble());
                yield new Leg(Phase.COAST, 3 + (speed - to) / (3 + 4 * chance.nextDouble()), to);
            }
        };
    }

    private static Phase next(Random chance, Phase phase, double speed, boolean home) {
        if (home) {
            return Phase.COAST;
        }
        double draw = chance.nextDouble();
        return switch (phase) {
            case IDLE, STOP -> Phase.ACCELERATE;
            case ACCELERATE -> draw < 0.85 ? Phase.CRUISE : Phase.COAST;
            case CRUISE -> draw < 0.55 ? Phase.COAST : draw < 0.75 ? Phase.ACCELERATE : Phase.CRUISE;
            default -> speed < 3 ? Phase.STOP : draw < 0.6 ? Phase.ACCELERATE : Phase.CRUISE;
        };
    }

    /** Engine speed at a road speed, 1/min, by a five-step gearbox. */
    static double rpm(double speed, Phase phase, double idle) {
        double[] perKmh = {110, 62, 43, 33, 27};
        double up = phase == Phase.ACCELERATE ? 3200 : 2300;
        for (double ratio : perKmh) {
            if (speed * ratio < up) {
                return Math.max(idle, speed * ratio);
            }
        }
        return speed * 27;
    }
}
