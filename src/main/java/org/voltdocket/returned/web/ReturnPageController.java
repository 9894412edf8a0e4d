package org.voltdocket.returned.web;

import jakarta.servlet.http.HttpServletResponse;
import java.io.IOException;
import java.io.InputStream;
import java.time.LocalDateTime;
import java.time.ZoneOffset;
import java.time.format.DateTimeParseException;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import java.util.function.Supplier;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.ErrorResponse;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.multipart.MultipartFile;
import org.springframework.web.servlet.mvc.support.RedirectAttributes;
import org.voltdocket.casefile.NotFoundException;
import org.voltdocket.diagnosis.read.RejectedFile;
import org.voltdocket.evidence.IntakeResult;
import org.voltdocket.evidence.Rejected;
import org.voltdocket.kernel.Actor;
import org.voltdocket.kernel.CaseNumber;
import org.voltdocket.returned.BatteryCondition;
import org.voltdocket.returned.BenchFile;
import org.voltdocket.returned.InvalidReturnRequestException;
import org.voltdocket.returned.ReturnConflictException;
import org.voltdocket.returned.ReturnRequestParser;
import org.voltdocket.returned.ReturnService;
import org.voltdocket.returned.ReturnedBattery;

/** The page of a returned battery, and what is noted on it. */
@Controller
@RequestMapping("/returns/{returned}")
class ReturnPageController {

    private final ReturnService returns;
    private final ReturnPageModel pages;

    ReturnPageController(ReturnService returns, ReturnPageModel pages) {
        this.returns = returns;
        this.pages = pages;
    }

    /** What became of a file. */
    public record Outcome(String fileName, IntakeResult received) {

        /** Null where it was taken. */
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
        return tried(
                "condition",
                actor,
                returned,
                model,
                flash,
                response,
                () -> returns.look(
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
        return tried("place", actor, returned, model, flash, response, () -> returns.put(actor, returned, place));
    }

    @PostMapping("/case")
    String choose(
            Actor actor,
            @PathVariable UUID returned,
            @RequestParam(name = "case", defaultValue = "") String number,
            Model model,
            RedirectAttributes flash,
            HttpServletResponse response) {
        return tried(
                "case", actor, returned, model, flash, response, () -> returns.choose(actor, returned, number(number)));
    }

    private static CaseNumber number(String text) {
        try {
            return CaseNumber.parse(text);
        } catch (IllegalArgumentException e) {
            throw InvalidReturnRequestException.of("case", e.getMessage().replaceAll("\\.$", ""));
        }
    }

    @PostMapping("/steps")
    String step(
            Actor actor,
            @PathVariable UUID returned,
            @RequestParam Map<String, String> given,
            Model model,
            RedirectAttributes flash,
            HttpServletResponse response) {
        return tried(
                "step",
                actor,
                returned,
                model,
                flash,
                response,
                () -> returns.step(
                        actor,
                        returned,
                        ReturnRequestParser.step(given.get("step")),
                        ReturnRequestParser.act(given.get("act")),
                        at(given.get("at")),
                        given.get("note")));
    }

    /** A form's local time is UTC here, as every time on these pages. */
    private static Optional<java.time.Instant> at(String text) {
        try {
            return text == null || text.isBlank()
                    ? Optional.empty()
                    : Optional.of(LocalDateTime.parse(text.strip()).toInstant(ZoneOffset.UTC));
        } catch (DateTimeParseException e) {
            return ReturnRequestParser.at(text);
        }
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
        List<Outcome> outcomes = new ArrayList<>();
        try {
            for (MultipartFile file : files == null ? List.<MultipartFile>of() : files) {
                if (file.isEmpty() && String.valueOf(file.getOriginalFilename()).isEmpty()) {
                    continue;
                }
                try (InputStream content = file.getInputStream()) {
                    BenchFile one = new BenchFile(
                            file.getOriginalFilename(), content, note == null || note.isBlank() ? null : note);
                    outcomes.add(new Outcome(file.getOriginalFilename(), returns.receive(actor, returned, one)));
                }
            }
        } catch (ReturnConflictException conflict) {
            return refused("evidence", conflict, actor, returned, model, response);
        }
        if (outcomes.stream().allMatch(one -> one.refused() == null)) {
            flash.addFlashAttribute("notice", outcomes.isEmpty() ? "return.notice.no-file" : "return.notice.evidence");
            return "redirect:/returns/" + returned + "#bench-evidence";
        }
        response.setStatus(HttpServletResponse.SC_UNPROCESSABLE_CONTENT);
        pages.fill(returns.of(actor, returned), model);
        model.addAttribute("received", outcomes);
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
        return tried(
                "outcome",
                actor,
                returned,
                model,
                flash,
                response,
                () -> returns.conclude(actor, returned, ReturnRequestParser.finding(outcome), reason));
    }

    /** Leads back to the page with a notice, or shows it at once with what was refused and where. */
    private String tried(
            String deed,
            Actor actor,
            UUID id,
            Model model,
            RedirectAttributes flash,
            HttpServletResponse response,
            Supplier<ReturnedBattery> work) {
        try {
            work.get();
            flash.addFlashAttribute("notice", "return.notice." + deed);
            return "redirect:/returns/" + id + "#" + deed;
        } catch (InvalidReturnRequestException | ReturnConflictException | NotFoundException refused) {
            if (refused instanceof NotFoundException && !deed.equals("case")) {
                throw refused;
            }
            return refused(deed, (ErrorResponse) refused, actor, id, model, response);
        }
    }

    private String refused(
            String deed, ErrorResponse refused, Actor actor, UUID id, Model model, HttpServletResponse response) {
        pages.fill(returns.of(actor, id), model);
        model.addAttribute("refusedIn", deed);
        model.addAttribute("refused", refused.getBody().getDetail());
        response.setStatus(refused.getStatusCode().value());
        return "returned/battery";
    }
}
