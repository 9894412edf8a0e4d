package org.voltdocket.diagnosis.cause;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.LocalDate;
import java.time.OffsetDateTime;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.function.DoubleUnaryOperator;
import org.junit.jupiter.api.Test;
import org.voltdocket.demo.Generator;
import org.voltdocket.demo.Scenario;
import org.voltdocket.diagnosis.Assessment.Finding;
import org.voltdocket.diagnosis.BatteryTest;
import org.voltdocket.diagnosis.CaseInput;
import org.voltdocket.diagnosis.Channel;
import org.voltdocket.diagnosis.ChargingControl;
import org.voltdocket.diagnosis.ChargingTest;
import org.voltdocket.diagnosis.CrankingStandard;
import org.voltdocket.diagnosis.CrankingTest;
import org.voltdocket.diagnosis.Evidence;
import org.voltdocket.diagnosis.EvidenceKind;
import org.voltdocket.diagnosis.Facts;
import org.voltdocket.diagnosis.History;
import org.voltdocket.diagnosis.Leaning;
import org.voltdocket.diagnosis.Made;
import org.voltdocket.diagnosis.Recording;
import org.voltdocket.diagnosis.assess.Diagnosis;
import org.voltdocket.diagnosis.rulebook.Editions;
import org.voltdocket.secondmodel.SecondModel;

class ContradictionsTest {

    private static final OffsetDateTime TAKEN = OffsetDateTime.parse("2026-03-04T08:40:00+01:00");

    private static Evidence test(String name, OffsetDateTime at, double volts, Double amperes, CrankingStandard by) {
        return Made.evidence(name, new BatteryTest(at, volts, 20, amperes, by, null, 24.0, true, null));
    }

    private static List<Finding> found(LocalDate produced, Evidence... evidence) {
        Facts facts =
                new Facts(new Facts.BatteryFacts(null, null, null, null, produced, null, null, null), null, null, null);
        return Contradictions.in(new CaseInput(facts, History.NONE, List.of(evidence)), List.of(evidence));
    }

    private static Evidence strong() {
        return test("strong", TAKEN, 12.7, 600.0, CrankingStandard.EN);
    }

    @Test
    void evidenceFromBeforeTheBatteryWasMadeIsNamed() {
        List<Finding> found = found(LocalDate.parse("2026-03-05"), strong());
        assertThat(found).hasSize(1);
        assertThat(found.get(0).rule()).isEqualTo("evidence-before-production");
        assertThat(found.get(0).evidence()).isEqualTo("strong");
        assertThat(found(LocalDate.parse("2026-03-04"), strong()))
                .as("the same day is fine")
                .isEmpty();
        assertThat(found(null, strong())).isEmpty();
    }

    @Test
    void everyKindOfEvidenceIsHeldAgainstTheDayOfProduction() {
        LocalDate produced = LocalDate.parse("2026-03-05");
        Recording drive = recorded(EvidenceKind.DRIVE_RECORDING, TAKEN, t -> 12.5, 1, 60);
        assertThat(found(
                        produced,
                        Made.evidence("k", new CrankingTest(TAKEN, 10, null, 20, null)),
                        Made.evidence("c", new ChargingTest(TAKEN, 14.2, null, null, 20, null)),
                        Made.evidence("d", drive)))
                .extracting(Finding::evidence)
                .containsExactly("k", "c", "d");
        assertThat(found(LocalDate.parse("2026-03-04"), Made.evidence("d", drive)))
                .isEmpty();
    }

    /** To the limit they may differ: 1.6 times, either way round, and two days apart to the second. */
    @Test
    void chargedTestsMayDifferAsFarAsTheLimit() {
        Evidence weak = test("weak", TAKEN, 12.7, 375.0, CrankingStandard.EN);
        assertThat(found(null, strong(), weak)).isEmpty();
        assertThat(found(null, weak, strong())).isEmpty();
        Evidence weaker = test("weaker", TAKEN.plusDays(2), 12.7, 374.0, CrankingStandard.EN);
        assertThat(found(null, strong(), weaker)).hasSize(1);
        assertThat(found(null, weaker, strong())).hasSize(1);
        assertThat(found(
                        null,
                        strong(),
                        test("late", TAKEN.plusDays(2).plusSeconds(1), 12.7, 374.0, CrankingStandard.EN)))
                .isEmpty();
    }

    /** One test that no other of the hour fits is named once, however many it does not fit. */
    @Test
    void whatSeveralContradictIsNamedOnce() {
        Evidence one = Made.evidence("1", new BatteryTest(TAKEN, 12.7, 20, null, null, null, null, false, null));
        Evidence two = Made.evidence(
                "2", new BatteryTest(TAKEN.plusMinutes(1), 12.7, 20, null, null, null, null, false, null));
        Evidence odd = Made.evidence(
                "3", new BatteryTest(TAKEN.plusMinutes(2), 11.9, 20, null, null, null, null, false, null));
        assertThat(rules(null, one, two, odd)).containsExactly("rest-voltages-disagree");
    }

