package org.voltdocket.claim.view;

import io.swagger.v3.oas.annotations.media.Schema;
import java.time.Instant;
import org.voltdocket.claim.ClaimStep;
import org.voltdocket.trail.TrailEntry;

/**
 * A change of a case or its claim since the caller read it.
 *
 * @param act as the trail names it, such as {@code claim-take}
 */
@Schema(name = "ClaimChange")
public record ClaimChange(Instant at, String by, String act) {

    static ClaimChange of(TrailEntry entry) {
        return new ClaimChange(entry.at(), entry.actor().user(), entry.act());
    }

    static ClaimChange of(ClaimStep step) {
        return new ClaimChange(step.at(), step.by(), "claim-" + step.action().id());
    }
}
