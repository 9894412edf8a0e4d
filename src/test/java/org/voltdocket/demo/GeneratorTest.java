package org.voltdocket.demo;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.voltdocket.demo.model.GroundTruth;
import org.voltdocket.diagnosis.BatteryTest;
import org.voltdocket.diagnosis.Channel;
import org.voltdocket.diagnosis.Recording;
import org.voltdocket.kernel.Sha256;

class GeneratorTest {

    @ParameterizedTest
    @EnumSource(Scenario.class)
    void theSameSeedGivesTheSameCaseToTheLastByte(Scenario scenario) {
        GeneratedCase one = Generator.generate(scenario, 11);
        GeneratedCase again = Generator.generate(scenario, 11);
        assertThat(digests(again)).isEqualTo(digests(one));
        assertThat(again.facts()).isEqualTo(one.facts());
        assertThat(again.vin()).isEqualTo(one.vin());
        assertThat(digests(Generator.generate(scenario, 12))).doesNotContainAnyElementsOf(digests(one));
    }

    @ParameterizedTest
    @EnumSource(Scenario.class)
    void truthCoversEachRecordingWithoutGap(Scenario scenario) {
        GeneratedCase made = Generator.generate(scenario, 5);
        List<Recording> recordings = made.items().stream()
                .map(GeneratedItem::reading)
                .filter(Recording.class::isInstance)
                .map(Recording.class::cast)
                .toList();
        assertThat(made.truths()).hasSameSizeAs(recordings);
        for (int i = 0; i < recordings.size(); i++) {
            double at = 0;
            for (GroundTruth.Span span : made.truths().get(i).spans()) {
                assertThat(span.fromS()).isEqualTo(at);
                assertThat(span.toS()).isGreaterThan(at);
                at = span.toS();
            }
            assertThat(at).isGreaterThanOrEqualTo(recordings.get(i).durationS());
        }
    }

    @ParameterizedTest
    @EnumSource(Scenario.class)
    void everyVoltageIsOneThatAnInstrumentCanShow(Scenario scenario) {
        for (GeneratedItem item : Generator.generate(scenario, 23).items()) {
            if (item.reading() instanceof Recording recording) {
                for (float volts : recording.channel(Channel.MEASURED_V)) {
                    assertThat(volts).isBetween(2f, 18f);
                }
            } else if (item.reading() instanceof BatteryTest test) {
                assertThat(test.restVoltageV()).isBetween(9.0, 13.5);
            }
        }
    }

    /** What the sensor adds is the whole story: reported minus true current is the offset, and charge is lost meanwhile. */
    @Test
    void aSensorThatReadsHighHidesADischarge() {
        int losing = 0;
        for (long seed = 1; seed <= 12; seed++) {
            GeneratedCase made = Generator.generate(Scenario.SENSOR_READS_HIGH, seed);
            GroundTruth truth = made.truths().get(0);
            assertThat(truth.sensorOffsetA()).isBetween(3.5, 8.0);
            losing += truth.netAh() < -0.5 ? 1 : 0;
        }
        assertThat(losing).isGreaterThanOrEqualTo(10);
    }

    private static List<Sha256> digests(GeneratedCase made) {
        return made.items().stream().map(item -> Sha256.of(item.content())).toList();
    }
}
