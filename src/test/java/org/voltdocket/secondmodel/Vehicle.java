package org.voltdocket.secondmodel;

import java.util.List;
import java.util.Random;
import org.voltdocket.diagnosis.Regime;
import org.voltdocket.secondmodel.DriveCycle.Leg;
import org.voltdocket.secondmodel.DriveCycle.Phase;

/** Battery, cable, source, control, sensor, starter and loads put together and run through a drive. */
final class Vehicle {

    /**
     * What is built in.
     *
     * @param nominalAh capacity the vehicle reckons with, Ah
     * @param cableOhm between posts and vehicle, Ω
     * @param starterOnCable whether the starter hangs behind that cable too
     * @param offsetA what the sensor reads above the truth, A
     * @param gain of the sensor
     * @param starterOhm locked starter with its cables, Ω
     */
    record Build(
            double nominalAh,
            double cableOhm,
            boolean starterOnCable,
            double offsetA,
            double gain,
            double starterOhm,
            double crankShare,
            boolean stopStart,
            double idleRpm,
            double ambientC) {}

    private final Build build;
    private final AcidBattery battery;
    private final Alternator source;
    private final Control control;
    private final Loads loads;
    private final Random chance;
    private final Trace trace = new Trace();

    private double time;
    private double believed;
    private double coolant;
    private double smoothA;
    private double sinceStart;
    private double rpm;
    private double postV;
    private double current;

    Vehicle(
            Build build,
            AcidBattery battery,
            Alternator source,
            Control control,
            Loads loads,
            double believed,
            Random chance) {
        this.build = build;
        this.battery = battery;
        this.source = source;
        this.control = control;
        this.loads = loads;
        this.believed = believed;
        this.chance = chance;
        this.coolant = build.ambientC();
    }

    /** Runs through the legs with steps of {@code asleepStep} s asleep, 0.1 s awake, 2 ms cranking. */
    Trace run(List<Leg> legs, double asleepStep) {
        double speed = 0;
        boolean engine = false;
        for (Leg leg : legs) {
            switch (leg.phase()) {
                case ASLEEP, AWAKE -> {
                    engine = false;
                    park(leg, asleepStep);
                }
                case CRANK -> {
                    crank(leg.seconds());
                    engine = true;
                    sinceStart = 0;
                }
                case STOP -> stop(leg);
                default -> drive(leg, speed);
            }
            speed = leg.toSpeed();
        }
        return trace;
    }

    private void park(Leg leg, double asleepStep) {
        source.stop();
        rpm = 0;
        double dt = leg.phase() == Phase.ASLEEP ? asleepStep : 0.1;
        for (double t = 0; t < leg.seconds(); t += dt) {
            coolant += (build.ambientC() - coolant) * dt / 5400;
            alone(loads.draw(leg.phase(), false, dt), dt, Regime.REST, 0);
        }
    }

    private void alone(double load, double dt, Regime regime, double speed) {
        current = -load * Math.min(1, Math.max(0, postV <= 0 ? 1 : postV / 11));
        postV = battery.terminal(current);
        log(regime, speed, dt);
        battery.step(current, dt);
    }

    private void crank(double seconds) {
        double dt = 0.002;
        double phase = 0;
        for (double t = 0; t < seconds; t += dt) {
            double loop = battery.resistance() + build.starterOhm() + (build.starterOnCable() ? build.cableOhm() : 0);
            double locked = Math.max(0, battery.inner() - 0.6) / loop;
            double turning = 1 - Math.exp(-t / 0.11);
            double share = 1 - (1 - build.crankShare()) * turning;
            phase += dt * 2 * Math.PI * (5 + 4 * turning);
            double ripple = 1 + 0.16 * turning * Math.sin(phase);
            rpm = 210 * turning * (1 + 0.1 * Math.sin(phase));
            current = -locked * share * ripple - 6;
            postV = battery.terminal(current);
            log(Regime.CRANKING, 0, dt);
            battery.step(current, dt);
        }
        source.stop();
        rpm = 500;
    }

    private void stop(Leg leg) {
        boolean off = build.stopStart()
                && coolant > 50
                && believed > 0.68
                && !loads.heavy()
                && battery.openVoltage() > 11.9
                && leg.seconds() > 5;
        if (!off) {
            drive(new Leg(Phase.IDLE, leg.seconds(), 0), 0);
            return;
        }
        drive(new Leg(Phase.IDLE, 1.2, 0), 0);
        source.stop();
        rpm = 0;
        for (double t = 1.2; t < leg.seconds(); t += 0.1) {
            alone(loads.draw(Phase.STOP, false, 0.1), 0.1, Regime.STOPPED, 0);
        }
        crank(0.35 + 0.15 * chance.nextDouble());
    }

    private void drive(Leg leg, double fromSpeed) {
        double dt = 0.1;
        for (double t = 0; t < leg.seconds(); t += dt) {
            double speed = fromSpeed + (leg.toSpeed() - fromSpeed) * Math.min(1, (t + dt) / leg.seconds());
            double wishRpm = DriveCycle.rpm(speed, leg.phase(), build.idleRpm() + (sinceStart < 20 ? 250 : 0));
            rpm += (wishRpm - rpm) * Math.min(1, dt / 0.6) + 6 * chance.nextGaussian();
            coolant += (88 - coolant) * dt / 380;
            sinceStart += dt;
            double load = loads.draw(leg.phase(), true, dt) * Math.min(1, Math.max(0, postV / 11));
            double asked = control.setPoint(
                    new Control.View(
                            leg.phase(), speed, battery.temperature(), sensed(), believed, loads.heavy(), sinceStart),
                    dt);
            double toBattery = (asked - battery.inner()) / (battery.resistance() + build.cableOhm());
            current = source.deliver(toBattery + load, rpm, dt) - load;
            postV = battery.terminal(current);
            smoothA += (current - smoothA) * dt / 2;
            log(running(), speed, dt);
            battery.step(current, dt);
        }
    }

    private Regime running() {
        double border = 1.2 * build.nominalAh() / 70;
        double size = Math.abs(smoothA);
        if (size > 0.6 * border && size < 1.5 * border) {
            return null;
        }
        return size < border ? Regime.HOLDING : smoothA > 0 ? Regime.CHARGING : Regime.DISCHARGING;
    }

    private double sensed() {
        return build.gain() * current + build.offsetA();
    }

    private void log(Regime regime, double speed, double dt) {
        believed = Math.max(0, Math.min(1, believed + sensed() * dt / 3600 / build.nominalAh()));
        trace.add(
                regime,
                time,
                postV,
                current,
                postV + build.cableOhm() * current,
                sensed(),
                believed,
                rpm,
                speed,
                coolant,
                battery.charge());
        time += dt;
    }
}
