package org.voltdocket.claim.web;

import io.swagger.v3.oas.annotations.Operation;
import io.swagger.v3.oas.annotations.Parameter;
import io.swagger.v3.oas.annotations.media.Content;
import io.swagger.v3.oas.annotations.media.Schema;
import io.swagger.v3.oas.annotations.responses.ApiResponse;
import io.swagger.v3.oas.annotations.tags.Tag;
import java.io.IOException;
import java.util.Optional;
import java.util.UUID;
import org.springframework.http.MediaType;
import org.springframework.http.ResponseEntity;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.bind.annotation.RequestPart;
import org.springframework.web.bind.annotation.RestController;
import org.springframework.web.multipart.MultipartFile;
import org.voltdocket.assessment.web.UploadHandler;
import org.voltdocket.casefile.CaseReference;
import org.voltdocket.casefile.CaseService;
import org.voltdocket.claim.repository.RequestedItemAnswer;
import org.voltdocket.claim.service.EvidenceRequestService;
import org.voltdocket.claim.view.ClaimView;
import org.voltdocket.evidence.Rejected;
import org.voltdocket.evidence.web.MultipartUploads;
import org.voltdocket.kernel.Actor;
import org.voltdocket.kernel.CaseNumber;

/** Answers to what the distributor asked for, one by one. */
@RestController
@Tag(name = "Claims")
class EvidenceRequestApiController {

    private final CaseService cases;
    private final EvidenceRequestService requests;
    private final UploadHandler uploads;
    private final ClaimResponses responses;

    EvidenceRequestApiController(
            CaseService cases, EvidenceRequestService requests, UploadHandler uploads, ClaimResponses responses) {
        this.cases = cases;
        this.requests = requests;
        this.uploads = uploads;
        this.responses = responses;
    }

    @Operation(
            operationId = "answerAsked",
            summary = "Answer one requested item with a file, a note, or both (workshop)",
            description =
                    "The file joins the evidence of the case, as by addEvidence. The claim goes back to review by the"
                            + " step answer, when all is sent.")
    @ApiResponse(
            responseCode = "200",
            description = "the claim as it is now",
            content = @Content(schema = @Schema(implementation = ClaimView.class)))
    @ApiResponse(responseCode = "409", description = "no evidence is requested now")
    @ApiResponse(responseCode = "413", description = "too large")
    @ApiResponse(responseCode = "415", description = "unknown kind of file")
    @ApiResponse(responseCode = "422", description = "refused; errors state line, column and reason")
    @PostMapping(
            path = "/api/v1/cases/{number}/claim/requested-items/{position}",
            consumes = MediaType.MULTIPART_FORM_DATA_VALUE,
            produces = MediaType.APPLICATION_JSON_VALUE)
    ResponseEntity<ClaimView> answer(
            Actor actor,
            @PathVariable CaseNumber number,
            @Parameter(description = "position of the requested item, from 1") @PathVariable int position,
            @RequestPart(name = "file", required = false) MultipartFile file,
            @RequestParam(name = "words", required = false) String words)
            throws IOException {
        CaseReference ref = cases.requireToFeed(actor, number);
        requests.requireRequested(actor, number, position);
        Optional<UUID> evidence = Optional.empty();
        if (MultipartUploads.isPresent(file)) {
            UploadHandler.Outcome outcome = uploads.receive(actor, ref, file, null);
            if (outcome.refused() != null) {
                throw new Rejected(outcome.refused()).exception();
            }
            evidence = Optional.of(outcome.item().id());
        }
        requests.answer(actor, number, new RequestedItemAnswer(position, evidence, words));
        return responses.ok(actor, number);
    }
}
