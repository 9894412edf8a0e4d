package org.voltdocket.recovery;

import static org.assertj.core.api.Assertions.assertThat;

import java.math.BigDecimal;
import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.time.LocalDate;
import java.util.Currency;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.junit.jupiter.api.Test;
import org.voltdocket.kernel.BatterySerial;
import org.voltdocket.kernel.CaseNumber;
import org.voltdocket.kernel.Money;
import org.voltdocket.kernel.Sha256;

/** The list for a supplier as CSV, which a supplier opens in a spreadsheet. */
class RecoveryListPrinterTest {

    @Test
    void noCellIsAFormulaToASpreadsheet() {
        Money amount = new Money(new BigDecimal("129.90"), Currency.getInstance("EUR"));
        SupplierRecovery.Line line = new SupplierRecovery.Line(
                1,
                UUID.randomUUID(),
                CaseNumber.of(17),
                new BatterySerial("-2-3"),
                "=SUM(A1)",
                "@B1",
                LocalDate.of(2026, 3, 4),
                amount,
                List.of());
        Sha256 none = Sha256.of(new byte[0]);
        SupplierRecovery list = new SupplierRecovery(
                UUID.randomUUID(),
                "R-00001",
                "+49",
                "Anybody",
                amount,
                Instant.EPOCH,
                "somebody",
                none,
                none,
                Optional.empty(),
                List.of(line));
        String row = new String(new RecoveryListPrinter(null).csv(list), StandardCharsets.UTF_8)
                .lines()
                .skip(1)
                .findFirst()
                .orElseThrow();
        assertThat(row)
                .isEqualTo("R-00001,1,'+49," + CaseNumber.of(17) + ",'-2-3,'=SUM(A1),'@B1,2026-03-04,129.90,EUR");
    }
}
