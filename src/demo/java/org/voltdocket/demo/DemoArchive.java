package org.voltdocket.demo;

import java.io.ByteArrayInputStream;
import java.util.Optional;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import org.springframework.boot.autoconfigure.condition.ConditionalOnProperty;
import org.springframework.boot.context.event.ApplicationReadyEvent;
import org.springframework.context.ApplicationEventPublisher;
import org.springframework.context.annotation.Profile;
import org.springframework.context.event.ContextClosedEvent;
import org.springframework.context.event.EventListener;
import org.springframework.stereotype.Component;
import org.voltdocket.access.AccountService;
import org.voltdocket.access.AccountSummary;
import org.voltdocket.access.WorkshopSummary;
import org.voltdocket.assessment.CaseEditService;
import org.voltdocket.assessment.EvidenceUploadService;
import org.voltdocket.casefile.search.CaseQuery;
import org.voltdocket.casefile.CaseReference;
import org.voltdocket.casefile.CaseService;
import org.voltdocket.casefile.search.CaseSearch;
import org.voltdocket.casefile.NewCase;
import org.voltdocket.kernel.RequestException;
import org.voltdocket.diagnosis.Facts;
import org.voltdocket.diagnosis.Origin;
import org.voltdocket.evidence.IntakeResult;
import org.voltdocket.evidence.Rejected;
import org.voltdocket.evidence.Upload;
import org.voltdocket.kernel.Actor;

/**
 * Fills the archive of the demo once, in the background after the server is ready, through the services that a workshop
 * uses. Does nothing if the archive has other cases; continues at the next start if it was interrupted.
 */
@Component
@Profile("demo")
@ConditionalOnProperty(name = "voltdocket.demo.archive", havingValue = "true", matchIfMissing = true)
class DemoArchive {

    private static final Logger LOG = LoggerFactory.getLogger(DemoArchive.class);
    private static final String NOTE = "Invented for the demonstration.";

    private final AccountService accounts;
    private final CaseService cases;
    private final CaseSearch search;
    private final CaseEditService caseEdits;
    private final EvidenceUploadService uploads;
    private final DemoClaims claims;
    private final ApplicationEventPublisher news;
    private final BackgroundThread background = new BackgroundThread();

    DemoArchive(
            AccountService accounts,
            CaseService cases,
            CaseSearch search,
            CaseEditService caseEdits,
            EvidenceUploadService uploads,
            DemoClaims claims,
            ApplicationEventPublisher news) {
        this.claims = claims;
        this.accounts = accounts;
        this.cases = cases;
        this.search = search;
        this.caseEdits = caseEdits;
        this.uploads = uploads;
        this.news = news;
    }

    @EventListener(ApplicationReadyEvent.class)
    void ready() {
        background.start("demo-archive", this::fillAndTell);
    }

    @EventListener(ContextClosedEvent.class)
    void closing() throws InterruptedException {
        background.stop();
    }

    private void fillAndTell() {
        fill();
        if (!background.stopping()) {
            news.publishEvent(new DemoArchiveFilledEvent());
        }
    }

    private void fill() {
        try {
            if (!wanted()) {
                return;
            }
            long start = System.nanoTime();
            int files = 0;
            for (DemoCase one : DemoCase.ALL) {
                files += enter(one, actor(one.account()));
                if (background.stopping()) {
                    return;
                }
            }
            claim();
            LOG.info(
                    "The demo archive is filled: {} invented cases with {} files in {} s.",
                    DemoCase.ALL.size(),
                    files,
                    (System.nanoTime() - start) / 1_000_000_000);
        } catch (RuntimeException e) {
            if (!background.stopping()) {
                LOG.warn("The demo archive could not be filled. It is tried again at the next start.", e);
            }
        }
    }

    private void claim() {
        for (int i = 0; i < DemoCase.ALL.size() && !background.stopping(); i++) {
            DemoCase one = DemoCase.ALL.get(i);
            GeneratedCase made = one.generate();
            CaseReference file =
                    cases.ofBattery(Actor.system(), made.serial()).get(0).ref();
            claims.enter(file, DemoClaims.ALL.get(i), actor(one.account()), actor("clerk"));
        }
    }

    private boolean wanted() {
        if (search.page(Actor.system(), CaseQuery.all()).cases().isEmpty()) {
            return true;
        }
        return known(DemoCase.ALL.get(0)) && !known(DemoCase.ALL.get(DemoCase.ALL.size() - 1));
    }

    private boolean known(DemoCase one) {
        try {
            return !cases.ofVehicle(Actor.system(), one.generate().vin()).isEmpty();
        } catch (RequestException e) {
            return false;
        }
    }

    /** Opens the case and sends its files in; what is there already stays as it is. Answers how many files it has. */
    int enter(DemoCase one, Actor actor) {
        GeneratedCase made = one.generate();
        Facts facts = new Facts(
                made.facts().battery(), made.facts().vehicle(), one.complaint() + " (Invented.)", one.replacedBefore());
        CaseReference file;
        try {
            file = caseEdits
                    .open(actor, new NewCase(made.serial(), made.vin(), facts))
                    .ref();
        } catch (RequestException changedByHand) {
            return 0; // somebody edited the case since, and their facts stay
        }
        int files = 0;
        for (GeneratedItem item : one.sent(made)) {
            Upload upload =
                    new Upload(item.fileName(), new ByteArrayInputStream(item.content()), NOTE, Origin.WORKSHOP);
            IntakeResult received = uploads.receive(actor, file, upload);
            if (received instanceof Rejected refused) {
                throw new IllegalStateException(made.scenario() + " " + item.fileName() + ": "
                        + refused.file().detail() + " " + refused.file().errors());
            }
            files++;
        }
        return files;
    }

    private Actor actor(String account) {
        AccountSummary ref = accounts.find(account)
                .orElseThrow(() -> new IllegalStateException("there is no demo account '" + account + "'"));
        Optional<WorkshopSummary> workshop = ref.workshop();
        return new Actor(ref.name(), ref.role(), workshop.map(WorkshopSummary::id));
    }
}
