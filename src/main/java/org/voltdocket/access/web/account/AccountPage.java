package org.voltdocket.access.web.account;

import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletResponse;
import org.springframework.stereotype.Component;
import org.springframework.ui.Model;
import org.voltdocket.access.AccountPrincipal;
import org.voltdocket.access.AccountService;
import org.voltdocket.access.TokenScope;
import org.voltdocket.access.TokenService;
import org.voltdocket.access.factor.SecondFactorService;
import org.voltdocket.access.passkey.PasskeyService;
import org.voltdocket.access.session.AccountSessions;
import org.voltdocket.kernel.RequestException;

/** What the page of one's own account shows. */
@Component
class AccountPage {

    private final AccountService accounts;
    private final TokenService tokens;
    private final SecondFactorService factors;
    private final PasskeyService passkeys;
    private final AccountSessions sessions;

    AccountPage(
            AccountService accounts,
            TokenService tokens,
            SecondFactorService factors,
            PasskeyService passkeys,
            AccountSessions sessions) {
        this.accounts = accounts;
        this.tokens = tokens;
        this.factors = factors;
        this.passkeys = passkeys;
        this.sessions = sessions;
    }

    String show(AccountPrincipal who, Model model, HttpServletRequest request) {
        String name = who.actor().user();
        model.addAttribute("who", who.actor());
        model.addAttribute(
                "workshop",
                who.actor().workshop().flatMap(accounts::workshopName).orElse(null));
        model.addAttribute("email", accounts.emailOf(name).orElse(""));
        model.addAttribute("hasPassword", accounts.hasPassword(who.account()));
        model.addAttribute("factorSince", factors.setUpAt(who.account()).orElse(null));
        model.addAttribute("codesLeft", factors.recoveryCodesLeft(who.account()));
        model.addAttribute("passkeys", passkeys.of(name));
        model.addAttribute("sessions", sessions.list(name, request.getSession()));
        model.addAttribute("tokens", tokens.of(who));
        model.addAttribute("scopes", TokenScope.values());
        return "access/account";
    }

    /** Shows the page with what was refused, and where. */
    String refused(
            String form,
            RequestException refused,
            AccountPrincipal who,
            Model model,
            HttpServletRequest request,
            HttpServletResponse response) {
        response.setStatus(refused.status());
        model.addAttribute("refusedIn", form);
        model.addAttribute("refusedField", refused.field());
        model.addAttribute("refused", refused.getMessage());
        return show(who, model, request);
    }
}
