package org.voltdocket.claim.web;

import com.fasterxml.jackson.annotation.JsonInclude;
import io.swagger.v3.oas.annotations.Operation;
import io.swagger.v3.oas.annotations.media.Content;
import io.swagger.v3.oas.annotations.media.Schema;
import io.swagger.v3.oas.annotations.responses.ApiResponse;
import io.swagger.v3.oas.annotations.tags.Tag;
import java.time.Instant;
import java.util.List;
import org.springframework.http.MediaType;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PutMapping;
import org.springframework.web.bind.annotation.RequestBody;
import org.springframework.web.bind.annotation.RequestMapping;
import org.springframework.web.bind.annotation.RestController;
import org.voltdocket.claim.decision.ClaimLimit;
import org.voltdocket.claim.decision.ClaimLimits;
import org.voltdocket.kernel.Actor;
import org.voltdocket.kernel.Money;

/** The limits above which a decision waits for a second person. */
@RestController
@RequestMapping(path = "/api/v1/claim-limits", produces = MediaType.APPLICATION_JSON_VALUE)
@Tag(name = "Claims")
class LimitsApiController {

    private final ClaimLimits limits;

    LimitsApiController(ClaimLimits limits) {
        this.limits = limits;
    }

    /** A limit in JSON. */
    @Schema(name = "ClaimLimit")
    @JsonInclude(JsonInclude.Include.NON_NULL)
    record View(
            @Schema(description = "ISO 4217", example = "EUR")
            String currency,

            @Schema(description = "what one person may grant; absent where the limit was lifted", example = "500.00")
            String amount,

            String reason,
            Instant setAt,
            String setBy) {

        static View of(ClaimLimit limit) {
            return new View(
                    limit.currency().getCurrencyCode(),
                    limit.money().map(Money::text).orElse(null),
                    limit.reason(),
                    limit.at(),
                    limit.by());
        }
    }

    /** What sets a limit. */
    @Schema(name = "ClaimLimitRequest")
    record Wanted(
            @Schema(description = "limit for one person; null removes it", example = "500.00")
            String amount,

            @Schema(description = "why") String reason) {}

    @Operation(operationId = "listClaimLimits", summary = "The limits in force, one per currency")
    @GetMapping
    List<View> list(Actor actor) {
        return limits.current(actor).stream().map(View::of).toList();
    }

    @Operation(operationId = "setClaimLimit", summary = "Set or lift the limit of a currency (administrator)")
    @ApiResponse(
            responseCode = "200",
            description = "in force from now on",
            content = @Content(schema = @Schema(implementation = View.class)))
    @PutMapping("/{currency}")
    View set(Actor actor, @PathVariable String currency, @RequestBody Wanted wanted) {
        return View.of(limits.set(actor, currency, wanted.amount(), wanted.reason()));
    }
}
