package org.voltdocket.dossier;

import org.voltdocket.kernel.Actor;
import org.voltdocket.kernel.CaseNumber;

/** Reads dossiers. */
public interface DossierService {

    /** @throws org.voltdocket.casefile.NotFoundException if there is no such case for this actor */
    Dossier of(Actor actor, CaseNumber number);
}
