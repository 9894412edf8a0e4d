package org.voltdocket.returned.pallet;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;

import java.time.LocalDate;
import org.junit.jupiter.api.Test;
import org.voltdocket.kernel.BatterySerial;
import org.voltdocket.kernel.FieldError;
import org.voltdocket.kernel.RequestException;

class PalletDeliveryNoteTest {

    private static final LocalDate TODAY = LocalDate.of(2026, 3, 4);

    private static PalletDeliveryNote read(String list) {
        return PalletDeliveryNote.parse(" p-17 ", "Copper Quay", "", list, TODAY);
    }

    @Test
    void takesLinesAndTablesAlike() {
        assertThat(read("ab-1000\n\n AB-1001 \r\nab -1002").serials())
                .extracting(BatterySerial::value)
                .containsExactly("AB-1000", "AB-1001", "AB-1002");
        assertThat(read("\ufeffBattery serial;weight\nAB-1000;17\n\"AB-1001\";18")
                        .serials())
                .extracting(BatterySerial::value)
                .containsExactly("AB-1000", "AB-1001");
        assertThat(read("AB-1000").arrivedOn()).isEqualTo(TODAY);
        assertThat(read("AB-1000").number()).isEqualTo("P-17");
    }

    @Test
    void namesEveryWrongLine() {
        RequestException refused =
                catchThrowableOfType(RequestException.class, () -> read("AB-1000\n??\nAB-1001\nab-1000\n"));
        assertThat(refused.errors())
                .extracting(FieldError::message)
                .satisfiesExactly(
                        first -> assertThat(first).startsWith("line 2:"),
                        second -> assertThat(second).isEqualTo("line 4 repeats line 1: ab-1000"));
    }

    @Test
    void namesEveryWrongMember() {
        RequestException refused = catchThrowableOfType(
                RequestException.class, () -> PalletDeliveryNote.parse("", " ", "2026-03-05", "", TODAY));
        assertThat(refused.errors())
                .extracting(FieldError::field)
                .containsExactly("number", "sender", "arrivedOn", "list");
    }
}
