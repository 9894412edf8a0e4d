package org.voltdocket.worlds;

import org.voltdocket.diagnosis.Chemistry;

/**
 * One car with its battery, drawn for a fault and a seed. All ranges are ours.
 *
 * @param strength of the fault, 0 to 1
 * @param chance the streams of the case
 * @param managed whether a control unit commands charging
 * @param chemistry of the battery that is fitted
 * @param required chemistry that the vehicle needs
 * @param requiredAh capacity that the vehicle needs, Ah
 * @param ratedA rated cranking current of the battery fitted, A, EN
 * @param ambientC °C
 * @param charge of the battery on arrival, 0 to 1 of the capacity it has
 * @param ageMonths of the battery
 */
public record Setup(
        Fault fault,
        double strength,
        Effects effects,
        Chance chance,
        boolean managed,
        Chemistry chemistry,
        Chemistry required,
        double requiredAh,
        double ratedA,
        double ambientC,
        double charge,
        double ageMonths) {

    private static final double[][] SIZES = {{45, 420}, {52, 500}, {60, 560}, {70, 680}, {80, 760}, {95, 850}};

    static Setup draw(Fault fault, long seed, Chance chance) {
        double strength = (seed % 3 + chance.of("strength").next()) / 3;
        Effects effects = Effects.of(fault, strength);
        Chance car = chance.of("car");
        boolean managed = managed(fault, car.next());
        Chemistry required = managed
                ? car.happens(0.5) ? Chemistry.AGM : Chemistry.EFB
                : car.happens(0.25) ? Chemistry.EFB : Chemistry.FLOODED;
        double[] size = SIZES[car.below(SIZES.length)];
        double rated = StrictMath.rint((size[1] + 10 * car.below(5)) * effects.sizeFactor());
        double celsius = StrictMath.rint(car.between(0, 30));
        double cold = StrictMath.rint(car.between(-12, 3));
        double charge = car.between(fault.chargeFrom, fault.chargeTo);
        double age = age(fault, car);
        return new Setup(
                fault,
                strength,
                effects,
                chance,
                managed,
                fault == Fault.WRONG_TYPE ? Chemistry.FLOODED : required,
                required,
                size[0],
                rated,
                fault == Fault.HEALTHY_COLD ? cold : celsius,
                charge,
                age);
    }

    private static boolean managed(Fault fault, double draw) {
        return switch (fault) {
            case HEALTHY_CONVENTIONAL -> false;
            case HEALTHY_MANAGED, CONTROL_LOW, CONTROL_HIGH, WRONG_TYPE -> true;
            case SENSOR_HIGH, SENSOR_LOW -> draw < 0.85;
            default -> draw < 0.45;
        };
    }

    private static double age(Fault fault, Chance car) {
        double young = car.between(2, 42);
        return switch (fault) {
            case WORN -> 30 + 1.1 * young;
            case HEALTHY_OLD -> 38 + 0.7 * young;
            default -> young;
        };
    }

    /** Capacity of the battery that is fitted when new, Ah. */
    public double fittedAh() {
        return StrictMath.rint(requiredAh * effects.sizeFactor());
    }

    /** The same case with the same charge and age, but something else wrong, or nothing. */
    Setup with(Effects other) {
        boolean small = fault == Fault.WRONG_SIZE;
        return new Setup(
                fault,
                strength,
                other,
                chance,
                managed,
                required,
                required,
                requiredAh,
                small ? StrictMath.rint(ratedA / effects.sizeFactor()) : ratedA,
                ambientC,
                charge,
                ageMonths);
    }
}
