package org.voltdocket.worlds;

import java.util.List;
import org.voltdocket.diagnosis.BatteryTest;
import org.voltdocket.diagnosis.CaseInput;
import org.voltdocket.diagnosis.Channel;
import org.voltdocket.diagnosis.ChargingTest;
import org.voltdocket.diagnosis.CrankingTest;
import org.voltdocket.diagnosis.Evidence;
import org.voltdocket.diagnosis.EvidenceKind;
import org.voltdocket.diagnosis.Reading;
import org.voltdocket.diagnosis.Recording;

/**
 * The difference between the evidence of two cases, in units that hold what an instrument errs and what sound vehicles differ
 * by (ours). Two cases that differ by less than one unit everywhere cannot be told apart.
 */
final class Difference {

    private static final double REST_V = 0.05;
    private static final double CRANKING_SHARE = 0.12;
    private static final double RESISTANCE_SHARE = 0.15;
    private static final double CRANKING_V = 0.25;
    private static final double CHARGING_V = 0.20;
    private static final double RIPPLE_V = 0.15;
    private static final double DRIVE_V = 0.20;
    private static final double VEHICLE_V = 0.10;
    private static final double STANDING_A = 0.08;
    private static final double SENSOR_A = 0.6;
    private static final double CHARGE_PCT = 10;
    private static final double CAPACITY_SHARE = 0.10;
    private static final int WINDOWS = 40;

    private final double chargingV;
    private final double driveV;

    /**
     * @param managed whether a control unit commands charging: such vehicles differ more in the voltage they hold
     */
    Difference(boolean managed) {
        chargingV = managed ? 2.5 * CHARGING_V : CHARGING_V;
        driveV = managed ? 2.5 * DRIVE_V : DRIVE_V;
    }

    /** The largest difference in any part of the evidence, units. */
    double of(CaseInput one, CaseInput other) {
        List<Evidence> a = one.evidence();
        List<Evidence> b = other.evidence();
        double most = a.size() == b.size() ? 0 : Double.POSITIVE_INFINITY;
        for (int i = 0; i < Math.min(a.size(), b.size()); i++) {
            most = Math.max(most, difference(a.get(i).reading(), b.get(i).reading()));
        }
        return most;
    }

    private double difference(Reading one, Reading other) {
        if (one instanceof BatteryTest a && other instanceof BatteryTest b) {
            return Math.max(
                    Math.abs(a.restVoltageV() - b.restVoltageV()) / REST_V,
                    Math.max(
                            share(a.crankingCurrentA(), b.crankingCurrentA()) / CRANKING_SHARE,
                            share(a.internalResistanceMilliohm(), b.internalResistanceMilliohm()) / RESISTANCE_SHARE));
        }
        if (one instanceof CrankingTest a && other instanceof CrankingTest b) {
            return Math.abs(a.minimumVoltageV() - b.minimumVoltageV()) / CRANKING_V;
        }
        if (one instanceof ChargingTest a && other instanceof ChargingTest b) {
            return Math.max(
                    size(a.ripplePeakToPeakV(), b.ripplePeakToPeakV()) / RIPPLE_V,
                    Math.max(size(a.idleVoltageV(), b.idleVoltageV()), size(a.loadedVoltageV(), b.loadedVoltageV()))
                            / CHARGING_V);
        }
        return difference((Recording) one, (Recording) other);
    }

    private static double size(Double a, Double b) {
        return a == null || b == null ? 0 : Math.abs(a - b);
    }

    private static double share(Double a, Double b) {
        return a == null || b == null ? 0 : Math.abs(a - b) / Math.max(a, b);
    }

    private double difference(Recording a, Recording b) {
        if (a.kind() == EvidenceKind.DISCHARGE_RECORDING) {
            return share(a.durationS(), b.durationS()) / CAPACITY_SHARE;
        }
        double sensorA = a.has(Channel.MEASURED_A) ? SENSOR_A : 2 * SENSOR_A;
        boolean standing = a.kind() == EvidenceKind.STANDING_RECORDING;
        double most = channel(a, b, Channel.MEASURED_V, null) / driveV;
        most = Math.max(most, channel(a, b, Channel.REPORTED_V, Channel.MEASURED_V) / VEHICLE_V);
        most = Math.max(most, channel(a, b, Channel.MEASURED_A, null) / (standing ? STANDING_A : 3));
        most = Math.max(most, channel(a, b, Channel.REPORTED_A, Channel.MEASURED_A) / sensorA);
        return Math.max(most, channel(a, b, Channel.REPORTED_SOC, null) / CHARGE_PCT);
    }

    /** Largest difference of the means of a window, of a channel less another one. */
    private static double channel(Recording a, Recording b, Channel channel, Channel less) {
        if (!a.has(channel) || !b.has(channel)) {
            return 0;
        }
        double most = 0;
        for (int w = 0; w < WINDOWS; w++) {
            double difference = mean(a, channel, w) - mean(b, channel, w);
            if (less != null && a.has(less) && b.has(less)) {
                difference -= mean(a, less, w) - mean(b, less, w);
            }
            most = Double.isNaN(difference) ? most : Math.max(most, Math.abs(difference));
        }
        return most;
    }

    private static double mean(Recording recording, Channel channel, int window) {
        float[] values = recording.channel(channel);
        double sum = 0;
        int n = 0;
        for (int i = window * values.length / WINDOWS; i < (window + 1) * values.length / WINDOWS; i++) {
            if (!Float.isNaN(values[i])) {
                sum += values[i];
                n++;
            }
        }
        return sum / n;
    }
}
