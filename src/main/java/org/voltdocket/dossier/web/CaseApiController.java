package org.voltdocket.dossier.web;

import io.swagger.v3.oas.annotations.Operation;
import io.swagger.v3.oas.annotations.Parameter;
import io.swagger.v3.oas.annotations.media.Content;
import io.swagger.v3.oas.annotations.media.Schema;
import io.swagger.v3.oas.annotations.responses.ApiResponse;
import io.swagger.v3.oas.annotations.tags.Tag;
import java.util.Optional;
import java.util.UUID;
import java.util.function.Function;
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
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.bind.annotation.RestController;
import org.voltdocket.assessment.CaseEditService;
import org.voltdocket.casefile.CaseListItem;
import org.voltdocket.casefile.CaseQuery;
import org.voltdocket.casefile.CaseRequest;
import org.voltdocket.casefile.CaseService;
import org.voltdocket.casefile.OpenCaseResult;
import org.voltdocket.casefile.PatchResult;
import org.voltdocket.casefile.web.FactViews;
import org.voltdocket.claim.ClaimState;
import org.voltdocket.diagnosis.Cause;
import org.voltdocket.diagnosis.Leaning;
import org.voltdocket.dossier.DossierService;
import org.voltdocket.kernel.Actor;
import org.voltdocket.kernel.CaseNumber;
import org.voltdocket.ui.ProblemDetails;
import tools.jackson.databind.JsonNode;

@RestController
@RequestMapping(path = "/api/v1/cases", produces = MediaType.APPLICATION_JSON_VALUE)
@Tag(name = "Cases", description = "One case per battery serial and VIN.")
class CaseApiController {

    private static final String MERGE_PATCH = "application/merge-patch+json";

    private final CaseService cases;
    private final CaseEditService caseEdits;
    private final DossierService dossiers;
    private final CaseAnswers answers;

    CaseApiController(CaseService cases, CaseEditService caseEdits, DossierService dossiers, CaseAnswers answers) {
        this.cases = cases;
        this.caseEdits = caseEdits;
        this.dossiers = dossiers;
        this.answers = answers;
    }

    @Operation(
            operationId = "openCase",
            summary = "Open the case of a pair, or find it and fill its blanks",
            description = "Known members with a wrong value are refused by name; unknown members are ignored and named."
                    + " Where the case exists and says otherwise, nothing is changed.")
    @ApiResponse(
            responseCode = "201",
            description = "opened",
            content = @Content(schema = @Schema(implementation = CaseJson.class)))
    @ApiResponse(
            responseCode = "200",
            description = "it existed; blanks are filled",
            content = @Content(schema = @Schema(implementation = CaseJson.class)))
    @ApiResponse(responseCode = "409", description = "the case says otherwise, or belongs to another workshop")
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

    @Operation(operationId = "listCases", summary = "List cases, newest first")
    @GetMapping
    CaseListView list(
            Actor actor,
            @Parameter(description = "serial (whole or part), VIN (whole, its last 6 or 8) or case number")
                    @RequestParam(defaultValue = "")
                    String q,
            @RequestParam Optional<String> leaning,
            @Parameter(description = "first cause") @RequestParam Optional<String> cause,
            @Parameter(description = "state of the claim; none for cases without one") @RequestParam
                    Optional<String> state,
            @Parameter(description = "1 to 200") @RequestParam(defaultValue = "50") int limit,
            @Parameter(description = "nextCursor of the page before") @RequestParam Optional<String> cursor) {
        try {
            return CaseListView.of(cases.list(
                    actor,
                    new CaseQuery(
                            q,
                            told(leaning).map(id -> filter("leaning", Leaning::of, id)),
                            told(cause).map(id -> filter("cause", Cause::of, id)),
                            told(state)
                                    .map(id -> id.equals(CaseListItem.NO_CLAIM)
                                            ? id
                                            : filter("state", ClaimState::of, id)
                                                    .id()),
                            limit,
                            told(cursor))));
        } catch (IllegalArgumentException e) {
            throw ProblemDetails.raise(ProblemDetails.of(
                    HttpStatus.BAD_REQUEST, "malformed-request", "The request cannot be read", e.getMessage()));
        }
    }

    @Operation(operationId = "readCase", summary = "The case: facts, history, evidence, claim, assessment")
    @ApiResponse(
            responseCode = "200",
            description = "the case, with its ETag",
            content = @Content(schema = @Schema(implementation = CaseJson.class)))
    @GetMapping("/{number}")
    ResponseEntity<byte[]> read(Actor actor, @PathVariable CaseNumber number) {
        return answers.answer(HttpStatus.OK, dossiers.of(actor, number), null);
    }

    @Operation(
            operationId = "mendCase",
            summary = "Mend facts by a JSON Merge Patch (RFC 7396)",
            description =
                    "null removes. The trail keeps the old value. The keys stay: batterySerial and vin are refused"
                            + " where they differ.")
    @ApiResponse(
            responseCode = "200",
            description = "the case as it is now",
            content = @Content(schema = @Schema(implementation = CaseJson.class)))
    @ApiResponse(responseCode = "412", description = "changed since the ETag in If-Match was given")
    @io.swagger.v3.oas.annotations.parameters.RequestBody(
            required = true,
            content = @Content(schema = @Schema(implementation = FactViews.Patch.class)))
    @PatchMapping(
            path = "/{number}",
            consumes = {MERGE_PATCH, MediaType.APPLICATION_JSON_VALUE})
    ResponseEntity<byte[]> mend(
            Actor actor,
            @PathVariable CaseNumber number,
            @RequestBody JsonNode body,
            @RequestHeader(name = "If-Match", required = false) String ifMatch) {
        PatchResult patch = caseEdits.updateFacts(actor, number, body, CaseAnswers.version(ifMatch));
        return answers.answer(HttpStatus.OK, dossiers.of(actor, number), patch.ignored());
    }

    /** The workshop to add. */
    @Schema(name = "WorkshopOfCase")
    record AddedWorkshop(UUID workshop) {}

    @Operation(operationId = "addWorkshop", summary = "Let a workshop see and feed the case (clerk, administrator)")
    @ApiResponse(responseCode = "204", description = "it belongs to the case now")
    @PostMapping("/{number}/workshops")
    ResponseEntity<Void> add(Actor actor, @PathVariable CaseNumber number, @RequestBody AddedWorkshop added) {
        cases.addWorkshop(actor, number, added.workshop());
        return ResponseEntity.noContent().build();
    }

    private static Optional<String> told(Optional<String> parameter) {
        return parameter.map(String::strip).filter(text -> !text.isEmpty());
    }

    private static <E> E filter(String name, Function<String, E> of, String id) {
        try {
            return of.apply(id);
        } catch (IllegalArgumentException e) {
            throw new IllegalArgumentException("'" + name + "': " + e.getMessage(), e);
        }
    }
}
