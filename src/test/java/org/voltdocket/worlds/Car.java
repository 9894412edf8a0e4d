package org.voltdocket.worlds;

/**
 * A car without its battery, source and control.
 *
 * @param nominalAh capacity that the vehicle reckons with, Ah
 * @param mainOhm between the posts and the vehicle, Ω
 * @param chargeOhm between vehicle and source, Ω
 * @param regulatedAtBattery whether the source holds the voltage of the vehicle's side of the charge cable
 * @param reportedAtSource whether the vehicle reports the voltage at the source
 * @param offsetA what the current sensor reads too high, A
 * @param gain of the current sensor
 * @param starterOhm of the starter at rest, Ω
 * @param asleepA current while asleep, A
 * @param stopStart whether the engine stops at a halt
 * @param ambientC °C
 * @param believed state of charge that the vehicle believes in at first, 0 to 1
 */
public record Car(
        double nominalAh,
        double mainOhm,
        double chargeOhm,
        boolean regulatedAtBattery,
        boolean reportedAtSource,
        double offsetA,
        double gain,
        double starterOhm,
        double asleepA,
        boolean stopStart,
        double ambientC,
        double believed) {

    static Car of(Setup setup) {
        Chance chance = setup.chance().of("vehicle");
        Effects effects = setup.effects();
        double zero = (chance.happens(0.3) ? 0.15 : 0.02) * chance.normal();
        double gain = 1 + 0.006 * chance.normal();
        double main = chance.between(0.0006, 0.0022);
        double charge = chance.between(0.0008, 0.0030);
        boolean atBattery = chance.happens(0.3) && effects.chargeOhm() == 0;
        return new Car(
                setup.requiredAh(),
                main + effects.mainOhm(),
                charge + effects.chargeOhm(),
                atBattery,
                chance.happens(0.25),
                zero + effects.offsetA(),
                gain,
                chance.between(11, 15) / (setup.ratedA() / effects.sizeFactor()),
                chance.between(0.010, 0.035) + effects.drainA(),
                setup.managed() && chance.happens(0.6),
                setup.ambientC(),
                believed(setup, chance.normal(), chance.next()));
    }

    private static double believed(Setup setup, double normal, double draw) {
        double error = 0.025 * normal;
        double drift = 0.15 + 0.2 * draw;
        double offset = setup.effects().offsetA();
        double wrong = offset > 0 ? drift : offset < 0 ? -drift - 0.1 : 0;
        return Math.max(0.05, Math.min(1, setup.charge() + error + wrong));
    }
}
