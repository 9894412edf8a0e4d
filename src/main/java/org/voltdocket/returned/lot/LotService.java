package org.voltdocket.returned.lot;

import java.util.List;
import java.util.UUID;
import org.voltdocket.kernel.Actor;
import org.voltdocket.kernel.RequestException;

/** Draws samples of returned batteries for testing (ISO 2859-1). For actors who may audit. */
public interface LotService {

    /** Workshops and batches with pending batteries, most first. */
    List<Lot.Source> sources(Actor actor);

    /**
     * Forms a lot of all pending batteries of a source and draws their order from a random seed, which is stored.
     *
     * @throws RequestException (409) if fewer than two wait, or inspection of the source is discontinued
     */
    Lot draw(Actor actor, Lot.Request wish);

    /** All lots, the latest first. */
    List<Lot> all(Actor actor);

    /** @throws org.voltdocket.casefile.NotFoundException if there is none */
    Lot.Details whole(Actor actor, UUID id);
}
