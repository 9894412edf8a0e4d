package org.voltdocket.returned;

import java.util.List;
import java.util.UUID;
import org.voltdocket.kernel.Actor;
import org.voltdocket.kernel.RequestException;

/** Which of many returned batteries are tested (ISO 2859-1). For {@code AUDITOR} and {@code ADMIN}. */
public interface LotService {

    /** Workshops and batches of which batteries wait, most first. */
    List<Lot.Source> sources(Actor actor);

    /**
     * Makes a lot of all batteries of a source that wait, and draws their order by a seed of chance, which is kept.
     *
     * @throws RequestException (409) if fewer than two wait, or inspection of the source is discontinued
     */
    Lot draw(Actor actor, Lot.Request wish);

    /** All lots, the latest first. */
    List<Lot> all(Actor actor);

    /** @throws org.voltdocket.casefile.NotFoundException if there is none */
    Lot.Details whole(Actor actor, UUID id);
}
