package org.voltdocket.access.web.account;

import jakarta.servlet.http.HttpServletResponse;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import org.springframework.beans.factory.annotation.Value;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.servlet.mvc.support.RedirectAttributes;
import org.voltdocket.access.AccountService;
import org.voltdocket.access.NewAccount;
import org.voltdocket.access.invitation.Invitation;
import org.voltdocket.access.invitation.InvitationService;
import org.voltdocket.access.session.AccountFactors;
import org.voltdocket.kernel.Actor;
import org.voltdocket.kernel.RequestException;
import org.voltdocket.kernel.Role;

/** Workshops and accounts, for the administrator. */
@Controller
@RequestMapping("/accounts")
class AccountsPageController {

    private final AccountService accounts;
    private final InvitationService invitations;
    private final AccountFactors factors;
    private final String address;

    AccountsPageController(
            AccountService accounts,
            InvitationService invitations,
            AccountFactors factors,
            @Value("${voltdocket.address:http://localhost:${server.port:8080}}") String address) {
        this.accounts = accounts;
        this.invitations = invitations;
        this.factors = factors;
        this.address = address.replaceAll("/+$", "");
    }

    @GetMapping
    String list(Actor actor, Model model) {
        model.addAttribute("accounts", accounts.accounts(actor));
        model.addAttribute("withFactor", factors.accountsWithFactor());
        model.addAttribute("workshops", accounts.workshops());
        model.addAttribute("roles", Role.values());
        return "access/accounts";
    }

    @PostMapping("/workshops")
    String createWorkshop(
            Actor actor,
            @RequestParam String workshop,
            Model model,
            RedirectAttributes flash,
            HttpServletResponse out) {
        return tried("workshop", actor, model, flash, out, () -> accounts.createWorkshop(actor, workshop));
    }

    @PostMapping
    String invite(
            Actor actor,
            @RequestParam String name,
            @RequestParam Role role,
            @RequestParam Optional<UUID> of,
            @RequestParam(defaultValue = "") String email,
            Model model,
            HttpServletResponse out) {
        Optional<String> mail = Optional.of(email.strip()).filter(text -> !text.isEmpty());
        try {
            Invitation made = invitations.invite(actor, new NewAccount(name, null, role, of, mail));
            return shown(made, actor, model);
        } catch (RequestException refused) {
            String workshop = of.map(UUID::toString).orElse("");
            model.addAttribute("given", Map.of("name", name, "role", role.name(), "of", workshop, "email", email));
            return refused("account", refused, actor, model, out);
        }
    }

    @PostMapping("/{id}/invitation")
    String inviteAgain(Actor actor, @PathVariable UUID id, Model model, HttpServletResponse out) {
        try {
            return shown(invitations.inviteAgain(actor, id), actor, model);
        } catch (RequestException refused) {
            return refused("invitation", refused, actor, model, out);
        }
    }

    /** Shown in this very answer: the link goes through no redirect and is stored as a digest. */
    private String shown(Invitation made, Actor actor, Model model) {
        model.addAttribute("invitation", made);
        model.addAttribute("link", address + made.path());
        return list(actor, model);
    }

    @PostMapping("/{id}/factors/remove")
    String removeFactors(
            Actor actor, @PathVariable UUID id, Model model, RedirectAttributes flash, HttpServletResponse out) {
        return tried("factors", actor, model, flash, out, () -> factors.removeAll(actor, id));
    }

    @PostMapping("/{id}/standing")
    String setEnabled(
            Actor actor,
            @PathVariable UUID id,
            @RequestParam boolean enabled,
            Model model,
            RedirectAttributes flash,
            HttpServletResponse out) {
        return tried("standing", actor, model, flash, out, () -> accounts.setEnabled(actor, id, enabled));
    }

    /** Leads back to the list with a notice, or shows it at once with what was refused and where. */
    private String tried(
            String form, Actor actor, Model model, RedirectAttributes flash, HttpServletResponse out, Runnable work) {
        try {
            work.run();
            flash.addFlashAttribute("notice", "accounts.done." + form);
            return "redirect:/accounts";
        } catch (RequestException refused) {
            return refused(form, refused, actor, model, out);
        }
    }

    private String refused(String form, RequestException refused, Actor actor, Model model, HttpServletResponse out) {
        out.setStatus(400);
        model.addAttribute("refusedIn", form);
        model.addAttribute("refusedField", refused.field());
        model.addAttribute("refused", refused.getMessage());
        return list(actor, model);
    }
}