    @Test
    void aRecordingWithoutAClockContradictsNoDate() {
        Evidence undated = Made.at(1, 60).with(Channel.MEASURED_V, t -> 12.5).evidence();
        assertThat(found(LocalDate.parse("2099-01-01"), undated)).isEmpty();
    }

    @Test
    void twoChargedTestsThatNoOneBatteryCanGiveAreNamed() {
        Evidence weak = test("weak", TAKEN.plusDays(1), 12.7, 300.0, CrankingStandard.EN);
        assertThat(found(null, strong(), weak)).extracting(Finding::rule).containsExactly("charged-tests-disagree");
    }

    @Test
    void testsThatMayDifferAreLeftAlone() {
        assertThat(found(null, strong(), test("near", TAKEN.plusDays(1), 12.7, 500.0, CrankingStandard.EN)))
                .as("within what instruments differ by")
                .isEmpty();
        assertThat(found(null, strong(), test("later", TAKEN.plusDays(3), 12.7, 300.0, CrankingStandard.EN)))
                .as("days apart")
                .isEmpty();
        assertThat(found(null, strong(), test("empty", TAKEN.plusDays(1), 12.2, 300.0, CrankingStandard.EN)))
                .as("at another charge")
                .isEmpty();
        assertThat(found(null, strong(), test("other", TAKEN.plusDays(1), 12.7, 300.0, CrankingStandard.DIN)))
                .as("by another standard")
                .isEmpty();
        assertThat(found(null, strong(), test("none", TAKEN.plusDays(1), 12.7, null, null)))
                .isEmpty();
    }

    @Test
    void aContradictionMakesTheCaseContradictory() {
        Evidence weak = test("weak", TAKEN.plusDays(1), 12.7, 300.0, CrankingStandard.EN);
        CaseInput input = new CaseInput(Facts.UNKNOWN, History.NONE, List.of(weak, strong()));
        assertThat(Diagnosis.assess(input, Editions.of("2026.1")).leaning()).isEqualTo(Leaning.CONTRADICTORY);
    }

    private static Recording recorded(
            EvidenceKind kind, OffsetDateTime at, DoubleUnaryOperator volts, double hertz, double s) {
        Recording made =
                Made.at(hertz, s).with(Channel.MEASURED_V, volts).as(kind).recording();
        Map<Channel, float[]> channels = Map.of(Channel.MEASURED_V, made.channel(Channel.MEASURED_V));
        return new Recording(kind, at, made.timeS(), channels, List.of());
    }

    private static List<String> rules(ChargingControl control, Evidence... evidence) {
        Facts facts = new Facts(null, new Facts.VehicleFacts(control, null, null, null, null), null, null);
        return Contradictions.in(new CaseInput(facts, History.NONE, List.of(evidence)), List.of(evidence)).stream()
                .map(Finding::rule)
                .toList();
    }

    private static double start(double t, double rest, double least, double after) {
        return t < 20 ? rest : t < 21 ? least : after;
    }

    @Test
    void aChargingTestDoesNotFitADriveThatIsNeverCharged() {
        Evidence test = Made.evidence("c", new ChargingTest(TAKEN, 14.2, 14.0, null, 20, null));
        Recording flat =
                recorded(EvidenceKind.DRIVE_RECORDING, TAKEN.plusMinutes(20), t -> start(t, 12.5, 10, 12.3), 10, 900);
        Recording lifted =
                recorded(EvidenceKind.DRIVE_RECORDING, TAKEN.plusMinutes(20), t -> start(t, 12.5, 10, 14.1), 10, 900);
        Recording later =
                recorded(EvidenceKind.DRIVE_RECORDING, TAKEN.plusHours(5), t -> start(t, 12.5, 10, 12.3), 10, 900);
        assertThat(rules(ChargingControl.CONVENTIONAL, test, Made.evidence("d", flat)))
                .containsExactly("charging-test-against-drive");
        assertThat(rules(ChargingControl.MANAGED, test, Made.evidence("d", flat)))
                .as("a managed source may rest")
                .isEmpty();
        assertThat(rules(ChargingControl.CONVENTIONAL, test, Made.evidence("d", lifted)))
                .isEmpty();
        assertThat(rules(ChargingControl.CONVENTIONAL, test, Made.evidence("d", later)))
                .isEmpty();
    }

    @Test
    void aRestVoltageFitsTheRestInTheRecording() {
        Recording low =
                recorded(EvidenceKind.DRIVE_RECORDING, TAKEN.plusMinutes(10), t -> start(t, 11.7, 9, 14.1), 10, 300);
        Evidence test = Made.evidence("b", new BatteryTest(TAKEN, 12.7, 20, null, null, null, 9.0, false, null));
        Evidence near = Made.evidence("b", new BatteryTest(TAKEN, 12.3, 20, null, null, null, 9.0, false, null));
        assertThat(rules(null, test, Made.evidence("d", low))).containsExactly("rest-voltage-against-recording");
        assertThat(rules(null, near, Made.evidence("d", low))).isEmpty();
    }

