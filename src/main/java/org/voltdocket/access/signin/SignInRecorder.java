package org.voltdocket.access.signin;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import org.springframework.context.ApplicationEventPublisher;
import org.springframework.security.access.AccessDeniedException;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;
import org.voltdocket.access.AccountChangedEvent;
import org.voltdocket.access.AccountPrincipal;
import org.voltdocket.access.AccountService;
import org.voltdocket.kernel.Actor;

/** Records sign-ins, successful or not, in the list of sign-ins, the trail and the log, and reports unusual ones. */
@Service
public class SignInRecorder {

    /** A name that no account can have. */
    static final String UNKNOWN = "(unknown)";

    /** So many failures before a success are unusual: our own choice. */
    static final int MANY_FAILURES = 5;

    private static final Logger LOG = LoggerFactory.getLogger(SignInRecorder.class);

    private final SignInRepository signIns;
    private final AccountService accounts;
    private final ApplicationEventPublisher events;

    SignInRecorder(SignInRepository signIns, AccountService accounts, ApplicationEventPublisher events) {
        this.signIns = signIns;
        this.accounts = accounts;
        this.events = events;
    }

    /** @param earlierFailures attempts that failed before this one */
    @Transactional
    public void succeeded(AccountPrincipal who, String address, SignInMethod method, int earlierFailures) {
        String name = who.actor().user();
        List<String> unusual = new ArrayList<>();
        if (signIns.isNewNetwork(who.account(), address)) {
            unusual.add("new-network");
        }
        if (earlierFailures >= MANY_FAILURES) {
            unusual.add("many-failures");
        }
        if (method == SignInMethod.RECOVERY_CODE) {
            unusual.add("recovery-code");
        }
        signIns.add(who.account(), address, method, true, unusual);
        publish(who.actor(), "signed-in", name, address, method);
        log("signed-in", name, address, method);
        if (!unusual.isEmpty()) {
            events.publishEvent(new UnusualSignInEvent(name, address, method, unusual));
        }
    }

    /** @param name as typed; kept only if an account has it, for it may be a password */
    @Transactional
    public void failed(String name, String address, SignInMethod method) {
        Optional<AccountPrincipal> who = accounts.principal(name);
        String known = who.map(one -> one.actor().user()).orElse(UNKNOWN);
        signIns.add(who.map(AccountPrincipal::account).orElse(null), address, method, false, List.of());
        publish(Actor.system(), "sign-in-failed", known, address, method);
        log("sign-in-failed", known, address, method);
    }

    /** An attempt that was not even tried; the trail has those that led to it. */
    public void refused(String address, SignInMethod method) {
        log("sign-in-refused", UNKNOWN, address, method);
    }

    /** The latest sign-ins, newest first, for an administrator. */
    @Transactional(readOnly = true)
    public List<SignInEntry> latest(Actor actor, boolean unusualOnly, int most) {
        if (!actor.canAdminister()) {
            throw new AccessDeniedException("Only an administrator may see sign-ins.");
        }
        return signIns.latest(unusualOnly, most);
    }

    private void publish(Actor actor, String act, String name, String address, SignInMethod method) {
        Map<String, Object> details = Map.of("account.address", address, "account.method", method.name());
        events.publishEvent(new AccountChangedEvent(actor, act, name, details));
    }

    private static void log(String act, String name, String address, SignInMethod method) {
        LOG.atInfo()
                .addKeyValue("event", act)
                .addKeyValue("account", name)
                .addKeyValue("address", address)
                .addKeyValue("method", method)
                .log("{}: account {} from {} by {}", act, name, address, method);
    }
}
