package org.voltdocket.access.rows;

import java.util.Optional;
import java.util.UUID;
import org.springframework.security.core.Authentication;
import org.springframework.security.core.context.SecurityContextHolder;
import org.springframework.web.context.request.RequestContextHolder;
import org.voltdocket.access.AccountPrincipal;
import org.voltdocket.kernel.Actor;

/**
 * The rows that a connection sees.
 *
 * @param all whether it sees the rows of all workshops
 * @param workshop the workshop whose rows it sees otherwise; empty for none
 */
record RowScope(boolean all, Optional<UUID> workshop) {

    static final RowScope ALL = new RowScope(true, Optional.empty());
    static final RowScope NONE = new RowScope(false, Optional.empty());

    private static final ThreadLocal<Integer> EVERYTHING = ThreadLocal.withInitial(() -> 0);
    private static final ThreadLocal<Boolean> SIGNED_IN_ASKED = ThreadLocal.withInitial(() -> false);

    /** The scope of this thread: none in a request before sign-in, everything outside of requests. */
    static RowScope current() {
        if (EVERYTHING.get() > 0) {
            return ALL;
        }
        if (SIGNED_IN_ASKED.get()) {
            return NONE; // the session is being loaded, which needs a connection itself
        }
        Authentication now = authentication();
        if (now != null && now.getPrincipal() instanceof AccountPrincipal who) {
            Actor actor = who.actor();
            return actor.isWorkshop() ? new RowScope(false, actor.workshop()) : ALL;
        }
        return RequestContextHolder.getRequestAttributes() == null ? ALL : NONE;
    }

    /** Who is signed in; the first question of a request loads the session from the database. */
    private static Authentication authentication() {
        SIGNED_IN_ASKED.set(true);
        try {
            return SecurityContextHolder.getContext().getAuthentication();
        } finally {
            SIGNED_IN_ASKED.remove();
        }
    }

    /** Lets this thread see everything until {@link #leave()}; calls nest. */
    static void enterAll() {
        EVERYTHING.set(EVERYTHING.get() + 1);
    }

    static void leave() {
        int depth = EVERYTHING.get() - 1;
        if (depth == 0) {
            EVERYTHING.remove();
        } else {
            EVERYTHING.set(depth);
        }
    }

    /** The statement that gives a session of the database this scope. */
    String sql() {
        return all
                ? "set role voltdocket_staff"
                : "set role voltdocket_workshop; select set_config('voltdocket.workshop', '"
                        + workshop.map(UUID::toString).orElse("") + "', false)";
    }
}
