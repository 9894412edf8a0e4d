package org.voltdocket.trail.web;

import jakarta.servlet.http.HttpServletResponse;
import java.util.List;
import java.util.Optional;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.voltdocket.kernel.Actor;
import org.voltdocket.trail.Trail;
import org.voltdocket.trail.TrailEntry;

/** The whole trail, newest first, and a button that verifies its chain. */
@Controller
@RequestMapping("/trail")
class TrailPageController {

    private static final int SHOWN = 50;

    private final Trail trail;
    private final TrailVerificationService verification;

    TrailPageController(Trail trail, TrailVerificationService verification) {
        this.trail = trail;
        this.verification = verification;
    }

    @GetMapping
    String show(
            Actor actor,
            @RequestParam(defaultValue = "") String subject,
            @RequestParam(defaultValue = "" + Long.MAX_VALUE) long before,
            Model model) {
        TrailVerificationService.requireAuditor(actor);
        Optional<String> of = Optional.of(subject.strip()).filter(text -> !text.isEmpty());
        List<TrailEntry> entries = trail.latest(of, before, SHOWN + 1);
        model.addAttribute("subject", subject.strip());
        model.addAttribute("entries", entries.subList(0, Math.min(SHOWN, entries.size())));
        model.addAttribute(
                "older", entries.size() > SHOWN ? entries.get(SHOWN - 1).position() : null);
        model.addAttribute("head", trail.head().orElse(null));
        return "trail/trail";
    }

    @PostMapping
    String verify(
            Actor actor, @RequestParam(defaultValue = "") String noted, Model model, HttpServletResponse response) {
        model.addAttribute("noted", noted);
        try {
            model.addAttribute("check", verification.run(actor, noted));
        } catch (IllegalArgumentException e) {
            response.setStatus(HttpServletResponse.SC_BAD_REQUEST);
            model.addAttribute("refused", e.getMessage());
        }
        return show(actor, "", Long.MAX_VALUE, model);
    }
}
