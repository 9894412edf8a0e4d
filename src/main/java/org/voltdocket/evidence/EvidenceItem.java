package org.voltdocket.evidence;

import java.time.Instant;
import java.time.OffsetDateTime;
import java.util.List;
import java.util.Locale;
import java.util.UUID;
import org.voltdocket.diagnosis.Channel;
import org.voltdocket.diagnosis.EvidenceKind;
import org.voltdocket.diagnosis.Origin;
import org.voltdocket.kernel.Sha256;

/**
 * One item of evidence without its content.
 *
 * @param id the same for the same bytes in a case of the same serial and VIN, on any server
 * @param fileName as sent, without path, control characters and direction marks
 * @param mediaType told by content
 * @param bytes size of the original
 * @param rows rows of a recording; null for anything else
 * @param durationS from first to last row of a recording, s; null for anything else
 * @param channels columns of a recording that hold at least one value; empty for anything else
 * @param ignored columns or members that were kept in the original but not read
 * @param note the sender's words; may be null
 * @param takenAt clock time of the test or of the recording's first row; null where the file does not say
 */
public record EvidenceItem(
        UUID id,
        UUID caseId,
        Sha256 sha256,
        EvidenceKind kind,
        Origin origin,
        String fileName,
        String mediaType,
        long bytes,
        Integer rows,
        Double durationS,
        List<Channel> channels,
        List<String> ignored,
        String note,
        Instant receivedAt,
        String receivedBy,
        OffsetDateTime takenAt) {

    public EvidenceItem {
        channels = List.copyOf(channels);
        ignored = List.copyOf(ignored);
    }

    /** Whether this is one of the recording kinds. */
    public boolean isRecording() {
        return rows != null;
    }

    /** The file name with an extension of its media type, for downloads: a name must not pretend another kind of file. */
    public String downloadName() {
        List<String> extensions = switch (mediaType) {
            case "text/csv" -> List.of(".csv", ".txt");
            case "application/gzip" -> List.of(".csv.gz", ".gz");
            case "application/json" -> List.of(".json");
            case "application/pdf" -> List.of(".pdf");
            case "image/jpeg" -> List.of(".jpg", ".jpeg");
            case "image/png" -> List.of(".png");
            default -> List.of(".bin");
        };
        String lower = fileName.toLowerCase(Locale.ROOT);
        return extensions.stream().anyMatch(lower::endsWith)
                ? fileName
                : fileName.replaceFirst("(?<=.)\\.[^.\\s]{1,8}$", "") + extensions.get(0);
    }
}
