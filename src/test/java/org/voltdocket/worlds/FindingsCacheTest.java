package org.voltdocket.worlds;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.voltdocket.diagnosis.Cause;
import org.voltdocket.diagnosis.rulebook.Rulebook;
import org.voltdocket.worlds.Assessor.Assessed;
import org.voltdocket.worlds.fit.FitCase;
import org.voltdocket.worlds.fit.WeightFit;

/** The fit weighs as the diagnosis does. */
class FindingsCacheTest {

    @Test
    void whatTheFitReadsOffGivesTheProbabilitiesOfTheDiagnosis() {
        Rulebook book = Rulebook.current();
        Assessor assessor = new Assessor(book);
        FindingsCache cache = new FindingsCache(book, 1);
        for (Fault fault : List.of(Fault.BELT_SLIPS, Fault.CELL_LOST, Fault.SENSOR_HIGH, Fault.HEALTHY_COLD)) {
            WorldCase one = CaseMaker.make(World.all().get(2), fault, 3);
            FitCase found = cache.found(one, Channels.ALL);
            double[] fitted = WeightFit.none(book).probabilities(List.of(found)).get(0);
            Assessed said = assessor.assess(one.input());
            for (Cause cause : Cause.values()) {
                assertThat(fitted[cause.ordinal()])
                        .as("%s %s", one, cause)
                        .isCloseTo(said.probabilities().get(cause), within(0.02));
            }
        }
    }
}
