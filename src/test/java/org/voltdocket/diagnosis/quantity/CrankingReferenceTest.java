package org.voltdocket.diagnosis.quantity;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.voltdocket.diagnosis.CrankingStandard.DIN;
import static org.voltdocket.diagnosis.CrankingStandard.EN;
import static org.voltdocket.diagnosis.CrankingStandard.IEC;
import static org.voltdocket.diagnosis.CrankingStandard.JIS;
import static org.voltdocket.diagnosis.CrankingStandard.SAE;

import org.junit.jupiter.api.Test;
import org.voltdocket.diagnosis.CrankingStandard;
import org.voltdocket.kernel.Interval;

/** Conversions of the trade: EN = 0.92 SAE; DIN = 0.56 to 0.60 EN, of which the middle (from memory). */
class CrankingReferenceTest {

    private static Interval share(double measured, CrankingStandard by, double rated, CrankingStandard ratedBy) {
        return CrankingReference.shareOfRating(measured, by, rated, ratedBy).orElseThrow();
    }

    @Test
    void withinOneStandardItIsAPlainShare() {
        for (CrankingStandard one : CrankingStandard.values()) {
            assertThat(share(350, one, 700, one).value()).isEqualTo(50);
        }
    }

    @Test
    void betweenStandardsTheFactorsOfTheTradeHold() {
        assertThat(share(700, SAE, 644, EN).value()).isCloseTo(100, within(1e-9));
        assertThat(share(644, EN, 700, SAE).value()).isCloseTo(100, within(1e-9));
        assertThat(share(406, DIN, 700, EN).value()).isCloseTo(100, within(1e-9));
        assertThat(share(580 * 0.92, DIN, 1000, SAE).value()).isCloseTo(100, within(1e-9));
    }

    @Test
    void aConvertedShareIsLessSure() {
        Interval plain = share(700, EN, 700, EN);
        Interval converted = share(700, SAE, 644, EN);
        assertThat(converted.high() - converted.low()).isGreaterThan(1.5 * (plain.high() - plain.low()));
        Interval din = share(700 * 0.56, DIN, 700, EN);
        assertThat(din.high()).isGreaterThan(100);
    }

    @Test
    void noFactorNoShare() {
        assertThat(CrankingReference.shareOfRating(500, IEC, 500, EN)).isEmpty();
        assertThat(CrankingReference.shareOfRating(500, EN, 500, JIS)).isEmpty();
    }
}
