package org.voltdocket.demo;

import java.io.ByteArrayInputStream;
import java.time.Clock;
import java.time.LocalDate;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.time.temporal.ChronoUnit;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import org.springframework.boot.autoconfigure.condition.ConditionalOnProperty;
import org.springframework.context.annotation.Profile;
import org.springframework.context.event.ContextClosedEvent;
import org.springframework.context.event.EventListener;
import org.springframework.stereotype.Component;
import org.voltdocket.diagnosis.Origin;
import org.voltdocket.evidence.Upload;
import org.voltdocket.casefile.CaseService;
import org.voltdocket.kernel.RequestException;
import org.voltdocket.demo.model.CapacityRun;
import org.voltdocket.demo.model.SeededRandom;
import org.voltdocket.demo.model.ModelSettings;
import org.voltdocket.diagnosis.BatteryTest;
import org.voltdocket.diagnosis.Facts.BatteryFacts;
import org.voltdocket.evidence.Rejected;
import org.voltdocket.kernel.Actor;
import org.voltdocket.kernel.BatterySerial;
import org.voltdocket.kernel.Role;
import org.voltdocket.returned.BatteryCondition;
import org.voltdocket.returned.BenchOutcome;
import org.voltdocket.returned.pallet.PalletDeliveryNote;
import org.voltdocket.returned.pallet.PalletService;
import org.voltdocket.returned.service.ReturnService;
import org.voltdocket.returned.ReturnedBattery;
import org.voltdocket.returned.bench.BenchStep;
import org.voltdocket.returned.bench.StepAction;

/**
 * Creates returned batteries as an auditor would, after the cases of the demo: two pallets (with one missing and one unknown
 * battery), batteries at every stage, and outcomes of each kind. All invented.
 */
@Component
@Profile("demo")
@ConditionalOnProperty(name = "voltdocket.demo.archive", havingValue = "true", matchIfMissing = true)
class DemoReturns {

    private static final Logger LOG = LoggerFactory.getLogger(DemoReturns.class);
    private static final String NOTE = "Invented for the demonstration.";
    private static final String UNKNOWN = "SKV-0000-UNKNOWN";
    private static final String MISSING = "SKV-0000-MISSING";

    private final ReturnService returns;
    private final PalletService pallets;
    private final CaseService cases;
    private final Clock clock;
    private final BackgroundThread background = new BackgroundThread();

    /** What the bench finds of a scenario; null where it has not found anything yet. */
    record Story(
            Scenario scenario,
            String pallet,
            String place,
            boolean swollen,
            double volts,
            double cranking,
            double capacity,
            BenchOutcome finding,
            String reason) {}

    static final List<Story> STORIES = List.of(
            new Story(
                    Scenario.CELL_SHORTED,
                    "PAL-0417",
                    "Shelf B 2",
                    false,
                    10.55,
                    0.24,
                    0,
                    BenchOutcome.DEFECT_CONFIRMED,
                    """
                    Stays at 10.5 V after charge and rest: one cell is shorted."""),
            new Story(
                    Scenario.CONTROL_STUCK,
                    "PAL-0417",
                    "Shelf A 1",
                    false,
                    12.78,
                    0.98,
                    0.97,
                    BenchOutcome.NO_FAULT_FOUND,
                    """
                    Charged, rested, cranks as rated and holds its capacity. Nothing is wrong with it."""),
            new Story(Scenario.WILL_NOT_HOLD, "PAL-0417", "Bench 3", false, 0, 0, 0, null, null),
            new Story(Scenario.DRAINED_AT_REST, "PAL-0417", "Shelf A 2", false, 0, 0, 0, null, null),
            new Story(Scenario.HEALTHY_MANAGED, "PAL-0417", "Shelf A 3", false, 0, 0, 0, null, null),
            new Story(
                    Scenario.WORN, "PAL-0418", "Shelf C 1", false, 12.62, 0.61, 0.58, BenchOutcome.WEAR_CONFIRMED, """
                    Capacity at 25 °C is well below what it was sold with; no cell stands out."""),
            new Story(
                    Scenario.STRAP_BROKEN,
                    "PAL-0418",
                    "Shelf C 2",
                    false,
                    12.74,
                    0.31,
                    0,
                    BenchOutcome.DEFECT_CONFIRMED,
                    """
                    Rest voltage is good and it collapses under load: a connection inside is broken."""),
            new Story(
                    Scenario.SOURCE_OVER, "PAL-0418", "Acid tray 1", true, 0, 0, 0, BenchOutcome.DAMAGED_BY_USE, """
                    Swollen and dried out by over-charging; set apart, not tested."""));

    DemoReturns(ReturnService returns, PalletService pallets, CaseService cases, Clock clock) {
        this.returns = returns;
        this.pallets = pallets;
        this.cases = cases;
        this.clock = clock;
    }

    @EventListener(DemoArchiveFilledEvent.class)
    void begin() {
        background.start("demo-returns", this::fill);
    }

