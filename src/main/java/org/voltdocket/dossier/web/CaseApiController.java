package org.voltdocket.dossier.web;

import io.swagger.v3.oas.annotations.Operation;
import io.swagger.v3.oas.annotations.media.Content;
import io.swagger.v3.oas.annotations.media.Schema;
import io.swagger.v3.oas.annotations.responses.ApiResponse;
import io.swagger.v3.oas.annotations.tags.Tag;
import java.util.UUID;
import org.springframework.http.HttpStatus;
import org.springframework.http.MediaType;
import org.springframework.http.ResponseEntity;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PatchMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestBody;
import org.springframework.web.bind.annotation.RequestHeader;
import org.springframework.web.bind.annotation.RequestMapping;
import org.springframework.web.bind.annotation.RestController;
import org.voltdocket.assessment.CaseEditService;
import org.voltdocket.casefile.CaseRequest;
import org.voltdocket.casefile.CaseService;
import org.voltdocket.casefile.OpenCaseResult;
import org.voltdocket.casefile.PatchResult;
import org.voltdocket.casefile.web.FactViews;
import org.voltdocket.dossier.DossierService;
import org.voltdocket.kernel.Actor;
import org.voltdocket.kernel.CaseNumber;
import tools.jackson.databind.JsonNode;

@RestController
@RequestMapping(path = "/api/v1/cases", produces = MediaType.APPLICATION_JSON_VALUE)
@Tag(name = "Cases", description = "One case per battery serial and VIN.")
class CaseApiController {

    private static final String MERGE_PATCH = "application/merge-patch+json";

    private final CaseService cases;
    private final CaseEditService caseEdits;
    private final DossierService dossiers;
    private final CaseResponseWriter answers;

    CaseApiController(
            CaseService cases, CaseEditService caseEdits, DossierService dossiers, CaseResponseWriter answers) {
        this.cases = cases;
        this.caseEdits = caseEdits;
        this.dossiers = dossiers;
        this.answers = answers;
    }

    @Operation(
            operationId = "openCase",
            summary = "Open the case of a battery and vehicle, or find it and add missing facts",
            description = "Members with an invalid value are refused by name; unknown members are ignored and listed."
                    + " If the case exists with other facts, nothing is changed.")
    @ApiResponse(
            responseCode = "201",
            description = "created",
            content = @Content(schema = @Schema(implementation = CaseView.class)))
    @ApiResponse(
            responseCode = "200",
            description = "it existed; missing facts were added",
            content = @Content(schema = @Schema(implementation = CaseView.class)))
    @ApiResponse(responseCode = "409", description = "the case has other facts, or belongs to another workshop")
    @io.swagger.v3.oas.annotations.parameters.RequestBody(
            required = true,
            content = @Content(schema = @Schema(implementation = FactViews.Request.class)))
    @PostMapping
    ResponseEntity<byte[]> open(Actor actor, @RequestBody JsonNode body) {
        CaseRequest request = CaseRequest.read(body);
        OpenCaseResult opened = caseEdits.open(actor, request.newCase());
        HttpStatus status = opened.created() ? HttpStatus.CREATED : HttpStatus.OK;
        return answers.answer(status, dossiers.of(actor, opened.ref().number()), request.ignored());
    }

    @Operation(operationId = "readCase", summary = "The case: facts, history, evidence, claim, assessment")
    @ApiResponse(
            responseCode = "200",
            description = "the case, with its ETag",
            content = @Content(schema = @Schema(implementation = CaseView.class)))
    @GetMapping("/{number}")
    ResponseEntity<byte[]> read(Actor actor, @PathVariable CaseNumber number) {
        return answers.answer(HttpStatus.OK, dossiers.of(actor, number), null);
    }

    @Operation(
            operationId = "mendCase",
            summary = "Update facts by a JSON Merge Patch (RFC 7396)",
            description =
                    "null removes a fact. The trail keeps the old value. batterySerial and vin cannot be changed.")
    @ApiResponse(
            responseCode = "200",
            description = "the updated case",
            content = @Content(schema = @Schema(implementation = CaseView.class)))
    @ApiResponse(responseCode = "412", description = "the case changed since the ETag in If-Match was issued")
    @io.swagger.v3.oas.annotations.parameters.RequestBody(
            required = true,
            content = @Content(schema = @Schema(implementation = FactViews.Patch.class)))
    @PatchMapping(
            path = "/{number}",
            consumes = {MERGE_PATCH, MediaType.APPLICATION_JSON_VALUE})
    ResponseEntity<byte[]> update(
            Actor actor,
            @PathVariable CaseNumber number,
            @RequestBody JsonNode body,
            @RequestHeader(name = "If-Match", required = false) String ifMatch) {
        PatchResult patch = caseEdits.updateFacts(actor, number, body, CaseResponseWriter.version(ifMatch));
        return answers.answer(HttpStatus.OK, dossiers.of(actor, number), patch.ignored());
    }

    /** The workshop to add. */
    @Schema(name = "WorkshopOfCase")
    record AddedWorkshop(UUID workshop) {}

    @Operation(operationId = "addWorkshop", summary = "Give a workshop access to the case (clerk, administrator)")
    @ApiResponse(responseCode = "204", description = "the workshop has access")
    @PostMapping("/{number}/workshops")
    ResponseEntity<Void> add(Actor actor, @PathVariable CaseNumber number, @RequestBody AddedWorkshop added) {
        cases.addWorkshop(actor, number, added.workshop());
        return ResponseEntity.noContent().build();
    }
}
