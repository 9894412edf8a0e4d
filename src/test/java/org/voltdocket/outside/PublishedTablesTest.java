package org.voltdocket.outside;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.voltdocket.diagnosis.Chemistry;
import org.voltdocket.diagnosis.quantity.CrankingReference;
import org.voltdocket.diagnosis.quantity.RestVoltage;
import org.voltdocket.kernel.Interval;

/** The judge's tables against the published ones, which lie in {@code shared/reference} with their origin. */
class PublishedTablesTest {

    private static final List<Chemistry> COLUMNS =
            List.of(Chemistry.FLOODED, Chemistry.GEL, Chemistry.AGM, Chemistry.EFB);

    /** Flooded and gel: age-series/ElectricalAge2, 26.7 °C. AGM and EFB: practice, from memory. */
    @Test
    void restVoltageByCharge() {
        for (String[] row : Reference.rows("rest-voltage.csv")) {
            double charge = Double.parseDouble(row[0]);
            for (int i = 0; i < COLUMNS.size(); i++) {
                double volts = Double.parseDouble(row[i + 1]);
                assertThat(RestVoltage.at(COLUMNS.get(i), charge, 26.7)).isCloseTo(volts, within(0.0005));
                Interval back = RestVoltage.charge(COLUMNS.get(i), volts, 26.7, 0, 0);
                assertThat(back.value()).isCloseTo(charge, within(0.01));
            }
        }
    }

    /** Same data: +1.1 mV/K near 25 °C, about +2.2 mV/K averaged from 26.7 to −1.1 °C. */
    @Test
    void restVoltageByTemperature() {
        double warm = RestVoltage.at(Chemistry.FLOODED, 75, 26.7);
        assertThat((warm - RestVoltage.at(Chemistry.FLOODED, 75, 23.7)) / 3).isCloseTo(0.0011, within(0.0002));
        assertThat((warm - RestVoltage.at(Chemistry.FLOODED, 75, -1.1)) / 27.8).isCloseTo(0.0022, within(0.0001));
    }

    /** Half the rating for 15 s: vehicle workshop manuals of 2007 and 2009. Between the points a straight line is ours. */
    @Test
    void leastVoltageUnderHalfTheRating() {
        List<String[]> rows = Reference.rows("half-rating-load.csv");
        for (String[] row : rows) {
            double least = CrankingReference.leastVoltage(Double.parseDouble(row[0]));
            assertThat(least).isCloseTo(Double.parseDouble(row[1]), within(1e-9));
        }
        assertThat(CrankingReference.leastVoltage(35)).isEqualTo(9.6);
        assertThat(CrankingReference.leastVoltage(13)).isCloseTo(9.45, within(1e-9));
    }
}
