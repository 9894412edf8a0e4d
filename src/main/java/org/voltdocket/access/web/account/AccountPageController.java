package org.voltdocket.access.web.account;

import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletResponse;
import java.util.UUID;
import org.springframework.http.HttpStatus;
import org.springframework.security.core.context.SecurityContext;
import org.springframework.security.core.context.SecurityContextHolder;
import org.springframework.security.web.context.HttpSessionSecurityContextRepository;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.server.ResponseStatusException;
import org.springframework.web.servlet.mvc.support.RedirectAttributes;
import org.voltdocket.access.AccountPrincipal;
import org.voltdocket.access.AccountService;
import org.voltdocket.access.TokenRequest;
import org.voltdocket.access.TokenService;
import org.voltdocket.access.password.PasswordHasher;
import org.voltdocket.access.session.CurrentPasswordCheck;
import org.voltdocket.access.signin.SignInMethod;
import org.voltdocket.access.signin.SignedIn;
import org.voltdocket.kernel.RequestException;

/** One's own account: password, tokens and e-mail address. */
@Controller
@RequestMapping("/account")
class AccountPageController {

    private final AccountService accounts;
    private final TokenService tokens;
    private final PasswordHasher passwords;
    private final CurrentPasswordCheck current;
    private final AccountPage page;

    AccountPageController(
            AccountService accounts,
            TokenService tokens,
            PasswordHasher passwords,
            CurrentPasswordCheck current,
            AccountPage page) {
        this.accounts = accounts;
        this.tokens = tokens;
        this.passwords = passwords;
        this.current = current;
        this.page = page;
    }

    @GetMapping
    String show(AccountPrincipal who, Model model, HttpServletRequest request) {
        return page.show(who, model, request);
    }

    @PostMapping("/password")
    String changePassword(
            AccountPrincipal who,
            @RequestParam(name = "current") String typed,
            @RequestParam String password,
            Model model,
            RedirectAttributes flash,
            HttpServletRequest request,
            HttpServletResponse response) {
        try {
            current.require(who, typed, request);
            goOnAs(
                    accounts.setPassword(
                            who.account(), passwords.hash(password, who.actor().user())),
                    request,
                    response);
        } catch (RequestException refused) {
            return page.refused("password", refused, who, model, request, response);
        }
        flash.addFlashAttribute("notice", "account.done.password");
        return "redirect:/account";
    }

    @PostMapping("/email")
    String setEmail(
            AccountPrincipal who,
            @RequestParam(defaultValue = "") String email,
            Model model,
            RedirectAttributes flash,
            HttpServletRequest request,
            HttpServletResponse response) {
        try {
            accounts.setEmail(who, email);
        } catch (RequestException refused) {
            model.addAttribute("givenEmail", email);
            return page.refused("email", refused, who, model, request, response);
        }
        flash.addFlashAttribute("notice", "account.done.email");
        return "redirect:/account";
    }

    @PostMapping("/tokens")
    String createToken(
            AccountPrincipal who,
            @RequestParam String name,
            @RequestParam(required = false) String scope,
            @RequestParam(required = false) Integer days,
            Model model,
            HttpServletRequest request,
            HttpServletResponse response) {
        try {
            // shown in this very answer: it goes through no redirect and is kept nowhere
            model.addAttribute("made", tokens.create(who, TokenRequest.parse(name, scope, days)));
        } catch (RequestException refused) {
            return page.refused("token", refused, who, model, request, response);
        }
        return page.show(who, model, request);
    }

    @PostMapping("/tokens/{id}/revoke")
    String revokeToken(AccountPrincipal who, @PathVariable UUID id, RedirectAttributes flash) {
        if (!tokens.revoke(who, id)) {
            throw new ResponseStatusException(HttpStatus.NOT_FOUND);
        }
        flash.addFlashAttribute("notice", "account.done.revoked");
        return "redirect:/account";
    }

    /** The other sessions of the account end; this one goes on, under a new id. */
    private static void goOnAs(AccountPrincipal who, HttpServletRequest request, HttpServletResponse response) {
        request.changeSessionId();
        SecurityContext context = SecurityContextHolder.createEmptyContext();
        context.setAuthentication(SignedIn.authentication(who, SignInMethod.PASSWORD, 0));
        SecurityContextHolder.setContext(context);
        new HttpSessionSecurityContextRepository().saveContext(context, request, response);
    }
}
