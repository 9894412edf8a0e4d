package org.voltdocket.claim.decision;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Arrays;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.voltdocket.claim.ClaimAction;
import org.voltdocket.diagnosis.Leaning;

class DecisionBasisTest {

    @ParameterizedTest
    @CsvSource({
        "battery-side,   false, true",
        "vehicle-side,   true,  false",
        "usage-side,     true,  false",
        "no-fault-seen,  true,  false",
        "open,           true,  true",
        "contradictory,  true,  true"
    })
    void approvalNeedsTheBatteryAndRefusalNeedsSomethingElse(String leaning, boolean approve, boolean decline) {
        assertThat(DecisionBasis.against(Leaning.of(leaning), ClaimAction.APPROVE))
                .isEqualTo(approve);
        assertThat(DecisionBasis.against(Leaning.of(leaning), ClaimAction.DECLINE))
                .isEqualTo(decline);
    }

    @Test
    void goodwillStandsAgainstNoLeaning() {
        assertThat(Arrays.stream(Leaning.values()).filter(l -> DecisionBasis.against(l, ClaimAction.GOODWILL)))
                .isEmpty();
    }
}
