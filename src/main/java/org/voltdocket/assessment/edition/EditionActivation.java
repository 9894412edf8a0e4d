package org.voltdocket.assessment.edition;

import java.time.Instant;
import org.voltdocket.kernel.Sha256;

/** That an edition was put in force: since when, by whom and why. */
public record EditionActivation(String name, Sha256 sha256, Instant since, String by, String reason) {}
