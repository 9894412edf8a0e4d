package org.voltdocket.warranty.web;

import jakarta.servlet.http.HttpServletResponse;
import java.time.Clock;
import java.time.LocalDate;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.servlet.mvc.support.RedirectAttributes;
import org.voltdocket.catalogue.CatalogueService;
import org.voltdocket.diagnosis.Chemistry;
import org.voltdocket.kernel.Actor;
import org.voltdocket.kernel.RequestException;
import org.voltdocket.warranty.UseClass;
import org.voltdocket.warranty.WarrantyTermsEntry;
import org.voltdocket.warranty.WarrantyTermsForm;
import org.voltdocket.warranty.WarrantyTermsService;

/** The warranty terms, for everybody to read; an administrator records new ones. */
@Controller
class WarrantyPageController {

    private final WarrantyTermsService terms;
    private final CatalogueService catalogue;
    private final Clock clock;

    WarrantyPageController(WarrantyTermsService terms, CatalogueService catalogue, Clock clock) {
        this.terms = terms;
        this.catalogue = catalogue;
        this.clock = clock;
    }

    /**
     * A row of the list.
     *
     * @param standing {@code in-force}, {@code later}, {@code earlier} or {@code replaced}
     */
    record Line(WarrantyTermsEntry terms, String standing) {}

    @GetMapping("/warranty")
    String show(Actor actor, Model model) {
        return fill(actor, Map.of(), model);
    }

    @PostMapping("/warranty")
    String record(
            Actor actor,
            @RequestParam Map<String, String> given,
            Model model,
            RedirectAttributes flash,
            HttpServletResponse response) {
        try {
            terms.record(
                    actor,
                    new WarrantyTermsForm.Form(
                            given.get("batteryType"),
                            given.get("chemistry"),
                            given.get("use"),
                            given.get("validFrom"),
                            given.get("freeMonths"),
                            given.get("proRata"),
                            given.get("mileageKm"),
                            given.get("reason")));
            flash.addFlashAttribute("notice", "warranty.done");
            return "redirect:/warranty";
        } catch (RequestException refused) {
            response.setStatus(HttpServletResponse.SC_BAD_REQUEST);
            model.addAttribute("refused", refused.getMessage());
            model.addAttribute("refusedField", refused.field());
            return fill(actor, given, model);
        }
    }

    private String fill(Actor actor, Map<String, String> given, Model model) {
        model.addAttribute("lines", lines(terms.all()));
        model.addAttribute("given", given);
        model.addAttribute("may", actor.canAdminister());
        model.addAttribute("types", catalogue.types());
        model.addAttribute("uses", UseClass.values());
        model.addAttribute("chemistries", Chemistry.values());
        return "warranty/warranty";
    }

    private List<Line> lines(List<WarrantyTermsEntry> all) {
        LocalDate today = LocalDate.now(clock);
        Set<String> days = new HashSet<>();
        Set<String> inForce = new HashSet<>();
        return all.stream()
                .map(row -> {
                    String scope = row.scope() + " " + row.use().id();
                    if (!days.add(scope + row.validFrom())) {
                        return new Line(row, "replaced");
                    }
                    if (row.validFrom().isAfter(today)) {
                        return new Line(row, "later");
                    }
                    return new Line(row, inForce.add(scope) ? "in-force" : "earlier");
                })
                .toList();
    }
}