    @EventListener(ContextClosedEvent.class)
    void closing() throws InterruptedException {
        background.stop();
    }

    /** Once only: an archive that has pallets of its own, or lacks the demo's cases, is left alone. */
    private void fill() {
        try {
            if (known(DemoCase.ALL.get(DemoCase.ALL.size() - 1))
                    && pallets.all(auditor()).isEmpty()) {
                play(auditor());
            }
        } catch (RuntimeException e) {
            if (!background.stopping()) {
                LOG.warn("The demo's returned batteries could not be booked in.", e);
            }
        }
    }

    static Actor auditor() {
        return new Actor("auditor", Role.AUDITOR, Optional.empty());
    }

    private boolean known(DemoCase one) {
        try {
            return !cases.ofVehicle(Actor.system(), one.generate().vin()).isEmpty();
        } catch (RequestException e) {
            return false;
        }
    }

    void play(Actor auditor) {
        note(auditor, "PAL-0417", "Lantern Yard", 6, Stream.of(UNKNOWN, MISSING));
        note(auditor, "PAL-0418", "Copper Quay", 2, Stream.empty());
        for (Story story : STORIES) {
            if (background.stopping()) {
                return;
            }
            play(auditor, story);
        }
        returns.arrive(auditor, BatterySerial.parse(UNKNOWN), Optional.of("PAL-0417"));
        LOG.info("{} invented batteries came back to the demo.", STORIES.size() + 1);
    }

    private void note(Actor auditor, String number, String sender, int days, Stream<String> more) {
        LocalDate today = LocalDate.ofInstant(clock.instant(), ZoneOffset.UTC);
        String list = Stream.concat(
                        STORIES.stream()
                                .filter(story -> story.pallet().equals(number))
                                .map(story -> made(story).serial().value()),
                        more)
                .collect(Collectors.joining("\n"));
        pallets.note(
                auditor,
                PalletDeliveryNote.parse(
                        number, sender + " (invented)", today.minusDays(days).toString(), list, today));
    }

    static GeneratedCase made(Story story) {
        return DemoCase.ALL.stream()
                .filter(one -> one.scenario() == story.scenario())
                .findFirst()
                .orElseThrow()
                .generate();
    }

    private void play(Actor auditor, Story story) {
        GeneratedCase made = made(story);
        ReturnedBattery battery = returns.arrive(auditor, made.serial(), Optional.of(story.pallet()))
                .battery();
        UUID id = battery.id();
        returns.recordPlace(auditor, id, story.place());
        boolean corroded = story.swollen();
        returns.recordCondition(
                auditor,
                id,
                new BatteryCondition(
                        false,
                        false,
                        story.swollen(),
                        false,
                        corroded ? BatteryCondition.Terminals.CORRODED : BatteryCondition.Terminals.SOUND,
                        NOTE,
                        null,
                        null));
        if (story.cranking() > 0) {
            send(
                    auditor,
                    id,
                    "bench-test.json",
                    TestFile.json(test(story, made.facts().battery())));
        }
        if (story.capacity() > 0) {
            send(auditor, id, "bench-capacity.csv", capacity(story, made));
        }
        if (story.finding() != null) {
            returns.recordOutcome(auditor, id, story.finding(), story.reason().strip() + " (Invented.)");
        } else if (story.place().startsWith("Bench")) {
            returns.recordStep(auditor, id, BenchStep.CHARGE, StepAction.START, Optional.empty(), NOTE);
        }
    }

    private BatteryTest test(Story story, BatteryFacts facts) {
        Double rated = facts.ratedCrankingA();
        // one instrument tests one battery after the other
        return new BatteryTest(
                now().minusMinutes(40L * (STORIES.size() - STORIES.indexOf(story))),
                story.volts(),
                25,
                rated == null ? null : (double) Math.round(rated * story.cranking()),
                facts.crankingStandard(),
                null,
                48.0,
                true,
                new BatteryTest.Instrument("BENCH-1", now().toLocalDate().minusDays(50)));
    }

    private byte[] capacity(Story story, GeneratedCase made) {
        ModelSettings bench = new ModelSettings();
        bench.chemistry = made.facts().battery().chemistry();
        bench.capacityAh = made.facts().battery().capacityAh();
        bench.capacityLeft = story.capacity();
        bench.charge = 1;
        bench.temperatureC = 25;
        return RecordingFile.csv(
                CapacityRun.record(bench, new SeededRandom(made.seed()), now().minusHours(24))
                        .recording(),
                ',');
    }

    private void send(Actor auditor, UUID id, String name, byte[] content) {
        if (returns.receive(auditor, id, new Upload(name, new ByteArrayInputStream(content), NOTE, Origin.BENCH))
                instanceof Rejected refused) {
            throw new IllegalStateException(
                    name + ": " + refused.file().detail() + " " + refused.file().errors());
        }
    }

    private OffsetDateTime now() {
        return clock.instant().truncatedTo(ChronoUnit.SECONDS).atOffset(ZoneOffset.UTC);
    }
}
