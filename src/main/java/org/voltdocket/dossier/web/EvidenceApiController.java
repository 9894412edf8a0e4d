package org.voltdocket.dossier.web;

import io.swagger.v3.oas.annotations.Operation;
import io.swagger.v3.oas.annotations.media.Content;
import io.swagger.v3.oas.annotations.media.Schema;
import io.swagger.v3.oas.annotations.responses.ApiResponse;
import io.swagger.v3.oas.annotations.tags.Tag;
import java.io.IOException;
import java.net.URI;
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
import org.voltdocket.assessment.AssessmentService;
import org.voltdocket.assessment.EvidenceUploadService;
import org.voltdocket.casefile.CaseReference;
import org.voltdocket.casefile.CaseService;
import org.voltdocket.diagnosis.Origin;
import org.voltdocket.evidence.AlreadyStored;
import org.voltdocket.evidence.EvidenceArchive;
import org.voltdocket.evidence.EvidenceItem;
import org.voltdocket.evidence.IntakeResult;
import org.voltdocket.evidence.Rejected;
import org.voltdocket.evidence.Stored;
import org.voltdocket.evidence.web.MultipartUploads;
import org.voltdocket.kernel.Actor;
import org.voltdocket.kernel.CaseNumber;

@RestController
@Tag(name = "Evidence", description = "Recordings, test records and documents, kept bit for bit.")
class EvidenceApiController {

    private final CaseService cases;
    private final EvidenceUploadService uploads;
    private final EvidenceArchive archive;
    private final AssessmentService assessments;

    EvidenceApiController(
            CaseService cases, EvidenceUploadService uploads, EvidenceArchive archive, AssessmentService assessments) {
        this.cases = cases;
        this.uploads = uploads;
        this.archive = archive;
        this.assessments = assessments;
    }

    @Operation(
            operationId = "addEvidence",
            summary = "Add a file to the case",
            description =
                    "A recording (CSV, also gzipped), a test record (JSON) or a document (PDF, JPEG, PNG), told by"
                            + " content. The answer comes after the case was judged anew.")
    @ApiResponse(
            responseCode = "201",
            description = "kept",
            content = @Content(schema = @Schema(implementation = EvidenceView.class)))
    @ApiResponse(
            responseCode = "200",
            description = "the case has the same bytes already",
            content = @Content(schema = @Schema(implementation = EvidenceView.class)))
    @ApiResponse(responseCode = "413", description = "too large")
    @ApiResponse(responseCode = "415", description = "a kind of file that is not read here")
    @ApiResponse(responseCode = "422", description = "refused: errors name line, column and what is wrong")
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
        return answer(
                actor,
                MultipartUploads.receive(file, note, Origin.WORKSHOP, upload -> uploads.receive(actor, ref, upload)));
    }

    /** The answer to an upload. */
    public ResponseEntity<EvidenceView> answer(Actor actor, IntakeResult received) {
        if (received instanceof Stored kept) {
            EvidenceItem item = kept.item();
            return ResponseEntity.created(URI.create("/api/v1/evidence/" + item.id()))
                    .body(view(cases.require(actor, item.caseId()), item));
        }
        if (received instanceof AlreadyStored known) {
            EvidenceItem item = known.item();
            return ResponseEntity.ok(view(cases.require(actor, item.caseId()), item));
        }
        throw ((Rejected) received).exception();
    }

    @Operation(operationId = "readEvidence", summary = "What was read from it, its findings, its regimes")
    @GetMapping(path = "/api/v1/evidence/{id}", produces = MediaType.APPLICATION_JSON_VALUE)
    public EvidenceView read(Actor actor, @PathVariable UUID id) {
        EvidenceItem item = archive.item(actor, id);
        return view(cases.require(actor, item.caseId()), item);
    }

    private EvidenceView view(CaseReference ref, EvidenceItem item) {
        return EvidenceView.of(
                ref.number().value(),
                item,
                assessments.findingsOf(ref.id(), item.id()),
                assessments.regimesOf(ref.id(), item.id()));
    }
}
