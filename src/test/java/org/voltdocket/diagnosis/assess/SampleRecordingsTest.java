package org.voltdocket.diagnosis.assess;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.voltdocket.diagnosis.CaseInput;
import org.voltdocket.diagnosis.Evidence;
import org.voltdocket.diagnosis.EvidenceKind;
import org.voltdocket.diagnosis.Facts;
import org.voltdocket.diagnosis.History;
import org.voltdocket.diagnosis.Made;
import org.voltdocket.diagnosis.quantity.Measurement;
import org.voltdocket.diagnosis.read.FileReading;

/** The sample of a start and of a capacity run are read as such and show what their kind can show. */
class SampleRecordingsTest {

    private static Set<String> measured(Evidence item) {
        Facts.BatteryFacts battery = new Facts.BatteryFacts(null, 70.0, null, null, null, null, null, null);
        Facts facts = new Facts(battery, null, null, null);
        CaseMeasurements all = new CaseMeasurements(new CaseInput(facts, History.NONE, List.of(item)));
        return all.given(facts, all.tests(facts)).stream()
                .map(Measurement::quantity)
                .collect(Collectors.toSet());
    }

    private static Evidence sample(String name) {
        return Made.evidence(name, FileReading.of(Path.of("shared/samples", name)));
    }

    @Test
    void theSampleOfAStart() {
        Evidence start = sample("cranking.csv.gz");
        assertThat(start.reading().kind()).isEqualTo(EvidenceKind.CRANKING_RECORDING);
        assertThat(measured(start)).contains("inrush-sag", "cranking-plateau", "compression-ripple", "recovery-time");
    }

    @Test
    void theSampleOfACapacityRun() {
        Evidence run = sample("capacity-run.csv.gz");
        assertThat(run.reading().kind()).isEqualTo(EvidenceKind.DISCHARGE_RECORDING);
        assertThat(measured(run)).contains("capacity-share", "capacity-gap");
    }
}
