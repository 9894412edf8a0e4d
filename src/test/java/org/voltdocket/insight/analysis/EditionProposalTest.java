package org.voltdocket.insight.analysis;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.math.BigDecimal;
import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.voltdocket.diagnosis.Cause;
import org.voltdocket.diagnosis.rulebook.Rulebook;
import org.voltdocket.kernel.Interval;

class EditionProposalTest {

    /** A proposed edition is a rule book in the making: same rules, other odds, which add to 1. */
    @Test
    void isTheEditionWithOtherOdds() throws IOException {
        String text;
        try (InputStream in = getClass().getResourceAsStream("/shared/rulebook/2026.1.yaml")) {
            text = new String(in.readAllBytes(), UTF_8);
        }
        Rulebook before = Rulebook.read(new ByteArrayInputStream(text.getBytes(UTF_8)));
        Map<Cause, BigDecimal> odds = EditionProposal.spread(
                before.startingOdds(), List.of(Interval.exact(0.03), Interval.exact(0.2), Interval.exact(0.77)));
        assertThat(odds.values().stream().reduce(BigDecimal.ZERO, BigDecimal::add))
                .isEqualByComparingTo("1");
        String written = EditionProposal.write(text, "2026.1-learned", LocalDate.of(2026, 11, 25), "Learned.", odds);
        Rulebook after = Rulebook.read(new ByteArrayInputStream(written.getBytes(UTF_8)));
        assertThat(after.edition()).isEqualTo("2026.1-learned");
        assertThat(after.released()).isFalse();
        assertThat(rules(written)).isEqualTo(rules(text));
        assertThat(after.startingOdds().get(Cause.BATTERY_DEFECT)).isEqualTo(0.03);
        assertThat(after.startingOdds().get(Cause.BATTERY_WORN)).isEqualTo(0.2);
        assertThat(after.startingOdds().get(Cause.DUTY) / after.startingOdds().get(Cause.WIRING))
                .as("proportions among the others stay")
                .isCloseTo(
                        before.startingOdds().get(Cause.DUTY)
                                / before.startingOdds().get(Cause.WIRING),
                        within(0.002));
    }

    private static String rules(String text) {
        return text.substring(text.indexOf("rules:")).strip();
    }
}
