package org.voltdocket.access.session;

import jakarta.servlet.http.HttpSession;
import java.time.Instant;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.springframework.beans.factory.annotation.Value;
import org.springframework.context.ApplicationEventPublisher;
import org.springframework.session.FindByIndexNameSessionRepository;
import org.springframework.session.Session;
import org.springframework.stereotype.Component;
import org.springframework.transaction.annotation.Transactional;
import org.voltdocket.access.AccountChangedEvent;
import org.voltdocket.kernel.Actor;

/** The sessions of an account. A page names them by a mark of their own, because whoever knows the id of a session has it. */
@Component
public class AccountSessions {

    private static final String MARK = "voltdocket.session";
    private static final String ADDRESS = "voltdocket.address";
    private static final String AGENT = "voltdocket.agent";
    private static final int MOST_AGENT = 300;

    private final FindByIndexNameSessionRepository<? extends Session> sessions;
    private final ApplicationEventPublisher events;
    private final int perAccount;

    AccountSessions(
            FindByIndexNameSessionRepository<? extends Session> sessions,
            @Value("${voltdocket.access.sessions-per-account}") int perAccount,
            ApplicationEventPublisher events) {
        this.sessions = sessions;
        this.events = events;
        this.perAccount = perAccount;
    }

    /**
     * A session as its owner sees it.
     *
     * @param mark names it on the page
     * @param browser what the browser calls itself, shortened
     * @param current whether it is the session that asks
     */
    public record Entry(
            String mark, Instant startedAt, Instant usedAt, String address, String browser, boolean current) {}

    /** Notes where a session comes from. */
    public void note(HttpSession session, String address, String agent) {
        session.setAttribute(MARK, UUID.randomUUID().toString());
        session.setAttribute(ADDRESS, address);
        session.setAttribute(AGENT, agent == null ? "" : agent.substring(0, Math.min(MOST_AGENT, agent.length())));
    }

    /** Ends the least recently used sessions of an account so that one more is within the limit. */
    public void makeRoom(String account) {
        of(account).stream()
                .sorted(Comparator.comparing((Session one) -> one.getLastAccessedTime())
                        .reversed())
                .skip(perAccount - 1L)
                .forEach(one -> sessions.deleteById(one.getId()));
    }

    /** The sessions of an account, last used first. */
    public List<Entry> list(String account, HttpSession current) {
        return of(account).stream()
                .sorted(Comparator.comparing((Session one) -> one.getLastAccessedTime())
                        .reversed())
                .map(one -> new Entry(
                        text(one, MARK),
                        one.getCreationTime(),
                        one.getLastAccessedTime(),
                        text(one, ADDRESS),
                        BrowserName.of(text(one, AGENT)),
                        one.getId().equals(current.getId())))
                .toList();
    }

    /** Ends a session of the account; false where it has none of that mark. */
    @Transactional
    public boolean end(Actor actor, String mark) {
        String account = actor.user();
        List<String> ids = of(account).stream()
                .filter(one -> mark.equals(one.getAttribute(MARK)))
                .map(Session::getId)
                .toList();
        ids.forEach(sessions::deleteById);
        if (!ids.isEmpty()) {
            events.publishEvent(new AccountChangedEvent(actor, "session-ended", account, Map.of()));
        }
        return !ids.isEmpty();
    }

    /**
     * Loads each session by its id: the repository's own list loses attributes where the database returns the rows of several
     * sessions mixed.
     */
    private List<Session> of(String account) {
        return sessions.findByPrincipalName(account).keySet().stream()
                .<Session>map(sessions::findById)
                .filter(one -> one != null && !one.isExpired())
                .toList();
    }

    private static String text(Session session, String name) {
        String text = session.getAttribute(name);
        return text == null ? "" : text;
    }
}
