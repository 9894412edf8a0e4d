package org.voltdocket.recovery.web;

import io.swagger.v3.oas.annotations.Operation;
import io.swagger.v3.oas.annotations.media.Content;
import io.swagger.v3.oas.annotations.responses.ApiResponse;
import io.swagger.v3.oas.annotations.tags.Tag;
import org.springframework.http.MediaType;
import org.springframework.http.ResponseEntity;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.RestController;
import org.voltdocket.kernel.Actor;
import org.voltdocket.recovery.RecoveryService;

/** The frozen bytes of a list. */
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

    private static ResponseEntity<byte[]> file(MediaType type, String how, String name, byte[] body) {
        return ResponseEntity.ok()
                .contentType(type)
                .header("Content-Disposition", how + "; filename=\"" + name + "\"")
                .header("X-Content-Type-Options", "nosniff")
                .body(body);
    }
}
