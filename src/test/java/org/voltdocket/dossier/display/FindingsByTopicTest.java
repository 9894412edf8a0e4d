package org.voltdocket.dossier.display;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.voltdocket.diagnosis.Assessment.Finding;
import org.voltdocket.diagnosis.Result;
import org.voltdocket.diagnosis.quantity.Quantities;
import org.voltdocket.dossier.display.FindingsByTopic.TopicFindings;

class FindingsByTopicTest {

    private static Finding finding(String quantity, Result result) {
        return new Finding(
                quantity, quantity, null, quantity, 1.0, null, null, "V", 2.0, null, "at-most", result, "ours", "said");
    }

    /** A new quantity needs its place, else a page calls it a fact of the case. */
    @Test
    void everyQuantityBelongsToATopic() {
        assertThat(Quantities.all())
                .allSatisfy(
                        quantity -> assertThat(FindingTopic.names(quantity.id().replaceAll("/\\d+$", "")))
                                .as(quantity.id())
                                .isTrue());
    }

    @Test
    void whatSpeaksComesFirstAndTheRestIsFoldedByTopic() {
        FindingsByTopic found = AssessmentDisplay.findings(
                List.of(
                        finding("battery-age", Result.INSIDE),
                        finding("ripple", Result.INSIDE),
                        finding("sensor-gain", Result.UNCERTAIN),
                        finding("sensor-offset-by-fit", Result.INSIDE),
                        finding("load-drop", Result.OUTSIDE),
                        finding("over-voltage-share", Result.INSIDE)),
                List.of());
        assertThat(found.notable())
                .extracting(line -> line.finding().quantity())
                .containsExactly("load-drop", "sensor-gain");
        assertThat(found.inside()).extracting(TopicFindings::topic).containsExactly("charging", "sensor", "case");
        assertThat(found.inside().get(0).lines())
                .extracting(line -> line.finding().quantity())
                .containsExactly("ripple", "over-voltage-share");
        assertThat(found.isEmpty()).isFalse();
        assertThat(AssessmentDisplay.findings(List.of(), List.of()).isEmpty()).isTrue();
    }
}
