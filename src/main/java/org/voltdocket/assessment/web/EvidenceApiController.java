package org.voltdocket.assessment.web;

import io.swagger.v3.oas.annotations.Operation;
import io.swagger.v3.oas.annotations.tags.Tag;
import java.io.IOException;
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
import org.voltdocket.assessment.EvidenceUploadService;
import org.voltdocket.casefile.CaseReference;
import org.voltdocket.casefile.CaseService;
import org.voltdocket.diagnosis.Origin;
import org.voltdocket.evidence.EvidenceArchive;
import org.voltdocket.evidence.web.MultipartUploads;
import org.voltdocket.kernel.Actor;
import org.voltdocket.kernel.CaseNumber;

@RestController
@Tag(name = "Evidence", description = "Recordings, test records and documents, stored unchanged.")
class EvidenceApiController {

    private final CaseService cases;
    private final EvidenceUploadService uploads;
    private final EvidenceArchive archive;
    private final EvidenceResponses responses;

    EvidenceApiController(
            CaseService cases, EvidenceUploadService uploads, EvidenceArchive archive, EvidenceResponses responses) {
        this.cases = cases;
        this.uploads = uploads;
        this.archive = archive;
        this.responses = responses;
    }

    @Operation(
            operationId = "addEvidence",
            summary = "Add a file to the case",
            description =
                    "A recording (CSV, also gzipped), a test record (JSON) or a document (PDF, JPEG, PNG), recognised by"
                            + " content. The answer comes after the case was reassessed.")
    @UploadAnswers
    @PostMapping(
            path = "/api/v1/cases/{number}/evidence",
            consumes = MediaType.MULTIPART_FORM_DATA_VALUE,
            produces = MediaType.APPLICATION_JSON_VALUE)
    ResponseEntity<EvidenceView> add(
            Actor actor,
            @PathVariable CaseNumber number,
            @RequestPart("file") MultipartFile file,
            @RequestParam(name = "note", required = false) String note)
            throws IOException {
        CaseReference ref = cases.requireToFeed(actor, number);
        return responses.answer(
                actor,
                MultipartUploads.receive(file, note, Origin.WORKSHOP, upload -> uploads.receive(actor, ref, upload)));
    }

    @Operation(operationId = "readEvidence", summary = "What was read from it, its findings, its regimes")
    @GetMapping(path = "/api/v1/evidence/{id}", produces = MediaType.APPLICATION_JSON_VALUE)
    EvidenceView read(Actor actor, @PathVariable UUID id) {
        return responses.view(actor, archive.item(actor, id));
    }
}
