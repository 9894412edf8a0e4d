package org.voltdocket.diagnosis;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.voltdocket.diagnosis.Assessment.RankedCause;
import org.voltdocket.diagnosis.Assessment.RegimeSpan;
import org.voltdocket.diagnosis.JudgePropertiesTest.Tried;
import org.voltdocket.diagnosis.assess.Diagnosis;

/** The form that every assessment keeps, whatever it says. */
class AssessmentShapeTest {

    static Stream<Tried> cases() {
        return JudgePropertiesTest.cases();
    }

    @ParameterizedTest
    @MethodSource("cases")
    void allCausesAreRankedAndTheirProbabilitiesAddToOne(Tried tried) {
        List<RankedCause> causes = tried.first().causes();
        assertThat(causes).extracting(RankedCause::cause).containsExactlyInAnyOrder(Cause.values());
        assertThat(causes.stream().mapToDouble(RankedCause::probability).sum()).isCloseTo(1, within(1e-9));
        for (int i = 1; i < causes.size(); i++) {
            assertThat(causes.get(i).probability())
                    .isLessThanOrEqualTo(causes.get(i - 1).probability());
        }
    }

    @ParameterizedTest
    @MethodSource("cases")
    void everyEstimateLiesInItsInterval(Tried tried) {
        tried.first()
                .estimates()
                .forEach((name, e) -> assertThat(e.value()).as(name).isBetween(e.low(), e.high()));
    }

    @ParameterizedTest
    @MethodSource("cases")
    void findingsAreUniqueAndWeightsAndEvidenceNameWhatThereIs(Tried tried) {
        Assessment said = tried.first();
        List<String> findings =
                said.findings().stream().map(Assessment.Finding::id).toList();
        List<String> evidence =
                tried.input().evidence().stream().map(Evidence::id).toList();
        assertThat(findings).doesNotHaveDuplicates().isNotEmpty();
        said.findings().stream()
                .filter(f -> f.evidence() != null)
                .forEach(f -> assertThat(evidence).contains(f.evidence()));
        said.causes().stream()
                .flatMap(c -> c.weights().stream())
                .forEach(w -> assertThat(findings).contains(w.finding()));
    }

    @ParameterizedTest
    @MethodSource("cases")
    void regimesCoverEachRecordingWithoutGap(Tried tried) {
        Assessment said = tried.first();
        for (Evidence item : tried.input().evidence()) {
            if (item.reading() instanceof Recording recording) {
                covered(recording, said.regimes().get(item.id()));
            }
        }
    }

    static void covered(Recording recording, List<RegimeSpan> spans) {
        assertThat(spans).isNotEmpty();
        assertThat(spans.get(0).from()).isEqualTo(recording.timeS()[0]);
        assertThat(spans.get(spans.size() - 1).to()).isEqualTo(recording.timeS()[recording.rows() - 1]);
        for (int i = 0; i < spans.size(); i++) {
            assertThat(spans.get(i).to()).isGreaterThan(spans.get(i).from());
            assertThat(i == 0 ? spans.get(0).from() : spans.get(i - 1).to())
                    .isEqualTo(spans.get(i).from());
        }
    }

    @ParameterizedTest
    @MethodSource("cases")
    void eachRecordingIsCalledWhatItIs(Tried tried) {
        for (Evidence item : tried.input().evidence()) {
            if (item.reading() instanceof Recording recording) {
                assertThat(Diagnosis.kindOf(recording)).as(item.id()).isEqualTo(recording.kind());
            }
        }
    }
}
