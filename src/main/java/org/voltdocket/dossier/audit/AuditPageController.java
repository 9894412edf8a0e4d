package org.voltdocket.dossier.audit;

import de.siegmar.fastcsv.writer.CsvWriter;
import jakarta.servlet.http.HttpServletResponse;
import java.io.IOException;
import java.io.OutputStreamWriter;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.UUID;
import org.springframework.http.ContentDisposition;
import org.springframework.http.HttpHeaders;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.servlet.mvc.support.RedirectAttributes;
import org.voltdocket.kernel.Actor;
import org.voltdocket.ui.SpreadsheetCells;

/** Pages of decisions to review and of recoverable payments. */
@Controller
class AuditPageController {

    private final DecisionReviewService reviews;
    private final RecoverablePaymentService recovery;

    AuditPageController(DecisionReviewService reviews, RecoverablePaymentService recovery) {
        this.reviews = reviews;
        this.recovery = recovery;
    }

    @GetMapping("/decisions/again")
    String reviews(Actor actor, Model model) {
        List<DecisionReviewService.ReviewItem> all = reviews.all(actor);
        model.addAttribute("all", all);
        model.addAttribute(
                "waiting", all.stream().filter(one -> one.review().isEmpty()).count());
        model.addAttribute("mayReview", actor.canDecideClaims());
        model.addAttribute("bench", bench(actor));
        return "audit/again";
    }

    @PostMapping("/decisions/again/{claim}")
    String review(
            Actor actor,
            @PathVariable UUID claim,
            @RequestParam boolean stands,
            @RequestParam(defaultValue = "") String reason,
            Model model,
            RedirectAttributes flash,
            HttpServletResponse response) {
        try {
            reviews.review(actor, claim, stands, reason);
            flash.addFlashAttribute("notice", "again.notice");
            return "redirect:/decisions/again";
        } catch (IllegalArgumentException refused) {
            response.setStatus(HttpServletResponse.SC_BAD_REQUEST);
            model.addAttribute("refused", refused.getMessage());
            model.addAttribute("refusedClaim", claim);
            return reviews(actor, model);
        }
    }

    @GetMapping("/recovery")
    String recovery(Actor actor, Model model) {
        List<RecoverablePaymentService.Item> items = recovery.items(actor);
        model.addAttribute("items", items);
        model.addAttribute("sums", RecoverablePaymentService.totals(items));
        model.addAttribute("bench", bench(actor));
        return "audit/recovery";
    }

    @GetMapping("/recovery.csv")
    void table(Actor actor, HttpServletResponse response) throws IOException {
        List<RecoverablePaymentService.Item> items = recovery.items(actor);
        response.setContentType("text/csv;charset=UTF-8");
        response.setHeader(
                HttpHeaders.CONTENT_DISPOSITION,
                ContentDisposition.attachment().filename("recovery.csv").build().toString());
        try (CsvWriter csv =
                CsvWriter.builder().build(new OutputStreamWriter(response.getOutputStream(), StandardCharsets.UTF_8))) {
            csv.writeRecord(
                    "from",
                    "name",
                    "amount",
                    "currency",
                    "case",
                    "return",
                    "serial",
                    "type",
                    "batch",
                    "decision",
                    "outcome",
                    "reason");
            for (RecoverablePaymentService.Item item : items) {
                csv.writeRecord(
                        item.from(),
                        SpreadsheetCells.harmless(item.name()),
                        item.amount().toPlainString(),
                        item.currency(),
                        item.caseNumber(),
                        item.returnNumber(),
                        SpreadsheetCells.harmless(item.serial()),
                        SpreadsheetCells.harmless(item.type()),
                        SpreadsheetCells.harmless(item.batch()),
                        item.kind(),
                        item.outcome(),
                        SpreadsheetCells.harmless(item.outcomeReason()));
            }
        }
    }

    /** Clerks see these pages without the tabs of the bench. */
    private static boolean bench(Actor actor) {
        return actor.canAudit();
    }
}
