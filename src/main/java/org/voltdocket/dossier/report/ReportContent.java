package org.voltdocket.dossier.report;

import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import org.voltdocket.diagnosis.Assessment;
import org.voltdocket.diagnosis.Reading;
import org.voltdocket.dossier.Dossier;
import org.voltdocket.evidence.Series;

/**
 * What the parts of a report print.
 *
 * @param series of each recording, thinned for drawing
 * @param readings of each test record
 */
record ReportContent(Dossier dossier, Map<UUID, Series> series, Map<UUID, Reading> readings) {

    Optional<Assessment> assessment() {
        return dossier.assessment().map(kept -> kept.assessment());
    }
}
