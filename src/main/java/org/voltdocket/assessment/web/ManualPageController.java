package org.voltdocket.assessment.web;

import java.io.IOException;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.springframework.core.io.Resource;
import org.springframework.core.io.support.PathMatchingResourcePatternResolver;
import org.springframework.http.HttpStatus;
import org.springframework.http.MediaType;
import org.springframework.http.MediaTypeFactory;
import org.springframework.http.ResponseEntity;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.server.ResponseStatusException;
import org.voltdocket.diagnosis.BatteryReason;
import org.voltdocket.diagnosis.BatteryVerdict;
import org.voltdocket.diagnosis.Cause;
import org.voltdocket.diagnosis.Leaning;
import org.voltdocket.diagnosis.Regime;
import org.voltdocket.diagnosis.Result;

/** The manual: short pages for everybody, and the sample files they speak of. */
@Controller
class ManualPageController {

    /** Pages in the order of the manual's own list. */
    static final List<String> PAGES = List.of(
            "start",
            "tests",
            "recordings",
            "words",
            "returns",
            "notices",
            "suppliers",
            "problems",
            "safety",
            "running",
            "security");

    /** Kinds of problem, in the order of their page. */
    static final List<String> PROBLEMS = List.of(
            "file-too-large",
            "file-kind-unknown",
            "recording-refused",
            "system-24-volt",
            "test-record-refused",
            "document-refused",
            "note-too-long",
            "upload-headers",
            "upload-offset",
            "upload-checksum",
            "uploads-open",
            "link-refused",
            "facts-refused",
            "conflicting-facts",
            "case-with-another-workshop",
            "changed-since-read",
            "claim-refused",
            "claim-open-already",
            "claim-objection",
            "claim-step-refused",
            "claim-not-judged",
            "claim-second-person",
            "claim-same-duties",
            "case-erased",
            "original-erased",
            "erasure-refused",
            "catalogue-refused",
            "notice-refused",
            "review-refused",
            "notice-conflict",
            "recovery-refused",
            "recovery-conflict",
            "terms-refused",
            "edition-refused",
            "edition-frozen",
            "edition-unknown",
            "edition-in-the-making",
            "edition-reason-missing",
            "edition-in-force-already",
            "reassessment-refused",
            "reassessment-step-refused",
            "return-refused",
            "return-without-case",
            "return-case-fixed",
            "bench-step-refused",
            "lot-refused",
            "pallet-known",
            "nothing-to-print",
            "desk-refused",
            "series-refused",
            "malformed-request",
            "refused",
            "conflict",
            "account-refused",
            "not-signed-in",
            "not-allowed",
            "not-found",
            "too-many-tries",
            "second-factor-needed",
            "token-scope",
            "invitation-gone",
            "too-large",
            "body-too-large",
            "slow-request",
            "too-many-at-once",
            "quota-reached",
            "case-full",
            "too-many-of-one",
            "host-unknown",
            "server-busy",
            "unsupported-media-type",
            "not-acceptable",
            "method-not-allowed",
            "not-ready",
            "database-away",
            "store-away",
            "disk-full",
            "server-error");

    private static final List<SecurityRequirement> REQUIREMENTS = SecurityRequirement.all();

    @GetMapping("/manual")
    String start(Model model) throws IOException {
        return page("start", model);
    }

    @GetMapping("/manual/{page}")
    String page(@PathVariable String page, Model model) throws IOException {
        if (!PAGES.contains(page)) {
            throw new ResponseStatusException(HttpStatus.NOT_FOUND);
        }
        model.addAttribute("pages", PAGES);
        model.addAttribute("page", page);
        model.addAttribute("problems", PROBLEMS);
        if (page.equals("security")) {
            model.addAttribute(
                    "requirements",
                    REQUIREMENTS.stream()
                            .collect(Collectors.groupingBy(
                                    SecurityRequirement::chapter, LinkedHashMap::new, Collectors.toList())));
        }
        model.addAttribute("verdicts", ids(BatteryVerdict.values(), BatteryVerdict::id));
        model.addAttribute("reasons", ids(BatteryReason.values(), BatteryReason::id));
        model.addAttribute("leanings", ids(Leaning.values(), Leaning::id));
        model.addAttribute("causes", ids(Cause.values(), Cause::id));
        model.addAttribute("regimes", ids(Regime.values(), Regime::id));
        model.addAttribute("results", ids(Result.values(), Result::id));
        model.addAttribute(
                "samples",
                Arrays.stream(samples()).map(Resource::getFilename).sorted().toList());
        return "manual/" + page;
    }

    @GetMapping("/manual/samples/{name}")
    ResponseEntity<Resource> sample(@PathVariable String name) throws IOException {
        Resource file = Arrays.stream(samples())
                .filter(s -> name.equals(s.getFilename()))
                .findFirst()
                .orElseThrow(() -> new ResponseStatusException(HttpStatus.NOT_FOUND));
        MediaType type = MediaTypeFactory.getMediaType(name).orElse(MediaType.APPLICATION_OCTET_STREAM);
        return ResponseEntity.ok()
                .contentType(type)
                .header("Content-Disposition", "attachment; filename=\"" + name + "\"")
                .body(file);
    }

    private static Resource[] samples() throws IOException {
        return new PathMatchingResourcePatternResolver().getResources("classpath:shared/samples/*.*");
    }

    private static <E> List<String> ids(E[] all, Function<E, String> id) {
        return Arrays.stream(all).map(id).toList();
    }
}
