package org.voltdocket.dossier.web;

import io.swagger.v3.oas.annotations.Operation;
import io.swagger.v3.oas.annotations.Parameter;
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
import org.voltdocket.assessment.StoredAssessment;
import org.voltdocket.casefile.NotFoundException;
import org.voltdocket.claim.Claim;
import org.voltdocket.claim.ClaimDocument;
import org.voltdocket.claim.ClaimDocumentRepository;
import org.voltdocket.claim.DocumentKind;
import org.voltdocket.kernel.Actor;
import org.voltdocket.kernel.CaseNumber;
import org.voltdocket.ui.PdfFile;
import org.voltdocket.ui.PdfResponse;

/** What a decision left: its letter, its report, and the assessment it rests on, each byte for byte as kept. */
@RestController
@Tag(name = "Claims")
class ClaimPaperFilesController {

    static final String PLACE = "which claim of the case it is, from 1";

    private static final String KEPT = "Printed when the claim was decided, and the same bytes ever since.";

    private final CaseClaims claims;
    private final ClaimDocumentRepository papers;
    private final AssessmentService assessments;

    ClaimPaperFilesController(CaseClaims claims, ClaimDocumentRepository papers, AssessmentService assessments) {
        this.claims = claims;
        this.papers = papers;
        this.assessments = assessments;
    }

    @PdfFile
    @Operation(
            operationId = "readLetter",
            summary = "The letter of the decision on the latest claim",
            description = KEPT)
    @GetMapping({"/api/v1/cases/{number}/claim/letter.pdf", "/cases/{number}/claim/letter.pdf"})
    void letter(Actor actor, @PathVariable CaseNumber number, ServletWebRequest request, HttpServletResponse response)
            throws IOException {
        write(number, claims.latest(actor, number), DocumentKind.LETTER, request, response);
    }

    @PdfFile
    @Operation(
            operationId = "readDecisionReport",
            summary = "The report of the case as it stood when the latest claim was decided",
            description = KEPT)
    @GetMapping({"/api/v1/cases/{number}/claim/report.pdf", "/cases/{number}/claim/report.pdf"})
    void report(Actor actor, @PathVariable CaseNumber number, ServletWebRequest request, HttpServletResponse response)
            throws IOException {
        write(number, claims.latest(actor, number), DocumentKind.REPORT, request, response);
    }

    @Operation(
            operationId = "readFrozenAssessment",
            summary = "The assessment that the decision on the latest claim rests on, exactly as kept",
            description = "Its SHA-256 is the one that the decision names.")
    @FrozenAssessmentResponse
    @GetMapping(path = "/api/v1/cases/{number}/claim/assessment", produces = MediaType.APPLICATION_JSON_VALUE)
    byte[] assessment(Actor actor, @PathVariable CaseNumber number) {
        return frozen(number, claims.latest(actor, number));
    }

    @PdfFile
    @Operation(
            operationId = "readLetterOfClaim",
            summary = "The letter of the decision on any claim of the case",
            description = KEPT)
    @GetMapping({"/api/v1/cases/{number}/claims/{place}/letter.pdf", "/cases/{number}/claims/{place}/letter.pdf"})
    void letterOf(
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
            operationId = "readDecisionReportOfClaim",
            summary = "The report of the case as it stood when any claim of it was decided",
            description = KEPT)
    @GetMapping({"/api/v1/cases/{number}/claims/{place}/report.pdf", "/cases/{number}/claims/{place}/report.pdf"})
    void reportOf(
            Actor actor,
            @PathVariable CaseNumber number,
            @Parameter(description = PLACE) @PathVariable int place,
            ServletWebRequest request,
            HttpServletResponse response)
            throws IOException {
        write(number, claims.at(actor, number, place), DocumentKind.REPORT, request, response);
    }

    @Operation(
            operationId = "readFrozenAssessmentOfClaim",
            summary = "The assessment that the decision on any claim of the case rests on, exactly as kept",
            description = "Its SHA-256 is the one that the decision names.")
    @FrozenAssessmentResponse
    @GetMapping(path = "/api/v1/cases/{number}/claims/{place}/assessment", produces = MediaType.APPLICATION_JSON_VALUE)
    byte[] assessmentOf(
            Actor actor, @PathVariable CaseNumber number, @Parameter(description = PLACE) @PathVariable int place) {
        return frozen(number, claims.at(actor, number, place));
    }

    private byte[] frozen(CaseNumber number, Claim claim) {
        return claim.decision()
                .flatMap(decision -> assessments.kept(decision.assessment()))
                .map(StoredAssessment::body)
                .orElseThrow(() -> new NotFoundException("decision on this claim of case " + number))
                .getBytes(StandardCharsets.UTF_8);
    }

    private void write(
            CaseNumber number, Claim claim, DocumentKind kind, ServletWebRequest request, HttpServletResponse response)
            throws IOException {
        ClaimDocument paper = papers.read(claim.id(), kind)
                .orElseThrow(() -> new NotFoundException(kind.id() + " on this claim of case " + number));
        String name = number + (claim.place() == 1 ? "" : "-" + claim.place()) + "-" + kind.id() + ".pdf";
        PdfResponse.write(paper.bytes(), paper.sha256(), name, request, response);
    }
}
