package org.voltdocket.privacy;

import java.time.Period;
import java.util.Optional;
import org.springframework.boot.context.properties.ConfigurationProperties;

/**
 * How long personal data is kept after the last activity of a case; nothing is due for erasure without a period.
 *
 * @param documents photos and other documents, such as {@code P3Y}
 * @param originals all original files
 * @param cases VIN, free text and everything else of a case
 */
@ConfigurationProperties("voltdocket.retention")
record RetentionSettings(Period documents, Period originals, Period cases) {

    Optional<Period> of(ErasurePart part) {
        return Optional.ofNullable(
                switch (part) {
                    case DOCUMENTS -> documents;
                    case ORIGINALS -> originals;
                    case CASE -> cases;
                });
    }
}
