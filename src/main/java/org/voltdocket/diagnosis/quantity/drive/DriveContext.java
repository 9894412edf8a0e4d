package org.voltdocket.diagnosis.quantity.drive;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.voltdocket.diagnosis.Evidence;
import org.voltdocket.diagnosis.quantity.DriveSignals;
import org.voltdocket.diagnosis.quantity.Measurement;
import org.voltdocket.diagnosis.quantity.MeasurementContext;
import org.voltdocket.diagnosis.quantity.RestVoltage;
import org.voltdocket.diagnosis.signal.NormalDistribution;
import org.voltdocket.kernel.Interval;

/** The state of measuring one drive: its signals, what is known of the rest before it, and the measurements so far. */
final class DriveContext {

    static final int BLOCK_STEPS = 5;
    /** Least time with a running engine that says something of charging, s (ours). */
    static final int FEWEST_STEADY_STEPS = 120;
    /** A source that reaches this can charge, V (vehicle workshop manual, 2018: 13.7 to 14.6 V at 20 °C, less drop). */
    static final double LIFTED_V = 13.4;
    /** A condition less probable than this is not looked at (ours). */
    private static final double LEAST_CHANCE = 0.05;
    /** A managed source need not charge a battery above this, % (common practice: targets of 75 to 85 %). */
    private static final double FULL_CHARGE = 86;

    private static final double METER_V = 0.02;
    /** Reported above this, the vehicle takes its battery to be charging, V (common practice). */
    static final double CHARGE_SEEN_V = 13.2;

    final Evidence evidence;
    final DriveSignals drive;
    final MeasurementContext reference;
    final Optional<Interval> restV;
    /** The rest voltage with what is left of its relaxation taken off. */
    final Optional<Relaxation.Rested> rested;

    final Optional<Interval> socStart;
    /** The same by the voltage as it was seen: what is left to fall may make less of it, never more. */
    final Optional<Interval> socSeen;

    final List<Measurement> out = new ArrayList<>();
    final Map<String, Interval> estimates = new LinkedHashMap<>();
    /** Set once the sensor offset is known. */
    CurrentFlow flow;

    DriveContext(Evidence evidence, DriveSignals drive, MeasurementContext reference) {
        this.evidence = evidence;
        this.drive = drive;
        this.reference = reference;
        this.restV = RestBeforeDrive.before(drive);
        this.rested = Relaxation.before(
                drive,
                restV,
                Math.max(0, RestBeforeDrive.firstRun(drive)),
                RestVoltage.at(reference.chemistry(), 100, drive.temperatureC()));
        boolean inRange = restV.filter(
                        v -> !RestVoltage.belowTable(reference.chemistry(), v.value(), drive.temperatureC()))
                .isPresent();
        this.socStart = rested.filter(r -> inRange)
                .map(r -> RestVoltage.charge(
                        reference.chemistry(),
                        r.voltage().value(),
                        drive.temperatureC(),
                        r.voltage().standardError(),
                        r.hidden()));
        this.socSeen = restV.filter(v -> inRange)
                .map(v -> RestVoltage.charge(
                        reference.chemistry(), v.value(), drive.temperatureC(), v.standardError(), 0.08));
    }

    void add(String quantity, Interval value) {
        out.add(Measurement.of(quantity, evidence, value).at(drive.temperatureC()));
    }

    /** The same, if its condition holds with this probability; nothing where it hardly does. */
    void addGiven(double probability, String quantity, Interval value) {
        if (probability >= LEAST_CHANCE) {
            out.add(Measurement.of(quantity, evidence, value)
                    .at(drive.temperatureC())
                    .given(probability));
        }
    }

    /** Probability that the battery was low before the drive, 0 where nothing tells its charge. */
    double startedLow() {
        return socSeen.map(soc -> NormalDistribution.chanceBelow(soc, RestVoltage.LOW_CHARGE))
                .orElse(0.0);
    }

    /** Probability that the battery was nearly full before the drive, 0 where nothing tells its charge. */
    double startedFull() {
        return socStart.map(soc -> 1 - NormalDistribution.chanceBelow(soc, FULL_CHARGE))
                .orElse(0.0);
    }

    /** Standard error of a mean of the measured voltage, V: meter and half a step of its resolution. */
    double voltageSe() {
        return Math.hypot(METER_V, 0.5 * drive.resolutionV());
    }

    /** State of charge as the vehicle first reports it, %. */
    Optional<Double> firstReportedSoc() {
        if (drive.reportedSoc() != null) {
            for (double soc : drive.reportedSoc()) {
                if (!Double.isNaN(soc)) {
                    return Optional.of(soc);
                }
            }
        }
        return Optional.empty();
    }
}
