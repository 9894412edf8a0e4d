package org.voltdocket.returned.web;

import io.swagger.v3.oas.annotations.Operation;
import io.swagger.v3.oas.annotations.responses.ApiResponse;
import io.swagger.v3.oas.annotations.tags.Tag;
import java.io.IOException;
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
import org.voltdocket.assessment.web.EvidenceResponses;
import org.voltdocket.assessment.web.EvidenceView;
import org.voltdocket.assessment.web.UploadAnswers;
import org.voltdocket.diagnosis.Origin;
import org.voltdocket.evidence.web.MultipartUploads;
import org.voltdocket.kernel.Actor;
import org.voltdocket.returned.service.ReturnService;

/** Bench evidence of a returned battery. It is added to the case and assessed like all evidence. */
@RestController
@Tag(name = "Returns")
class ReturnEvidenceApiController {

    private final ReturnService returns;
    private final EvidenceResponses evidence;

    ReturnEvidenceApiController(ReturnService returns, EvidenceResponses evidence) {
        this.returns = returns;
        this.evidence = evidence;
    }

    @Operation(
            operationId = "addBenchEvidence",
            summary = "Add a bench test, a discharge recording or a photo",
            description =
                    "It is added to the case of the battery with the origin 'bench' and assessed like all its evidence.")
    @UploadAnswers
    @ApiResponse(responseCode = "409", description = "the battery has no case")
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
        return evidence.answer(
                actor,
                MultipartUploads.receive(file, note, Origin.BENCH, upload -> returns.receive(actor, returned, upload)));
    }

    @Operation(operationId = "listBenchEvidence", summary = "Bench evidence of a returned battery")
    @GetMapping(path = "/api/v1/returns/{returned}/evidence", produces = MediaType.APPLICATION_JSON_VALUE)
    List<EvidenceView> list(Actor actor, @PathVariable UUID returned) {
        return returns.of(actor, returned).evidence().stream()
                .map(item -> evidence.view(actor, item))
                .toList();
    }
}
