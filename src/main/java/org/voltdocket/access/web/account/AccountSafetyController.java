package org.voltdocket.access.web.account;

import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletResponse;
import java.util.List;
import org.springframework.http.HttpStatus;
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
import org.voltdocket.access.factor.SecondFactorService;
import org.voltdocket.access.factor.SecondFactorSetup;
import org.voltdocket.access.passkey.PasskeyService;
import org.voltdocket.access.session.AccountSessions;
import org.voltdocket.access.session.CurrentPasswordCheck;
import org.voltdocket.access.session.SignInSession;
import org.voltdocket.kernel.RequestException;

/** One's own account: second factor, passkeys and sessions. */
@Controller
@RequestMapping("/account")
class AccountSafetyController {

    private final SecondFactorService factors;
    private final PasskeyService passkeys;
    private final AccountSessions sessions;
    private final CurrentPasswordCheck current;
    private final AccountPage page;

    AccountSafetyController(
            SecondFactorService factors,
            PasskeyService passkeys,
            AccountSessions sessions,
            CurrentPasswordCheck current,
            AccountPage page) {
        this.factors = factors;
        this.passkeys = passkeys;
        this.sessions = sessions;
        this.current = current;
        this.page = page;
    }

    @GetMapping("/second-factor")
    String setUpForm(AccountPrincipal who, @RequestParam(required = false) String required, Model model) {
        if (factors.isSetUp(who.account())) {
            return "redirect:/account";
        }
        model.addAttribute("required", required != null);
        return setUpForm(factors.begin(who), model);
    }

    private static String setUpForm(SecondFactorSetup setup, Model model) {
        model.addAttribute("setup", setup);
        return "access/second-factor";
    }

    @PostMapping("/second-factor")
    String setUp(
            AccountPrincipal who,
            @RequestParam(defaultValue = "") String sealed,
            @RequestParam(defaultValue = "") String code,
            @RequestParam(name = "current", defaultValue = "") String typed,
            Model model,
            HttpServletRequest request,
            HttpServletResponse response) {
        try {
            current.require(who, typed, request);
            return showCodes(factors.setUp(who, sealed, code), model, request);
        } catch (RequestException refused) {
            response.setStatus(refused.status());
            model.addAttribute("refusedField", refused.field());
            model.addAttribute("refused", refused.getMessage());
            return setUpForm(factors.again(who, sealed), model);
        }
    }

    /** Shown in this very answer: recovery codes go through no redirect and are stored as digests. */
    private static String showCodes(List<String> codes, Model model, HttpServletRequest request) {
        request.getSession().removeAttribute(SignInSession.ASK_SECOND_FACTOR);
        model.addAttribute("codes", codes);
        return "access/recovery-codes";
    }

    @PostMapping("/second-factor/remove")
    String remove(
            AccountPrincipal who,
            @RequestParam(name = "current", defaultValue = "") String typed,
            Model model,
            RedirectAttributes flash,
            HttpServletRequest request,
            HttpServletResponse response) {
        try {
            current.require(who, typed, request);
        } catch (RequestException refused) {
            return page.refused("factor", refused, who, model, request, response);
        }
        factors.remove(who.actor(), who.account(), who.actor().user());
        flash.addFlashAttribute("notice", "account.done.factor-removed");
        return "redirect:/account";
    }

    @PostMapping("/recovery-codes")
    String newCodes(
            AccountPrincipal who,
            @RequestParam(name = "current", defaultValue = "") String typed,
            Model model,
            HttpServletRequest request,
            HttpServletResponse response) {
        try {
            current.require(who, typed, request);
            return showCodes(factors.newRecoveryCodes(who), model, request);
        } catch (RequestException refused) {
            return page.refused("factor", refused, who, model, request, response);
        }
    }

    @PostMapping("/passkeys/{id}/remove")
    String removePasskey(AccountPrincipal who, @PathVariable String id, RedirectAttributes flash) {
        return done(passkeys.remove(who, id), "account.done.passkey", flash);
    }

    @PostMapping("/sessions/{mark}/end")
    String endSession(AccountPrincipal who, @PathVariable String mark, RedirectAttributes flash) {
        return done(sessions.end(who.actor(), mark), "account.done.session", flash);
    }

    private static String done(boolean found, String notice, RedirectAttributes flash) {
        if (!found) {
            throw new ResponseStatusException(HttpStatus.NOT_FOUND);
        }
        flash.addFlashAttribute("notice", notice);
        return "redirect:/account";
    }
}
