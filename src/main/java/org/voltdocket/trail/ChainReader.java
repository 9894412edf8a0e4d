package org.voltdocket.trail;

import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import org.voltdocket.kernel.Sha256;
import org.voltdocket.trail.ChainVerification.BrokenLink;
import org.voltdocket.trail.ChainVerification.Fault;

/** A walk along the chain, entry by entry in the order of positions; it remembers one entry and no more. */
final class ChainReader {

    private final CanonicalJson json;
    private final Optional<TrailHead> noted;

    private long read;
    private String previous = ChainedEntry.START;
    private TrailHead head;
    private BrokenLink broken;
    /** An entry whose content does not give its hash; the next one tells which of both was changed. */
    private ChainedEntry doubtful;

    private String doubtfulDigest;

    /** The first entry of each subject whose details are erased, until the entry that records the erasure is read. */
    private final Map<String, ChainedEntry> erased = new LinkedHashMap<>();

    ChainReader(CanonicalJson json, Optional<TrailHead> noted) {
        this.json = json;
        this.noted = noted;
    }

    /** @return false as soon as the rest does not matter */
    boolean step(ChainedEntry link) {
        if (doubtful != null) {
            boolean hashOnly = link.position() == read + 1 && link.previous().equals(doubtfulDigest);
            settle(hashOnly ? Fault.HASH : Fault.CONTENT);
            return false;
        }
        read++;
        if (link.position() != read) {
            String which = link.position() == read + 1
                    ? "entry " + read + " is"
                    : "entries " + read + " to " + (link.position() - 1) + " are";
            found(link, read, Fault.MISSING, which + " missing: the next one there has position " + link.position());
            return false;
        }
        if (!link.previous().equals(previous)) {
            found(
                    link,
                    read,
                    Fault.ORDER,
                    "entry " + read
                            + " does not name the entry before it: entries were moved, exchanged or put in between");
            return false;
        }
        String digest = link.digest(json);
        if (!link.hash().equals(digest)) {
            doubtful = link;
            doubtfulDigest = digest;
            return true;
        }
        if (!link.detailsHold()) {
            found(link, read, Fault.CONTENT, "entry " + read + " was changed: its details no longer give their digest");
            return false;
        }
        if (link.isErased()) {
            erased.putIfAbsent(link.subject(), link);
        } else if (link.act().equals(Trail.ERASED)) {
            erased.remove(link.subject());
        }
        if (noted.isPresent()
                && noted.get().position() == read
                && !noted.get().hash().hex().equals(digest)) {
            found(
                    link,
                    read,
                    Fault.REWRITTEN,
                    "entry " + read + " has another hash than recorded: the trail up to here was rewritten");
            return false;
        }
        head = new TrailHead(read, new Sha256(digest));
        previous = digest;
        return true;
    }

    private void settle(Fault fault) {
        String why = fault == Fault.HASH
                ? "the hash of entry " + read + " was changed: its content gives the one that the next entry names"
                : "entry " + read + " was changed: its content no longer gives its hash";
        found(doubtful, read, fault, why);
    }

    private void found(ChainedEntry link, long position, Fault fault, String why) {
        broken = new BrokenLink(position, Optional.of(link.at()), fault, why);
    }

    ChainVerification result() {
        if (broken == null && doubtful != null) {
            settle(Fault.CONTENT);
        }
        if (broken == null && !erased.isEmpty()) {
            ChainedEntry first = erased.values().iterator().next();
            String why = "the details of entry " + first.position()
                    + " are missing, and no later entry of its subject records an erasure";
            found(first, first.position(), Fault.CONTENT, why);
        }
        if (broken == null && noted.isPresent() && noted.get().position() > read) {
            broken = new BrokenLink(
                    read + 1,
                    Optional.empty(),
                    Fault.CUT,
                    "the chain ends at entry " + read + ", and entry "
                            + noted.get().position() + " was noted as its head: the end was cut off");
        }
        return new ChainVerification(read, Optional.ofNullable(head), Optional.ofNullable(broken));
    }
}
