package org.voltdocket.access.web.account;

import jakarta.servlet.http.HttpServletRequest;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.voltdocket.access.openid.OpenIdSettings;
import org.voltdocket.access.session.PendingSignIn;
import org.voltdocket.access.session.SecondFactorSignIn;

/** Shows the forms of the sign-in; filters receive what they send. */
@Controller
class SignInPageController {

    private final PendingSignIn pending;
    private final OpenIdSettings provider;

    SignInPageController(PendingSignIn pending, OpenIdSettings provider) {
        this.pending = pending;
        this.provider = provider;
    }

    @GetMapping("/sign-in")
    String form(
            @RequestParam(required = false) String error,
            @RequestParam(name = "wait", required = false) Integer seconds,
            @RequestParam(name = "openid", required = false) String refused,
            Model model) {
        model.addAttribute("failed", error != null);
        model.addAttribute("seconds", seconds);
        model.addAttribute("provider", provider.isOn() ? provider.name() : null);
        model.addAttribute("providerRefused", refused == null ? null : reason(refused));
        return "access/sign-in";
    }

    @GetMapping(SecondFactorSignIn.PATH)
    String second(
            @RequestParam(required = false) String error,
            @RequestParam(name = "wait", required = false) Integer seconds,
            HttpServletRequest request,
            Model model) {
        if (pending.read(request).isEmpty()) {
            return "redirect:/sign-in?late";
        }
        model.addAttribute("failed", error != null);
        model.addAttribute("seconds", seconds);
        return "access/second";
    }

    /** Code of the sentence for a refused answer of the provider. */
    private static String reason(String refused) {
        return switch (refused) {
            case "no-name", "no-role", "account-name", "account-workshop", "account-enabled" -> refused;
            default -> "other";
        };
    }
}
