package org.voltdocket.recovery.web;

import jakarta.servlet.http.HttpServletResponse;
import java.util.List;
import java.util.Set;
import java.util.UUID;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.servlet.mvc.support.RedirectAttributes;
import org.voltdocket.kernel.Actor;
import org.voltdocket.kernel.RequestException;
import org.voltdocket.recovery.OpenTotal;
import org.voltdocket.recovery.RecoverableClaim;
import org.voltdocket.recovery.RecoveryService;
import org.voltdocket.recovery.SupplierAnswer;
import org.voltdocket.recovery.SupplierBalance;
import org.voltdocket.recovery.WorkshopRepayment;

/** Open money by supplier, what waits to be asked for, the lists, and what came back. */
@Controller
@RequestMapping("/recoveries")
class RecoveryPageController {

    private final RecoveryService recoveries;

    RecoveryPageController(RecoveryService recoveries) {
        this.recoveries = recoveries;
    }

    @GetMapping
    String overview(Actor actor, Model model) {
        List<RecoverableClaim> waiting = recoveries.waiting(actor);
        List<SupplierBalance> money = recoveries.money(actor);
        List<WorkshopRepayment> workshops = recoveries.fromWorkshops(actor);
        model.addAttribute("money", money);
        model.addAttribute("workshops", workshops);
        model.addAttribute("totals", OpenTotal.of(money, workshops));
        model.addAttribute("mayOpenReturns", actor.canAudit());
        model.addAttribute("waiting", waiting);
        model.addAttribute(
                "unknown",
                waiting.stream().filter(one -> one.product().isEmpty()).toList());
        model.addAttribute("lists", recoveries.all(actor));
        model.addAttribute("mayWrite", actor.canEditCases());
        return "recovery/recoveries";
    }

    @PostMapping
    String make(
            Actor actor,
            @RequestParam String supplier,
            @RequestParam String currency,
            @RequestParam(required = false) Set<UUID> claims,
            Model model,
            RedirectAttributes flash,
            HttpServletResponse response) {
        try {
            String made = recoveries
                    .make(actor, supplier, currency, claims == null ? Set.of() : claims)
                    .number();
            flash.addFlashAttribute("done", "supplier-list.done.made");
            return "redirect:/recoveries/" + made;
        } catch (RequestException refused) {
            refuse(refused, model, response);
            return overview(actor, model);
        }
    }

    @GetMapping("/{list}")
    String one(Actor actor, @PathVariable String list, Model model) {
        model.addAttribute("list", recoveries.of(actor, list));
        model.addAttribute("mayWrite", actor.canEditCases());
        return "recovery/recovery";
    }

    @PostMapping("/{list}/answers")
    String answer(
            Actor actor,
            @PathVariable String list,
            @RequestParam int position,
            @RequestParam(defaultValue = "") String outcome,
            @RequestParam(defaultValue = "") String amount,
            @RequestParam(defaultValue = "") String on,
            @RequestParam(defaultValue = "") String reason,
            Model model,
            RedirectAttributes flash,
            HttpServletResponse response) {
        try {
            recoveries.answer(actor, list, new SupplierAnswer(position, outcome, amount, on, reason));
            flash.addFlashAttribute("done", "supplier-list.done.answer");
            return "redirect:/recoveries/" + list + "#p" + position;
        } catch (RequestException refused) {
            refuse(refused, model, response);
            model.addAttribute("given", new SupplierAnswer(position, outcome, amount, on, reason));
            return one(actor, list, model);
        }
    }

    @PostMapping("/{list}/withdraw")
    String withdraw(
            Actor actor,
            @PathVariable String list,
            @RequestParam(defaultValue = "") String reason,
            Model model,
            RedirectAttributes flash,
            HttpServletResponse response) {
        try {
            recoveries.withdraw(actor, list, reason);
            flash.addFlashAttribute("done", "supplier-list.done.withdrawn");
            return "redirect:/recoveries/" + list;
        } catch (RequestException refused) {
            refuse(refused, model, response);
            return one(actor, list, model);
        }
    }

    private static void refuse(RequestException refused, Model model, HttpServletResponse response) {
        response.setStatus(refused.status());
        model.addAttribute("refused", refused.getMessage());
    }
}
