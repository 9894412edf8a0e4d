package org.voltdocket.trail;

import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import org.voltdocket.kernel.Actor;
import org.voltdocket.kernel.Role;
import org.voltdocket.kernel.Sha256;

/**
 * A row as it is hashed and kept: the digest covers the previous digest and every other column; of the details it covers a digest
 * over a random salt and them, so that it still holds when salt and details are erased.
 *
 * @param detailsSha256 SHA-256 over salt, line feed and details
 * @param salt 32 hexadecimal digits; null where the details are erased
 */
record ChainedEntry(
        long position,
        Instant at,
        String actor,
        String role,
        UUID workshop,
        String act,
        String subject,
        String details,
        String previous,
        String hash,
        String detailsSha256,
        String salt) {

    /** What the first entry names as its predecessor. */
    static final String START = "0".repeat(64);

    /** SHA-256 over the previous digest, a line feed, and the canonical JSON of the rest. */
    String digest(CanonicalJson json) {
        Map<String, Object> rest = new LinkedHashMap<>();
        rest.put("position", position);
        rest.put("at", at.toString());
        rest.put("actor", actor);
        rest.put("role", role);
        rest.put("workshop", workshop == null ? null : workshop.toString());
        rest.put("act", act);
        rest.put("subject", subject);
        rest.put("details", salt == null ? detailsSha256 : detailsDigest());
        String text = previous + "\n" + json.write(rest);
        return Sha256.of(text.getBytes(StandardCharsets.UTF_8)).hex();
    }

    private String detailsDigest() {
        return Sha256.of((salt + "\n" + details).getBytes(StandardCharsets.UTF_8))
                .hex();
    }

    boolean isErased() {
        return salt == null;
    }

    /** Whether the stored digest is that of salt and details, as it has to be until they are erased. */
    boolean detailsHold() {
        return isErased() ? details.equals("{}") : detailsDigest().equals(detailsSha256);
    }

    ChainedEntry sealed(CanonicalJson json) {
        String digest = detailsDigest();
        return new ChainedEntry(
                position, at, actor, role, workshop, act, subject, details, previous, digest(json), digest, salt);
    }

    TrailEntry entry(CanonicalJson json) {
        Actor who = new Actor(actor, Role.valueOf(role), Optional.ofNullable(workshop));
        return new TrailEntry(position, at, who, act, subject, json.read(details), new Sha256(hash));
    }
}
