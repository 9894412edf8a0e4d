package org.voltdocket.claim.web;

import io.swagger.v3.oas.annotations.Operation;
import io.swagger.v3.oas.annotations.Parameter;
import io.swagger.v3.oas.annotations.media.Content;
import io.swagger.v3.oas.annotations.media.Schema;
import io.swagger.v3.oas.annotations.responses.ApiResponse;
import io.swagger.v3.oas.annotations.tags.Tag;
import jakarta.servlet.http.HttpServletResponse;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import org.springframework.http.MediaType;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.RestController;
import org.springframework.web.context.request.ServletWebRequest;
import org.voltdocket.assessment.AssessmentService;
import org.voltdocket.assessment.AssessmentView;
import org.voltdocket.assessment.StoredAssessment;
import org.voltdocket.claim.Claim;
import org.voltdocket.claim.DocumentKind;
import org.voltdocket.claim.repository.ClaimDocument;
import org.voltdocket.claim.repository.ClaimDocumentRepository;
import org.voltdocket.claim.service.ClaimService;
import org.voltdocket.kernel.Actor;
import org.voltdocket.kernel.CaseNumber;
import org.voltdocket.kernel.RequestException;
import org.voltdocket.ui.PdfFile;
import org.voltdocket.ui.PdfResponse;

/** The documents of a decision: its letter, its report, and the assessment it is based on, each byte for byte as stored. */
@RestController
@Tag(name = "Claims")
class ClaimDocumentController {

    static final String PLACE = "which claim of the case it is, from 1";

    private static final String KEPT = "Printed when the claim was decided; the bytes never change.";

    private final ClaimService claims;
    private final ClaimDocumentRepository documents;
    private final AssessmentService assessments;

    ClaimDocumentController(ClaimService claims, ClaimDocumentRepository documents, AssessmentService assessments) {
        this.claims = claims;
        this.documents = documents;
        this.assessments = assessments;
    }

    @PdfFile
    @Operation(operationId = "readLetter", summary = "The letter of the decision on a claim", description = KEPT)
    @GetMapping({"/api/v1/cases/{number}/claims/{place}/letter.pdf", "/cases/{number}/claims/{place}/letter.pdf"})
    void letter(
            Actor actor,
            @PathVariable CaseNumber number,
            @Parameter(description = PLACE) @PathVariable int place,
            ServletWebRequest request,
            HttpServletResponse response)
            throws IOException {
        write(number, claims.at(actor, number, place), DocumentKind.LETTER, request, response);
    }

    @PdfFile
    @Operation(
            operationId = "readDecisionReport",
            summary = "The report of the case as it was when a claim was decided",
            description = KEPT)
    @GetMapping({"/api/v1/cases/{number}/claims/{place}/report.pdf", "/cases/{number}/claims/{place}/report.pdf"})
    void report(
            Actor actor,
            @PathVariable CaseNumber number,
            @Parameter(description = PLACE) @PathVariable int place,
            ServletWebRequest request,
            HttpServletResponse response)
            throws IOException {
        write(number, claims.at(actor, number, place), DocumentKind.REPORT, request, response);
    }

    @Operation(
            operationId = "readFrozenAssessment",
            summary = "The assessment that the decision on a claim is based on, exactly as stored",
            description = "Its SHA-256 is stated in the decision.")
    @ApiResponse(
            responseCode = "200",
            description = "the assessment",
            content = @Content(schema = @Schema(implementation = AssessmentView.class)))
    @GetMapping(path = "/api/v1/cases/{number}/claims/{place}/assessment", produces = MediaType.APPLICATION_JSON_VALUE)
    byte[] assessment(
            Actor actor, @PathVariable CaseNumber number, @Parameter(description = PLACE) @PathVariable int place) {
        return claims.at(actor, number, place)
                .decision()
                .flatMap(decision -> assessments.stored(decision.assessment()))
                .map(StoredAssessment::body)
                .orElseThrow(() -> RequestException.notFound("decision on this claim of case " + number))
                .getBytes(StandardCharsets.UTF_8);
    }

    private void write(
            CaseNumber number, Claim claim, DocumentKind kind, ServletWebRequest request, HttpServletResponse response)
            throws IOException {
        ClaimDocument document = documents
                .read(claim.id(), kind)
                .orElseThrow(() -> RequestException.notFound(kind.id() + " on this claim of case " + number));
        String name = number + (claim.place() == 1 ? "" : "-" + claim.place()) + "-" + kind.id() + ".pdf";
        PdfResponse.write(document.bytes(), document.sha256(), name, request, response);
    }
}
