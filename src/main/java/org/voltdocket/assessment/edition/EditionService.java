package org.voltdocket.assessment.edition;

import java.io.ByteArrayInputStream;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.ConcurrentHashMap;
import org.springframework.context.annotation.DependsOn;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;
import org.voltdocket.assessment.CurrentEdition;
import org.voltdocket.diagnosis.rulebook.Rulebook;
import org.voltdocket.kernel.Actor;
import org.voltdocket.kernel.FreeText;
import org.voltdocket.kernel.Sha256;
import org.voltdocket.trail.Trail;

/**
 * The editions of the rule book and which one is in force. It is read from the database each time, so that
 * every node uses it from the moment it was put in force.
 */
@Service
@DependsOn("shippedEditionsLoader")
public class EditionService implements CurrentEdition {

    private static final int LEAST_REASON = 10;

    private final EditionRepository store;
    private final Trail trail;
    /** Cache; the text of a digest never changes. */
    private final Map<Sha256, Rulebook> read = new ConcurrentHashMap<>();

    EditionService(EditionRepository store, Trail trail) {
        this.store = store;
        this.trail = trail;
    }

    /** All stored texts, newest first. */
    public List<Edition> all() {
        return store.all();
    }

    /**
     * The released text of a name, or the newest draft.
     *
     * @throws org.voltdocket.kernel.RequestException if there is none
     */
    public Edition require(String name) {
        return store.find(name).orElseThrow(() -> EditionErrors.unknown(name));
    }

    /** @throws org.voltdocket.kernel.RequestException if there is none */
    public Edition require(Sha256 sha256) {
        return store.find(sha256).orElseThrow(() -> EditionErrors.unknown(sha256.hex()));
    }

    /** The edition that new assessments are made by. */
    public Edition inForce() {
        return require(store.inForce().orElseThrow(() -> new IllegalStateException("no edition is in force")));
    }

    @Override
    public Rulebook rulebook() {
        return rulebook(store.inForce().orElseThrow(() -> new IllegalStateException("no edition is in force")));
    }

    /** The activations, newest first. */
    public List<EditionActivation> history() {
        return store.history();
    }

    /**
     * An edition as a rule book.
     *
     * @throws org.voltdocket.kernel.RequestException if there is none
     * @throws IllegalArgumentException if this program cannot read it, for example because it needs a quantity of a later version
     */
    public Rulebook rulebook(Sha256 sha256) {
        return read.computeIfAbsent(sha256, digest -> Rulebook.read(new ByteArrayInputStream(content(digest))));
    }

    /** The text, byte for byte. */
    public byte[] content(Sha256 sha256) {
        return store.content(sha256).orElseThrow(() -> EditionErrors.unknown(sha256.hex()));
    }

    /** How an edition differs from the one in force. */
    public EditionDiff difference(Sha256 sha256) {
        return EditionDiff.between(content(inForce().sha256()), content(sha256));
    }

    /**
     * Stores an uploaded text; the same bytes again return the existing edition.
     *
     * @throws org.voltdocket.kernel.RequestException if it is not an edition, or its name is that of a released edition
     */
    @Transactional
    public Edition keep(Actor actor, byte[] text) {
        List<EditionError> errors = EditionValidator.errors(text);
        if (!errors.isEmpty()) {
            throw EditionErrors.text(errors);
        }
        Rulebook book = Rulebook.read(new ByteArrayInputStream(text));
        Optional<Edition> same = store.find(book.sha256());
        if (same.isPresent()) {
            return same.get();
        }
        boolean taken = store.find(book.edition()).filter(Edition::released).isPresent();
        if (taken || !store.keep(book.edition(), book.sha256(), book.released(), "uploaded", text, actor.user())) {
            throw EditionErrors.nameTaken(book.edition());
        }
        trail.record(
                actor,
                "edition-uploaded",
                "edition/" + book.edition(),
                Map.of("sha256", book.sha256().hex(), "inTheMaking", !book.released()));
        return require(book.sha256());
    }

    /**
     * Puts a released edition in force, for the next assessment on every node. Earlier assessments remain.
     *
     * @throws org.voltdocket.kernel.RequestException if there is none, it is a draft or in force already, or the reason is missing
     */
    @Transactional
    public void putInForce(Actor actor, Sha256 sha256, String reason) {
        String why =
                FreeText.optional("edition-reason-missing", "reason", reason).orElse("");
        if (why.length() < LEAST_REASON) {
            throw EditionErrors.reason();
        }
        Edition edition = require(sha256);
        if (!edition.released()) {
            throw EditionErrors.draft(edition.name());
        }
        rulebook(sha256);
        store.lockInForce();
        Edition before = inForce();
        if (before.sha256().equals(sha256)) {
            throw EditionErrors.inForceAlready(edition.name());
        }
        store.putInForce(sha256, actor.user(), why);
        trail.record(
                actor,
                "edition-put-in-force",
                "edition/" + edition.name(),
                Map.of("sha256", sha256.hex(), "before", before.name(), "reason", why));
    }
}
