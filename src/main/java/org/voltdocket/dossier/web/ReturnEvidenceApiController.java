package org.voltdocket.dossier.web;

import io.swagger.v3.oas.annotations.Operation;
import io.swagger.v3.oas.annotations.media.Content;
import io.swagger.v3.oas.annotations.media.Schema;
import io.swagger.v3.oas.annotations.responses.ApiResponse;
import io.swagger.v3.oas.annotations.tags.Tag;
import java.io.IOException;
import java.io.InputStream;
import java.util.List;
import java.util.UUID;
import org.springframework.http.MediaType;
import org.springframework.http.ResponseEntity;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.bind.annotation.RequestPart;
import org.springframework.web.bind.annotation.RestController;
import org.springframework.web.multipart.MultipartFile;
import org.voltdocket.kernel.Actor;
import org.voltdocket.returned.BenchFile;
import org.voltdocket.returned.ReturnService;

/** Bench evidence of a returned battery. It is added to the case and assessed like all evidence. */
@RestController
@Tag(name = "Returns")
class ReturnEvidenceApiController {

    private final ReturnService returns;
    private final EvidenceApiController evidence;

    ReturnEvidenceApiController(ReturnService returns, EvidenceApiController evidence) {
        this.returns = returns;
        this.evidence = evidence;
    }

    @Operation(
            operationId = "addBenchEvidence",
            summary = "Add a bench test, a discharge recording or a photo",
            description =
                    "It joins the case of the battery with the origin 'bench' and is judged like all its evidence.")
    @ApiResponse(
            responseCode = "201",
            description = "kept",
            content = @Content(schema = @Schema(implementation = EvidenceView.class)))
    @ApiResponse(
            responseCode = "200",
            description = "the case has the same bytes already",
            content = @Content(schema = @Schema(implementation = EvidenceView.class)))
    @ApiResponse(responseCode = "409", description = "the battery has no case")
    @ApiResponse(responseCode = "413", description = "too large")
    @ApiResponse(responseCode = "415", description = "a kind of file that is not read here")
    @ApiResponse(responseCode = "422", description = "refused: errors name line, column and what is wrong")
    @PostMapping(
            path = "/api/v1/returns/{returned}/evidence",
            consumes = MediaType.MULTIPART_FORM_DATA_VALUE,
            produces = MediaType.APPLICATION_JSON_VALUE)
    ResponseEntity<EvidenceView> add(
            Actor actor,
            @PathVariable UUID returned,
            @RequestPart("file") MultipartFile file,
            @RequestParam(name = "note", required = false) String note)
            throws IOException {
        try (InputStream content = file.getInputStream()) {
            return evidence.answer(
                    actor, returns.receive(actor, returned, new BenchFile(file.getOriginalFilename(), content, note)));
        }
    }

    @Operation(operationId = "listBenchEvidence", summary = "What the bench brought of a returned battery")
    @GetMapping(path = "/api/v1/returns/{returned}/evidence", produces = MediaType.APPLICATION_JSON_VALUE)
    List<EvidenceView> list(Actor actor, @PathVariable UUID returned) {
        return returns.of(actor, returned).evidence().stream()
                .map(item -> evidence.read(actor, item.id()))
                .toList();
    }
}
