package org.voltdocket.diagnosis.quantity;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.voltdocket.diagnosis.ChargingControl;
import org.voltdocket.diagnosis.Chemistry;
import org.voltdocket.diagnosis.Facts;
import org.voltdocket.diagnosis.History;

class FactQuantitiesTest {

    private static final LocalDate DAY = LocalDate.parse("2026-03-04");

    private static Map<String, Double> of(Facts facts, History history, LocalDate day) {
        return FactQuantities.of(facts, history, day).stream()
                .collect(Collectors.toMap(Measurement::quantity, m -> m.value().value()));
    }

    private static Facts battery(LocalDate produced, LocalDate sold, LocalDate fitted, Double fittedKm, Double nowKm) {
        return new Facts(
                new Facts.BatteryFacts(null, null, null, null, produced, sold, fitted, fittedKm),
                new Facts.VehicleFacts(null, null, null, null, nowKm),
                null,
                null);
    }

    private static Facts types(Chemistry fitted, Chemistry required, Boolean stopStart) {
        return new Facts(
                new Facts.BatteryFacts(fitted, 60.0, null, null, null, null, null, null),
                new Facts.VehicleFacts(ChargingControl.MANAGED, stopStart, required, 80.0, null),
                null,
                null);
    }

    @Test
    void whatIsNotKnownIsNotMeasured() {
        assertThat(of(Facts.UNKNOWN, History.NONE, null)).isEmpty();
        assertThat(of(Facts.UNKNOWN, History.NONE, DAY)).isEmpty();
    }

    /** A stop-start vehicle needs EFB at least (common practice). */
    @ParameterizedTest
    @CsvSource(
            nullValues = "-",
            value = {
                "FLOODED, FLOODED, -, 0", "FLOODED, EFB, -, -1", "FLOODED, AGM, -, -2", "EFB, AGM, true, -1",
                        "AGM, EFB, -, 1",
                "GEL, GEL, -, 0", "GEL, AGM, -, -2", "FLOODED, -, true, -1", "EFB, -, true, 0", "AGM, -, true, 1"
            })
    void stepsOfConstruction(Chemistry fitted, Chemistry required, Boolean stopStart, double step) {
        assertThat(of(types(fitted, required, stopStart), History.NONE, null)).containsEntry("type-step", step);
    }

    @Test
    void withoutARequirementNoStep() {
        assertThat(of(types(Chemistry.FLOODED, null, false), History.NONE, null))
                .doesNotContainKey("type-step");
        assertThat(of(types(null, Chemistry.AGM, true), History.NONE, null)).doesNotContainKey("type-step");
    }

    @Test
    void sizeAndControl() {
        assertThat(of(types(null, null, null), History.NONE, null))
                .containsEntry("size-share", 75.0)
                .containsEntry("managed", 1.0);
    }

    /** 8 500 km in 150 days; 365.25 days to the year. */
    @Test
    void distanceAndAge() {
        LocalDate fitted = DAY.minusDays(150);
        Map<String, Double> found =
                of(battery(DAY.minusDays(1461), null, fitted, 81_000.0, 89_500.0), History.NONE, DAY);
        assertThat(found.get("daily-distance")).isCloseTo(56.67, within(0.005));
        assertThat(found.get("battery-age")).isCloseTo(4, within(1e-9));
    }

    @Test
    void theAgeCountsFromTheEarliestThatIsTold() {
        assertThat(of(battery(null, DAY.minusDays(731), DAY.minusDays(10), null, null), History.NONE, DAY)
                        .get("battery-age"))
                .isCloseTo(2, within(0.002));
    }

    @Test
    void datesThatCannotBeTellNothing() {
        assertThat(of(battery(DAY.plusDays(1), null, null, null, null), History.NONE, DAY))
                .isEmpty();
        assertThat(of(battery(null, null, DAY.minusDays(13), 1.0, 9.0), History.NONE, DAY))
                .as("too short a time")
                .doesNotContainKey("daily-distance");
        assertThat(of(battery(null, null, DAY.minusDays(30), 900.0, 800.0), History.NONE, DAY))
                .as("an odometer does not run backwards")
                .doesNotContainKey("daily-distance");
    }

    @Test
    void earlierBatteriesAreTheGreaterOfToldAndKnown() {
        History two = new History(List.of("QX-1000", "QX-1001"), List.of());
        Facts told = new Facts(null, null, null, 1);
        assertThat(of(told, two, null)).containsEntry("batteries-replaced", 2.0);
        assertThat(of(told, History.NONE, null)).containsEntry("batteries-replaced", 1.0);
        assertThat(of(new Facts(null, null, null, 0), History.NONE, null)).containsEntry("batteries-replaced", 0.0);
    }
}
