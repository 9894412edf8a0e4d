package org.voltdocket.outside;

import java.time.Duration;
import java.time.LocalDateTime;
import java.time.format.DateTimeFormatter;
import java.util.EnumMap;
import java.util.Map;
import java.util.TreeMap;
import org.voltdocket.diagnosis.Channel;
import org.voltdocket.diagnosis.EvidenceKind;
import org.voltdocket.diagnosis.Recording;

/**
 * Reads the discharges of valentinsulzer/faster-lead-acid (BSD-3-Clause) as recordings. There a discharge current is
 * positive; here it is negative, as everywhere in this project. Rows without a current are the temperature's own and are
 * left out; a few rows of one moment stand in reversed order and are sorted.
 */
public final class LeadAcidDischarge {

    private static final DateTimeFormatter FORM = DateTimeFormatter.ofPattern("yyyy-MM-dd HH:mm:ss.SSS");

    private LeadAcidDischarge() {}

    /** One file of {@code shared/reference/lead-acid-discharge}. */
    public static Recording read(String file) {
        TreeMap<LocalDateTime, double[]> sorted = new TreeMap<>();
        for (String[] cells : Reference.rows("lead-acid-discharge/" + file)) {
            if (!cells[1].isEmpty() && !cells[2].isEmpty()) {
                double[] pair = {Double.parseDouble(cells[1]), Double.parseDouble(cells[2])};
                sorted.put(LocalDateTime.parse(cells[0], FORM), pair);
            }
        }
        double[] time = new double[sorted.size()];
        float[] volts = new float[time.length];
        float[] amperes = new float[time.length];
        int row = 0;
        for (Map.Entry<LocalDateTime, double[]> entry : sorted.entrySet()) {
            time[row] = Duration.between(sorted.firstKey(), entry.getKey()).toMillis() / 1000.0;
            volts[row] = (float) entry.getValue()[0];
            amperes[row++] = (float) -entry.getValue()[1];
        }
        Map<Channel, float[]> channels = new EnumMap<>(Channel.class);
        channels.put(Channel.MEASURED_V, volts);
        channels.put(Channel.MEASURED_A, amperes);
        return new Recording(EvidenceKind.DISCHARGE_RECORDING, null, time, channels, java.util.List.of());
    }
}
