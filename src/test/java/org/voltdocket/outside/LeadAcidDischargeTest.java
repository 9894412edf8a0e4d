package org.voltdocket.outside;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.voltdocket.diagnosis.Channel;
import org.voltdocket.diagnosis.Recording;

/**
 * Discharges of one 12 V battery at seven currents, valentinsulzer/faster-lead-acid (BSD-3-Clause), against the charges
 * in {@code lead-acid-discharge-charges.csv}, which were calculated apart from this project's code.
 */
class LeadAcidDischargeTest {

    @Test
    void timeWeightedChargeAgreesToTheMilliampereHour() {
        for (String[] row : Reference.rows("lead-acid-discharge-charges.csv")) {
            double[] found = chargeAndTime(LeadAcidDischarge.read(row[0]));
            double mean = found[0] / found[1];
            assertThat(found[0]).as(row[0]).isCloseTo(Double.parseDouble(row[2]), within(0.001));
            assertThat(mean).as(row[0]).isCloseTo(Double.parseDouble(row[1]), within(0.0001));
        }
    }

    /** Ah and h over the rows with more than 0.2 A. */
    private static double[] chargeAndTime(Recording recording) {
        float[] amperes = recording.channel(Channel.MEASURED_A);
        double charge = 0;
        double hours = 0;
        for (int i = 1; i < recording.rows(); i++) {
            if (amperes[i] < -0.2 && amperes[i - 1] < -0.2) {
                double h = (recording.timeS()[i] - recording.timeS()[i - 1]) / 3600;
                charge -= (amperes[i] + amperes[i - 1]) / 2 * h;
                hours += h;
            }
        }
        return new double[] {charge, hours};
    }
}
