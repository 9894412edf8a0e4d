package org.voltdocket.dossier.bag;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class BagFileNamesTest {

    @Test
    void keepsWhatIsPortable() {
        assertThat(BagFileNames.of(1, "drive_2026-02-28.csv.gz")).isEqualTo("001-drive_2026-02-28.csv.gz");
        assertThat(BagFileNames.of(12, "Prüfung im März.pdf")).isEqualTo("012-Prufung_im_Marz.pdf");
        assertThat(BagFileNames.of(1000, "a.csv")).isEqualTo("1000-a.csv");
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "",
                ".",
                "..",
                "../../etc/passwd",
                "C:\\x\\y.csv",
                "a/b.csv",
                "con.csv",
                "測定.csv",
                "a\nb%0D.csv",
                "~",
                " name . ",
                "*?<>|\".csv"
            })
    void leavesTheDirectoryNeverAndIsNeverEmpty(String sent) {
        assertThat(BagFileNames.of(7, sent))
                .matches("007-[A-Za-z0-9._-]*[A-Za-z0-9_-]")
                .doesNotContain("..");
    }

    @Test
    void shortensAndKeepsTheEnding() {
        String name = BagFileNames.of(3, "n".repeat(300) + ".json");
        assertThat(name).hasSize(84).startsWith("003-n").endsWith(".json");
    }
}
