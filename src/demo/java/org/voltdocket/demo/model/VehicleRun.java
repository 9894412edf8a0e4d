package org.voltdocket.demo.model;

import java.time.OffsetDateTime;
import org.voltdocket.diagnosis.Channel;
import org.voltdocket.diagnosis.EvidenceKind;
import org.voltdocket.diagnosis.Recording;
import org.voltdocket.diagnosis.Regime;

/**
 * Simulates one vehicle from before its start until after its stop, step by step: road, loads, controller, charging source,
 * cable, battery, sensor, logger.
 */
public final class VehicleRun {

    /** Step of the model, s. */
    private static final double STEP_S = 0.05;

    /** Over which the recording instrument averages, s; the inrush of a start is shorter. */
    private static final double SEEN_OVER_S = 0.1;

    private final ModelSettings setup;
    private final BatteryModel battery;
    private final Alternator alternator;
    private final ChargeControl control;
    private final BatterySensor sensor;
    private final DriveCycle road;
    private final Loads loads;
    private final Starter starter;
    private final Logger logger;
    private final RegimeRecorder spans = new RegimeRecorder();
    private final SeededRandom chance;
    private final double firstTurnS;
    private final float[][] said;

    private double startedS = -1;
    private double coolantC;
    private double rpm;
    private boolean engineRuns;
    private double stoodSinceS = -1;
    private double batteryA;
    private double sourceA;
    private double postV;
    private double seenV;
    private double seenA;
    private double sourceV;
    private double netAh;
    private boolean commandedMarked;

    /** A recording and what really happened in it. */
    public record Outcome(Recording recording, GroundTruth truth) {}

    private VehicleRun(ModelSettings setup, SeededRandom chance, double surfaceV) {
        this.setup = setup;
        this.chance = chance;
        this.battery = new BatteryModel(setup);
        battery.surface(surfaceV);
        this.alternator = new Alternator(setup, chance.split());
        this.control = new ChargeControl(setup, chance.split());
        this.road = new DriveCycle(setup, chance.split());
        this.loads = new Loads(setup, chance.split());
        this.starter = new Starter(setup, chance.split());
        this.logger = new Logger(setup, chance.split());
        this.sensor = new BatterySensor(setup, chance.split(), battery.openCircuit());
        this.coolantC = setup.temperatureC + chance.between(0, 4);
        this.firstTurnS = chance.between(0.6, 1.3) * (1 + Math.max(0, -setup.temperatureC) * 0.03);
        int steps = (int) (setup.durationS / STEP_S) + 2;
        this.said = new float[3][steps];
        channels();
    }

    /**
     * Drives a vehicle.
     *
     * @param startedAt clock time of the first row, or null to record seconds only
     * @param surfaceV what an earlier charge left at the surface, V
     */
    public static Outcome drive(ModelSettings setup, SeededRandom chance, OffsetDateTime startedAt, double surfaceV) {
        return new VehicleRun(setup, chance, surfaceV).run(startedAt);
    }

    private void channels() {
        double poll = setup.pollS;
        if (setup.reportedV) {
            logger.slow(Channel.REPORTED_V, poll);
        }
        if (setup.reportedA) {
            logger.slow(Channel.REPORTED_A, poll);
        }
        if (setup.reportedSoc) {
            logger.slow(Channel.REPORTED_SOC, poll * 4);
        }
        if (setup.engineData) {
            logger.slow(Channel.ENGINE_RPM, poll);
            logger.slow(Channel.SPEED, poll);
        }
        if (setup.temperatures) {
            logger.slow(Channel.COOLANT, 5 + poll);
            logger.slow(Channel.AMBIENT, 10 + poll);
        }
    }

