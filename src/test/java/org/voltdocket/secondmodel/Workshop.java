package org.voltdocket.secondmodel;

import java.time.OffsetDateTime;
import java.util.List;
import org.voltdocket.diagnosis.BatteryTest;
import org.voltdocket.diagnosis.ChargingTest;
import org.voltdocket.diagnosis.CrankingStandard;
import org.voltdocket.diagnosis.CrankingTest;
import org.voltdocket.secondmodel.DriveCycle.Leg;
import org.voltdocket.secondmodel.DriveCycle.Phase;

/** Tests as a workshop takes them on the car of a case, with the errors of its instruments. */
final class Workshop {

    private static final BatteryTest.Instrument INSTRUMENT = new BatteryTest.Instrument("W-207", null);

    private final Garage garage;

    Workshop(Garage garage) {
        this.garage = garage;
    }

    BatteryTest battery(OffsetDateTime at, double charge, double hoursStill, boolean charged) {
        AcidBattery resting = garage.battery.rested(charge, garage.ambientC + 3);
        double surface = charged ? 0.12 * Math.exp(-hoursStill / 5) : 0;
        double rest = resting.openVoltage() + surface + 0.012 * garage.chance.nextGaussian();
        double warm = 1 + 0.008 * Math.max(-10, 25 - resting.temperature());
        double ohm = resting.resistance() / warm;
        double starved = Math.min(1, 0.62 + 0.5 * charge);
        double shorted = garage.battery.lostCellV > 0.5 ? 0.75 : 1;
        double cranking = 3.1 / ohm * starved * shorted * (1 + 0.03 * garage.chance.nextGaussian());
        boolean resistance = garage.chance.nextInt(3) > 0;
        return new BatteryTest(
                at,
                rounded(rest, 0.01),
                Math.rint(garage.ambientC + 3),
                rounded(cranking, 1),
                CrankingStandard.EN,
                resistance ? rounded(ohm * 1000 * (1 + 0.04 * garage.chance.nextGaussian()), 0.1) : null,
                rounded(hoursStill, 0.5),
                charged,
                INSTRUMENT);
    }

    CrankingTest cranking(OffsetDateTime at, double charge) {
        Trace trace = vehicle(charge, 0.2)
                .run(List.of(new Leg(Phase.AWAKE, 5, 0), new Leg(Phase.CRANK, crankS(charge), 0)), 0.5);
        return new CrankingTest(
                at,
                rounded(trace.crankMinimum() + 0.03 * garage.chance.nextGaussian(), 0.01),
                rounded(crankS(charge), 0.1),
                Math.rint(garage.ambientC + 3),
                INSTRUMENT);
    }

    ChargingTest charging(OffsetDateTime at) {
        double idle = settled(0.0, 0);
        double loaded = settled(1.0, 55);
        boolean ripple = garage.chance.nextInt(4) > 0;
        return new ChargingTest(
                at,
                rounded(idle + 0.01 * garage.chance.nextGaussian(), 0.01),
                rounded(loaded + 0.01 * garage.chance.nextGaussian(), 0.01),
                ripple ? rounded(garage.ripplePeakV, 0.01) : null,
                garage.ambientC,
                INSTRUMENT);
    }

    private double settled(double heavy, double speed) {
        Trace trace = vehicle(garage.charge, heavy)
                .run(
                        List.of(
                                new Leg(Phase.AWAKE, 5, 0),
                                new Leg(Phase.CRANK, 0.8, 0),
                                new Leg(Phase.IDLE, 40, 0),
                                new Leg(Phase.CRUISE, 60, speed)),
                        0.5);
        return trace.get(Trace.Of.POST_V, trace.rows() - 1);
    }

    /** How long the starter turns, s: longer where it gets less. */
    double crankS(double charge) {
        AcidBattery resting = garage.battery.rested(charge, garage.ambientC);
        double loop = resting.resistance()
                + garage.build.starterOhm()
                + (garage.build.starterOnCable() ? garage.build.cableOhm() : 0);
        double power = resting.openVoltage() * resting.openVoltage() / loop;
        double usual = 12.5 * 12.5 * garage.ratedA / 13.5;
        return Math.min(3, 0.7 * usual / power * (1 + 0.01 * Math.max(0, 20 - garage.ambientC)));
    }

    Vehicle vehicle(double charge, double heavy) {
        return new Vehicle(
                garage.build,
                garage.battery.rested(charge, garage.ambientC + 3),
                garage.alternator(),
                garage.control(),
                garage.loads(heavy),
                garage.believed,
                garage.chance);
    }

    private static double rounded(double value, double step) {
        return Math.rint(value / step) * step;
    }
}
