package org.voltdocket.notice.web;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.servlet.mvc.support.RedirectAttributes;
import org.voltdocket.kernel.Actor;
import org.voltdocket.kernel.RequestException;
import org.voltdocket.notice.Notice;
import org.voltdocket.notice.NoticeKind;
import org.voltdocket.notice.NoticeService;

/** What waits for a person over all cases, and the form that says what came of looking. */
@Controller
class NoticePageController {

    private static final int SHOWN = 100;

    private final NoticeService notices;

    NoticePageController(NoticeService notices) {
        this.notices = notices;
    }

    @GetMapping("/notices")
    String list(Actor actor, @RequestParam(defaultValue = "") String kind, Model model) {
        Optional<NoticeKind> wanted = Arrays.stream(NoticeKind.values())
                .filter(one -> one.id().equals(kind))
                .findFirst();
        List<Notice> found = notices.open(actor, wanted, SHOWN + 1);
        model.addAttribute("notices", found.subList(0, Math.min(SHOWN, found.size())));
        model.addAttribute("more", found.size() > SHOWN);
        model.addAttribute("kinds", NoticeKind.values());
        model.addAttribute("kind", wanted.map(NoticeKind::id).orElse(""));
        return "notice/notices";
    }

    /** Leads back to where the form stood: the case {@code from}, or the list. */
    @PostMapping("/notices/{id}")
    String lookedAt(
            Actor actor,
            @PathVariable UUID id,
            @RequestParam(defaultValue = "") String reason,
            @RequestParam(defaultValue = "") String from,
            RedirectAttributes flash) {
        try {
            notices.lookedAt(actor, id, reason);
            flash.addFlashAttribute("lookedNotice", "notice.done");
        } catch (RequestException refused) {
            if (refused.isNotFound()) {
                throw refused;
            }
            flash.addFlashAttribute("lookedRefused", refused.getMessage());
        }
        return from.matches("V-[0-9A-Z-]{9}") ? "redirect:/cases/" + from + "#notices" : "redirect:/notices";
    }
}
