package org.voltdocket.dossier.share;

import io.swagger.v3.oas.annotations.Operation;
import io.swagger.v3.oas.annotations.media.Schema;
import io.swagger.v3.oas.annotations.responses.ApiResponse;
import io.swagger.v3.oas.annotations.tags.Tag;
import java.net.URI;
import java.time.Instant;
import java.util.List;
import java.util.UUID;
import org.springframework.http.MediaType;
import org.springframework.http.ResponseEntity;
import org.springframework.web.bind.annotation.DeleteMapping;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestBody;
import org.springframework.web.bind.annotation.RestController;
import org.voltdocket.kernel.Actor;
import org.voltdocket.kernel.CaseNumber;

@RestController
@Tag(
        name = "Links",
        description = "Links that show the summary of one case without an account; they expire and can be revoked.")
class CaseLinkApiController {

    private final CaseLinkService links;

    CaseLinkApiController(CaseLinkService links) {
        this.links = links;
    }

    record LinkRequest(
            @Schema(description = "how long it opens the case, 1 to 90 days", example = "30")
            int days) {}

    @Schema(name = "CreatedLink")
    record Created(
            UUID id,

            @Schema(
                    description = "shown this once; only a digest of its secret is stored",
                    example = "https://voltdocket.example/shared/q83vASNFZ4mrze8BI0VniQ")
            String address,

            Instant expiresAt) {}

    @Schema(name = "Link")
    record View(
            UUID id,
            Instant createdAt,
            String createdBy,
            Instant expiresAt,

            @Schema(description = "absent while it is not revoked")
            Instant revokedAt,

            @Schema(description = "how often it was opened") int accesses,
            @Schema(description = "absent before the first") Instant lastAccess) {}

    @Operation(operationId = "createLink", summary = "Create a link to the summary of a case")
    @ApiResponse(responseCode = "201", description = "created")
    @ApiResponse(responseCode = "400", description = "more than 90 days or less than one")
    @PostMapping(path = "/api/v1/cases/{number}/links", produces = MediaType.APPLICATION_JSON_VALUE)
    ResponseEntity<Created> create(Actor actor, @PathVariable CaseNumber number, @RequestBody LinkRequest request) {
        CaseLinkService.NewLink created = links.create(actor, number, request.days());
        URI address = URI.create(CaseLinkPageController.address(created.secret()));
        return ResponseEntity.created(address)
                .body(new Created(
                        created.link().id(), address.toString(), created.link().expiresAt()));
    }

    @Operation(operationId = "listLinks", summary = "Links to a case with their accesses, latest first")
    @GetMapping(path = "/api/v1/cases/{number}/links", produces = MediaType.APPLICATION_JSON_VALUE)
    List<View> list(Actor actor, @PathVariable CaseNumber number) {
        return links.of(actor, number).stream()
                .map(link -> new View(
                        link.id(),
                        link.createdAt(),
                        link.createdBy(),
                        link.expiresAt(),
                        link.revokedAt(),
                        link.accesses(),
                        link.lastAccess()))
                .toList();
    }

    @Operation(operationId = "revokeLink", summary = "Revoke a link")
    @ApiResponse(responseCode = "204", description = "it opens nothing any more")
    @DeleteMapping("/api/v1/cases/{number}/links/{link}")
    ResponseEntity<Void> revoke(Actor actor, @PathVariable CaseNumber number, @PathVariable UUID link) {
        links.revoke(actor, number, link);
        return ResponseEntity.noContent().build();
    }
}
