package org.voltdocket.returned;

import java.util.List;
import java.util.UUID;
import org.voltdocket.kernel.Actor;
import org.voltdocket.kernel.RequestException;

/** The pallets that batteries come on. For {@code AUDITOR} and {@code ADMIN}. */
public interface PalletService {

    /**
     * Notes a pallet with its list.
     *
     * @throws RequestException (400) if anything in it cannot be right; every wrong line is named
     * @throws RequestException (409) if its number is taken
     */
    Pallet note(Actor actor, PalletDeliveryNote note);

    /** All pallets, the latest first. */
    List<Pallet> all(Actor actor);

    /** @throws org.voltdocket.casefile.NotFoundException if there is none */
    Pallet.Details whole(Actor actor, UUID id);
}
