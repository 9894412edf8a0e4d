package org.voltdocket.returned.web;

import jakarta.servlet.http.HttpServletResponse;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import java.util.function.Supplier;
import org.springframework.http.ProblemDetail;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.multipart.MultipartFile;
import org.springframework.web.servlet.mvc.support.RedirectAttributes;
import org.voltdocket.diagnosis.Origin;
import org.voltdocket.diagnosis.read.RejectedFile;
import org.voltdocket.evidence.IntakeResult;
import org.voltdocket.evidence.Rejected;
import org.voltdocket.evidence.web.MultipartUploads;
import org.voltdocket.kernel.Actor;
import org.voltdocket.kernel.RequestException;
import org.voltdocket.returned.BatteryCondition;
import org.voltdocket.returned.ReturnedBattery;
import org.voltdocket.returned.service.ReturnService;
import org.voltdocket.ui.error.ProblemDetails;

/** The page of a returned battery and its forms. */
@Controller
@RequestMapping("/returns/{returned}")
class ReturnPageController {

    private final ReturnService returns;
    private final ReturnPageModel pages;

    ReturnPageController(ReturnService returns, ReturnPageModel pages) {
        this.returns = returns;
        this.pages = pages;
    }

    /** A file with the result of its intake. */
    public record ReceivedFile(String fileName, IntakeResult received) {

        /** Null where the file was accepted. */
        public RejectedFile refused() {
            return received instanceof Rejected rejected ? rejected.file() : null;
        }
    }

    @GetMapping
    String show(Actor actor, @PathVariable UUID returned, Model model) {
        pages.fill(returns.of(actor, returned), model);
        return "returned/battery";
    }

    @PostMapping("/condition")
    String look(
            Actor actor,
            @PathVariable UUID returned,
            @RequestParam Map<String, String> given,
            Model model,
            RedirectAttributes flash,
            HttpServletResponse response) {
        return submit(
                "condition",
                actor,
                returned,
                model,
                flash,
                response,
                () -> returns.recordCondition(
                        actor,
                        returned,
                        new BatteryCondition(
                                given.containsKey("cracked"),
                                given.containsKey("leaking"),
                                given.containsKey("swollen"),
                                given.containsKey("frozen"),
                                ReturnRequestParser.terminals(given.get("terminals")),
                                given.get("note"),
                                null,
                                null)));
    }

    @PostMapping("/place")
    String put(
            Actor actor,
            @PathVariable UUID returned,
            @RequestParam(defaultValue = "") String place,
            Model model,
            RedirectAttributes flash,
            HttpServletResponse response) {
        return submit(
                "place", actor, returned, model, flash, response, () -> returns.recordPlace(actor, returned, place));
    }

    @PostMapping("/case")
    String choose(
            Actor actor,
            @PathVariable UUID returned,
            @RequestParam(name = "case", defaultValue = "") String number,
            Model model,
            RedirectAttributes flash,
            HttpServletResponse response) {
        return submit(
                "case",
                actor,
                returned,
                model,
                flash,
                response,
                () -> returns.assignCase(actor, returned, ReturnRequestParser.caseNumber(number)));
    }

    @PostMapping("/steps")
    String step(
            Actor actor,
            @PathVariable UUID returned,
            @RequestParam Map<String, String> given,
            Model model,
            RedirectAttributes flash,
            HttpServletResponse response) {
        return submit(
                "step",
                actor,
                returned,
                model,
                flash,
                response,
                () -> returns.recordStep(
                        actor,
                        returned,
                        ReturnRequestParser.step(given.get("step")),
                        ReturnRequestParser.act(given.get("act")),
                        ReturnRequestParser.formTime(given.get("at")),
                        given.get("note")));
    }

    @PostMapping("/evidence")
    String receive(
            Actor actor,
            @PathVariable UUID returned,
            @RequestParam(name = "file", required = false) List<MultipartFile> files,
            @RequestParam(required = false) String note,
            Model model,
            RedirectAttributes flash,
            HttpServletResponse response)
            throws IOException {
        List<ReceivedFile> received = new ArrayList<>();
        try {
            for (MultipartFile file : MultipartUploads.present(files)) {
                received.add(new ReceivedFile(
                        file.getOriginalFilename(),
                        MultipartUploads.receive(
                                file, note, Origin.BENCH, upload -> returns.receive(actor, returned, upload))));
            }
        } catch (RequestException conflict) {
            return refused("evidence", conflict, actor, returned, model, response);
        }
        if (received.stream().allMatch(one -> one.refused() == null)) {
            flash.addFlashAttribute("notice", received.isEmpty() ? "return.notice.no-file" : "return.notice.evidence");
            return "redirect:/returns/" + returned + "#bench-evidence";
        }
        response.setStatus(HttpServletResponse.SC_UNPROCESSABLE_CONTENT);
        pages.fill(returns.of(actor, returned), model);
        model.addAttribute("received", received);
        return "returned/battery";
    }

    @PostMapping("/outcome")
    String conclude(
            Actor actor,
            @PathVariable UUID returned,
            @RequestParam(defaultValue = "") String outcome,
            @RequestParam(defaultValue = "") String reason,
            Model model,
            RedirectAttributes flash,
            HttpServletResponse response) {
        model.addAttribute("givenOutcome", outcome);
        model.addAttribute("givenReason", reason);
        return submit(
                "outcome",
                actor,
                returned,
                model,
                flash,
                response,
                () -> returns.recordOutcome(actor, returned, ReturnRequestParser.finding(outcome), reason));
    }

    /** Redirects to the page with a notice, or shows the page with the error in the section of the form. */
    private String submit(
            String section,
            Actor actor,
            UUID id,
            Model model,
            RedirectAttributes flash,
            HttpServletResponse response,
            Supplier<ReturnedBattery> work) {
        try {
            work.get();
            flash.addFlashAttribute("notice", "return.notice." + section);
            return "redirect:/returns/" + id + "#" + section;
        } catch (RequestException refused) {
            if (refused.isNotFound() && !section.equals("case")) {
                throw refused;
            }
            return refused(section, refused, actor, id, model, response);
        }
    }

    private String refused(
            String section, RequestException refused, Actor actor, UUID id, Model model, HttpServletResponse response) {
        pages.fill(returns.of(actor, id), model);
        model.addAttribute("refusedIn", section);
        ProblemDetail problem = ProblemDetails.of(refused);
        model.addAttribute("refused", problem.getDetail());
        response.setStatus(problem.getStatus());
        return "returned/battery";
    }
}