    private Outcome run(OffsetDateTime startedAt) {
        double first = battery.charge();
        double ohmic = battery.ohmic();
        battery.prepare(STEP_S);
        int steps = (int) (setup.durationS / STEP_S);
        for (int i = 0; i < steps; i++) {
            double t = i * STEP_S;
            step(t);
            said[0][i] = (float) sensor.sentV();
            said[1][i] = (float) sensor.sentA();
            said[2][i] = (float) sensor.sentPct();
            if (logger.due(t)) {
                log(t, i);
            }
        }
        double end = steps * STEP_S;
        GroundTruth truth =
                new GroundTruth(setup.sensorOffsetA, first, battery.charge(), netAh, setup.cableOhm, ohmic, spans.done(end));
        return new Outcome(logger.done(EvidenceKind.DRIVE_RECORDING, startedAt), truth);
    }

    private void step(double t) {
        engine(t);
        double speed = road.speed(t);
        double wish = engineRuns ? engineSpeed(t, speed) : starter.turning(t) ? 210 : 0;
        rpm += (wish - rpm) * Math.min(1, STEP_S / 0.35);
        double sinceStart = startedS < 0 ? 0 : t - startedS;
        boolean braking = road.acceleration(t) < -1.2 && speed > 1;
        double load = load(t, sinceStart, braking);
        double wantedV = wantedVoltage(t, sinceStart, speed);
        solve(t, load, wantedV);
        battery.advance(batteryA, STEP_S);
        netAh += batteryA * STEP_S / 3600;
        double share = t == 0 ? 1 : 1 - StrictMath.exp(-STEP_S / SEEN_OVER_S);
        seenV += (postV - seenV) * share;
        seenA += (batteryA - seenA) * share;
        sensor.take(batteryA, setup.voltageAtSource ? sourceV : postV, STEP_S);
        warm(speed);
        regime(t);
    }

    private void engine(double t) {
        if (startedS < 0 && t >= road.startS() && !starter.turning(t) && !starter.done(t)) {
            starter.engage(t, slowTurn());
            logger.mark(t, "start");
        }
        if (starter.done(t) && !engineRuns && stoodSinceS < 0 && startedS < 0) {
            engineRuns = true;
            startedS = t;
        }
        if (t >= road.stopS()) {
            if (engineRuns) {
                logger.mark(t, "engine off");
            }
            engineRuns = false;
            return;
        }
        if (setup.stopStart && startedS >= 0) {
            inTraffic(t);
        }
    }

    private void inTraffic(double t) {
        boolean allowed = coolantC > 45 && sensor.chargePct() > 68 && setup.temperatureC > 2;
        boolean near = road.stopS() - t < 20;
        if (engineRuns && allowed && !near && road.standsFor(t, 6) && road.speed(Math.max(0, t - 2)) < 0.5) {
            engineRuns = false;
            stoodSinceS = t;
        } else if (stoodSinceS >= 0 && !engineRuns && !starter.turning(t)) {
            if (starter.done(t) && t - stoodSinceS > 2 && t - restartAskedS < 3) {
                engineRuns = true;
                stoodSinceS = -1;
            } else if (!road.standsFor(t, 1.5)) {
                restartAskedS = t;
                starter.engage(t, chance.between(0.35, 0.5));
            }
        }
    }

    private double restartAskedS = -100;

    /** A weak battery turns the engine longer. */
    private double slowTurn() {
        double stiff = battery.openCircuit() - setup.starterA * battery.ohmic() * 1.6;
        return firstTurnS * (stiff < 10 ? 1 + (10 - stiff) * 0.6 : 1);
    }

    private double engineSpeed(double t, double speed) {
        double idle = coolantC < 40 ? 1080 : 780;
        double gear = speed < 18 ? 105 : speed < 34 ? 60 : speed < 52 ? 42 : speed < 78 ? 31 : 24;
        double pull = Math.max(0, road.acceleration(t)) * 140;
        return Math.max(idle, speed * gear + pull) + chance.normal(6);
    }

    private double load(double t, double sinceStart, boolean braking) {
        if (startedS < 0) {
            return loads.before(road.startS() - t);
        }
        if (t >= road.stopS()) {
            return loads.after(t - road.stopS());
        }
        return loads.running(sinceStart, braking, engineRuns);
    }

