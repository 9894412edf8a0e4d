package org.voltdocket.assessment.web;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.voltdocket.assessment.web.EvaluationReport.Count;
import org.voltdocket.assessment.web.EvaluationReport.Row;
import org.voltdocket.diagnosis.rulebook.Rulebook;

class EvaluationReportTest {

    @Test
    void linesBecomeATableForEachSectionAndSetOfChannels() {
        EvaluationReport report = EvaluationReport.of(List.of(
                "# Measured on a day.",
                "Summary;first cause right;one;all;9;10",
                "Summary;first cause right;two;all;8;10",
                "Summary;battery judged;two;all;7;10",
                "Summary;battery judged;one;all;0;0",
                "Summary;first cause right;one;voltage;5;10"));
        assertThat(report.remarks()).containsExactly("Measured on a day.");
        assertThat(report.sections()).hasSize(2);
        assertThat(report.sections().get(0).worlds()).containsExactly("one", "two");
        assertThat(report.sections().get(0).rows())
                .containsExactly(
                        new Row("first cause right", List.of(new Count(9, 10), new Count(8, 10))),
                        new Row("battery judged", Arrays.asList(null, new Count(7, 10))));
    }

    @Test
    void theCurrentEditionHasAReportAndAnUnknownOneHasNone() {
        EvaluationReport report = EvaluationReport.of(Rulebook.CURRENT_EDITION).orElseThrow();
        assertThat(report.remarks()).isNotEmpty();
        assertThat(report.sections()).isNotEmpty();
        assertThat(EvaluationReport.of("1999.1")).isEmpty();
    }
}
