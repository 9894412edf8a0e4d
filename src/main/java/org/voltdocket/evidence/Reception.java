package org.voltdocket.evidence;

import static java.nio.charset.StandardCharsets.UTF_8;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import org.springframework.context.ApplicationEventPublisher;
import org.springframework.stereotype.Service;
import org.springframework.transaction.PlatformTransactionManager;
import org.springframework.transaction.TransactionDefinition;
import org.springframework.transaction.support.TransactionTemplate;
import org.voltdocket.casefile.CaseRef;
import org.voltdocket.casefile.Cases;
import org.voltdocket.diagnosis.Reading;
import org.voltdocket.diagnosis.Recording;
import org.voltdocket.kernel.Actor;
import org.voltdocket.trail.Trail;

/** The way of an upload: disk, digest, kind, reading, store where there is one, one transaction. */
@Service
class Reception implements Intake {

    private static final int MOST_NOTE = 4000;

    private final Cases cases;
    private final ItemStore items;
    private final RawStore raw;
    private final ReadingStore readings;
    private final Trail trail;
    private final MemoryGate gate;
    private final Clock clock;
    private final ApplicationEventPublisher news;
    private final TransactionTemplate together;
    private final TransactionTemplate apart;

    Reception(
            Cases cases,
            ItemStore items,
            RawStore raw,
            ReadingStore readings,
            Trail trail,
            MemoryGate gate,
            Clock clock,
            ApplicationEventPublisher news,
            PlatformTransactionManager transactions) {
        this.cases = cases;
        this.items = items;
        this.raw = raw;
        this.readings = readings;
        this.trail = trail;
        this.gate = gate;
        this.clock = clock;
        this.news = news;
        this.together = new TransactionTemplate(transactions);
        this.apart = new TransactionTemplate(transactions);
        this.apart.setPropagationBehavior(TransactionDefinition.PROPAGATION_REQUIRES_NEW);
    }

    /** What was read, until it is kept: what runs after the commit shall not find it in memory still. */
    private static final class Hand {
        private Reading reading;

        Reading take() {
            Reading taken = reading;
            reading = null;
            return taken;
        }
    }

    @Override
    public Received accept(Actor actor, CaseRef file, Upload upload) {
        CaseRef seen = cases.require(actor, file.id());
        Path spool = null;
        try {
            spool = Files.createTempFile("voltdocket-", ".upload");
            return received(actor, seen, upload, spool);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        } finally {
            delete(spool);
        }
    }

    private Received received(Actor actor, CaseRef file, Upload upload, Path spool) throws IOException {
        Spooled spooled = Spooled.take(upload.content(), spool);
        if (spooled.tooLarge()) {
            return refuse(
                    actor,
                    file,
                    upload,
                    spooled,
                    new Refused(
                            Refused.Reason.TOO_LARGE,
                            "The file is larger than 64 MiB. Cut the recording into several, or compress it with gzip."));
        }
        Optional<EvidenceItem> known = items.find(file.id(), spooled.sha256());
        if (known.isPresent()) {
            return new Known(known.get());
        }
        String note = Labels.note(upload.note());
        if (note != null && note.length() > MOST_NOTE) {
            return refuse(
                    actor,
                    file,
                    upload,
                    spooled,
                    new Refused(
                            Refused.Reason.NOTE,
                            "The note has " + note.length() + " characters, 4000 at most. Shorten it."));
        }
        try (MemoryGate.Lease lease = gate.lease()) {
            long others = items.memoryOf(file.id());
            Outcome outcome = new FileReader(spool, clock.instant(), own -> lease.reserve(own + others)).read();
            if (outcome instanceof Refused refused) {
                return refuse(actor, file, upload, spooled, refused);
            }
            lease.reserve(others);
            Parsed parsed = (Parsed) outcome;
            Hand hand = new Hand();
            hand.reading = parsed.reading();
            EvidenceItem item = item(actor, file, upload, spooled, note, parsed);
            outcome = null;
            parsed = null;
            return keep(actor, file, item, spool, hand);
        }
    }

    private Received keep(Actor actor, CaseRef file, EvidenceItem item, Path spool, Hand hand) {
        RawStore.Place place = raw.bring(item.sha256(), spool);
        boolean added = Boolean.TRUE.equals(together.execute(transaction -> {
            raw.keep(item.sha256(), spool, item.bytes(), place);
            if (!items.add(item)) {
                transaction.setRollbackOnly();
                return false;
            }
            Reading reading = hand.take();
            if (reading != null) {
                readings.keep(item.caseId(), item.id(), reading);
            }
            news.publishEvent(new EvidenceKept(item.caseId(), item.id()));
            Map<String, Object> details = named(item.fileName(), item.bytes());
            details.put("sha256", item.sha256().hex());
            details.put("evidence", item.id().toString());
            details.put("kind", item.kind().id());
            details.put("origin", item.origin().id());
            trail.record(actor, "evidence-kept", file.number().value(), details);
            return true;
        }));
        EvidenceItem kept = items.find(item.caseId(), item.sha256()).orElseThrow();
        return added ? new Kept(kept) : new Known(kept);
    }

    private Refused refuse(Actor actor, CaseRef file, Upload upload, Spooled spooled, Refused refused) {
        Map<String, Object> details = named(Labels.fileName(upload.fileName()), spooled.bytes());
        if (!spooled.tooLarge()) {
            details.put("sha256", spooled.sha256().hex());
        }
        details.put("reason", refused.reason().slug());
        details.put("detail", refused.detail());
        details.put("errorsTotal", refused.total());
        List<Map<String, Object>> errors = new ArrayList<>();
        for (FileError error : refused.errors()) {
            errors.add(Map.of("line", error.line(), "column", error.column(), "message", error.message()));
        }
        details.put("errors", errors);
        apart.executeWithoutResult(transaction ->
                trail.record(actor, "evidence-refused", file.number().value(), details));
        return refused;
    }

    private static Map<String, Object> named(String fileName, long bytes) {
        Map<String, Object> details = new LinkedHashMap<>();
        details.put("fileName", fileName);
        details.put("bytes", bytes);
        return details;
    }

    private EvidenceItem item(Actor actor, CaseRef file, Upload upload, Spooled spooled, String note, Parsed parsed) {
        String key = file.serial().value() + "|" + file.vin().value() + "|"
                + spooled.sha256().hex();
        return new EvidenceItem(
                UUID.nameUUIDFromBytes(key.getBytes(UTF_8)),
                file.id(),
                spooled.sha256(),
                parsed.kind(),
                upload.origin(),
                Labels.fileName(upload.fileName()),
                parsed.mediaType(),
                spooled.bytes(),
                parsed.reading() instanceof Recording recording ? recording.rows() : null,
                parsed.reading() instanceof Recording recording ? recording.durationS() : null,
                List.of(),
                parsed.ignored(),
                note,
                clock.instant().truncatedTo(ChronoUnit.MICROS),
                actor.user(),
                parsed.takenAt());
    }

    private static void delete(Path spool) {
        try {
            if (spool != null) {
                Files.deleteIfExists(spool);
            }
        } catch (IOException e) {
            spool.toFile().deleteOnExit();
        }
    }
}
