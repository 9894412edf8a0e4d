package org.voltdocket.warranty;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.math.BigDecimal;
import java.time.Instant;
import java.time.LocalDate;
import java.util.Currency;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.voltdocket.diagnosis.Chemistry;
import org.voltdocket.diagnosis.Facts;
import org.voltdocket.kernel.Money;
import org.voltdocket.kernel.RequestException;

/** Sums worked by hand: 24 months free, through month 36 half, through month 48 a quarter, 60 000 km. */
class WarrantyCalculatorTest {

    private static final WarrantyTermsEntry TERMS = new WarrantyTermsEntry(
            UUID.randomUUID(),
            Optional.empty(),
            Optional.of(Chemistry.AGM),
            UseClass.PRIVATE,
            LocalDate.of(2020, 1, 1),
            24,
            List.of(new ProRata(36, new BigDecimal("50")), new ProRata(48, new BigDecimal("25"))),
            Optional.of(60_000),
            "invented",
            Instant.EPOCH,
            "admin");

    private static Money euro(String amount) {
        return new Money(new BigDecimal(amount), Currency.getInstance("EUR"));
    }

    private static Facts facts(LocalDate sold, LocalDate fitted, Double fittedKm, Double km) {
        return new Facts(
                new Facts.BatteryFacts(Chemistry.AGM, null, null, null, null, sold, fitted, fittedKm),
                new Facts.VehicleFacts(null, null, null, null, km),
                null,
                null);
    }

    @ParameterizedTest
    @CsvSource(
            nullValues = "-",
            value = {
                // sold, claimed, km, asked, standing, percent, due, months over, days over, km over
                "2024-01-31, 2026-01-31, 10000, 129.90, free, 100, 129.90, -, -, -",
                "2024-01-31, 2026-02-01, 10000, 129.90, pro-rata, 50, 64.95, -, -, -",
                "2024-02-29, 2027-02-28, 10000, 129.90, pro-rata, 50, 64.95, -, -, -",
                "2024-02-29, 2027-03-01, 10000, 129.90, pro-rata, 25, 32.48, -, -, -",
                "2024-02-29, 2028-02-29, 10000, 129.90, pro-rata, 25, 32.48, -, -, -",
                "2024-02-29, 2028-03-01, 10000, 129.90, outside, 0, 0.00, 0, 1, -",
                "2021-08-31, 2025-10-04, 10000, 129.90, outside, 0, 0.00, 1, 4, -",
                "2025-05-01, 2025-06-01, 60000, 129.90, free, 100, 129.90, -, -, -",
                "2025-05-01, 2025-06-01, 60001, 129.90, outside, 0, 0.00, -, -, 1",
                "2020-05-01, 2025-06-01, 72500, 129.90, outside, 0, 0.00, 13, 0, 12500",
                "2025-05-01, 2025-06-01, -, 129.90, free, 100, 129.90, -, -, -",
                // 0.03 of half is 0.015, half up 0.02; 0.05 of a quarter is 0.0125, half up 0.01
                "2023-05-01, 2026-04-30, 100, 0.03, pro-rata, 50, 0.02, -, -, -",
                "2022-05-01, 2026-04-30, 100, 0.05, pro-rata, 25, 0.01, -, -, -"
            })
    void theSumIsAsWorkedByHand(
            LocalDate sold,
            LocalDate claimed,
            Double km,
            String asked,
            String standing,
            BigDecimal percent,
            String due,
            Integer monthsOver,
            Integer daysOver,
            Integer kmOver) {
        Facts facts = facts(sold, null, 0.0, km);
        WarrantyCalculation sum = WarrantyCalculator.sum(
                TERMS, facts, WarrantyCalculator.start(facts).orElseThrow(), claimed, euro(asked));
        assertThat(sum.standing()).isEqualTo(standing);
        assertThat(sum.percent()).isEqualByComparingTo(percent);
        assertThat(sum.due()).isEqualTo(due);
        assertThat(sum.outside() == null ? null : sum.outside().months()).isEqualTo(monthsOver);
        assertThat(sum.outside() == null ? null : sum.outside().days()).isEqualTo(daysOver);
        assertThat(sum.outside() == null ? null : sum.outside().km()).isEqualTo(kmOver);
    }

    @Test
    void theTermRunsFromTheSaleAndFromTheFittingOnlyWhereTheSaleIsNotKnown() {
        LocalDate sold = LocalDate.of(2025, 1, 5);
        LocalDate fitted = LocalDate.of(2025, 2, 7);
        assertThat(WarrantyCalculator.start(facts(sold, fitted, null, null))).contains(sold);
        assertThat(WarrantyCalculator.start(facts(null, fitted, null, null))).contains(fitted);
        assertThat(WarrantyCalculator.start(facts(null, null, null, null))).isEmpty();
    }

    @Test
    void aCurrencyWithoutDecimalsIsRoundedToItsUnit() {
        Money yen = new Money(new BigDecimal("12345"), Currency.getInstance("JPY"));
        assertThat(WarrantyCalculator.share(yen, new BigDecimal("50")).text()).isEqualTo("6173");
    }

    @Test
    void aFormIsReadRowByRow() {
        WarrantyTermsForm read = WarrantyTermsForm.read(form("36: 50\n\n 48 25,5 %\r\n60;10", "24"));
        assertThat(read.proRata())
                .containsExactly(
                        new ProRata(36, new BigDecimal("50")),
                        new ProRata(48, new BigDecimal("25.5")),
                        new ProRata(60, new BigDecimal("10")));
        assertThat(read.batteryType()).isEmpty();
        assertThat(read.chemistry()).contains(Chemistry.GEL);
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "24: 50 | Line 1",
                "36: 50;36: 40 | Line 2",
                "36: 50;48: 50 | Line 2",
                "36: 0 | Line 1",
                "half | Line 1",
                "36: 100 | Line 1",
                "241: 5 | Line 1"
            })
    void aTableThatCannotBeRightIsRefusedByLine(String table, String where) {
        assertThatThrownBy(() -> WarrantyTermsForm.read(form(table.replace(";", "\n"), "24")))
                .isInstanceOf(RequestException.class)
                .hasMessageContaining(where);
    }

    private static WarrantyTermsForm.Form form(String table, String free) {
        return new WarrantyTermsForm.Form("", "gel", "private", "2026-01-01", free, table, "", "because");
    }
}
