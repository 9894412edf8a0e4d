package org.voltdocket.evidence;

import java.time.OffsetDateTime;
import java.util.List;
import org.voltdocket.diagnosis.EvidenceKind;
import org.voltdocket.diagnosis.Reading;

/**
 * A file that was read.
 *
 * @param reading null for a document
 * @param takenAt null where the file does not say
 */
record Parsed(EvidenceKind kind, String mediaType, Reading reading, List<String> ignored, OffsetDateTime takenAt)
        implements Outcome {}
