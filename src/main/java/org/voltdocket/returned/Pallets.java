package org.voltdocket.returned;

import java.util.List;
import java.util.UUID;
import org.voltdocket.kernel.Actor;

/** The pallets that batteries come on. For {@code AUDITOR} and {@code ADMIN}. */
public interface Pallets {

    /**
     * Notes a pallet with its list.
     *
     * @throws ReturnRefused if anything in it cannot be right; every wrong line is named
     * @throws ReturnConflict if its number is taken
     */
    Pallet note(Actor actor, PalletNote note);

    /** All pallets, the latest first. */
    List<Pallet> all(Actor actor);

    /** @throws org.voltdocket.casefile.NotVisible if there is none */
    Pallet.Whole whole(Actor actor, UUID id);
}
