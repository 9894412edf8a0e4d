package org.voltdocket.dossier.share;

import java.util.UUID;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.servlet.mvc.support.RedirectAttributes;
import org.springframework.web.servlet.support.ServletUriComponentsBuilder;
import org.voltdocket.casefile.CaseService;
import org.voltdocket.kernel.Actor;
import org.voltdocket.kernel.CaseNumber;

/** The page on which a workshop creates and revokes links to a case. */
@Controller
class CaseLinkPageController {

    private final CaseLinkService links;
    private final CaseService cases;

    CaseLinkPageController(CaseLinkService links, CaseService cases) {
        this.links = links;
        this.cases = cases;
    }

    @GetMapping("/cases/{number}/links")
    String show(Actor actor, @PathVariable CaseNumber number, Model model) {
        model.addAttribute("ref", cases.requireToFeed(actor, number));
        model.addAttribute("links", links.of(actor, number));
        return "share/links";
    }

    @PostMapping("/cases/{number}/links")
    String create(
            Actor actor,
            @PathVariable CaseNumber number,
            @RequestParam(defaultValue = "30") int days,
            RedirectAttributes flash) {
        CaseLinkService.NewLink created = links.create(actor, number, days);
        flash.addFlashAttribute("address", address(created.secret()));
        return "redirect:/cases/" + number + "/links";
    }

    @PostMapping("/cases/{number}/links/{link}/revoke")
    String revoke(Actor actor, @PathVariable CaseNumber number, @PathVariable UUID link) {
        links.revoke(actor, number, link);
        return "redirect:/cases/" + number + "/links";
    }

    /** The whole address of a link, as it is sent to its reader. */
    static String address(String secret) {
        return ServletUriComponentsBuilder.fromCurrentContextPath()
                .path("/shared/" + secret)
                .toUriString();
    }
}
