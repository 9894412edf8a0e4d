package org.voltdocket.dossier;

import org.voltdocket.kernel.Actor;
import org.voltdocket.kernel.CaseNumber;

/** Reads dossiers. */
public interface Dossiers {

    /** @throws org.voltdocket.casefile.NotVisible if there is no such case for this actor */
    Dossier of(Actor actor, CaseNumber number);
}
