package org.voltdocket.demo.model;

/** Current of the vehicle's consumers. */
final class Loads {

    private final ModelSettings setup;
    private final double fanFromS;
    private final double parkedIgnitionA;
    private final double followUpS;

    Loads(ModelSettings setup, SeededRandom chance) {
        this.setup = setup;
        this.fanFromS = chance.between(300, 900);
        this.parkedIgnitionA = chance.between(3, 8);
        this.followUpS = chance.between(20, 90);
    }

    /** With the engine running or in traffic, A. */
    double running(double sinceStartS, boolean braking, boolean engineRuns) {
        double a = engineRuns ? setup.baseLoadA : setup.baseLoadA * 0.55;
        a += setup.blowerA + setup.seatsA * (sinceStartS < 900 ? 1 : 0.3);
        if (setup.lamps) {
            a += 12;
        }
        if (sinceStartS < 600 && engineRuns) {
            a += setup.heatedScreenA;
        }
        if (braking) {
            a += 3.5;
        }
        double inFan = (sinceStartS - fanFromS) % 420;
        if (setup.temperatureC > 20 && sinceStartS > fanFromS && inFan < 70) {
            a += 14;
        }
        return a;
    }

    /** Before the start, with the ignition on for the last half minute, A. */
    double before(double untilStartS) {
        return untilStartS < 25 ? parkedIgnitionA : setup.standingDrainA + 0.6;
    }

    /** After the engine is off: control units run on for a while, A. */
    double after(double sinceStopS) {
        return sinceStopS < followUpS ? parkedIgnitionA * 0.7 : setup.standingDrainA + 1.2;
    }

    /** Whether consumers are on for which a managed controller leaves its rest. */
    boolean large(double sinceStartS) {
        return setup.lamps || setup.heatedScreenA > 0 && sinceStartS < 600;
    }
}
