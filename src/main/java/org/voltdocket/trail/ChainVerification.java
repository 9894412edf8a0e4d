package org.voltdocket.trail;

import java.time.Instant;
import java.util.Optional;

/**
 * What a walk along the chain found.
 *
 * @param entries how many entries were read, up to and including a broken one
 * @param head the last entry read that held; empty where there is none
 * @param firstBroken the first link that does not hold; empty where the whole chain holds
 */
public record ChainVerification(long entries, Optional<TrailHead> head, Optional<BrokenLink> firstBroken) {

    /** What can be wrong with a link. */
    public enum Fault {
        /** What an entry says was changed: its content no longer gives its hash. */
        CONTENT,
        /** The hash of an entry was changed; its content still gives the one that the next entry names. */
        HASH,
        /** An entry does not name the one before it: entries were moved, exchanged or put in between. */
        ORDER,
        /** An entry is not there. */
        MISSING,
        /** The chain ends before an entry that was noted as its head. */
        CUT,
        /** The chain holds in itself and is another one than noted: it was written anew. */
        REWRITTEN;

        /** The stable identifier used in JSON. */
        public String id() {
            return name().toLowerCase(java.util.Locale.ROOT);
        }
    }

    /**
     * A link that does not hold.
     *
     * @param position the entry where the chain breaks
     * @param at when that entry happened by its own word; of a missing one, the next one there; empty where none is
     * @param why what does not fit, in words
     */
    public record BrokenLink(long position, Optional<Instant> at, Fault fault, String why) {}

    /** Whether every link holds. */
    public boolean holds() {
        return firstBroken.isEmpty();
    }
}
