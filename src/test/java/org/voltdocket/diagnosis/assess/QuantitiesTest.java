package org.voltdocket.diagnosis.assess;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import java.util.stream.LongStream;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestInstance;
import org.voltdocket.demo.Generator;
import org.voltdocket.demo.Scenario;
import org.voltdocket.diagnosis.CaseInput;
import org.voltdocket.diagnosis.Channel;
import org.voltdocket.diagnosis.Evidence;
import org.voltdocket.diagnosis.EvidenceKind;
import org.voltdocket.diagnosis.Facts;
import org.voltdocket.diagnosis.History;
import org.voltdocket.diagnosis.Made;
import org.voltdocket.diagnosis.Recast;
import org.voltdocket.diagnosis.Recording;
import org.voltdocket.diagnosis.quantity.Capacity;
import org.voltdocket.diagnosis.quantity.Measurement;
import org.voltdocket.diagnosis.quantity.Quantities;
import org.voltdocket.diagnosis.quantity.Quantities.Quantity;
import org.voltdocket.diagnosis.rulebook.Editions;
import org.voltdocket.diagnosis.rulebook.Rule;
import org.voltdocket.secondmodel.SecondModel;

/** The register of quantities against what the judge really measures in generated cases of both models. */
@TestInstance(TestInstance.Lifecycle.PER_CLASS)
class QuantitiesTest {

    private static final Set<String> UNITS =
            Set.of("V", "A", "Ah", "mΩ", "%", "ratio", "count", "a", "km/d", "s", "Hz");

    private final List<Measurement> measured = measured();

    private static List<Measurement> measured() {
        Stream<CaseInput> demo = Stream.of(Scenario.values())
                .flatMap(scenario -> LongStream.rangeClosed(1, 3)
                        .mapToObj(seed -> Generator.generate(scenario, seed).toCaseInput()));
        SecondModel second = new SecondModel();
        Stream<CaseInput> other = second.scenarios().stream()
                .flatMap(scenario -> LongStream.rangeClosed(1, 2)
                        .mapToObj(seed -> second.make(scenario, seed).input()));
        return Stream.concat(
                        Stream.concat(demo, other),
                        Stream.of(asleepWithSensor(), sampledFast(), severalCapacityRuns(), withoutRating()))
                .flatMap(input -> all(input).stream())
                .toList();
    }

    private static List<Measurement> all(CaseInput input) {
        CaseMeasurements all = new CaseMeasurements(input);
        return all.given(input.facts(), all.tests(input.facts()));
    }

    /** No model lets a vehicle report its battery current while it sleeps; some vehicles do. */
    private static CaseInput asleepWithSensor() {
        CaseInput parked = Generator.generate(Scenario.DRAINED_AT_REST, 1).toCaseInput();
        return Recast.recordings(parked, r -> {
            Map<Channel, float[]> more = Recast.channels(r);
            float[] reported = new float[r.rows()];
            Arrays.fill(reported, 0.4f);
            more.put(Channel.REPORTED_A, reported);
            return r.kind() == EvidenceKind.STANDING_RECORDING ? Recast.with(r, more) : r;
        });
    }

    /** No model records a drive fast enough to see a ripple. */
    private static CaseInput sampledFast() {
        double hertz = 600;
        Made fast = Made.at(hertz, 150).with(Channel.MEASURED_V, t -> {
            double start = t < 8 ? 12.6 : t < 9 ? 10.2 : 14.2;
            return start + (t > 9 ? 0.15 * Math.sin(2 * Math.PI * 193 * t) : 0);
        });
        return new CaseInput(new Facts(null, null, null, null), History.NONE, List.of(fast.evidence()));
    }

    /** No model takes a battery through several capacity runs: three by Peukert's law, exponent 1.2. */
    private static CaseInput severalCapacityRuns() {
        List<Evidence> runs = Stream.of(5.0, 10.0, 25.0)
                .map(amperes -> {
                    double hours = Capacity.peukertHours(20, 100, amperes, 1.2);
                    Recording run = Made.at(1 / 60.0, 3600 * hours + 120)
                            .with(Channel.MEASURED_V, t -> 12.6 - 2.1 * t / 3600 / hours)
                            .with(Channel.MEASURED_A, t -> -amperes)
                            .as(EvidenceKind.DISCHARGE_RECORDING)
                            .recording();
                    return Made.evidence("run at " + amperes, run);
                })
                .toList();
        return new CaseInput(Facts.UNKNOWN, History.NONE, runs);
    }

    /** No model leaves the label of a battery unknown that was tested. */
    private static CaseInput withoutRating() {
        CaseInput whole = Generator.generate(Scenario.DRAINED_AT_REST, 1).toCaseInput();
        return new CaseInput(Facts.UNKNOWN, whole.history(), whole.evidence());
    }

    @Test
    void everythingThatIsMeasuredIsListed() {
        assertThat(measured).hasSizeGreaterThan(500);
        assertThat(measured)
                .allSatisfy(m -> assertThat(Quantities.find(m.quantity()))
                        .as(m.quantity())
                        .isPresent());
    }

    /** A quantity that no generated case shows would be judged by rows that nothing ever tries. */
    @Test
    void everythingThatIsListedIsMeasuredSomewhere() {
        Set<String> seen = measured.stream().map(Measurement::quantity).collect(Collectors.toCollection(TreeSet::new));
        List<String> never = Quantities.all().stream()
                .map(Quantity::id)
                .filter(id -> !seen.contains(id))
                .toList();
        assertThat(never).isEmpty();
    }

    @Test
    void eachEntryIsWhole() {
        assertThat(Quantities.all()).extracting(Quantity::id).doesNotHaveDuplicates();
        for (Quantity one : Quantities.all()) {
            assertThat(one.id()).matches("[a-z0-9]+(-[a-z0-9]+)*");
            assertThat(UNITS).contains(one.unit());
            assertThat(one.meaning()).isNotBlank();
            assertThat(one.method()).isNotBlank();
        }
    }

    @Test
    void sharesLieBetweenNothingAndAll() {
        measured.stream()
                .filter(m -> m.quantity().matches(".*share.*when.*|.*-share|answer.*|reported-(charge|drain).*")
                        && !m.quantity().matches("(size|cranking|capacity)-share|reported-charge-error"))
                .forEach(m -> assertThat(m.value().value()).as(m.quantity()).isBetween(0.0, 100.0));
    }

    @Test
    void someEditionJudgesEachOfThem() {
        Set<String> judged = Editions.files().stream()
                .flatMap(file -> Editions.read(file).rules().stream())
                .map(Rule::quantity)
                .collect(Collectors.toSet());
        assertThat(judged)
                .containsExactlyInAnyOrderElementsOf(
                        Quantities.all().stream().map(Quantity::id).toList());
    }
}
