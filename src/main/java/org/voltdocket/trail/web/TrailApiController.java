package org.voltdocket.trail.web;

import io.swagger.v3.oas.annotations.Operation;
import io.swagger.v3.oas.annotations.Parameter;
import io.swagger.v3.oas.annotations.media.Schema;
import io.swagger.v3.oas.annotations.responses.ApiResponse;
import io.swagger.v3.oas.annotations.tags.Tag;
import java.time.Instant;
import org.springframework.http.HttpStatus;
import org.springframework.http.MediaType;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.bind.annotation.RestController;
import org.springframework.web.server.ResponseStatusException;
import org.voltdocket.kernel.Actor;
import org.voltdocket.trail.ChainVerification;
import org.voltdocket.trail.TrailHead;

/** Verifies the trail by script. */
@RestController
@Tag(name = "Trail", description = "What happened, chained by hashes.")
class TrailApiController {

    private final TrailVerificationService verification;

    TrailApiController(TrailVerificationService verification) {
        this.verification = verification;
    }

    /** What a walk along the chain found. */
    @Schema(name = "TrailCheck")
    record View(
            boolean holds,

            @Schema(description = "entries read, up to and including a broken one")
            long entries,

            @Schema(description = "position:hash of the last entry that held; note it outside the server")
            String head,

            @Schema(description = "absent where the whole chain holds")
            Broken firstBroken) {

        static View of(ChainVerification check) {
            return new View(
                    check.holds(),
                    check.entries(),
                    check.head().map(TrailHead::toString).orElse(null),
                    check.firstBroken()
                            .map(one -> new Broken(
                                    one.position(),
                                    one.at().orElse(null),
                                    one.fault().id(),
                                    one.why()))
                            .orElse(null));
        }
    }

    /** The first link that does not hold. */
    @Schema(name = "BrokenLink")
    record Broken(
            long position,
            Instant at,

            @Schema(allowableValues = {"content", "hash", "order", "missing", "cut", "rewritten"})
            String fault,

            String why) {}

    @Operation(
            operationId = "verifyTrail",
            summary = "Walk the whole chain and name the first broken link (auditor, administrator)",
            description = "The verification is itself kept in the trail.")
    @ApiResponse(responseCode = "200", description = "what was found")
    @PostMapping(path = "/api/v1/trail/verify", produces = MediaType.APPLICATION_JSON_VALUE)
    View verify(
            Actor actor,
            @Parameter(description = "a head noted before, as position:hash") @RequestParam(defaultValue = "")
                    String noted) {
        try {
            return View.of(verification.run(actor, noted));
        } catch (IllegalArgumentException e) {
            throw new ResponseStatusException(HttpStatus.BAD_REQUEST, e.getMessage(), e);
        }
    }
}
