package org.voltdocket.trail;

import java.util.Optional;

/**
 * What a walk along the chain found.
 *
 * @param entries how many entries were read, up to and including a broken one
 * @param firstBroken the first link that does not hold; empty where the whole chain holds
 */
public record TrailCheck(long entries, Optional<BrokenLink> firstBroken) {

    /**
     * A link that does not hold.
     *
     * @param position the entry where the chain breaks
     * @param why what does not fit, in words
     */
    public record BrokenLink(long position, String why) {}

    /** Whether every link holds. */
    public boolean holds() {
        return firstBroken.isEmpty();
    }
}
