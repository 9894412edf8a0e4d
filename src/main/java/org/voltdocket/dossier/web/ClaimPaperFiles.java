package org.voltdocket.dossier.web;

import io.swagger.v3.oas.annotations.Operation;
import io.swagger.v3.oas.annotations.media.Content;
import io.swagger.v3.oas.annotations.media.Schema;
import io.swagger.v3.oas.annotations.responses.ApiResponse;
import io.swagger.v3.oas.annotations.tags.Tag;
import jakarta.servlet.http.HttpServletResponse;
import java.io.IOException;
import org.springframework.http.MediaType;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.RestController;
import org.springframework.web.context.request.ServletWebRequest;
import org.voltdocket.assessment.Assessments;
import org.voltdocket.assessment.KeptAssessment;
import org.voltdocket.casefile.Cases;
import org.voltdocket.casefile.NotVisible;
import org.voltdocket.claim.Claim;
import org.voltdocket.claim.ClaimPaper;
import org.voltdocket.claim.ClaimPapers;
import org.voltdocket.claim.Claims;
import org.voltdocket.claim.PaperKind;
import org.voltdocket.kernel.Actor;
import org.voltdocket.kernel.CaseNumber;

/** What a decision left: its letter, its report, and the assessment it rests on, each byte for byte as kept. */
@RestController
@Tag(name = "Claims")
class ClaimPaperFiles {

    private final Cases cases;
    private final Claims claims;
    private final ClaimPapers papers;
    private final Assessments assessments;

    ClaimPaperFiles(Cases cases, Claims claims, ClaimPapers papers, Assessments assessments) {
        this.cases = cases;
        this.claims = claims;
        this.papers = papers;
        this.assessments = assessments;
    }

    @Operation(
            operationId = "readLetter",
            summary = "The letter of the decision",
            description = "Printed when the claim was decided, and the same bytes ever since.")
    @ApiResponse(
            responseCode = "200",
            description = "the letter",
            content =
                    @Content(
                            mediaType = MediaType.APPLICATION_PDF_VALUE,
                            schema = @Schema(type = "string", format = "binary")))
    @ApiResponse(responseCode = "304", description = "you have these bytes already (If-None-Match)")
    @GetMapping({"/api/v1/cases/{number}/claim/letter.pdf", "/cases/{number}/claim/letter.pdf"})
    void letter(Actor actor, @PathVariable CaseNumber number, ServletWebRequest request, HttpServletResponse response)
            throws IOException {
        write(actor, number, PaperKind.LETTER, request, response);
    }

    @Operation(
            operationId = "readDecisionReport",
            summary = "The report of the case as it stood when the claim was decided",
            description = "Printed when the claim was decided, and the same bytes ever since.")
    @ApiResponse(
            responseCode = "200",
            description = "the report",
            content =
                    @Content(
                            mediaType = MediaType.APPLICATION_PDF_VALUE,
                            schema = @Schema(type = "string", format = "binary")))
    @ApiResponse(responseCode = "304", description = "you have these bytes already (If-None-Match)")
    @GetMapping({"/api/v1/cases/{number}/claim/report.pdf", "/cases/{number}/claim/report.pdf"})
    void report(Actor actor, @PathVariable CaseNumber number, ServletWebRequest request, HttpServletResponse response)
            throws IOException {
        write(actor, number, PaperKind.REPORT, request, response);
    }

    @Operation(
            operationId = "readFrozenAssessment",
            summary = "The assessment that the decision rests on, exactly as kept",
            description = "Its SHA-256 is the one that the decision names.")
    @ApiResponse(
            responseCode = "200",
            description = "the assessment",
            content = @Content(schema = @Schema(implementation = org.voltdocket.assessment.AssessmentView.class)))
    @GetMapping(path = "/api/v1/cases/{number}/claim/assessment", produces = MediaType.APPLICATION_JSON_VALUE)
    byte[] assessment(Actor actor, @PathVariable CaseNumber number) {
        return claim(actor, number)
                .decision()
                .flatMap(decision -> assessments.kept(decision.assessment()))
                .map(KeptAssessment::body)
                .orElseThrow(() -> new NotVisible("decision on the claim of case " + number))
                .getBytes(java.nio.charset.StandardCharsets.UTF_8);
    }

    private void write(
            Actor actor, CaseNumber number, PaperKind kind, ServletWebRequest request, HttpServletResponse response)
            throws IOException {
        ClaimPaper paper = papers.read(claim(actor, number).id(), kind)
                .orElseThrow(() -> new NotVisible(kind.id() + " on the claim of case " + number));
        PdfAnswer.write(paper.bytes(), paper.sha256(), number + "-" + kind.id() + ".pdf", request, response);
    }

    private Claim claim(Actor actor, CaseNumber number) {
        return claims.of(actor, cases.require(actor, number).id())
                .orElseThrow(() -> new NotVisible("claim of case " + number));
    }
}
