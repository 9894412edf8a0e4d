package org.voltdocket.returned.pallet;

import java.util.List;
import java.util.UUID;
import org.voltdocket.kernel.Actor;
import org.voltdocket.kernel.RequestException;

/** Pallets of returned batteries. For actors who may audit. */
public interface PalletService {

    /**
     * Registers a pallet with its list.
     *
     * @throws RequestException (400) if it is invalid, with every invalid line
     * @throws RequestException (409) if its number is taken
     */
    Pallet note(Actor actor, PalletDeliveryNote note);

    /** All pallets, the latest first. */
    List<Pallet> all(Actor actor);

    /** @throws org.voltdocket.casefile.NotFoundException if there is none */
    Pallet.Details whole(Actor actor, UUID id);
}
