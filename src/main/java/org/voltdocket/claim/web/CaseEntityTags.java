package org.voltdocket.claim.web;

import org.voltdocket.kernel.Actor;
import org.voltdocket.kernel.CaseNumber;

/**
 * Computes the entity tag (RFC 9110) of a case, which the answers to claim requests carry. The package that writes cases as
 * JSON implements it, because the tag covers the whole case.
 */
public interface CaseEntityTags {

    /** The entity tag of the case as the actor sees it now, with its quotation marks. */
    String of(Actor actor, CaseNumber number);
}
