package org.voltdocket.dossier.upload;

import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.io.UncheckedIOException;
import java.security.DigestInputStream;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.time.Clock;
import java.time.Duration;
import java.util.Arrays;
import java.util.Base64;
import java.util.Locale;
import java.util.Map;
import java.util.UUID;
import org.springframework.stereotype.Service;
import org.voltdocket.assessment.EvidenceUploadService;
import org.voltdocket.casefile.CaseReference;
import org.voltdocket.casefile.CaseService;
import org.voltdocket.diagnosis.Origin;
import org.voltdocket.diagnosis.read.FileLimits;
import org.voltdocket.diagnosis.read.TextCleaner;
import org.voltdocket.evidence.AlreadyStored;
import org.voltdocket.evidence.EvidenceArchive;
import org.voltdocket.evidence.IntakeResult;
import org.voltdocket.evidence.Rejected;
import org.voltdocket.evidence.Stored;
import org.voltdocket.evidence.Upload;
import org.voltdocket.kernel.Actor;
import org.voltdocket.kernel.CaseNumber;
import org.voltdocket.kernel.RequestException;
import org.voltdocket.kernel.Sha256;

/** Receives a file in parts, and passes it to the intake of all evidence when it is complete. */
@Service
class ResumableUploadService {

    /** How long an upload waits for its next part. */
    static final Duration LIFETIME = Duration.ofDays(7);

    /** Open uploads of one account. */
    static final int OPEN = 20;

    /** Largest part with a checksum: it is held in memory until the checksum is verified. */
    static final int CHECKED_PART = 4 << 20;

    private static final Map<String, String> ALGORITHMS = Map.of("sha1", "SHA-1", "sha256", "SHA-256");
    private static final int BLOCK = 256 << 10;

    private final CaseService cases;
    private final PartialUploadRepository uploads;
    private final EvidenceUploadService evidence;
    private final EvidenceArchive archive;
    private final Clock clock;

    ResumableUploadService(
            CaseService cases,
            PartialUploadRepository uploads,
            EvidenceUploadService evidence,
            EvidenceArchive archive,
            Clock clock) {
        this.cases = cases;
        this.uploads = uploads;
        this.evidence = evidence;
        this.archive = archive;
        this.clock = clock;
    }

    /**
     * Announces a file.
     *
     * @throws RequestException if it is empty or too large, or the account has too many open uploads
     */
    PartialUpload create(Actor actor, CaseNumber number, long bytes, UploadMetadata metadata) {
        CaseReference ref = cases.requireToFeed(actor, number);
        if (bytes <= 0) {
            throw UploadMetadata.invalid("Upload-Length is to be the length of the file in bytes, at least 1.");
        }
        if (bytes > FileLimits.FILE_BYTES) {
            throw RequestException.of(
                    413,
                    "file-too-large",
                    "The file has " + bytes + " bytes; " + FileLimits.FILE_MIB
                            + " MiB are taken. Split the recording.");
        }
        if (uploads.open(actor.user()) >= OPEN) {
            throw RequestException.of(
                    429,
                    "uploads-open",
                    "This account has " + OPEN + " uploads that are not complete. Finish or delete some first.");
        }
        PartialUpload upload = new PartialUpload(
                UUID.randomUUID(),
                ref.id(),
                actor.user(),
                TextCleaner.fileName(metadata.fileName()),
                metadata.note(),
                bytes,
                0,
                metadata.sha256(),
                null,
                clock.instant().plus(LIFETIME));
        uploads.create(upload);
        return upload;
    }

    /** @throws RequestException (404) if there is none, or it is another account's, or it expired */
    PartialUpload find(Actor actor, UUID id) {
        return uploads.find(id, actor.user()).orElseThrow(() -> RequestException.notFound("upload " + id));
    }

