package org.voltdocket.casefile;

/** Somebody changed the case since it was read. Answered 412; nothing was changed. */
public final class VersionConflict extends RuntimeException {

    private static final long serialVersionUID = 1L;

    VersionConflict(CaseRef ref) {
        super("Case " + ref.number() + " was changed since you read it. Nothing was changed now: read it again and"
                + " repeat what still applies.");
    }
}
