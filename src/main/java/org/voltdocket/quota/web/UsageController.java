package org.voltdocket.quota.web;

import io.swagger.v3.oas.annotations.Operation;
import io.swagger.v3.oas.annotations.media.Schema;
import io.swagger.v3.oas.annotations.tags.Tag;
import java.time.Instant;
import java.util.List;
import org.springframework.http.MediaType;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.ResponseBody;
import org.voltdocket.kernel.Actor;
import org.voltdocket.quota.QuotaService;
import org.voltdocket.quota.QuotaUse;

/** The use of an account's workshop, as page and by API. The distributor's accounts have no quotas. */
@Controller
@Tag(name = "Usage", description = "What a workshop has used of its quotas.")
class UsageController {

    private final QuotaService quotas;

    UsageController(QuotaService quotas) {
        this.quotas = quotas;
    }

    /** Use of all quotas; none where there are no quotas. */
    @Schema(name = "Usage")
    record UsageView(List<QuotaView> quotas) {}

    /**
     * @param resetsAt absent for tokens
     */
    @Schema(name = "QuotaUse")
    record QuotaView(
            @Schema(allowableValues = {"uploads", "bytes", "assessments", "tokens"})
            String quota,

            long used,
            long limit,

            @Schema(nullable = true, description = "when the count starts again; null for tokens")
            Instant resetsAt) {}

    @GetMapping("/usage")
    String show(Actor actor, Model model) {
        model.addAttribute("quotas", of(actor));
        return "quota/usage";
    }

    @Operation(operationId = "readUsage", summary = "What your workshop has used of its quotas today")
    @GetMapping(path = "/api/v1/usage", produces = MediaType.APPLICATION_JSON_VALUE)
    @ResponseBody
    UsageView read(Actor actor) {
        return new UsageView(of(actor).stream()
                .map(use -> new QuotaView(
                        use.quota().id(),
                        use.used(),
                        use.limit(),
                        use.resetsAt().orElse(null)))
                .toList());
    }

    private List<QuotaUse> of(Actor actor) {
        return actor.workshop().map(quotas::of).orElse(List.of());
    }
}
