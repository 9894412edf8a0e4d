package org.voltdocket.dossier.testing;

import jakarta.servlet.http.HttpServletResponse;
import java.io.ByteArrayInputStream;
import java.time.Clock;
import java.time.LocalDateTime;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.UUID;
import java.util.function.Function;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.servlet.mvc.support.RedirectAttributes;
import org.voltdocket.assessment.AssessmentService;
import org.voltdocket.assessment.EvidenceUploadService;
import org.voltdocket.casefile.CaseReference;
import org.voltdocket.casefile.CaseService;
import org.voltdocket.diagnosis.Origin;
import org.voltdocket.evidence.IntakeResult;
import org.voltdocket.evidence.Rejected;
import org.voltdocket.evidence.Upload;
import org.voltdocket.kernel.Actor;
import org.voltdocket.kernel.CaseNumber;
import org.voltdocket.kernel.RequestException;
import org.voltdocket.returned.ReturnedBattery;
import org.voltdocket.returned.service.ReturnService;

/** Forms for tests whose values a person types, at the vehicle and on the bench. */
@Controller
class TestFormPageController {

    private final CaseService cases;
    private final ReturnService returns;
    private final EvidenceUploadService uploads;
    private final AssessmentService assessments;
    private final Clock clock;

    TestFormPageController(
            CaseService cases,
            ReturnService returns,
            EvidenceUploadService uploads,
            AssessmentService assessments,
            Clock clock) {
        this.cases = cases;
        this.returns = returns;
        this.uploads = uploads;
        this.assessments = assessments;
        this.clock = clock;
    }

    @GetMapping("/cases/{number}/tests/{kind}")
    String caseForm(Actor actor, @PathVariable CaseNumber number, @PathVariable String kind, Model model) {
        caseModel(cases.requireToFeed(actor, number), model);
        return empty(form(kind), model);
    }

    @PostMapping("/cases/{number}/tests/{kind}")
    String receiveForCase(
            Actor actor,
            @PathVariable CaseNumber number,
            @PathVariable String kind,
            @RequestParam Map<String, String> given,
            Model model,
            RedirectAttributes flash,
            HttpServletResponse response) {
        CaseReference ref = cases.requireToFeed(actor, number);
        TestForm form = form(kind);
        String before = assessments
                .latest(ref.id())
                .map(latest -> "answer." + latest.assessment().leaning().id())
                .orElse("case.unjudged");
        Map<String, TypedRecord.Problem> errors =
                receive(form, given, actor, Origin.TYPED, upload -> uploads.receive(actor, ref, upload));
        if (errors.isEmpty()) {
            flash.addFlashAttribute("notice", "typed.notice");
            flash.addFlashAttribute("before", before);
            return "redirect:/cases/" + number;
        }
        caseModel(ref, model);
        return refused(form, given, errors, model, response);
    }

    @GetMapping("/returns/{returned}/tests/{kind}")
    String benchForm(Actor actor, @PathVariable UUID returned, @PathVariable String kind, Model model) {
        benchModel(returns.of(actor, returned), model);
        return empty(form(kind), model);
    }

    @PostMapping("/returns/{returned}/tests/{kind}")
    String receiveForBench(
            Actor actor,
            @PathVariable UUID returned,
            @PathVariable String kind,
            @RequestParam Map<String, String> given,
            Model model,
            RedirectAttributes flash,
            HttpServletResponse response) {
        TestForm form = form(kind);
        ReturnedBattery battery = returns.of(actor, returned);
        Map<String, TypedRecord.Problem> errors =
                receive(form, given, actor, Origin.BENCH, upload -> returns.receive(actor, returned, upload));
        if (errors.isEmpty()) {
            flash.addFlashAttribute("notice", "return.notice.evidence");
            return "redirect:/returns/" + returned + "#bench-evidence";
        }
        benchModel(battery, model);
        return refused(form, given, errors, model, response);
    }

    private Map<String, TypedRecord.Problem> receive(
            TestForm form,
            Map<String, String> given,
            Actor actor,
            Origin origin,
            Function<Upload, IntakeResult> intake) {
        TypedRecord record = TypedRecord.of(form, given, actor, clock.instant());
        if (!record.errors().isEmpty()) {
            return record.errors();
        }
        String note = given.getOrDefault("note", "").strip();
        IntakeResult result = intake.apply(new Upload(
                record.fileName(), new ByteArrayInputStream(record.content()), note.isEmpty() ? null : note, origin));
        return result instanceof Rejected rejected
                ? Map.of("", TypedRecord.Problem.said(rejected.file().detail()))
                : Map.of();
    }

    private static void caseModel(CaseReference ref, Model model) {
        model.addAttribute("ref", ref);
        model.addAttribute("back", "/cases/" + ref.number());
        model.addAttribute("place", ref.number().value());
    }

    private static void benchModel(ReturnedBattery battery, Model model) {
        model.addAttribute("back", "/returns/" + battery.id());
        model.addAttribute("place", battery.number());
        model.addAttribute("bench", true);
    }

    private String empty(TestForm form, Model model) {
        Map<String, String> values = new LinkedHashMap<>();
        values.put(
                TypedRecord.TAKEN_AT,
                DateTimeFormatter.ofPattern("yyyy-MM-dd'T'HH:mm")
                        .format(LocalDateTime.ofInstant(clock.instant(), ZoneOffset.UTC)));
        values.put(TypedRecord.OFFSET, "Z");
        return show(form, values, Map.of(), model);
    }

    private static String refused(
            TestForm form,
            Map<String, String> given,
            Map<String, TypedRecord.Problem> errors,
            Model model,
            HttpServletResponse response) {
        response.setStatus(HttpServletResponse.SC_UNPROCESSABLE_CONTENT);
        return show(form, given, errors, model);
    }

    private static String show(
            TestForm form, Map<String, String> values, Map<String, TypedRecord.Problem> errors, Model model) {
        model.addAttribute("form", form);
        model.addAttribute("kind", form.kind().id());
        model.addAttribute("values", values);
        model.addAttribute("errors", errors);
        return "testing/form";
    }

    private static TestForm form(String kind) {
        return TestForm.of(kind).orElseThrow(() -> RequestException.notFound("form of " + kind));
    }
}
