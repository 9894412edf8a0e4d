package org.voltdocket.diagnosis.quantity.drive;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.voltdocket.diagnosis.Channel;
import org.voltdocket.diagnosis.Made;
import org.voltdocket.diagnosis.quantity.DriveSignals;
import org.voltdocket.kernel.Interval;

/** Which voltage before a drive counts as the battery's rest. */
class RestBeforeDriveTest {

    private static Optional<Interval> rest(Made made) {
        return RestBeforeDrive.before(new DriveSignals(made.recording(), 20));
    }

    /** Loads only pull it down: the highest five seconds count, and not the start; all values are multiples of 0.1 V. */
    @Test
    void theHighestFiveSecondsBeforeTheStartCount() {
        Made made = Made.at(10, 300)
                .with(Channel.MEASURED_V, t -> t < 30 ? 12.4 : t < 50 ? 12.6 : t < 60 ? 12.2 : t < 61 ? 9.7 : 14.2)
                .with(Channel.ENGINE_RPM, 10, t -> t < 61 ? 0 : 900);
        Interval found = rest(made).orElseThrow();
        assertThat(found.value()).isCloseTo(12.6, within(0.001));
        assertThat(found.standardError()).isCloseTo(Math.hypot(0.03, 0.3 * 0.1), within(1e-9));
    }

    /** Where no start was seen the engine speed tells, which comes late: its last three seconds are left out. */
    @Test
    void withoutASeenStartTheTimeBeforeTheEngineRunsCounts() {
        Made made = Made.at(10, 300)
                .with(Channel.MEASURED_V, t -> t < 38 ? 12.5 : 14.2)
                .with(Channel.ENGINE_RPM, 10, t -> t < 40 ? 0 : 900);
        assertThat(rest(made).orElseThrow().value()).isCloseTo(12.5, within(0.001));
    }

    @Test
    void anEngineThatAlwaysRanOrRanAtOnceLeavesNoRest() {
        Made always = Made.at(10, 300).with(Channel.MEASURED_V, t -> 14.2).with(Channel.ENGINE_RPM, 10, t -> 900);
        assertThat(rest(always)).isEmpty();
        Made atOnce = Made.at(10, 300)
                .with(Channel.MEASURED_V, t -> t < 4 ? 12.5 : t < 5 ? 9.7 : 14.2)
                .with(Channel.ENGINE_RPM, 10, t -> t < 5 ? 0 : 900);
        assertThat(rest(atOnce)).isEmpty();
        Made never = Made.at(10, 300).with(Channel.MEASURED_V, t -> 12.5).with(Channel.ENGINE_RPM, 10, t -> 0);
        assertThat(rest(never)).as("nothing that the rest would come before").isEmpty();
    }
}
