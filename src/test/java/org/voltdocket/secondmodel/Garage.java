package org.voltdocket.secondmodel;

import java.util.Random;
import org.voltdocket.diagnosis.Chemistry;

/** Draws one car with its battery for a scenario. All ranges are invented. */
final class Garage {

    private static final double[][] SIZES = {{50, 480}, {60, 560}, {70, 680}, {80, 760}, {95, 850}};

    final Scenario scenario;
    final Random chance;
    final Control.Style style;
    final Chemistry chemistry;
    final double nominalAh;
    final double ratedA;
    final double ambientC;
    final boolean stopStart;
    final double heaviness;
    final double baseA;
    final double charge;
    final double believed;
    final double offsetA;
    final double asleepA;
    final AcidBattery battery;
    final Vehicle.Build build;
    /** Most current of the source, A. */
    final double sourceA;

    final double ripplePeakV;
    private final double high;
    private final double low;
    private final double target;

    Garage(Scenario scenario, Random chance) {
        this.scenario = scenario;
        this.chance = chance;
        boolean needsManaged = switch (scenario) {
            case HEALTHY_MANAGED, SENSOR_HIGH, SENSOR_LOW, CONTROL -> true;
            default -> false;
        };
        boolean managed = needsManaged || scenario != Scenario.HEALTHY_CONVENTIONAL && chance.nextInt(5) < 2;
        style = !managed
                ? Control.Style.CONVENTIONAL
                : chance.nextBoolean() ? Control.Style.WINDOW : Control.Style.ECONOMY;
        chemistry = !managed
                ? chance.nextInt(4) == 0 ? Chemistry.EFB : Chemistry.FLOODED
                : chance.nextBoolean() ? Chemistry.AGM : Chemistry.EFB;
        double[] size = SIZES[chance.nextInt(SIZES.length)];
        nominalAh = size[0];
        ratedA = size[1] + 10 * chance.nextInt(5);
        ambientC = Math.rint(scenario == Scenario.DUTY ? between(-8, 8) : between(rests() ? 3 : -5, 28));
        stopStart = managed && chance.nextInt(3) > 0;
        heaviness = rests() ? between(0.02, 0.3) : chance.nextDouble();
        baseA = between(12, 24);
        charge = charge(managed);
        believed = believed();
        offsetA = offset();
        asleepA = scenario == Scenario.DRAIN ? between(0.35, 2.2) : between(0.012, 0.035);
        battery = battery();
        build = build();
        sourceA = source();
        ripplePeakV =
                scenario == Scenario.SOURCE_WEAK && chance.nextBoolean() ? between(0.55, 1.4) : between(0.04, 0.18);
        high = high(managed);
        low = style == Control.Style.ECONOMY ? between(12.6, 13.1) : between(12.6, 12.9);
        target = between(0.78, 0.85);
    }

    double between(double from, double to) {
        return from + (to - from) * chance.nextDouble();
    }

    /** Whether the fault shows only while the source may rest. */
    private boolean rests() {
        return scenario == Scenario.SENSOR_HIGH || scenario == Scenario.CONTROL;
    }

    private double charge(boolean managed) {
        return switch (scenario) {
            case SENSOR_HIGH -> between(0.30, 0.62);
            case SENSOR_LOW -> between(0.92, 1.0);
            case SOURCE_DEAD -> between(0.55, 0.85);
            case SOURCE_WEAK -> between(0.40, 0.70);
            case SOURCE_OVER -> between(0.93, 1.0);
            case CONTROL -> between(0.30, 0.60);
            case WIRING -> between(0.40, 0.70);
            case DRAIN -> between(0.30, 0.60);
            case DUTY -> between(0.38, 0.62);
            case DEFECT -> between(0.55, 0.9);
            default -> managed ? between(0.72, 0.90) : between(0.86, 0.99);
        };
    }

    private double believed() {
        double wrong = switch (scenario) {
            case SENSOR_HIGH -> Math.max(between(0.88, 0.95), charge + between(0.25, 0.4)) - charge;
            case SENSOR_LOW -> between(0.35, 0.65) - charge;
            default -> 0.025 * chance.nextGaussian();
        };
        return Math.max(0.05, Math.min(1, charge + wrong));
    }

    private double offset() {
        return switch (scenario) {
            case SENSOR_HIGH -> between(1.2, 8);
            case SENSOR_LOW -> -between(1.2, 8);
            default -> (chance.nextInt(3) == 0 ? 0.15 : 0.03) * chance.nextGaussian();
        };
    }

    private AcidBattery battery() {
        double ohmic = 3.1 / (ratedA * between(0.97, 1.14));
        double capacity = nominalAh * between(0.93, 1.04);
        double lost = 0;
        if (scenario == Scenario.WORN) {
            double wear = between(0.50, 0.70);
            ohmic = 3.1 / (ratedA * wear);
            capacity = nominalAh * between(0.38, 0.62);
        } else if (scenario == Scenario.DEFECT) {
            boolean shorted = chance.nextBoolean();
            lost = shorted ? between(0.9, 2.1) : 0;
            ohmic = 3.1 / (ratedA * (shorted ? between(0.45, 0.7) : between(0.22, 0.45)));
        }
        double tilt = 0.0015 * chance.nextGaussian();
        double[] density = switch (chemistry) {
            case AGM, GEL -> new double[] {1.1235, 1.3050};
            case EFB -> new double[] {1.1215, 1.2810};
            case FLOODED -> new double[] {1.1417, 1.2683};
        };
        return new AcidBattery(capacity, ohmic, lost, density[0] + tilt, density[1] + tilt, charge, ambientC + 3);
    }

    private Vehicle.Build build() {
        boolean wiring = scenario == Scenario.WIRING;
        boolean common = wiring && chance.nextBoolean();
        double cable = wiring ? (common ? between(0.012, 0.028) : between(0.035, 0.11)) : between(0.0008, 0.003);
        return new Vehicle.Build(
                nominalAh,
                cable,
                !wiring || common,
                offsetA,
                1 + 0.008 * chance.nextGaussian(),
                between(7.5, 10.5) / ratedA,
                between(0.28, 0.42),
                stopStart,
                between(720, 880),
                ambientC);
    }

    private double source() {
        return switch (scenario) {
            case SOURCE_DEAD -> 0;
            case SOURCE_WEAK -> (baseA + 25 * heaviness) * between(0.95, 1.4);
            default -> between(110, 180);
        };
    }

    private double high(boolean managed) {
        double normal = managed ? between(14.3, 14.8) : between(14.1, 14.55);
        return scenario == Scenario.SOURCE_OVER ? between(15.5, 16.7) : normal;
    }

    Loads loads() {
        return new Loads(chance, baseA, scenario == Scenario.DUTY ? Math.max(0.6, heaviness) : heaviness, asleepA);
    }

    Loads loads(double heavy) {
        return new Loads(chance, baseA, heavy, asleepA);
    }

    Control control() {
        boolean stuck = scenario == Scenario.CONTROL;
        boolean over = scenario == Scenario.SOURCE_OVER;
        return new Control(
                over ? Control.Style.CONVENTIONAL : style,
                high,
                low,
                target,
                over ? 0.002 : 0.010,
                stuck,
                stuck && chance.nextInt(5) < 3 ? between(8, 30) : 1.5);
    }

    Alternator alternator() {
        return new Alternator(sourceA, 380, between(0.15, 0.35), between(15, 60));
    }
}
