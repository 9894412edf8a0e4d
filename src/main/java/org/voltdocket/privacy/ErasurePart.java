package org.voltdocket.privacy;

import java.util.Arrays;
import java.util.Optional;
import java.util.stream.Stream;
import org.voltdocket.diagnosis.EvidenceKind;

/** What is erased of a case at once. */
public enum ErasurePart {
    /** Original files of photos and other documents. */
    DOCUMENTS("documents", EvidenceKind.DOCUMENT),
    /** All original files. What was read from them stays. */
    ORIGINALS("originals", EvidenceKind.values()),
    /** All original files, VIN, free text, and the details of the trail. */
    CASE("case", EvidenceKind.values());

    private final String id;
    private final EvidenceKind[] kinds;

    ErasurePart(String id, EvidenceKind... kinds) {
        this.id = id;
        this.kinds = kinds;
    }

    public String id() {
        return id;
    }

    /** Identifiers of the kinds of evidence whose originals are erased. */
    String[] kinds() {
        return Stream.of(kinds).map(EvidenceKind::id).toArray(String[]::new);
    }

    static Optional<ErasurePart> of(String id) {
        return Arrays.stream(values()).filter(part -> part.id.equals(id)).findFirst();
    }
}
