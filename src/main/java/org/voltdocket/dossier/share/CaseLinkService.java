package org.voltdocket.dossier.share;

import java.nio.charset.StandardCharsets;
import java.security.SecureRandom;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.Base64;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;
import org.voltdocket.casefile.CaseReference;
import org.voltdocket.casefile.CaseService;
import org.voltdocket.kernel.Actor;
import org.voltdocket.kernel.CaseNumber;
import org.voltdocket.kernel.RequestException;
import org.voltdocket.kernel.Sha256;
import org.voltdocket.trail.Trail;

/** Creates, revokes and opens links to cases. */
@Service
public class CaseLinkService {

    /** Longest life of a link, days. */
    static final int MAX_DAYS = 90;

    /** Bytes of a secret: 128 bits. */
    private static final int SECRET_BYTES = 16;

    private final CaseService cases;
    private final CaseLinkRepository links;
    private final Trail trail;
    private final Clock clock;
    private final SecureRandom random = new SecureRandom();

    CaseLinkService(CaseService cases, CaseLinkRepository links, Trail trail, Clock clock) {
        this.cases = cases;
        this.links = links;
        this.trail = trail;
        this.clock = clock;
    }

    /**
     * A new link.
     *
     * @param secret part of its address, shown this once: the database has its digest only
     */
    public record NewLink(CaseLink link, String secret) {}

    /**
     * Creates a link.
     *
     * @param days how long it opens the case, 1 to 90
     */
    @Transactional
    public NewLink create(Actor actor, CaseNumber number, int days) {
        CaseReference ref = cases.requireToFeed(actor, number);
        if (days < 1 || days > MAX_DAYS) {
            throw RequestException.invalid(
                    "link-refused", "days", "A link lives 1 to " + MAX_DAYS + " days; read " + days + ".");
        }
        byte[] bytes = new byte[SECRET_BYTES];
        random.nextBytes(bytes);
        String secret = Base64.getUrlEncoder().withoutPadding().encodeToString(bytes);
        Instant now = clock.instant().truncatedTo(ChronoUnit.MICROS);
        CaseLink link = new CaseLink(
                UUID.randomUUID(), ref.id(), now, actor.user(), now.plus(Duration.ofDays(days)), null, 0, null);
        links.add(link, digest(secret));
        trail.record(
                actor,
                "link-created",
                number.value(),
                Map.of(
                        "link",
                        link.id().toString(),
                        "expiresAt",
                        link.expiresAt().toString()));
        return new NewLink(link, secret);
    }

    /** Ends a link. Safe to repeat. */
    @Transactional
    public void revoke(Actor actor, CaseNumber number, UUID id) {
        cases.requireToFeed(actor, number);
        if (of(actor, number).stream().noneMatch(link -> link.id().equals(id))) {
            throw RequestException.notFound("link " + id);
        }
        if (links.revoke(id, actor, clock.instant())) {
            trail.record(actor, "link-revoked", number.value(), Map.of("link", id.toString()));
        }
    }

    /** Links of a case with their accesses, latest first. */
    public List<CaseLink> of(Actor actor, CaseNumber number) {
        return links.ofCase(cases.require(actor, number).id());
    }

    /**
     * Opens a link and records the access.
     *
     * @return the case
     * @throws RequestException if there is no such link, it expired or was revoked: the answer does not tell which
     */
    @Transactional
    public CaseLink open(String secret) {
        CaseLink link = links.find(digest(secret))
                .filter(found -> found.isOpen(clock.instant()))
                .orElseThrow(() -> RequestException.notFound("link"));
        links.recordAccess(link.id(), clock.instant());
        return link;
    }

    private static Sha256 digest(String secret) {
        return Sha256.wrap(Sha256.digest().digest(secret.getBytes(StandardCharsets.UTF_8)));
    }
}
