package org.voltdocket.assessment.web;

import jakarta.servlet.http.HttpServletResponse;
import java.io.IOException;
import java.util.List;
import org.springframework.http.HttpStatus;
import org.springframework.http.MediaType;
import org.springframework.http.ResponseEntity;
import org.springframework.security.access.AccessDeniedException;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.ModelAttribute;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.multipart.MultipartFile;
import org.springframework.web.server.ResponseStatusException;
import org.springframework.web.servlet.mvc.support.RedirectAttributes;
import org.voltdocket.assessment.edition.Edition;
import org.voltdocket.assessment.edition.EditionService;
import org.voltdocket.kernel.Actor;
import org.voltdocket.kernel.RequestException;
import org.voltdocket.kernel.Sha256;

/** Editions of the rule book: upload, compare with the one in force, try, put in force. For administrators. */
@Controller
@RequestMapping("/editions")
class EditionPageController {

    private final EditionService editions;

    EditionPageController(EditionService editions) {
        this.editions = editions;
    }

    @ModelAttribute
    void forAdministrators(Actor actor) {
        if (!actor.canAdminister()) {
            throw new AccessDeniedException("editions are for administrators");
        }
    }

    @GetMapping
    String list(Model model) {
        model.addAttribute("editions", editions.all());
        model.addAttribute("inForce", editions.inForce());
        model.addAttribute("history", editions.history());
        return "assessment/editions";
    }

    @PostMapping
    String upload(
            Actor actor,
            @RequestParam MultipartFile file,
            Model model,
            RedirectAttributes flash,
            HttpServletResponse response)
            throws IOException {
        try {
            Edition kept = editions.keep(actor, file.getBytes());
            flash.addFlashAttribute("notice", "edition.kept");
            return "redirect:/editions/" + kept.sha256().hex();
        } catch (RequestException refused) {
            response.setStatus(refused.status());
            model.addAttribute("refused", refused.getMessage());
            model.addAttribute("errors", refused.properties().getOrDefault("errors", List.of()));
            model.addAttribute("more", refused.properties());
            return list(model);
        }
    }

    @GetMapping("/{sha256}")
    String show(@PathVariable String sha256, Model model) {
        Edition edition = edition(sha256);
        model.addAttribute("edition", edition);
        model.addAttribute("inForce", editions.inForce());
        model.addAttribute("current", editions.require(edition.name()).equals(edition));
        model.addAttribute("difference", editions.difference(edition.sha256()));
        return "assessment/edition";
    }

    @GetMapping("/{sha256}/text")
    ResponseEntity<byte[]> text(@PathVariable String sha256) {
        Edition edition = edition(sha256);
        return ResponseEntity.ok()
                .contentType(MediaType.parseMediaType("application/yaml"))
                .header("Content-Disposition", "attachment; filename=\"" + edition.name() + ".yaml\"")
                .body(editions.content(edition.sha256()));
    }

    @PostMapping("/{sha256}/force")
    String putInForce(
            Actor actor,
            @PathVariable String sha256,
            @RequestParam String reason,
            Model model,
            RedirectAttributes flash,
            HttpServletResponse response) {
        Edition edition = edition(sha256);
        try {
            editions.putInForce(actor, edition.sha256(), reason);
            flash.addFlashAttribute("notice", "edition.in-force.done");
            return "redirect:/editions/" + sha256;
        } catch (RequestException refused) {
            response.setStatus(refused.status());
            model.addAttribute("refused", refused.getMessage());
            model.addAttribute("reason", reason);
            return show(sha256, model);
        }
    }

    private Edition edition(String sha256) {
        try {
            return editions.require(new Sha256(sha256));
        } catch (IllegalArgumentException | RequestException e) {
            throw new ResponseStatusException(HttpStatus.NOT_FOUND);
        }
    }
}
