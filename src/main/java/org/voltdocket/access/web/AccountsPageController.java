package org.voltdocket.access.web;

import jakarta.servlet.http.HttpServletResponse;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
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
import org.voltdocket.kernel.Actor;
import org.voltdocket.kernel.RequestException;
import org.voltdocket.kernel.Role;

/** Workshops and accounts, for the administrator. */
@Controller
@RequestMapping("/accounts")
class AccountsPageController {

    private final AccountService accounts;

    AccountsPageController(AccountService accounts) {
        this.accounts = accounts;
    }

    @GetMapping
    String list(Actor actor, Model model) {
        model.addAttribute("accounts", accounts.accounts(actor));
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
    String createUser(
            Actor actor,
            @RequestParam String name,
            @RequestParam String password,
            @RequestParam Role role,
            @RequestParam Optional<UUID> of,
            Model model,
            RedirectAttributes flash,
            HttpServletResponse out) {
        model.addAttribute(
                "given",
                Map.of(
                        "name",
                        name,
                        "role",
                        role.name(),
                        "of",
                        of.map(UUID::toString).orElse("")));
        return tried(
                "account",
                actor,
                model,
                flash,
                out,
                () -> accounts.createUser(actor, new NewAccount(name, password, role, of)));
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

    @PostMapping("/{id}/password")
    String resetPassword(
            Actor actor,
            @PathVariable UUID id,
            @RequestParam String password,
            Model model,
            RedirectAttributes flash,
            HttpServletResponse out) {
        return tried("reset", actor, model, flash, out, () -> accounts.resetPassword(actor, id, password));
    }

    /** Leads back to the list with a notice, or shows it at once with what was refused and where. */
    private String tried(
            String deed, Actor actor, Model model, RedirectAttributes flash, HttpServletResponse out, Runnable work) {
        try {
            work.run();
            flash.addFlashAttribute("notice", "accounts.done." + deed);
            return "redirect:/accounts";
        } catch (RequestException refused) {
            out.setStatus(400);
            model.addAttribute("refusedIn", deed);
            model.addAttribute("refusedField", refused.field());
            model.addAttribute("refused", refused.getMessage());
            return list(actor, model);
        }
    }
}
