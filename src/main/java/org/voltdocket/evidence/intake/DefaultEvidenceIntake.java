package org.voltdocket.evidence.intake;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import org.springframework.stereotype.Service;
import org.voltdocket.casefile.CaseReference;
import org.voltdocket.casefile.CaseService;
import org.voltdocket.diagnosis.Evidence;
import org.voltdocket.diagnosis.Recording;
import org.voltdocket.diagnosis.read.FileLimits;
import org.voltdocket.diagnosis.read.FileReader;
import org.voltdocket.diagnosis.read.ParsedFile;
import org.voltdocket.diagnosis.read.ReadResult;
import org.voltdocket.diagnosis.read.RejectedFile;
import org.voltdocket.diagnosis.read.TextCleaner;
import org.voltdocket.evidence.AlreadyStored;
import org.voltdocket.evidence.EvidenceIntake;
import org.voltdocket.evidence.EvidenceItem;
import org.voltdocket.evidence.IntakeResult;
import org.voltdocket.evidence.Rejected;
import org.voltdocket.evidence.Stored;
import org.voltdocket.evidence.Upload;
import org.voltdocket.evidence.original.OriginalFileStore;
import org.voltdocket.evidence.storage.EvidenceItemRepository;
import org.voltdocket.evidence.storage.MemoryLimiter;
import org.voltdocket.kernel.Actor;
import org.voltdocket.trail.Trail;

/** Receives a file: spools it, computes its digest, reads it, uploads it to the object store if there is one, writes it. */
@Service
class DefaultEvidenceIntake implements EvidenceIntake {

    private static final int LONGEST_NOTE = 4000;

    private final CaseService cases;
    private final EvidenceItemRepository items;
    private final OriginalFileStore originals;
    private final EvidenceWriter writer;
    private final Trail trail;
    private final MemoryLimiter memory;
    private final Clock clock;

    DefaultEvidenceIntake(
            CaseService cases,
            EvidenceItemRepository items,
            OriginalFileStore originals,
            EvidenceWriter writer,
            Trail trail,
            MemoryLimiter memory,
            Clock clock) {
        this.cases = cases;
        this.items = items;
        this.originals = originals;
        this.writer = writer;
        this.trail = trail;
        this.memory = memory;
        this.clock = clock;
    }

    @Override
    public IntakeResult store(Actor actor, CaseReference file, Upload upload) {
        CaseReference visible = cases.require(actor, file.id());
        Path spool = null;
        try {
            spool = Files.createTempFile("voltdocket-", ".upload");
            return store(actor, visible, upload, spool);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        } finally {
            delete(spool);
        }
    }

    private IntakeResult store(Actor actor, CaseReference file, Upload upload, Path spool) throws IOException {
        SpooledUpload spooled = SpooledUpload.take(upload.content(), spool);
        if (spooled.tooLarge()) {
            return reject(
                    actor,
                    file,
                    upload,
                    spooled,
                    new RejectedFile(
                            RejectedFile.Reason.TOO_LARGE,
                            "The file is larger than " + FileLimits.FILE_MIB
                                    + " MiB. Cut the recording into several, or compress it with gzip."));
        }
        Optional<EvidenceItem> known = items.find(file.id(), spooled.sha256());
        if (known.isPresent()) {
            return new AlreadyStored(known.get());
        }
        String note = TextCleaner.note(upload.note());
        if (note != null && note.length() > LONGEST_NOTE) {
            return reject(
                    actor,
                    file,
                    upload,
                    spooled,
                    new RejectedFile(
                            RejectedFile.Reason.NOTE,
                            "The note has " + note.length() + " characters, " + LONGEST_NOTE
                                    + " at most. Shorten it."));
        }
        try (MemoryLimiter.Lease lease = memory.lease()) {
            ReadResult result = new FileReader(spool, clock.instant(), lease::reserve).read();
            if (result instanceof RejectedFile rejected) {
                return reject(actor, file, upload, spooled, rejected);
            }
            ParsedFile parsed = (ParsedFile) result;
            EvidenceItem item = item(actor, file, upload, spooled, note, parsed);
            OriginalFileStore.Place place = originals.bring(item.sha256(), spool);
            boolean added = writer.write(actor, file, item, parsed.reading(), spool, place);
            EvidenceItem stored = items.find(file.id(), item.sha256()).orElseThrow();
            return added ? new Stored(stored) : new AlreadyStored(stored);
        } catch (EvidenceWriter.CaseFullException full) {
            return reject(
                    actor, file, upload, spooled, new RejectedFile(RejectedFile.Reason.CASE_FULL, full.getMessage()));
        }
    }

    private Rejected reject(
            Actor actor, CaseReference file, Upload upload, SpooledUpload spooled, RejectedFile rejected) {
        Map<String, Object> details = new LinkedHashMap<>();
        details.put("fileName", TextCleaner.fileName(upload.fileName()));
        details.put("bytes", spooled.bytes());
        if (!spooled.tooLarge()) {
            details.put("sha256", spooled.sha256().hex());
        }
        details.put("reason", rejected.reason().slug());
        details.put("detail", rejected.detail());
        details.put("errorsTotal", rejected.total());
        details.put(
                "errors",
                rejected.errors().stream()
                        .map(error ->
                                Map.of("line", error.line(), "column", error.column(), "message", error.message()))
                        .toList());
        trail.record(actor, "evidence-refused", file.number().value(), details);
        return new Rejected(rejected);
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
                java.util.List.of(),
                parsed.ignored(),
                note,
                clock.instant(),
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
