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
import org.voltdocket.kernel.Interval;

/** The state of measuring one drive: its signals, what is known of the rest before it, and the measurements so far. */
final class DriveContext {

    static final int BLOCK_STEPS = 5;
    /** Least time with a running engine that says something of charging, s (ours). */
    static final int FEWEST_STEADY_STEPS = 120;
    /** A source that reaches this can charge, V (vehicle workshop manual, 2018: 13.7 to 14.6 V at 20 °C, less drop). */
    static final double LIFTED_V = 13.4;
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

    /** Whether the battery was low before the drive. */
    boolean startedLow() {
        return socSeen.filter(soc -> soc.value() < RestVoltage.LOW_CHARGE).isPresent();
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
