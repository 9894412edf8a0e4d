package org.voltdocket.diagnosis.rulebook;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.voltdocket.diagnosis.Channel;
import org.voltdocket.diagnosis.Evidence;
import org.voltdocket.diagnosis.EvidenceKind;
import org.voltdocket.diagnosis.Facts;
import org.voltdocket.diagnosis.Made;
import org.voltdocket.diagnosis.quantity.Measurement;
import org.voltdocket.kernel.Interval;

class RuleEvaluatorTest {

    private static final Facts NOTHING_KNOWN = new Facts(null, null, null, null);

    private static Measurement ripple(Evidence evidence, double volts) {
        return Measurement.of("ripple", evidence, Interval.exact(volts));
    }

    private static Evidence recording(String name) {
        return Made.evidence(
                name,
                Made.at(1, 10)
                        .with(Channel.MEASURED_V, t -> 14)
                        .as(EvidenceKind.DRIVE_RECORDING)
                        .recording());
    }

    /** Whatever order the measurements come in: rows as the book has them, then by digest of the evidence. */
    @Test
    void everyMeasurementMeetsItsOwnRowsInOneOrder() {
        Evidence one = recording("one");
        Evidence other = recording("other");
        List<Measurement> some = List.of(ripple(one, 0.1), ripple(other, 0.7));
        List<Measurement> turned = List.of(ripple(other, 0.7), ripple(one, 0.1));
        Rulebook book = Editions.of("2026.1");
        List<String> said = ids(RuleEvaluator.evaluate(book, NOTHING_KNOWN, some));
        assertThat(said).hasSize(2).allMatch(id -> id.startsWith("ripple/")).isSorted();
        assertThat(ids(RuleEvaluator.evaluate(book, NOTHING_KNOWN, turned))).isEqualTo(said);
    }

    private static List<String> ids(List<EvaluatedRule> judged) {
        return judged.stream().map(one -> one.finding().id()).toList();
    }
}