    /** So it does at the beginning of a standing recording, and before the start of a cranking recording. */
    @Test
    void aRestVoltageFitsEveryRecordingThatBeginsAtRest() {
        Evidence test = Made.evidence("b", new BatteryTest(TAKEN, 12.7, 20, null, null, null, 9.0, false, null));
        Evidence charged = Made.evidence("b", new BatteryTest(TAKEN, 12.7, 20, null, null, null, 9.0, true, null));
        Recording standing =
                recorded(EvidenceKind.STANDING_RECORDING, TAKEN.plusMinutes(30), t -> t <= 60 ? 11.8 : 12.7, 1, 7200);
        Recording cranked = recorded(
                EvidenceKind.CRANKING_RECORDING, TAKEN.minusMinutes(30), t -> start(t, 11.8, 8, 14.1), 100, 40);
        Recording atOnce = recorded(EvidenceKind.DRIVE_RECORDING, TAKEN, t -> t < 4 ? 11.7 : t < 5 ? 9 : 14.1, 10, 300);
        assertThat(rules(null, test, Made.evidence("s", standing))).containsExactly("rest-voltage-against-recording");
        assertThat(rules(null, test, Made.evidence("k", cranked))).containsExactly("rest-voltage-against-recording");
        assertThat(rules(null, charged, Made.evidence("s", standing)))
                .as("charged in between")
                .isEmpty();
        assertThat(rules(null, test, Made.evidence("d", atOnce)))
                .as("four seconds are no rest")
                .isEmpty();
        assertThat(rules(null, test, Made.evidence("d", standing.as(EvidenceKind.DISCHARGE_RECORDING))))
                .as("a discharge begins under load")
                .isEmpty();
    }

    /** A test an hour after the end of a drive still belongs to it, one later does not; so before its beginning. */
    @Test
    void aChargingTestIsHeldAgainstDrivesOfTheSameHours() {
        Recording flat = recorded(EvidenceKind.DRIVE_RECORDING, TAKEN, t -> start(t, 12.5, 10, 12.3), 10, 900);
        for (long second : new long[] {-3600, 0, 900, 900 + 3600}) {
            assertThat(rules(ChargingControl.CONVENTIONAL, charging(second), Made.evidence("d", flat)))
                    .as("%s s", second)
                    .containsExactly("charging-test-against-drive");
        }
        for (long second : new long[] {-3601, 900 + 3601}) {
            assertThat(rules(ChargingControl.CONVENTIONAL, charging(second), Made.evidence("d", flat)))
                    .as("%s s", second)
                    .isEmpty();
        }
    }

    private static Evidence charging(long secondsLater) {
        return Made.evidence("c", new ChargingTest(TAKEN.plusSeconds(secondsLater), 14.2, 14.0, null, 20, null));
    }

    @Test
    void aCrankingTestFitsTheStartRecordedWithIt() {
        Recording deep = recorded(
                EvidenceKind.CRANKING_RECORDING, TAKEN.plusMinutes(5), t -> start(t, 12.5, 7.5, 14.1), 100, 40);
        Evidence good = Made.evidence("k", new CrankingTest(TAKEN, 10.2, 0.9, 20, null));
        Evidence like = Made.evidence("k", new CrankingTest(TAKEN, 8.2, 0.9, 20, null));
        assertThat(rules(null, good, Made.evidence("r", deep))).containsExactly("cranking-test-against-recording");
        assertThat(rules(null, like, Made.evidence("r", deep))).isEmpty();
    }

    @Test
    void twoRestVoltagesOfOneMomentAgree() {
        Evidence one = Made.evidence("1", new BatteryTest(TAKEN, 12.7, 20, null, null, null, null, false, null));
        Evidence other = Made.evidence(
                "2", new BatteryTest(TAKEN.plusMinutes(9), 12.0, 20, null, null, null, null, false, null));
        Evidence later =
                Made.evidence("3", new BatteryTest(TAKEN.plusHours(9), 12.0, 20, null, null, null, null, false, null));
        assertThat(rules(null, one, other)).containsExactly("rest-voltages-disagree");
        assertThat(rules(null, one, later)).isEmpty();
    }

    /** What the demo and the second model make of honest vehicles is never called contradictory. */
    @Test
    void honestCasesContradictNothing() {
        SecondModel second = new SecondModel();
        for (Scenario scenario : Scenario.values()) {
            for (long seed = 1; seed <= 2; seed++) {
                noneIn(Generator.generate(scenario, seed).toCaseInput());
            }
        }
        second.scenarios().forEach(scenario -> noneIn(second.make(scenario, 1).input()));
    }

    private static void noneIn(CaseInput input) {
        List<Evidence> sorted = input.evidence().stream()
                .sorted(Comparator.comparing((Evidence e) -> e.reading().kind()).thenComparing(Evidence::sha256))
                .toList();
        assertThat(Contradictions.in(input, sorted)).extracting(Finding::said).isEmpty();
    }
}
