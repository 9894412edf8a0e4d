package org.voltdocket.claim.web;

import io.swagger.v3.oas.annotations.Operation;
import io.swagger.v3.oas.annotations.Parameter;
import io.swagger.v3.oas.annotations.media.Content;
import io.swagger.v3.oas.annotations.media.Schema;
import io.swagger.v3.oas.annotations.responses.ApiResponse;
import io.swagger.v3.oas.annotations.tags.Tag;
import java.util.List;
import java.util.Optional;
import org.springframework.http.HttpStatus;
import org.springframework.http.MediaType;
import org.springframework.http.ResponseEntity;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestBody;
import org.springframework.web.bind.annotation.RequestMapping;
import org.springframework.web.bind.annotation.RestController;
import org.voltdocket.claim.service.ClaimRequestParser;
import org.voltdocket.claim.service.ClaimService;
import org.voltdocket.claim.service.ObjectionService;
import org.voltdocket.claim.view.ClaimView;
import org.voltdocket.kernel.Actor;
import org.voltdocket.kernel.CaseNumber;
import tools.jackson.databind.JsonNode;

/** What follows a decision: objections to it, their answers, and the claims that came before. */
@RestController
@RequestMapping(path = "/api/v1/cases/{number}", produces = MediaType.APPLICATION_JSON_VALUE)
@Tag(name = "Claims")
class ObjectionApiController {

    private final ObjectionService objections;
    private final ClaimService claims;
    private final ClaimResponses responses;

    ObjectionApiController(ObjectionService objections, ClaimService claims, ClaimResponses responses) {
        this.objections = objections;
        this.claims = claims;
        this.responses = responses;
    }

    @Operation(
            operationId = "objectToDecision",
            summary = "Object to the decision on the latest claim (workshop, its own case)",
            description = "Stored with the claim and shown to the distributor. It does not reopen the claim.")
    @ApiResponse(
            responseCode = "201",
            description = "the claim with its objections",
            content = @Content(schema = @Schema(implementation = ClaimView.class)))
    @ApiResponse(responseCode = "409", description = "the claim is not decided, or an objection waits for its answer")
    @io.swagger.v3.oas.annotations.parameters.RequestBody(
            required = true,
            content = @Content(schema = @Schema(implementation = ClaimRequestParser.Words.class)))
    @PostMapping("/claim/objection")
    ResponseEntity<ClaimView> object(Actor actor, @PathVariable CaseNumber number, @RequestBody JsonNode body) {
        objections.object(actor, number, ClaimRequestParser.Words.read(body).reason());
        return responses.of(HttpStatus.CREATED, actor, number);
    }

    @Operation(
            operationId = "answerObjection",
            summary = "Answer the objection that waits (clerk, administrator)",
            description = "The decision stays as it is.")
    @ApiResponse(
            responseCode = "200",
            description = "the claim with its objections",
            content = @Content(schema = @Schema(implementation = ClaimView.class)))
    @ApiResponse(responseCode = "409", description = "no objection waits for an answer")
    @io.swagger.v3.oas.annotations.parameters.RequestBody(
            required = true,
            content = @Content(schema = @Schema(implementation = ClaimRequestParser.Words.class)))
    @PostMapping("/claim/objection/answer")
    ResponseEntity<ClaimView> answer(Actor actor, @PathVariable CaseNumber number, @RequestBody JsonNode body) {
        objections.answer(actor, number, ClaimRequestParser.Words.read(body).reason());
        return responses.ok(actor, number);
    }

    @Operation(operationId = "listClaims", summary = "All claims of a case, oldest first")
    @GetMapping("/claims")
    List<ClaimView> all(Actor actor, @PathVariable CaseNumber number) {
        return claims.all(actor, number).stream()
                .map(claim -> ClaimView.of(number, claim, Optional.empty()))
                .toList();
    }

    @Operation(operationId = "readClaim", summary = "One claim of a case")
    @GetMapping("/claims/{place}")
    ClaimView one(
            Actor actor,
            @PathVariable CaseNumber number,
            @Parameter(description = ClaimDocumentController.PLACE) @PathVariable int place) {
        return ClaimView.of(number, claims.at(actor, number, place), Optional.empty());
    }
}
