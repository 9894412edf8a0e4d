package org.voltdocket.demo.year;

import static java.nio.charset.StandardCharsets.UTF_8;

import java.time.Clock;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import org.springframework.boot.autoconfigure.condition.ConditionalOnProperty;
import org.springframework.context.annotation.Profile;
import org.springframework.context.event.ContextClosedEvent;
import org.springframework.context.event.EventListener;
import org.springframework.stereotype.Component;
import org.voltdocket.catalogue.CatalogueService;
import org.voltdocket.catalogue.ProducedRange;
import org.voltdocket.demo.BackgroundThread;
import org.voltdocket.demo.DemoArchiveFilledEvent;
import org.voltdocket.kernel.Actor;

/** Writes the invented year to the demo's archive once, in the background; continues at the next start if interrupted. */
@Component
@Profile("demo")
@ConditionalOnProperty(name = "voltdocket.demo.year", havingValue = "true", matchIfMissing = true)
class YearArchive {

    private static final Logger LOG = LoggerFactory.getLogger(YearArchive.class);

    private final CatalogueService catalogue;
    private final YearEventWriter acts;
    private final DemoClock clock;
    private final BackgroundThread background = new BackgroundThread();

    YearArchive(CatalogueService catalogue, YearEventWriter acts, DemoClock clock) {
        this.catalogue = catalogue;
        this.acts = acts;
        this.clock = clock;
    }

    @EventListener(DemoArchiveFilledEvent.class)
    void begin() {
        background.start("demo-year", this::fill);
    }

    @EventListener(ContextClosedEvent.class)
    void closing() throws InterruptedException {
        background.stop();
    }

    private void fill() {
        try {
            YearPlan plan = new YearPlan(began().orElse(LocalDate.now(Clock.systemUTC())));
            if (began().isEmpty()) {
                catalogue.take(
                        Actor.system(), "the-year-ranges.csv", plan.ranges().getBytes(UTF_8));
                catalogue.take(
                        Actor.system(), "the-year-sales.csv", plan.sales().getBytes(UTF_8));
            }
            List<YearEvent> events = YearEvent.of(plan);
            long start = System.nanoTime();
            int from = firstNew(events);
            for (int i = from; i < events.size() && !background.stopping(); i++) {
                clock.liveIn(events.get(i).at());
                acts.happen(events.get(i));
                if (i % 1000 == 999) {
                    LOG.info("The invented year: {} of {} things have happened.", i + 1, events.size());
                }
            }
            if (!background.stopping() && from < events.size()) {
                LOG.info(
                        "The invented year is written: {} cases, {} things in {} s.",
                        plan.cases().size(),
                        events.size() - from,
                        (System.nanoTime() - start) / 1_000_000_000);
            }
        } catch (RuntimeException e) {
            if (!background.stopping()) {
                LOG.warn("The invented year could not be written. It goes on at the next start.", e);
            }
        } finally {
            clock.comeBack();
        }
    }

    /** The last day of the year that is on file in part or whole: known by its newest week of production. */
    private Optional<LocalDate> began() {
        return catalogue.ranges(BatteryProduct.ALL.get(0).type()).stream()
                .filter(range -> range.batch().startsWith("Y"))
                .map(ProducedRange::producedOn)
                .max(LocalDate::compareTo)
                .map(newest -> newest.plusWeeks(YearPlan.NEWEST_WEEK));
    }

    /** Claims were opened in order: the newest known one tells how far it came; some before it may lack what followed. */
    private int firstNew(List<YearEvent> events) {
        int low = 0;
        int high = events.size();
        while (low < high) {
            int middle = (low + high) >>> 1;
            int claim = middle;
            while (claim < high && events.get(claim).kind() != YearEvent.Kind.CLAIM) {
                claim++;
            }
            if (claim < high && acts.known(events.get(claim).of())) {
                low = claim + 1;
            } else {
                high = middle;
            }
        }
        return Math.max(0, low - 40);
    }
}
