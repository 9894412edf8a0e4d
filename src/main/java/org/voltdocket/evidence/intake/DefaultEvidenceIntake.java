package org.voltdocket.evidence.intake;

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
import org.springframework.context.ApplicationEventPublisher;
import org.springframework.stereotype.Service;
import org.springframework.transaction.PlatformTransactionManager;
import org.springframework.transaction.TransactionDefinition;
import org.springframework.transaction.support.TransactionTemplate;
import org.voltdocket.casefile.CaseReference;
import org.voltdocket.casefile.CaseService;
import org.voltdocket.diagnosis.Evidence;
import org.voltdocket.diagnosis.Reading;
import org.voltdocket.diagnosis.Recording;
import org.voltdocket.diagnosis.read.FileError;
import org.voltdocket.diagnosis.read.FileReader;
import org.voltdocket.diagnosis.read.ParsedFile;
import org.voltdocket.diagnosis.read.ReadResult;
import org.voltdocket.diagnosis.read.RejectedFile;
import org.voltdocket.diagnosis.read.TextCleaner;
import org.voltdocket.evidence.AlreadyStored;
import org.voltdocket.evidence.EvidenceIntake;
import org.voltdocket.evidence.EvidenceItem;
import org.voltdocket.evidence.EvidenceStoredEvent;
import org.voltdocket.evidence.IntakeResult;
import org.voltdocket.evidence.Rejected;
import org.voltdocket.evidence.Stored;
import org.voltdocket.evidence.Upload;
import org.voltdocket.evidence.storage.EvidenceItemRepository;
import org.voltdocket.evidence.storage.OriginalFileStore;
import org.voltdocket.evidence.storage.ReadingRepository;
import org.voltdocket.kernel.Actor;
import org.voltdocket.trail.Trail;

/** The way of an upload: disk, digest, kind, reading, store where there is one, one transaction. */
@Service
class DefaultEvidenceIntake implements EvidenceIntake {

    private static final int MOST_NOTE = 4000;

    private final CaseService cases;
    private final EvidenceItemRepository items;
    private final OriginalFileStore raw;
    private final ReadingRepository readings;
    private final Trail trail;
    private final MemoryLimiter gate;
    private final Clock clock;
    private final ApplicationEventPublisher news;
    private final TransactionTemplate together;
    private final TransactionTemplate apart;

    DefaultEvidenceIntake(
            CaseService cases,
            EvidenceItemRepository items,
            OriginalFileStore raw,
            ReadingRepository readings,
            Trail trail,
            MemoryLimiter gate,
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
    public IntakeResult accept(Actor actor, CaseReference file, Upload upload) {
        CaseReference seen = cases.require(actor, file.id());
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

    private IntakeResult received(Actor actor, CaseReference file, Upload upload, Path spool) throws IOException {
        SpooledUpload spooled = SpooledUpload.take(upload.content(), spool);
        if (spooled.tooLarge()) {
            return refuse(
                    actor,
                    file,
                    upload,
                    spooled,
                    new RejectedFile(
                            RejectedFile.Reason.TOO_LARGE,
                            "The file is larger than 64 MiB. Cut the recording into several, or compress it with gzip."));
        }
        Optional<EvidenceItem> known = items.find(file.id(), spooled.sha256());
        if (known.isPresent()) {
            return new AlreadyStored(known.get());
        }
        String note = TextCleaner.note(upload.note());
        if (note != null && note.length() > MOST_NOTE) {
            return refuse(
                    actor,
                    file,
                    upload,
                    spooled,
                    new RejectedFile(
                            RejectedFile.Reason.NOTE,
                            "The note has " + note.length() + " characters, 4000 at most. Shorten it."));
        }
        try (MemoryLimiter.Lease lease = gate.lease()) {
            long others = items.memoryOf(file.id());
            ReadResult outcome = new FileReader(spool, clock.instant(), own -> lease.reserve(own + others)).read();
            if (outcome instanceof RejectedFile refused) {
                return refuse(actor, file, upload, spooled, refused);
            }
            lease.reserve(others);
            ParsedFile parsed = (ParsedFile) outcome;
            Hand hand = new Hand();
            hand.reading = parsed.reading();
            EvidenceItem item = item(actor, file, upload, spooled, note, parsed);
            outcome = null;
            parsed = null;
            return keep(actor, file, item, spool, hand);
        }
    }

    private IntakeResult keep(Actor actor, CaseReference file, EvidenceItem item, Path spool, Hand hand) {
        OriginalFileStore.Place place = raw.bring(item.sha256(), spool);
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
            news.publishEvent(new EvidenceStoredEvent(item.caseId(), item.id()));
            Map<String, Object> details = named(item.fileName(), item.bytes());
            details.put("sha256", item.sha256().hex());
            details.put("evidence", item.id().toString());
            details.put("kind", item.kind().id());
            details.put("origin", item.origin().id());
            trail.record(actor, "evidence-kept", file.number().value(), details);
            return true;
        }));
        EvidenceItem kept = items.find(item.caseId(), item.sha256()).orElseThrow();
        return added ? new Stored(kept) : new AlreadyStored(kept);
    }

    private Rejected refuse(
            Actor actor, CaseReference file, Upload upload, SpooledUpload spooled, RejectedFile refused) {
        Map<String, Object> details = named(TextCleaner.fileName(upload.fileName()), spooled.bytes());
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
        return new Rejected(refused);
    }

    private static Map<String, Object> named(String fileName, long bytes) {
        Map<String, Object> details = new LinkedHashMap<>();
        details.put("fileName", fileName);
        details.put("bytes", bytes);
        return details;
    }

    private EvidenceItem item(
            Actor actor, CaseReference file, Upload upload, SpooledUpload spooled, String note, ParsedFile parsed) {
        return new EvidenceItem(
                Evidence.id(file.serial(), file.vin(), spooled.sha256()),
                file.id(),
                spooled.sha256(),
                parsed.kind(),
                upload.origin(),
                TextCleaner.fileName(upload.fileName()),
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
