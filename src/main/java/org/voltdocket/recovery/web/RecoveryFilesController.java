package org.voltdocket.recovery.web;

import de.siegmar.fastcsv.writer.CsvWriter;
import io.swagger.v3.oas.annotations.Operation;
import io.swagger.v3.oas.annotations.media.Content;
import io.swagger.v3.oas.annotations.responses.ApiResponse;
import io.swagger.v3.oas.annotations.tags.Tag;
import jakarta.servlet.http.HttpServletResponse;
import java.io.IOException;
import java.io.OutputStreamWriter;
import java.nio.charset.StandardCharsets;
import java.util.List;
import org.springframework.http.MediaType;
import org.springframework.http.ResponseEntity;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.RestController;
import org.voltdocket.kernel.Actor;
import org.voltdocket.recovery.RecoveryService;
import org.voltdocket.recovery.WorkshopRepayment;
import org.voltdocket.ui.SpreadsheetCells;

/** The stored PDF and CSV of a list, and the repayments of workshops as CSV. */
@RestController
@Tag(name = "Recoveries")
class RecoveryFilesController {

    private static final MediaType CSV = MediaType.parseMediaType("text/csv;charset=UTF-8");

    private final RecoveryService recoveries;

    RecoveryFilesController(RecoveryService recoveries) {
        this.recoveries = recoveries;
    }

    @Operation(summary = "The list as PDF, as stored")
    @ApiResponse(responseCode = "200", content = @Content(mediaType = MediaType.APPLICATION_PDF_VALUE))
    @GetMapping({"/api/v1/recoveries/{list}/list.pdf", "/recoveries/{list}/list.pdf"})
    ResponseEntity<byte[]> pdf(Actor actor, @PathVariable String list) {
        return file(MediaType.APPLICATION_PDF, "inline", list + ".pdf", recoveries.pdf(actor, list));
    }

    @Operation(summary = "The list as CSV, as stored")
    @ApiResponse(responseCode = "200", content = @Content(mediaType = "text/csv"))
    @GetMapping({"/api/v1/recoveries/{list}/list.csv", "/recoveries/{list}/list.csv"})
    ResponseEntity<byte[]> csv(Actor actor, @PathVariable String list) {
        return file(CSV, "attachment", list + ".csv", recoveries.csv(actor, list));
    }

    @GetMapping("/recoveries/workshops.csv")
    void workshops(Actor actor, HttpServletResponse response) throws IOException {
        List<WorkshopRepayment> all = recoveries.fromWorkshops(actor);
        response.setContentType(CSV.toString());
        response.setHeader("Content-Disposition", "attachment; filename=\"workshops.csv\"");
        try (CsvWriter csv =
                CsvWriter.builder().build(new OutputStreamWriter(response.getOutputStream(), StandardCharsets.UTF_8))) {
            csv.writeRecord(
                    "workshop", "amount", "currency", "case", "return", "serial", "type", "batch", "outcome", "reason");
            for (WorkshopRepayment one : all) {
                csv.writeRecord(
                        SpreadsheetCells.harmless(one.workshop()),
                        one.amount().text(),
                        one.amount().code(),
                        one.number().value(),
                        one.returnNumber(),
                        SpreadsheetCells.harmless(one.serial()),
                        SpreadsheetCells.harmless(one.type()),
                        SpreadsheetCells.harmless(one.batch()),
                        one.outcome(),
                        SpreadsheetCells.harmless(one.outcomeReason()));
            }
        }
    }

    private static ResponseEntity<byte[]> file(MediaType type, String how, String name, byte[] body) {
        return ResponseEntity.ok()
                .contentType(type)
                .header("Content-Disposition", how + "; filename=\"" + name + "\"")
                .header("X-Content-Type-Options", "nosniff")
                .body(body);
    }
}
