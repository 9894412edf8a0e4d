package org.voltdocket.dossier.web;

import io.swagger.v3.oas.annotations.Operation;
import io.swagger.v3.oas.annotations.media.Content;
import io.swagger.v3.oas.annotations.media.Schema;
import io.swagger.v3.oas.annotations.responses.ApiResponse;
import io.swagger.v3.oas.annotations.tags.Tag;
import jakarta.servlet.http.HttpServletResponse;
import java.io.IOException;
import org.springframework.http.ContentDisposition;
import org.springframework.http.HttpHeaders;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.RestController;
import org.springframework.web.context.request.ServletWebRequest;
import org.voltdocket.dossier.Dossier;
import org.voltdocket.dossier.DossierService;
import org.voltdocket.dossier.bag.CaseBagExporter;
import org.voltdocket.dossier.report.CaseReport;
import org.voltdocket.kernel.Actor;
import org.voltdocket.kernel.CaseNumber;
import org.voltdocket.kernel.Sha256;
import org.voltdocket.ui.PdfFile;
import org.voltdocket.ui.PdfResponse;

/** The documents of a case: printed report and bag. */
@RestController
@Tag(name = "Cases")
class CaseDocumentsController {

    private final DossierService dossiers;
    private final CaseReport reports;
    private final CaseBags bags;

    CaseDocumentsController(DossierService dossiers, CaseReport reports, CaseBags bags) {
        this.dossiers = dossiers;
        this.reports = reports;
        this.bags = bags;
    }

    @Operation(
            operationId = "printCase",
            summary = "The case as a printed report",
            description = "The same bytes while nothing happens to the case; Repr-Digest and ETag carry their SHA-256.")
    @PdfFile
    @GetMapping({"/api/v1/cases/{number}/report.pdf", "/cases/{number}/report.pdf"})
    void report(Actor actor, @PathVariable CaseNumber number, ServletWebRequest request, HttpServletResponse response)
            throws IOException {
        byte[] report = reports.of(actor, dossiers.of(actor, number));
        PdfResponse.write(report, Sha256.of(report), number + ".pdf", request, response);
    }

    @Operation(
            operationId = "packCase",
            summary = "The complete case: originals, report, JSON and trail, as a BagIt bag (RFC 8493)",
            description = "A zip file with manifests by SHA-256 and SHA-512, and a page on how to verify them.")
    @ApiResponse(
            responseCode = "200",
            description = "the bag",
            content = @Content(mediaType = "application/zip", schema = @Schema(type = "string", format = "binary")))
    @GetMapping({"/api/v1/cases/{number}/bag.zip", "/cases/{number}/bag.zip"})
    void bag(Actor actor, @PathVariable CaseNumber number, HttpServletResponse response) throws IOException {
        Dossier dossier = bags.check(actor, number);
        response.setHeader(HttpHeaders.CACHE_CONTROL, "private, no-cache");
        PdfResponse.head(
                response, "application/zip", ContentDisposition.attachment(), CaseBagExporter.name(dossier) + ".zip");
        bags.write(actor, dossier, response.getOutputStream());
    }
}
