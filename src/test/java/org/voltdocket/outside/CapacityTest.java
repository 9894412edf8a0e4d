package org.voltdocket.outside;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.voltdocket.diagnosis.Channel;
import org.voltdocket.diagnosis.Recording;
import org.voltdocket.diagnosis.quantity.Capacity;

/**
 * Capacity of one 12 V battery at seven currents, in the order of the tests; data of valentinsulzer/faster-lead-acid
 * (BSD-3-Clause). The reference is the charge of the whole load. The judge stops at 10.50 V, so it may lack the last
 * samples (at most 60 s), and it counts the few milliamperes of waiting before.
 */
class CapacityTest {

    @Test
    void theChargeOfEachOpenDischargeIsFound() {
        for (Capacity.Run[] pair : runs()) {
            double lastSample = pair[1].amperes() / 60;
            assertThat(pair[0].ampereHours()).isCloseTo(pair[1].ampereHours(), within(lastSample + 0.03));
        }
    }

    /** There capacity falls with the current falling, for the battery aged from test to test: no Peukert law in that. */
    @Test
    void peukertsLawIsRefusedWhereCapacityRisesWithCurrent() {
        List<Capacity.Run> found = runs().stream().map(pair -> pair[0]).toList();
        assertThat(Capacity.peukertExponent(found)).isEmpty();
    }

    /** Worked: 100 Ah at 20 h, 10 A, exponent 1.2 gives 8.7055 h; and back from runs that obey the law. */
    @Test
    void peukertsLawAgreesWithAWorkedExample() {
        assertThat(Capacity.peukertHours(20, 100, 10, 1.2)).isCloseTo(8.7055, within(0.00005));
        List<Capacity.Run> lawful = new ArrayList<>();
        for (double amperes : new double[] {5, 10, 25}) {
            lawful.add(new Capacity.Run(amperes, amperes * Capacity.peukertHours(20, 100, amperes, 1.2)));
        }
        assertThat(Capacity.peukertExponent(lawful).orElseThrow()).isCloseTo(1.2, within(1e-9));
    }

    /** C25 = Cθ·[1 − 0.01·(θ − 25)] (IEC 60095-1, EN 50342-1; from memory): 54.0 Ah at 28 °C are 52.38 Ah. */
    @Test
    void capacityIsBroughtTo25Degrees() {
        assertThat(Capacity.at25(54.0, 28)).isCloseTo(52.38, within(1e-9));
    }

    /** Found and published, by file. */
    private static List<Capacity.Run[]> runs() {
        List<Capacity.Run[]> runs = new ArrayList<>();
        for (String[] row : Reference.rows("lead-acid-discharge-charges.csv")) {
            Recording recording = LeadAcidDischarge.read(row[0]);
            double[] out = doubles(recording.channel(Channel.MEASURED_A));
            for (int i = 0; i < out.length; i++) {
                out[i] = -out[i];
            }
            double found = Capacity.ampereHours(recording.timeS(), doubles(recording.channel(Channel.MEASURED_V)), out);
            double amperes = Double.parseDouble(row[1]);
            runs.add(new Capacity.Run[] {
                new Capacity.Run(amperes, found), new Capacity.Run(amperes, Double.parseDouble(row[2]))
            });
        }
        return runs;
    }

    private static double[] doubles(float[] values) {
        double[] out = new double[values.length];
        for (int i = 0; i < values.length; i++) {
            out[i] = values[i];
        }
        return out;
    }
}
