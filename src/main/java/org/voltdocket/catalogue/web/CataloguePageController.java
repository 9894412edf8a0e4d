package org.voltdocket.catalogue.web;

import jakarta.servlet.http.HttpServletResponse;
import java.io.IOException;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.springframework.http.HttpStatus;
import org.springframework.security.access.AccessDeniedException;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.multipart.MultipartFile;
import org.springframework.web.server.ResponseStatusException;
import org.springframework.web.servlet.mvc.support.RedirectAttributes;
import org.voltdocket.catalogue.BatteryType;
import org.voltdocket.catalogue.CatalogueService;
import org.voltdocket.catalogue.Product;
import org.voltdocket.kernel.Actor;
import org.voltdocket.kernel.BatterySerial;
import org.voltdocket.kernel.RequestException;

/** The catalogue for the distributor: what stands in it, whose a serial is, and for the administrator the way in. */
@Controller
@RequestMapping("/catalogue")
class CataloguePageController {

    private final CatalogueService catalogue;

    CataloguePageController(CatalogueService catalogue) {
        this.catalogue = catalogue;
    }

    @GetMapping
    String show(Actor actor, @RequestParam(defaultValue = "") String serial, Model model) {
        forTheDistributor(actor);
        find(serial, model);
        List<BatteryType> types = catalogue.types();
        Map<String, Long> ranges = new LinkedHashMap<>();
        types.forEach(type -> ranges.put(
                type.code(),
                catalogue.ranges(type.code()).stream()
                        .filter(range -> range.endedAt().isEmpty())
                        .count()));
        model.addAttribute("suppliers", catalogue.suppliers());
        model.addAttribute("types", types);
        model.addAttribute("ranges", ranges);
        model.addAttribute("mayTake", actor.canAdminister());
        return "casefile/catalogue";
    }

    private void find(String serial, Model model) {
        model.addAttribute("serial", serial);
        if (serial.isBlank()) {
            return;
        }
        try {
            BatterySerial read = BatterySerial.parse(serial);
            Optional<Product> product = catalogue.of(read);
            model.addAttribute("found", product.orElse(null));
            model.addAttribute("outOf", catalogue.outOfRange(read).orElse(null));
        } catch (IllegalArgumentException e) {
            model.addAttribute("serialRefused", e.getMessage());
        }
    }

    @GetMapping("/{code}")
    String type(Actor actor, @PathVariable String code, Model model) {
        forTheDistributor(actor);
        model.addAttribute(
                "type", catalogue.type(code).orElseThrow(() -> new ResponseStatusException(HttpStatus.NOT_FOUND)));
        model.addAttribute("ranges", catalogue.ranges(code));
        model.addAttribute("sales", catalogue.sales(code));
        return "casefile/catalogue-type";
    }

    @PostMapping
    String take(
            Actor actor,
            @RequestParam MultipartFile file,
            Model model,
            RedirectAttributes flash,
            HttpServletResponse out)
            throws IOException {
        try {
            flash.addFlashAttribute("taken", catalogue.take(actor, file.getOriginalFilename(), file.getBytes()));
            return "redirect:/catalogue";
        } catch (RequestException refused) {
            out.setStatus(HttpServletResponse.SC_UNPROCESSABLE_CONTENT);
            model.addAttribute("refused", refused.properties());
            return show(actor, "", model);
        }
    }

    static void forTheDistributor(Actor actor) {
        if (actor.isWorkshop()) {
            throw new AccessDeniedException("the catalogue is the distributor's");
        }
    }
}
