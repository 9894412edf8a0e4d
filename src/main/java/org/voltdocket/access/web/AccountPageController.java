package org.voltdocket.access.web;

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
import org.voltdocket.access.TokenService;
import org.voltdocket.kernel.RequestException;

/** One's own account: password and tokens. */
@Controller
@RequestMapping("/account")
class AccountPageController {

    private final AccountService accounts;
    private final TokenService tokens;

    AccountPageController(AccountService accounts, TokenService tokens) {
        this.accounts = accounts;
        this.tokens = tokens;
    }

    @GetMapping
    String show(AccountPrincipal who, Model model) {
        model.addAttribute("who", who.actor());
        model.addAttribute(
                "workshop",
                who.actor().workshop().flatMap(accounts::workshopName).orElse(null));
        model.addAttribute("email", accounts.emailOf(who.actor().user()).orElse(""));
        model.addAttribute("tokens", tokens.of(who));
        return "access/account";
    }

    @PostMapping("/password")
    String changePassword(
            AccountPrincipal who,
            @RequestParam String current,
            @RequestParam String password,
            Model model,
            RedirectAttributes flash,
            HttpServletRequest request,
            HttpServletResponse response) {
        try {
            goOnAs(accounts.changePassword(who, current, password), request, response);
        } catch (RequestException refused) {
            return refused("password", refused, who, model, response);
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
            HttpServletResponse response) {
        try {
            accounts.setEmail(who, email);
        } catch (RequestException refused) {
            model.addAttribute("givenEmail", email);
            return refused("email", refused, who, model, response);
        }
        flash.addFlashAttribute("notice", "account.done.email");
        return "redirect:/account";
    }

    @PostMapping("/tokens")
    String createToken(AccountPrincipal who, @RequestParam String name, Model model, HttpServletResponse response) {
        try {
            // shown in this very answer: it goes through no redirect and is kept nowhere
            model.addAttribute("made", tokens.create(who, name));
        } catch (RequestException refused) {
            return refused("token", refused, who, model, response);
        }
        return show(who, model);
    }

    @PostMapping("/tokens/{id}/revoke")
    String revokeToken(AccountPrincipal who, @PathVariable UUID id, RedirectAttributes flash) {
        if (!tokens.revoke(who, id)) {
            throw new ResponseStatusException(HttpStatus.NOT_FOUND);
        }
        flash.addFlashAttribute("notice", "account.done.revoked");
        return "redirect:/account";
    }

    private String refused(
            String deed, RequestException refused, AccountPrincipal who, Model model, HttpServletResponse response) {
        response.setStatus(400);
        model.addAttribute("refusedIn", deed);
        model.addAttribute("refusedField", refused.field());
        model.addAttribute("refused", refused.getMessage());
        return show(who, model);
    }

    /** The other sessions of the account end; this one goes on, under a new id. */
    private static void goOnAs(AccountPrincipal who, HttpServletRequest request, HttpServletResponse response) {
        request.changeSessionId();
        SecurityContext context = SecurityContextHolder.createEmptyContext();
        context.setAuthentication(PasswordAuthenticationProvider.authenticated(who));
        SecurityContextHolder.setContext(context);
        new HttpSessionSecurityContextRepository().saveContext(context, request, response);
    }
}
