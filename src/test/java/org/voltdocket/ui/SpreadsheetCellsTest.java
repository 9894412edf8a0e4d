package org.voltdocket.ui;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class SpreadsheetCellsTest {

    @ParameterizedTest
    @ValueSource(strings = {"=1+1", "+1", "-1", "@sum", "\t=1", "\r=1", "\n=1"})
    void whatWouldBeAFormulaIsMarked(String text) {
        assertThat(SpreadsheetCells.harmless(text)).isEqualTo("'" + text);
    }

    @Test
    void allElseStaysAsItIs() {
        assertThat(SpreadsheetCells.harmless("QX-1=2")).isEqualTo("QX-1=2");
        assertThat(SpreadsheetCells.harmless("")).isEmpty();
        assertThat(SpreadsheetCells.harmless(null)).isNull();
    }
}
