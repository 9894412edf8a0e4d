package org.voltdocket.assessment.web;

import io.swagger.v3.oas.annotations.Operation;
import io.swagger.v3.oas.annotations.Parameter;
import io.swagger.v3.oas.annotations.media.Content;
import io.swagger.v3.oas.annotations.media.Schema;
import io.swagger.v3.oas.annotations.responses.ApiResponse;
import io.swagger.v3.oas.annotations.tags.Tag;
import java.net.URI;
import java.util.UUID;
import org.springframework.http.MediaType;
import org.springframework.http.ResponseEntity;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestBody;
import org.springframework.web.bind.annotation.RequestMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.bind.annotation.RestController;
import org.voltdocket.assessment.rerun.ReassessmentRun;
import org.voltdocket.assessment.rerun.ReassessmentService;
import org.voltdocket.assessment.rerun.RunErrors;
import org.voltdocket.assessment.rerun.RunMode;
import org.voltdocket.kernel.Actor;
import tools.jackson.databind.JsonNode;

/** Runs of an edition over the archive, for administrators' scripts. */
@RestController
@RequestMapping(path = "/api/v1/reassessments", produces = MediaType.APPLICATION_JSON_VALUE)
@Tag(name = "Reassessments", description = "Reassessment of all cases by an edition of the rule book (administrator).")
class ReassessmentApiController {

    private static final int MOST = 10_000;

    private final ReassessmentService runs;

    ReassessmentApiController(ReassessmentService runs) {
        this.runs = runs;
    }

    /** What to run. */
    @Schema(name = "ReassessmentRequest")
    record Asked(
            @Schema(
                    allowableValues = {"trial", "final"},
                    requiredMode = Schema.RequiredMode.REQUIRED)
            String mode,

            @Schema(description = "edition of the rule book; the one in force where absent", example = "2026.1")
            String rulebook) {}

    /** Where to look. */
    @Schema(name = "ReassessmentAccepted")
    record Accepted(UUID id) {}

    @Operation(
            operationId = "startReassessment",
            summary = "Apply an edition of the rule book to all cases",
            description = "A trial changes nothing; final appends assessments, and decisions keep theirs. It covers the"
                    + " cases that exist when it starts.")
    @ApiResponse(
            responseCode = "202",
            description = "accepted; Location leads to its progress",
            content = @Content(schema = @Schema(implementation = Accepted.class)))
    @ApiResponse(responseCode = "409", description = "final, of an edition in the making")
    @ApiResponse(responseCode = "422", description = "no such mode or edition")
    @io.swagger.v3.oas.annotations.parameters.RequestBody(
            required = true,
            content = @Content(schema = @Schema(implementation = Asked.class)))
    @PostMapping
    ResponseEntity<Accepted> start(Actor actor, @RequestBody JsonNode body) {
        String wanted = text(body, "mode");
        RunMode mode = RunMode.of(wanted)
                .orElseThrow(() -> RunErrors.invalid(
                        "'mode' is 'trial' or 'final'; read " + (wanted == null ? "nothing." : "'" + wanted + "'.")));
        ReassessmentRun run = runs.ask(actor, mode, text(body, "rulebook"));
        return ResponseEntity.accepted()
                .location(URI.create("/api/v1/reassessments/" + run.id()))
                .body(new Accepted(run.id()));
    }

    @Operation(
            operationId = "readReassessment",
            summary = "Progress of a run, and the cases whose leaning or first cause changes")
    @ApiResponse(
            responseCode = "200",
            description = "the run",
            content = @Content(schema = @Schema(implementation = ReassessmentView.class)))
    @GetMapping("/{id}")
    ReassessmentView read(
            Actor actor,
            @PathVariable UUID id,
            @Parameter(description = "changed cases to skip") @RequestParam(defaultValue = "0") int from,
            @Parameter(description = "changed cases to list, 1 to 10000") @RequestParam(defaultValue = "10000")
                    int limit) {
        if (from < 0 || limit < 1 || limit > MOST) {
            throw RunErrors.invalid("'from' is 0 or more and 'limit' 1 to " + MOST + ".");
        }
        ReassessmentRun run = runs.require(actor, id);
        return ReassessmentView.of(run, runs.progress(run), runs.changes(run, from, limit), runs.failures(run, limit));
    }

    private static String text(JsonNode body, String member) {
        JsonNode value = body.path(member);
        if (value.isMissingNode() || value.isNull()) {
            return null;
        }
        if (!value.isString()) {
            throw RunErrors.invalid("'" + member + "' is a text; read " + value + ".");
        }
        return value.stringValue();
    }
}
