package org.voltdocket.claim;

import io.swagger.v3.oas.annotations.media.Schema;
import java.time.Instant;
import org.voltdocket.trail.TrailEntry;

/**
 * What somebody did to a case or its claim while another was reading it.
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
