package org.voltdocket.casefile.search;

import java.nio.ByteBuffer;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.Base64;
import java.util.UUID;

/** Where a page ended: moment of opening (to the microsecond) and id of its last case. Opaque to callers. */
record CaseCursor(Instant openedAt, UUID id) {

    private static final int LENGTH = 24;

    String text() {
        long micros = ChronoUnit.MICROS.between(Instant.EPOCH, openedAt);
        byte[] bytes = ByteBuffer.allocate(LENGTH)
                .putLong(micros)
                .putLong(id.getMostSignificantBits())
                .putLong(id.getLeastSignificantBits())
                .array();
        return Base64.getUrlEncoder().withoutPadding().encodeToString(bytes);
    }

    /** @throws IllegalArgumentException if no list gave this text */
    static CaseCursor read(String text) {
        try {
            ByteBuffer bytes = ByteBuffer.wrap(Base64.getUrlDecoder().decode(text));
            if (bytes.capacity() == LENGTH) {
                Instant at = Instant.EPOCH.plus(bytes.getLong(), ChronoUnit.MICROS);
                return new CaseCursor(at, new UUID(bytes.getLong(), bytes.getLong()));
            }
        } catch (IllegalArgumentException | ArithmeticException | java.time.DateTimeException e) {
            // said below
        }
        throw new IllegalArgumentException("'cursor' is not valid; leave it out to start at the newest case.");
    }
}