    /**
     * Appends a part. Each block is stored as soon as it is there, so that a broken connection loses one block at most; a part with
     * a checksum is stored as a whole or not at all.
     *
     * @param checksum algorithm and digest in Base64, or null
     * @return the upload with all that was received
     */
    PartialUpload append(Actor actor, UUID id, long offset, InputStream body, String checksum) throws IOException {
        PartialUpload upload = find(actor, id);
        if (offset != upload.received() || upload.evidenceId() != null) {
            throw conflict(upload.received());
        }
        long at = offset;
        if (checksum == null) {
            for (byte[] block = next(body, at, upload); block.length > 0; block = next(body, at, upload)) {
                at = store(id, at, block);
            }
        } else {
            byte[] part = body.readNBytes(CHECKED_PART + 1);
            if (part.length > CHECKED_PART || at + part.length > upload.bytes()) {
                throw RequestException.of(
                        413,
                        "upload-headers",
                        "A part with a checksum has 4 MiB at most, and no part" + " goes beyond the end of the file.");
            }
            verify(checksum, part);
            if (part.length > 0) {
                store(id, at, part);
            }
        }
        return find(actor, id);
    }

    /**
     * Turns a complete upload into evidence. Safe to repeat: the same upload gives the same item.
     *
     * @throws RequestException if bytes are missing, or they are not the expected ones
     */
    IntakeResult finish(Actor actor, UUID id) {
        PartialUpload upload = find(actor, id);
        if (upload.evidenceId() != null) {
            return new AlreadyStored(archive.item(actor, upload.evidenceId()));
        }
        if (!upload.complete()) {
            throw conflict(upload.received());
        }
        if (upload.sha256() != null && !upload.sha256().equals(digest(id))) {
            uploads.delete(id);
            throw RequestException.of(
                    409,
                    "upload-checksum",
                    "The bytes received do not have the SHA-256 announced. Send the file again.");
        }
        IntakeResult result = evidence.receive(
                actor,
                cases.require(actor, upload.caseId()),
                new Upload(upload.fileName(), uploads.content(id), upload.note(), Origin.WORKSHOP));
        if (result instanceof Stored stored) {
            uploads.finish(id, stored.item().id());
        } else if (result instanceof AlreadyStored known) {
            uploads.finish(id, known.item().id());
        } else if (result instanceof Rejected) {
            uploads.delete(id);
        }
        return result;
    }

    void delete(Actor actor, UUID id) {
        uploads.delete(find(actor, id).id());
    }

    void deleteExpired() {
        uploads.deleteExpired(clock.instant());
    }

    private static byte[] next(InputStream body, long at, PartialUpload upload) throws IOException {
        return body.readNBytes((int) Math.min(BLOCK, upload.bytes() - at));
    }

    private long store(UUID id, long at, byte[] block) {
        if (!uploads.append(id, at, block)) {
            throw conflict(at);
        }
        return at + block.length;
    }

    private static RequestException conflict(long received) {
        return RequestException.of(
                        409,
                        "upload-offset",
                        "The server has " + received + " bytes of the file. Ask for the offset and continue there.")
                .with("received", received);
    }

    private static void verify(String checksum, byte[] part) {
        String[] given = checksum.strip().split("\\s+", 2);
        String algorithm = ALGORITHMS.get(given[0].toLowerCase(Locale.ROOT));
        if (algorithm == null || given.length < 2) {
            throw UploadMetadata.invalid("Upload-Checksum is to be sha1 or sha256, a blank, and the digest in Base64.");
        }
        try {
            byte[] digest = MessageDigest.getInstance(algorithm).digest(part);
            if (!Arrays.equals(digest, Base64.getDecoder().decode(given[1]))) {
                throw RequestException.of(460, "upload-checksum", "The part was damaged on its way. Send it again.");
            }
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException(e);
        } catch (IllegalArgumentException e) {
            throw UploadMetadata.invalid("The digest in Upload-Checksum is not Base64.");
        }
    }

    private String digest(UUID id) {
        try (DigestInputStream in = new DigestInputStream(uploads.content(id), Sha256.digest())) {
            in.transferTo(OutputStream.nullOutputStream());
            return Sha256.wrap(in.getMessageDigest().digest()).hex();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
