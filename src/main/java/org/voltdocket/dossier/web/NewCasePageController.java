package org.voltdocket.dossier.web;

import jakarta.servlet.http.HttpServletResponse;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.servlet.mvc.support.RedirectAttributes;
import org.voltdocket.assessment.CaseEditService;
import org.voltdocket.casefile.CaseRequest;
import org.voltdocket.casefile.CaseService;
import org.voltdocket.casefile.FactConflict;
import org.voltdocket.casefile.OpenCaseResult;
import org.voltdocket.casefile.web.FactFields;
import org.voltdocket.kernel.Actor;
import org.voltdocket.kernel.FieldError;
import org.voltdocket.kernel.RequestException;
import org.voltdocket.ui.TextFormatter;

/** The form that opens a case, or leads to the existing one. */
@Controller
class NewCasePageController {

    private final CaseEditService cases;
    private final TextFormatter words;

    NewCasePageController(CaseEditService cases, TextFormatter words) {
        this.cases = cases;
        this.words = words;
    }

    @GetMapping("/cases/new")
    String form(@RequestParam Map<String, String> given, Model model) {
        return show(given, Map.of(), model);
    }

    @PostMapping("/cases/new")
    String open(
            Actor actor,
            @RequestParam Map<String, String> sent,
            Model model,
            RedirectAttributes flash,
            HttpServletResponse response) {
        Map<String, String> given = confirmed(sent);
        Map<String, String> errors = new LinkedHashMap<>();
        try {
            OpenCaseResult opened = cases.open(actor, CaseRequest.ofForm(given).newCase());
            flash.addFlashAttribute("notice", opened.created() ? "case.notice.opened" : "case.notice.existed");
            return "redirect:/cases/" + opened.ref().number();
        } catch (RequestException refused) {
            if (refused.code().equals(CaseService.IN_OTHER_WORKSHOP)) {
                model.addAttribute("elsewhere", refused.getMessage());
            }
            if (refused.code().equals(CaseService.CONFLICTING_FACTS)) {
                model.addAttribute("existing", refused.properties().get("case"));
                for (Object each : (List<?>) refused.properties().get("errors")) {
                    FactConflict one = (FactConflict) each;
                    errors.put(
                            one.field(),
                            words.say(
                                    "new.conflict", shown(one.field(), one.known()), shown(one.field(), one.given())));
                }
            }
            for (FieldError error : refused.errors()) {
                errors.merge(error.field(), error.message(), (a, b) -> a + " " + b);
            }
            model.addAttribute("suggestion", refused.properties().get("suggestion"));
        }
        response.setStatus(model.containsAttribute("existing") || model.containsAttribute("elsewhere") ? 409 : 400);
        return show(given, errors, model);
    }

    /** Replaces the VIN by the suggested one if the user confirmed it. */
    private static Map<String, String> confirmed(Map<String, String> sent) {
        Map<String, String> given = new LinkedHashMap<>(sent);
        String vin = given.remove("confirmedVin");
        if (vin != null) {
            given.put("vin", vin);
        }
        return given;
    }

    private String shown(String field, Object value) {
        String text = String.valueOf(value);
        return FactFields.ALL.stream()
                .filter(f -> f.name().equals(field) && !f.words().isEmpty())
                .findFirst()
                .map(f -> words.of(f.words(), text))
                .orElse(text);
    }

    private static String show(Map<String, String> given, Map<String, String> errors, Model model) {
        model.addAttribute("values", given);
        model.addAttribute("errors", errors);
        model.addAttribute("fields", FactFields.ALL);
        model.addAttribute(
                "unfolded",
                FactFields.ALL.stream()
                        .anyMatch(f -> errors.containsKey(f.name())
                                || !given.getOrDefault(f.name(), "").isBlank()));
        return "casefile/new";
    }
}
