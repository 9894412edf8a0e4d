package org.voltdocket.assessment.edition;

import java.time.Instant;
import org.voltdocket.kernel.Sha256;

/**
 * A stored edition.
 *
 * @param name for example {@code 2026.1}
 * @param sha256 digest of its text
 * @param released false while it is in the making: it may be tried, no assessment that is kept may rest on it
 * @param origin {@code shipped} with the program or {@code uploaded}
 * @param keptBy account that uploaded it, {@code system} for a shipped one
 */
public record Edition(String name, Sha256 sha256, boolean released, String origin, Instant keptAt, String keptBy) {}
