package org.voltdocket.evidence;

import java.util.UUID;
import org.voltdocket.kernel.Actor;

/** Draws recordings. */
public interface SeriesService {

    /**
     * A section of a recording, reduced so that every minimum and maximum remains.
     *
     * @throws org.voltdocket.kernel.RequestException (404) if there is none, or not for this actor
     * @throws org.voltdocket.kernel.RequestException if the query is invalid, or the item is not a recording
     */
    Series read(Actor actor, UUID evidenceId, SeriesQuery query);
}
