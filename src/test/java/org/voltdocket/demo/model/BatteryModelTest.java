package org.voltdocket.demo.model;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.voltdocket.diagnosis.Chemistry;
import org.voltdocket.outside.Reference;

class BatteryModelTest {

    private static final double STEP_S = 0.1;

    /** rest-voltage.csv: flooded and gel as published with the ElectricalAge2 data, AGM and EFB from memory. */
    @ParameterizedTest
    @EnumSource(Chemistry.class)
    void restsAtThePublishedVoltages(Chemistry chemistry) {
        int column = switch (chemistry) {
            case FLOODED -> 1;
            case GEL -> 2;
            case AGM -> 3;
            case EFB -> 4;
        };
        for (String[] row : Reference.rows("rest-voltage.csv")) {
            ModelSettings setup = new ModelSettings();
            setup.chemistry = chemistry;
            setup.temperatureC = 25;
            setup.charge = Double.parseDouble(row[0]) / 100;
            double published = Double.parseDouble(row[column]);
            assertThat(new BatteryModel(setup).openCircuit()).isCloseTo(published, within(0.001));
        }
    }

    /** rest-after-charge.csv: a 100 Ah battery after a constant 14.95 V. The shape counts, so 0.15 V is allowed. */
    @Test
    void fadesAfterAChargeAsPublished() {
        ModelSettings setup = new ModelSettings();
        setup.chemistry = Chemistry.AGM;
        setup.capacityAh = 100;
        setup.charge = 0.9;
        setup.temperatureC = 25;
        BatteryModel battery = new BatteryModel(setup);
        battery.prepare(STEP_S);
        for (double t = 0; t < 4 * 3600; t += STEP_S) {
            double current = (14.95 - battery.emf()) / battery.ohm(true);
            battery.advance(Math.min(20, current), STEP_S);
        }
        double minutes = 0;
        List<String[]> rows = Reference.rows("rest-after-charge.csv");
        for (String[] row : rows) {
            for (; minutes < Double.parseDouble(row[0]); minutes += STEP_S / 60) {
                battery.advance(0, STEP_S);
            }
            assertThat(battery.terminal(0))
                    .as("after %s min", row[0])
                    .isCloseTo(Double.parseDouble(row[1]), within(0.15));
        }
    }

    /** Charge in, charge out: the drive's books balance with what the battery then holds. */
    @Test
    void aDischargeCountsEveryAmpereHour() {
        ModelSettings setup = new ModelSettings();
        setup.capacityAh = 60;
        setup.charge = 0.9;
        BatteryModel battery = new BatteryModel(setup);
        battery.prepare(1);
        for (int i = 0; i < 3600; i++) {
            battery.advance(-6, 1);
        }
        assertThat(battery.charge()).isCloseTo(0.8, within(1e-9));
    }

    /** Cold makes it stiff: about 40 % of the power is left at −18 °C (a published practice table: 27/0/−18 °C, 100/65/40 %). */
    @Test
    void coldCostsPowerAsPublished() {
        assertThat(power(0) / power(27)).isCloseTo(0.65, within(0.1));
        assertThat(power(-18) / power(27)).isCloseTo(0.40, within(0.2));
    }

    private static double power(double temperatureC) {
        ModelSettings setup = new ModelSettings();
        setup.charge = 1;
        setup.temperatureC = temperatureC;
        return 1 / new BatteryModel(setup).ohmic();
    }
}
