package org.voltdocket.demo.model;

/**
 * The unit that commands a managed charging source. It knows the battery through the vehicle's sensor only. Above a
 * reported charge it holds: it moves its set point so that the reported current stays near zero. It raises the set point to a
 * charging voltage when cold, at low reported charge or with large consumers on, and recuperates while coasting.
 */
final class ChargeControl {

    private final ModelSettings setup;
    private final double chargeV;
    private final double recuperateV;
    private final double coldS;
    private final double leastRestV;
    private double restV = 12.7;
    private double commanded = 13.5;
    private boolean resting;

    ChargeControl(ModelSettings setup, SeededRandom chance) {
        this.setup = setup;
        this.chargeV = chance.between(14.2, 14.7);
        this.recuperateV = chance.between(14.7, 15.2);
        this.coldS = setup.temperatureC < 5 ? chance.between(60, 150) : chance.between(20, 60);
        this.leastRestV = chance.between(11.85, 12.2);
        this.resting = setup.believedPct > setup.restAbovePct;
    }

    /**
     * The command, V.
     *
     * @param sinceStartS since the engine started, s
     * @param reportedA as the sensor says, filtered
     */
    double command(
            double sinceStartS,
            double reportedA,
            double reportedPct,
            boolean largeConsumers,
            boolean coasting,
            boolean accelerating,
            double dt) {
        if (reportedPct > setup.restAbovePct + 2) {
            resting = true;
        } else if (reportedPct < setup.restAbovePct - 3) {
            resting = false;
        }
        double wanted = wanted(sinceStartS, reportedA, reportedPct, largeConsumers, coasting, accelerating, dt);
        double most = 0.35 * dt;
        commanded += Math.max(-most, Math.min(most, wanted - commanded));
        return commanded;
    }

    private double wanted(
            double sinceStartS,
            double reportedA,
            double reportedPct,
            boolean largeConsumers,
            boolean coasting,
            boolean accelerating,
            double dt) {
        if (coasting && setup.recuperates && reportedPct < 88) {
            return recuperateV;
        }
        if (setup.stuckAtV > 0) {
            return setup.stuckAtV;
        }
        if (sinceStartS < coldS || largeConsumers) {
            return chargeV - 0.2;
        }
        if (!resting) {
            return chargeV;
        }
        if (accelerating) {
            return restV - 0.08;
        }
        double error = Math.max(-15, Math.min(15, setup.restCurrentA - reportedA));
        restV = Math.max(leastRestV, Math.min(13.2, restV + 0.007 * error * dt));
        return restV;
    }
}
