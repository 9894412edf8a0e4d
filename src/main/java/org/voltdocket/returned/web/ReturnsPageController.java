package org.voltdocket.returned.web;

import jakarta.servlet.http.HttpServletResponse;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.servlet.mvc.support.RedirectAttributes;
import org.voltdocket.kernel.Actor;
import org.voltdocket.kernel.RequestException;
import org.voltdocket.returned.ArrivalResult;
import org.voltdocket.returned.ArrivalWarning;
import org.voltdocket.returned.ReturnListItem;
import org.voltdocket.returned.ReturnQuery;
import org.voltdocket.returned.pallet.PalletService;
import org.voltdocket.returned.service.ReturnService;

/** The list of returned batteries with the scan field. */
@Controller
@RequestMapping("/returns")
class ReturnsPageController {

    private static final int SHOWN = 200;

    private final ReturnService returns;
    private final PalletService pallets;

    ReturnsPageController(ReturnService returns, PalletService pallets) {
        this.returns = returns;
        this.pallets = pallets;
    }

    @GetMapping
    String list(
            Actor actor,
            @RequestParam(defaultValue = "") String q,
            @RequestParam(defaultValue = "") String state,
            @RequestParam(name = "warnings", defaultValue = "") String warning,
            @RequestParam(defaultValue = "") String pallet,
            Model model) {
        if (model.getAttribute("scannedId") instanceof UUID id) {
            boolean created = Boolean.TRUE.equals(model.getAttribute("scannedNew"));
            model.addAttribute("scanned", new ArrivalResult(created, returns.of(actor, id)));
        }
        List<ReturnListItem> lines = returns.list(actor, new ReturnQuery(q, state, warning, SHOWN));
        model.addAttribute("lines", lines);
        model.addAttribute("full", lines.size() == SHOWN);
        model.addAttribute("q", q);
        model.addAttribute("state", state);
        model.addAttribute("warning", warning);
        model.addAttribute("warnings", ArrivalWarning.values());
        model.addAttribute("pallet", pallet);
        model.addAttribute("pallets", pallets.all(actor));
        model.addAttribute("filtered", !(q + state + warning).isBlank());
        return "returned/list";
    }

    /** A scan: the serial, then Enter. The page returns with the warnings of the arrival, ready for the next scan. */
    @PostMapping
    String scan(
            Actor actor,
            @RequestParam(defaultValue = "") String serial,
            @RequestParam(defaultValue = "") String pallet,
            Model model,
            RedirectAttributes flash,
            HttpServletResponse response) {
        try {
            ArrivalResult arrived = returns.arrive(
                    actor,
                    ReturnRequestParser.serial(serial),
                    Optional.of(pallet).filter(text -> !text.isBlank()));
            // a session stores simple values only
            flash.addFlashAttribute("scannedId", arrived.battery().id());
            flash.addFlashAttribute("scannedNew", arrived.created());
            flash.addAttribute("pallet", pallet);
            return "redirect:/returns";
        } catch (RequestException refused) {
            response.setStatus(refused.status());
            model.addAttribute("scanError", refused.getMessage());
            model.addAttribute("serial", serial);
            return list(actor, "", "", "", pallet, model);
        }
    }
}
