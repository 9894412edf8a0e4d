package org.voltdocket.demo.model;

/** A drive cycle in steps of one second: whether the engine runs, and the speed. */
final class DriveCycle {

    private final double[] speed;
    private final double startS;
    private final double stopS;
    private final int longestHaltS;

    private int at;

    DriveCycle(ModelSettings setup, SeededRandom chance) {
        int total = (int) setup.durationS;
        this.longestHaltS = setup.longestHaltS;
        this.speed = new double[total + 2];
        this.startS = Math.round(chance.between(40, Math.min(150, total * 0.08 + 41)));
        this.stopS = total - Math.round(chance.between(60, Math.min(400, total * 0.12 + 61)));
        at = (int) startS + chance.whole(12, 45);
        while (at < stopS - 40) {
            switch (setup.road) {
                case TOWN -> town(chance);
                case MIXED -> {
                    double done = (at - startS) / (stopS - startS);
                    if (done < 0.35 || done > 0.85) {
                        town(chance);
                    } else {
                        fast(chance, 65, 95, 25, 90);
                    }
                }
                case MOTORWAY -> {
                    if (at - startS < 200) {
                        town(chance);
                    } else {
                        fast(chance, 105, 130, 60, 300);
                    }
                }
            }
        }
        for (int i = Math.max(0, (int) stopS - 8); i < speed.length; i++) {
            speed[i] = 0;
        }
    }

    /** When the starter is first engaged, s. */
    double startS() {
        return startS;
    }

    /** When the engine is switched off, s. */
    double stopS() {
        return stopS;
    }

    /** km/h. */
    double speed(double t) {
        int i = Math.min(speed.length - 2, (int) t);
        return speed[i] + (speed[i + 1] - speed[i]) * (t - i);
    }

    /** km/h per s. */
    double acceleration(double t) {
        int i = Math.min(speed.length - 2, (int) t);
        return speed[i + 1] - speed[i];
    }

    /** Whether the vehicle stands and will not move for the next seconds. */
    boolean standsFor(double t, double seconds) {
        for (int i = (int) t; i <= Math.min(speed.length - 1, (int) (t + seconds)); i++) {
            if (speed[i] > 0.5) {
                return false;
            }
        }
        return true;
    }

    private void town(SeededRandom chance) {
        double top = chance.between(28, 54);
        ramp(0, top, chance.between(2.5, 5));
        cruise(top, chance.whole(8, 45), chance);
        ramp(top, 0, -chance.between(2.5, 4.5));
        at += chance.odds(0.75) ? chance.whole(5, longestHaltS) : chance.whole(1, 3);
    }

    private void fast(SeededRandom chance, double low, double high, int least, int most) {
        double now = at > 0 && at - 1 < speed.length ? speed[at - 1] : 0;
        double top = chance.between(low, high);
        ramp(now, top, top > now ? chance.between(1.5, 3) : -chance.between(1, 2));
        cruise(top, chance.whole(least, most), chance);
        if (chance.odds(0.3) || at > stopS - 80) {
            ramp(top, 0, -chance.between(2, 3.5));
            at += chance.whole(3, 30);
        }
    }

    private void ramp(double from, double to, double perSecond) {
        int seconds = (int) Math.ceil(Math.abs((to - from) / perSecond)) + 1;
        for (int i = 1; i <= seconds && at < speed.length; i++) {
            speed[at++] = from + (to - from) * i / seconds;
        }
    }

    private void cruise(double level, int seconds, SeededRandom chance) {
        double around = level;
        for (int i = 0; i < seconds && at < speed.length; i++) {
            around += 0.2 * (level - around) + chance.normal(0.6);
            speed[at++] = Math.max(0, around);
        }
    }
}