    private double wantedVoltage(double t, double sinceStart, double speed) {
        boolean commanded = setup.commandedAtEnd && engineRuns && t > road.stopS() - 100 && t < road.stopS() - 25;
        if (commanded) {
            if (!commandedMarked) {
                commandedMarked = true;
                logger.mark(t, "scan tool commands 14.5 V");
            }
            return 14.5;
        }
        if (!setup.managed) {
            double regulatorC = setup.temperatureC + 0.45 * (coolantC - setup.temperatureC);
            return alternator.conventional(regulatorC);
        }
        boolean coasting = road.acceleration(t) < -0.8 && speed > 20;
        boolean accelerating = road.acceleration(t) > 1.5;
        return control.command(
                sinceStart,
                sensor.smoothA(),
                sensor.chargePct(),
                loads.large(sinceStart),
                coasting,
                accelerating,
                STEP_S);
    }

    /** Current and voltages of the step: source at its voltage, at its limit, or off; battery and cable in series. */
    private void solve(double t, double load, double wantedV) {
        double cable = setup.cableOhm;
        double atSource = load * setup.loadsAtSource;
        double atPosts = load - atSource;
        if (starter.turning(t)) {
            double turn = starter.currentA(t, battery.emf(), battery.ohm(false));
            batteryA = -turn - load;
            sourceA = 0;
        } else if (!engineRuns) {
            batteryA = -load;
            sourceA = 0;
        } else {
            double held = alternator.held(wantedV);
            boolean charging = held - cable * atPosts > battery.emf();
            double a = (held - battery.emf() - cable * atPosts) / (battery.ohm(charging) + cable);
            sourceA = Math.max(0, Math.min(a + load, alternator.capability(rpm, t)));
            batteryA = sourceA - load;
        }
        postV = battery.terminal(batteryA);
        sourceV = postV + cable * (sourceA - atSource);
    }

    private void warm(double speed) {
        if (engineRuns) {
            coolantC += (90 - coolantC) * STEP_S / (420 - Math.min(200, speed * 1.5));
            battery.warm((setup.temperatureC + 14 - battery.temperatureC()) * STEP_S / 9000);
        } else {
            coolantC -= (coolantC - setup.temperatureC) * STEP_S / 7000;
        }
    }

    private void regime(double t) {
        if (starter.turning(t)) {
            spans.set(t, Regime.CRANKING);
        } else if (engineRuns) {
            spans.engineRuns(t, batteryA, STEP_S);
        } else if (stoodSinceS >= 0 && t < road.stopS()) {
            spans.set(t, Regime.STOPPED);
        } else {
            spans.set(t, Regime.REST);
        }
    }

    private void log(double t, int i) {
        double ripple = engineRuns && sourceA > 0 ? alternator.ripple(sourceA) : 0;
        if (!logger.row(t, seenV, seenA, ripple)) {
            return;
        }
        int then = Math.max(0, i - (int) (setup.lateS / STEP_S));
        saidThen(Channel.REPORTED_V, t, said[0][then]);
        saidThen(Channel.REPORTED_A, t, said[1][then]);
        saidThen(Channel.REPORTED_SOC, t, said[2][then]);
        saidThen(Channel.ENGINE_RPM, t, ObdII.ENGINE_RPM.asRead(Math.max(0, rpm < 60 ? 0 : rpm)));
        saidThen(Channel.SPEED, t, ObdII.SPEED.asRead(road.speed(t)));
        saidThen(Channel.COOLANT, t, ObdII.COOLANT.asRead(coolantC));
        saidThen(Channel.AMBIENT, t, ObdII.AMBIENT.asRead(setup.temperatureC));
    }

    private void saidThen(Channel channel, double t, double value) {
        if (logger.asked(channel, t)) {
            logger.put(channel, value);
        }
    }
}
