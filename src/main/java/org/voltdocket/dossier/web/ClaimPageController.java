package org.voltdocket.dossier.web;

import jakarta.servlet.http.HttpServletResponse;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.UUID;
import org.springframework.http.ProblemDetail;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.util.MultiValueMap;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.servlet.mvc.support.RedirectAttributes;
import org.voltdocket.claim.Claim;
import org.voltdocket.claim.ClaimAction;
import org.voltdocket.claim.ClaimStepRequest;
import org.voltdocket.claim.service.ClaimStepService;
import org.voltdocket.kernel.Actor;
import org.voltdocket.kernel.CaseNumber;
import org.voltdocket.kernel.RequestException;
import org.voltdocket.ui.error.ProblemDetails;

/** Takes the claim's forms of the case page. What was typed comes back with the reason where it is refused. */
@Controller
class ClaimPageController {

    private final CasePageModel pages;
    private final ClaimStepService claims;

    ClaimPageController(CasePageModel pages, ClaimStepService claims) {
        this.pages = pages;
        this.claims = claims;
    }

    @PostMapping("/cases/{number}/claim")
    String step(
            Actor actor,
            @PathVariable String number,
            @RequestParam MultiValueMap<String, String> given,
            Model model,
            RedirectAttributes flash,
            HttpServletResponse response) {
        CaseNumber parsed = pages.number(number);
        String action = given.getFirst("action");
        try {
            Claim claim = "open".equals(action)
                    ? claims.open(actor, parsed, amount(given).orElse(""), currency(given), given.getFirst("useClass"))
                    : claims.act(actor, parsed, act(action, given));
            flash.addFlashAttribute(
                    "notice", "claim.notice." + (claim.proposal().isPresent() ? "proposed" : action));
            return "redirect:/cases/" + parsed + "#claim";
        } catch (RequestException refused) {
            ProblemDetail problem = ProblemDetails.of(refused);
            pages.fill(actor, parsed, model);
            model.addAttribute("claimError", problem.getDetail());
            model.addAttribute("claimChanges", refused.properties().get("changes"));
            model.addAttribute("claimGiven", given.toSingleValueMap());
            response.setStatus(problem.getStatus());
            return "dossier/case";
        }
    }

    private static ClaimStepRequest act(String action, MultiValueMap<String, String> given) {
        ClaimAction known = ClaimAction.of(action == null ? "" : action)
                .orElseThrow(() -> RequestException.malformed("The form contains no step of a claim."));
        boolean pays = known == ClaimAction.APPROVE || known == ClaimAction.GOODWILL;
        return new ClaimStepRequest(
                known,
                given.getFirst("reason"),
                known == ClaimAction.ASK ? given.getOrDefault("items", List.of()) : List.of(),
                known == ClaimAction.ASK ? lines(given.getFirst("others")) : List.of(),
                pays ? amount(given) : Optional.empty(),
                version(given.getFirst("version")),
                known.decides() ? id(given.getFirst("assessment")) : Optional.empty());
    }

    /** People type a decimal comma too. */
    private static Optional<String> amount(Map<String, List<String>> given) {
        return given.getOrDefault("amount", List.of()).stream()
                .map(text -> text.strip().replace(',', '.'))
                .filter(text -> !text.isEmpty())
                .findFirst();
    }

    private static List<String> lines(String text) {
        return text == null ? List.of() : text.lines().toList();
    }

    private static String currency(MultiValueMap<String, String> given) {
        String code = given.getFirst("currency");
        return code == null ? null : code.strip().toUpperCase(Locale.ROOT);
    }

    private static OptionalLong version(String text) {
        return text != null && text.matches("\\d{1,18}") ? OptionalLong.of(Long.parseLong(text)) : OptionalLong.empty();
    }

    private static Optional<UUID> id(String text) {
        try {
            return Optional.ofNullable(text).filter(t -> !t.isBlank()).map(UUID::fromString);
        } catch (IllegalArgumentException e) {
            return Optional.empty();
        }
    }
}
