package org.voltdocket.trail;

import java.security.SecureRandom;
import java.time.Clock;
import java.util.HexFormat;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;
import org.voltdocket.kernel.Actor;
import org.voltdocket.kernel.Sha256;

/** The record of what happened. It is written with the deed or not at all: both stand in one transaction. */
@Service
public class Trail {

    /** The act that says that the earlier details of its subject were erased. */
    public static final String ERASED = "case-erased";

    private static final SecureRandom RANDOM = new SecureRandom();

    private final TrailRepository store;
    private final CanonicalJson json;
    private final Clock clock;

    Trail(TrailRepository store, CanonicalJson json, Clock clock) {
        this.store = store;
        this.json = json;
        this.clock = clock;
    }

    /**
     * Appends one entry in the caller's transaction, or in one of its own where there is none.
     *
     * <p>The chain is serialised by a lock that is held until the transaction ends: take locks of your own first and
     * record as the last step, so that two transactions never wait for each other.
     *
     * @param act what was done, in lower case with hyphens, such as {@code case-opened}
     * @param subject what it was done to; of a case its number
     * @param details anything JSON can carry: text, numbers, lists, maps, records
     */
    @Transactional
    public void record(Actor actor, String act, String subject, Map<String, ?> details) {
        if (act == null || act.isBlank() || subject == null || subject.isBlank()) {
            throw new IllegalArgumentException("a trail entry names an act and a subject");
        }
        store.lock();
        Optional<ChainedEntry> last = store.last();
        ChainedEntry next = new ChainedEntry(
                last.map(ChainedEntry::position).orElse(0L) + 1,
                clock.instant(),
                actor.user(),
                actor.role().name(),
                actor.workshop().orElse(null),
                act,
                subject,
                json.write(details),
                last.map(ChainedEntry::hash).orElse(ChainedEntry.START),
                null,
                null,
                salt());
        store.append(next.sealed(json));
    }

    private static String salt() {
        byte[] salt = new byte[16];
        RANDOM.nextBytes(salt);
        return HexFormat.of().formatHex(salt);
    }

    /**
     * Erases the details of all entries of a subject and records the erasure. Acts, actors and times stay, and the chain still
     * verifies.
     */
    @Transactional
    public void erase(Actor actor, String subject, Map<String, ?> details) {
        store.lock();
        store.eraseDetails(subject);
        record(actor, ERASED, subject, details);
    }

    /** The entries of a subject, oldest first. */
    @Transactional(readOnly = true)
    public List<TrailEntry> of(String subject) {
        return store.of(subject).stream().map(link -> link.entry(json)).toList();
    }

    /** The entries before a position, newest first; of one subject where one is given. */
    @Transactional(readOnly = true)
    public List<TrailEntry> latest(Optional<String> subject, long before, int limit) {
        return store.before(subject, before, limit).stream()
                .map(link -> link.entry(json))
                .toList();
    }

    /** The last entry of the chain, to be noted outside the server; empty where nothing happened yet. */
    @Transactional(readOnly = true)
    public Optional<TrailHead> head() {
        return store.last().map(link -> new TrailHead(link.position(), new Sha256(link.hash())));
    }

    /** Walks the whole chain without a noted head; see {@link #verify(Optional)}. */
    @Transactional(readOnly = true)
    public ChainVerification verify() {
        return verify(Optional.empty());
    }

    /**
     * Walks the whole chain, one entry in memory at a time, and names the first link that does not hold: an entry changed,
     * missing, moved, exchanged or put in between. Entries cut off at the very end leave a shorter chain that holds in
     * itself, and a chain written anew holds too: only a head noted outside the server shows those.
     */
    @Transactional(readOnly = true)
    public ChainVerification verify(Optional<TrailHead> noted) {
        ChainReader walk = new ChainReader(json, noted);
        store.each(walk::step);
        return walk.result();
    }
}
