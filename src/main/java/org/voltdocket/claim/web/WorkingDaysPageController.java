package org.voltdocket.claim.web;

import jakarta.servlet.http.HttpServletResponse;
import java.time.LocalDate;
import java.util.Map;
import java.util.stream.Collectors;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.servlet.mvc.support.RedirectAttributes;
import org.voltdocket.claim.deadline.WorkingDayService;
import org.voltdocket.kernel.Actor;
import org.voltdocket.kernel.RequestException;

/** The page of working days and holidays. An administrator sets them; everybody reads them. */
@Controller
class WorkingDaysPageController {

    private final WorkingDayService days;

    WorkingDaysPageController(WorkingDayService days) {
        this.days = days;
    }

    @GetMapping("/desk/days")
    String show(Actor actor, Model model) {
        WorkingDayService.Setting setting = days.setting();
        return fill(
                actor,
                Map.of(
                        "decideDays", Integer.toString(setting.decideDays()),
                        "answerDays", Integer.toString(setting.answerDays()),
                        "holidays",
                                setting.holidays().stream()
                                        .map(LocalDate::toString)
                                        .collect(Collectors.joining("\n"))),
                model);
    }

    @PostMapping("/desk/days")
    String set(
            Actor actor,
            @RequestParam Map<String, String> given,
            Model model,
            RedirectAttributes flash,
            HttpServletResponse response) {
        try {
            days.set(actor, given.get("decideDays"), given.get("answerDays"), given.get("holidays"));
            flash.addFlashAttribute("notice", "days.done");
            return "redirect:/desk/days";
        } catch (RequestException refused) {
            response.setStatus(HttpServletResponse.SC_BAD_REQUEST);
            model.addAttribute("refused", refused.getMessage());
            model.addAttribute("refusedField", refused.field());
            return fill(actor, given, model);
        }
    }

    private static String fill(Actor actor, Map<String, String> given, Model model) {
        model.addAttribute("given", given);
        model.addAttribute("may", actor.canAdminister());
        return "claim/working-days";
    }
}
