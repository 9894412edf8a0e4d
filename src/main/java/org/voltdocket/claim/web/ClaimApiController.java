package org.voltdocket.claim.web;

import io.swagger.v3.oas.annotations.Operation;
import io.swagger.v3.oas.annotations.Parameter;
import io.swagger.v3.oas.annotations.media.Content;
import io.swagger.v3.oas.annotations.media.Schema;
import io.swagger.v3.oas.annotations.responses.ApiResponse;
import io.swagger.v3.oas.annotations.tags.Tag;
import java.util.Arrays;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.UUID;
import java.util.stream.Collectors;
import org.springframework.http.HttpStatus;
import org.springframework.http.MediaType;
import org.springframework.http.ResponseEntity;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestBody;
import org.springframework.web.bind.annotation.RequestHeader;
import org.springframework.web.bind.annotation.RequestMapping;
import org.springframework.web.bind.annotation.RestController;
import org.voltdocket.assessment.AssessmentService;
import org.voltdocket.assessment.StoredAssessment;
import org.voltdocket.casefile.CaseService;
import org.voltdocket.claim.Claim;
import org.voltdocket.claim.ClaimAction;
import org.voltdocket.claim.ClaimStepRequest;
import org.voltdocket.claim.service.ClaimRequestParser;
import org.voltdocket.claim.service.ClaimService;
import org.voltdocket.claim.service.ClaimStepService;
import org.voltdocket.claim.view.ClaimConflicts;
import org.voltdocket.claim.view.ClaimView;
import org.voltdocket.kernel.Actor;
import org.voltdocket.kernel.CaseNumber;
import org.voltdocket.kernel.RequestException;
import tools.jackson.databind.JsonNode;

/** The claim of a case and its steps. Each answer carries the entity tag of the case, as it is after the step. */
@RestController
@RequestMapping(path = "/api/v1/cases/{number}/claim", produces = MediaType.APPLICATION_JSON_VALUE)
@Tag(name = "Claims", description = "Claims of workshops, their steps and decisions.")
class ClaimApiController {

    private final ClaimService claims;
    private final ClaimStepService steps;
    private final CaseService cases;
    private final AssessmentService assessments;
    private final CaseEntityTags tags;
    private final ClaimResponses responses;

    ClaimApiController(
            ClaimService claims,
            ClaimStepService steps,
            CaseService cases,
            AssessmentService assessments,
            CaseEntityTags tags,
            ClaimResponses responses) {
        this.claims = claims;
        this.steps = steps;
        this.cases = cases;
        this.assessments = assessments;
        this.tags = tags;
        this.responses = responses;
    }

    @Operation(operationId = "openClaim", summary = "Open a claim as a draft (workshop, its own case)")
    @ApiResponse(
            responseCode = "201",
            description = "opened",
            content = @Content(schema = @Schema(implementation = ClaimView.class)))
    @ApiResponse(responseCode = "409", description = "the case has a claim that is neither settled nor withdrawn")
    @io.swagger.v3.oas.annotations.parameters.RequestBody(
            required = true,
            content = @Content(schema = @Schema(implementation = ClaimRequestParser.Opening.class)))
    @PostMapping
    ResponseEntity<ClaimView> open(Actor actor, @PathVariable CaseNumber number, @RequestBody JsonNode body) {
        ClaimRequestParser.Opening opening = ClaimRequestParser.Opening.read(body);
        steps.open(actor, number, opening.amount(), opening.currency(), opening.useClass());
        return responses.of(HttpStatus.CREATED, actor, number);
    }

    @Operation(
            operationId = "stepClaim",
            summary = "Take a step",
            description =
                    "submit, answer, withdraw: the workshop. take, ask, approve, decline, goodwill, confirm, refuse, settle: clerk and"
                            + " administrator. A decision freezes the assessment it rests on.")
    @ApiResponse(
            responseCode = "200",
            description = "the claim as it is now",
            content = @Content(schema = @Schema(implementation = ClaimView.class)))
    @ApiResponse(
            responseCode = "409",
            description =
                    "the state does not allow the step ('allowedActions' are those it does), or the claim has another"
                            + " version than the body names; 'changes' tells who did what and when")
    @ApiResponse(responseCode = "412", description = "the case changed since the ETag in If-Match was given")
    @io.swagger.v3.oas.annotations.parameters.RequestBody(
            content = @Content(schema = @Schema(implementation = ClaimRequestParser.Step.class)))
    @PostMapping("/{action}")
    ResponseEntity<ClaimView> step(
            Actor actor,
            @PathVariable CaseNumber number,
            @Parameter(
                            schema =
                                    @Schema(
                                            allowableValues = {
                                                "submit",
                                                "take",
                                                "ask",
                                                "answer",
                                                "approve",
                                                "decline",
                                                "goodwill",
                                                "confirm",
                                                "refuse",
                                                "settle",
                                                "withdraw"
                                            }))
                    @PathVariable
                    String action,
            @RequestBody(required = false) JsonNode body,
            @RequestHeader(name = "If-Match", required = false) String ifMatch) {
        ClaimAction known = ClaimAction.of(action).orElseThrow(() -> unknown(action));
        Claim after = steps.act(actor, number, request(actor, number, known, body, ifMatch));
        boolean proposed = known.decides() && after.proposal().isPresent();
        return responses.of(proposed ? HttpStatus.ACCEPTED : HttpStatus.OK, actor, number);
    }

    /** A step with {@code If-Match} applies to the claim and the assessment that belong to the entity tag. */
    private ClaimStepRequest request(
            Actor actor, CaseNumber number, ClaimAction action, JsonNode body, String ifMatch) {
        if (ifMatch == null || ifMatch.isBlank() || ifMatch.strip().equals("*")) {
            return ClaimRequestParser.read(action, body, OptionalLong.empty(), Optional.empty());
        }
        // read before the entity tag is computed: if anything changes in between, the tag differs
        Claim claim = claims.latest(actor, number);
        Optional<UUID> assessment =
                assessments.latest(cases.require(actor, number).id()).map(StoredAssessment::id);
        if (!ifMatch.strip().equals(tags.of(actor, number))) {
            throw ClaimConflicts.entityTagChanged(claim);
        }
        return ClaimRequestParser.read(action, body, OptionalLong.of(claim.version()), assessment);
    }

    private static RuntimeException unknown(String action) {
        return RequestException.of(
                404,
                "not-found",
                "There is no step '" + action + "' of a claim; there are "
                        + Arrays.stream(ClaimAction.values())
                                .map(ClaimAction::id)
                                .collect(Collectors.joining(", "))
                        + ".");
    }
}
