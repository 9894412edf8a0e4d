package org.voltdocket.diagnosis.read;

import java.time.OffsetDateTime;
import java.util.List;
import org.voltdocket.diagnosis.EvidenceKind;
import org.voltdocket.diagnosis.Reading;

/**
 * A file that was read successfully.
 *
 * @param reading null for a document
 * @param takenAt null if the file does not say
 */
public record ParsedFile(
        EvidenceKind kind, String mediaType, Reading reading, List<String> ignored, OffsetDateTime takenAt)
        implements ReadResult {}
