package org.voltdocket.access.web.account;

import jakarta.servlet.http.HttpServletResponse;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.voltdocket.access.AccountPrincipal;
import org.voltdocket.access.invitation.InvitationService;
import org.voltdocket.access.password.PasswordHasher;
import org.voltdocket.kernel.RequestException;

/** The page of an invitation, where its owner sets a password. */
@Controller
@RequestMapping("/invitation/{secret}")
class InvitationPageController {

    private final InvitationService invitations;
    private final PasswordHasher passwords;

    InvitationPageController(InvitationService invitations, PasswordHasher passwords) {
        this.invitations = invitations;
        this.passwords = passwords;
    }

    @GetMapping
    String form(@PathVariable String secret, Model model, HttpServletResponse response) {
        AccountPrincipal who = invitations.invited(secret).orElseThrow(InvitationService::gone);
        // the address is a secret that no other site may learn
        response.setHeader("Referrer-Policy", "no-referrer");
        model.addAttribute("name", who.actor().user());
        return "access/invitation";
    }

    @PostMapping
    String accept(
            @PathVariable String secret,
            @RequestParam(defaultValue = "") String password,
            Model model,
            HttpServletResponse response) {
        AccountPrincipal who = invitations.invited(secret).orElseThrow(InvitationService::gone);
        try {
            invitations.accept(secret, passwords.hash(password, who.actor().user()));
        } catch (RequestException refused) {
            if (refused.field().isEmpty()) {
                throw refused;
            }
            response.setStatus(400);
            model.addAttribute("refused", refused.getMessage());
            return form(secret, model, response);
        }
        return "redirect:/sign-in?set";
    }
}
