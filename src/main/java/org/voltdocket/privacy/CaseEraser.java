package org.voltdocket.privacy;

import java.util.List;
import org.springframework.stereotype.Component;
import org.voltdocket.casefile.CasePersonalData;
import org.voltdocket.casefile.CaseReference;
import org.voltdocket.claim.repository.ClaimPersonalData;
import org.voltdocket.evidence.original.OriginalEraser;
import org.voltdocket.kernel.Vin;

/** Erases the personal data of one case in all tables but the trail's, in the caller's transaction. */
@Component
class CaseEraser {

    private final CasePersonalData cases;
    private final OriginalEraser originals;
    private final ClaimPersonalData claims;
    private final Pseudonyms pseudonyms;

    CaseEraser(CasePersonalData cases, OriginalEraser originals, ClaimPersonalData claims, Pseudonyms pseudonyms) {
        this.cases = cases;
        this.originals = originals;
        this.claims = claims;
        this.pseudonyms = pseudonyms;
    }

    /** Waits until no other transaction changes the case. */
    CaseReference lock(CaseReference ref) {
        cases.lock(ref.id());
        return ref;
    }

    /** @return the originals whose bytes are removed; objects in a store are still there */
    List<OriginalEraser.Removed> erase(CaseReference ref, ErasurePart part) {
        List<OriginalEraser.Removed> removed = originals.erase(ref.id(), part.kinds());
        if (part == ErasurePart.CASE) {
            Vin pseudonym = pseudonyms.of(ref.vin());
            originals.eraseTexts(ref.id());
            claims.erase(ref.id(), pseudonym);
            cases.erase(ref.id(), pseudonym);
        }
        return removed;
    }

    /** After the commit: what is no longer referred to is removed from the object store. */
    void removeObjects(List<OriginalEraser.Removed> removed) {
        originals.removeObjects(removed);
    }
}
