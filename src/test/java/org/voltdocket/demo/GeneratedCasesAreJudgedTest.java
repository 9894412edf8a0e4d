package org.voltdocket.demo;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.InputStream;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.voltdocket.diagnosis.Assessment;
import org.voltdocket.diagnosis.Cause;
import org.voltdocket.diagnosis.Leaning;
import org.voltdocket.diagnosis.assess.Diagnosis;
import org.voltdocket.diagnosis.rulebook.Rulebook;

/** Ten generated cases of every cause, with seeds that the demo does not show: the judge must find nine in ten. */
class GeneratedCasesAreJudgedTest {

    private static final int EACH = 10;
    private static final long FIRST_SEED = 7_000;
    private static final double RIGHT_AT_LEAST = 0.90;

    @Test
    void theFirstCauseIsRightInNineOfTenAndNoSoundCaseIsBlamed() throws IOException {
        List<String> wrong = new ArrayList<>();
        List<String> blamed = new ArrayList<>();
        Rulebook book = book();
        for (Cause cause : Cause.values()) {
            Scenario[] ways = Arrays.stream(Scenario.values())
                    .filter(s -> s.cause() == cause)
                    .toArray(Scenario[]::new);
            for (int i = 0; i < EACH; i++) {
                Scenario way = ways[i % ways.length];
                Assessment said =
                        Diagnosis.assess(Generator.generate(way, FIRST_SEED + i).toCaseInput(), book);
                String line = way + " " + (FIRST_SEED + i) + ": " + said.said();
                if (said.causes().get(0).cause() != cause) {
                    wrong.add(line);
                }
                boolean blames = said.leaning() == Leaning.BATTERY_SIDE || said.leaning() == Leaning.VEHICLE_SIDE;
                if (cause == Cause.NONE && blames) {
                    blamed.add(line);
                }
            }
        }
        int all = EACH * Cause.values().length;
        assertThat(wrong).as("wrong first causes of %d", all).hasSizeLessThanOrEqualTo((int)
                Math.round((1 - RIGHT_AT_LEAST) * all));
        assertThat(blamed).as("sound cases blamed").isEmpty();
    }

    private static Rulebook book() throws IOException {
        try (InputStream yaml = GeneratedCasesAreJudgedTest.class.getResourceAsStream("/shared/rulebook/2026.1.yaml")) {
            return Rulebook.read(yaml);
        }
    }
}
