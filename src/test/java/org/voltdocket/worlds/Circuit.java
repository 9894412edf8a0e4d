package org.voltdocket.worlds;

import java.util.List;
import org.voltdocket.worlds.ChargeController.View;

/** Battery, cables, source, starter, consumers and control unit put together. */
final class Circuit {

    private static final double ASLEEP_STEP_S = 10;
    private static final double STEP_S = 0.2;
    private static final double CRANK_STEP_S = 0.005;

    private final Car car;
    private final BatteryModel battery;
    private final Alternator source;
    private final ChargeController control;
    private final DriveCycle cycle;
    private final Effects effects;
    private final Trace trace = new Trace();

    private double time;
    private double running;
    private double coolant;
    private double believed;
    private double speed;
    private double amperes;
    private double sourceA;
    private double chargedAh;

    Circuit(Setup setup, Car car, World world, BatteryModel battery) {
        this.car = car;
        this.battery = battery;
        this.source = world.alternator(setup);
        this.control = world.controller(setup);
        this.cycle = world.cycle();
        this.effects = setup.effects();
        this.coolant = car.ambientC();
        this.believed = car.believed();
    }

    Trace run(List<Leg> legs) {
        for (Leg leg : legs) {
            switch (leg.kind()) {
                case ASLEEP -> still(leg, car.asleepA(), ASLEEP_STEP_S);
                case AWAKE -> still(leg, leg.loadA(), STEP_S);
                case CRANK -> {
                    crank(leg.seconds());
                    running = 0;
                    trace.add(new Trace.Event(time, true));
                }
                case HALT -> halt(leg);
                case DRIVE -> drive(leg);
            }
            speed = leg.kind() == Leg.Kind.DRIVE ? leg.toKmh() : 0;
        }
        return trace;
    }

    private void still(Leg leg, double load, double step) {
        if (running > 0) {
            trace.add(new Trace.Event(time, false));
        }
        running = 0;
        sourceA = 0;
        for (double t = 0; t < leg.seconds(); t += step) {
            coolant += (car.ambientC() - coolant) * step / 5000;
            settle(-drawn(load), 0, 0, step);
        }
    }

    /** Consumers take less at less voltage. */
    private double drawn(double load) {
        return load * Math.max(0.2, Math.min(1.1, battery.voltage(amperes) / 13));
    }

    private void crank(double seconds) {
        for (double t = 0; t < seconds; t += CRANK_STEP_S) {
            double turning = 1 - StrictMath.exp(-t / 0.12);
            double wave = 1 + 0.18 * turning * StrictMath.sin(2 * StrictMath.PI * 9 * t);
            double ohm = car.starterOhm() * (1 + 2.1 * turning) * wave + car.mainOhm();
            settle(-starterA(ohm), 180 * turning * wave, 0, CRANK_STEP_S);
        }
    }

    private double starterA(double ohm) {
        double low = 0;
        double high = 2000;
        for (int i = 0; i < 22; i++) {
            double middle = (low + high) / 2;
            if (battery.voltage(-middle) > middle * ohm) {
                low = middle;
            } else {
                high = middle;
            }
        }
        return low;
    }

    private void halt(Leg leg) {
        boolean stops = car.stopStart() && coolant > 45 && believed > 0.70 && leg.seconds() > 6;
        if (!stops) {
            drive(new Leg(Leg.Kind.DRIVE, leg.seconds(), 0, leg.loadA()));
            return;
        }
        sourceA = 0;
        for (double t = 0; t < leg.seconds(); t += STEP_S) {
            settle(-drawn(leg.loadA() * 0.8), 0, 0, STEP_S);
        }
        crank(0.4);
    }

    private void drive(Leg leg) {
        double from = speed;
        for (double t = 0; t < leg.seconds(); t += STEP_S) {
            speed = from + (leg.toKmh() - from) * Math.min(1, (t + STEP_S) / leg.seconds());
            double rate = (leg.toKmh() - from) / leg.seconds();
            coolant += (88 - coolant) * STEP_S / 360;
            running += STEP_S;
            double load = drawn(leg.loadA());
            double rpm = cycle.rpm(speed) + (running < 25 ? 200 : 0);
            sourceA = Math.min(most(rpm, load, rate), sourceA + source.risesAPerS() * STEP_S);
            settle(sourceA - load, rpm, source.rippleV() * ripple(), STEP_S);
        }
    }

    /** Current that the source would settle at, A. */
    private double most(double rpm, double load, double rate) {
        View view = new View(
                car.ambientC() + 4, speed, rate, believed, car.gain() * amperes + car.offsetA(), load, running);
        double commanded = control.volts(view, STEP_S);
        double volts = (Double.isNaN(effects.heldV()) ? commanded : effects.heldV()) + effects.overV();
        double wish = regulated(volts, load, source.most(rpm));
        return Math.min(wish, effects.limit(source.most(rpm), wish, running));
    }

    /** Current of the source that holds a voltage, A; searched near the present one first. */
    private double regulated(double volts, double load, double most) {
        double low = Math.max(0, sourceA - 2);
        double high = Math.min(most, sourceA + 2);
        if (low < high && held(low, load) < volts && held(high, load) >= volts) {
            return bisected(volts, load, low, high, 8);
        }
        return bisected(volts, load, 0, most, 16);
    }

    private double bisected(double volts, double load, double from, double to, int steps) {
        double low = from;
        double high = to;
        for (int i = 0; i < steps; i++) {
            double middle = (low + high) / 2;
            if (held(middle, load) < volts) {
                low = middle;
            } else {
                high = middle;
            }
        }
        return (low + high) / 2;
    }

    /** Voltage at the regulator if the source gave this current, V. */
    private double held(double source, double load) {
        double into = source - load;
        double cable = car.regulatedAtBattery() ? 0 : car.chargeOhm();
        return battery.voltage(into) + into * car.mainOhm() + source * cable;
    }

    /** A source that is overloaded ripples more. */
    private double ripple() {
        return effects.sourceShare() < 0.5 && effects.sourceShare() > 0.08 ? 6 : 1;
    }

    private void settle(double into, double rpm, double ripple, double step) {
        amperes = into;
        double post = battery.voltage(into);
        double vehicle = post + into * car.mainOhm();
        double sensed = car.gain() * into + car.offsetA();
        believed = Math.max(0, Math.min(1, believed + sensed * step / 3600 / car.nominalAh()));
        double reported = vehicle + (car.reportedAtSource() ? sourceA * car.chargeOhm() : 0);
        trace.add(
                time, post, into, reported, sensed, believed, rpm, speed, coolant, ripple, battery.charge(), chargedAh);
        battery.step(into, step);
        chargedAh += into * step / 3600;
        time += step;
    }
}
