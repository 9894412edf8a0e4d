package org.voltdocket.dossier.upload;

import io.swagger.v3.oas.annotations.Operation;
import io.swagger.v3.oas.annotations.Parameter;
import io.swagger.v3.oas.annotations.enums.ParameterIn;
import io.swagger.v3.oas.annotations.media.Content;
import io.swagger.v3.oas.annotations.media.Schema;
import io.swagger.v3.oas.annotations.parameters.RequestBody;
import io.swagger.v3.oas.annotations.responses.ApiResponse;
import io.swagger.v3.oas.annotations.tags.Tag;
import jakarta.servlet.http.HttpServletRequest;
import java.io.IOException;
import java.net.URI;
import java.time.Instant;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.util.UUID;
import org.springframework.http.CacheControl;
import org.springframework.http.HttpHeaders;
import org.springframework.http.ResponseEntity;
import org.springframework.web.bind.annotation.DeleteMapping;
import org.springframework.web.bind.annotation.ModelAttribute;
import org.springframework.web.bind.annotation.PatchMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestHeader;
import org.springframework.web.bind.annotation.RequestMapping;
import org.springframework.web.bind.annotation.RequestMethod;
import org.springframework.web.bind.annotation.RestController;
import org.voltdocket.diagnosis.read.FileLimits;
import org.voltdocket.evidence.AlreadyStored;
import org.voltdocket.evidence.EvidenceItem;
import org.voltdocket.evidence.IntakeResult;
import org.voltdocket.evidence.Rejected;
import org.voltdocket.evidence.Stored;
import org.voltdocket.kernel.Actor;
import org.voltdocket.kernel.CaseNumber;
import org.voltdocket.kernel.RequestException;

/** The protocol tus 1.0.0, for scripts under {@code /api/v1} and for the pages. */
@RestController
@Tag(
        name = "Resumable uploads",
        description =
                "tus 1.0.0 with creation, checksum, expiration and termination. An upload that breaks off is continued at"
                        + " the offset that the server tells; it becomes evidence with its last byte.")
class ResumableUploadController {

    static final String VERSION = "1.0.0";

    private static final String PART = "application/offset+octet-stream";
    private static final String RESUMABLE = "Tus-Resumable";
    private static final String API = "/api/v1";
    private static final DateTimeFormatter HTTP_DATE = DateTimeFormatter.RFC_1123_DATE_TIME.withZone(ZoneOffset.UTC);

    private final ResumableUploadService uploads;

    ResumableUploadController(ResumableUploadService uploads) {
        this.uploads = uploads;
    }

    @Schema(name = "Upload")
    record UploadView(
            UUID id,

            @Schema(description = "length of the file", example = "48213")
            long bytes,

            @Schema(description = "bytes that are stored", example = "0")
            long received,

            Instant expiresAt) {}

    /** Every request but OPTIONS names the version of the protocol. */
    @ModelAttribute
    void version(HttpServletRequest request) {
        boolean finish = request.getRequestURI().endsWith("/evidence");
        boolean needed = !finish && !request.getMethod().equals("OPTIONS");
        if (needed && !VERSION.equals(request.getHeader(RESUMABLE))) {
            throw RequestException.of(412, "upload-headers", "The header " + RESUMABLE + " is to be " + VERSION + ".");
        }
    }

    @Operation(operationId = "describeUploads", summary = "What the server can do for resumable uploads")
    @ApiResponse(responseCode = "204", description = "in the headers Tus-Version, Tus-Extension, Tus-Max-Size")
    @RequestMapping(
            path = {API + "/uploads", "/uploads"},
            method = RequestMethod.OPTIONS)
    ResponseEntity<Void> describe() {
        return ResponseEntity.noContent()
                .header(RESUMABLE, VERSION)
                .header("Tus-Version", VERSION)
                .header("Tus-Extension", "creation,checksum,expiration,termination")
                .header("Tus-Checksum-Algorithm", "sha1,sha256")
                .header("Tus-Max-Size", Long.toString(FileLimits.FILE_BYTES))
                .build();
    }

    @Operation(
            operationId = "createUpload",
            summary = "Announce a file that is sent in parts",
            description = "The answer names the address for the parts.")
    @Parameter(name = RESUMABLE, in = ParameterIn.HEADER, required = true, example = VERSION)
    @ApiResponse(responseCode = "201", description = "announced, see Location")
    @ApiResponse(responseCode = "400", description = "a header is invalid")
    @ApiResponse(responseCode = "412", description = "another version of the protocol")
    @ApiResponse(responseCode = "413", description = "too large")
    @ApiResponse(responseCode = "429", description = "too many uploads of this account are not complete")
    @PostMapping({API + "/cases/{number}/uploads", "/cases/{number}/uploads"})
    ResponseEntity<UploadView> create(
            Actor actor,
            @PathVariable CaseNumber number,
            @Parameter(description = "length of the file, bytes", example = "48213")
                    @RequestHeader(name = "Upload-Length", defaultValue = "0")
                    long length,
            @Parameter(
                            description =
                                    "keys filename, note and sha256 (digest of the file, hexadecimal), values in Base64",
                            example = "filename ZHJpdmUuY3N2,note Y29sZCBzdGFydA==")
                    @RequestHeader(name = "Upload-Metadata", required = false)
                    String metadata,
            HttpServletRequest request) {
        PartialUpload upload = uploads.create(actor, number, length, UploadMetadata.of(metadata));
        return ResponseEntity.created(URI.create(prefix(request) + "/uploads/" + upload.id()))
                .headers(headers(upload))
                .body(new UploadView(upload.id(), upload.bytes(), upload.received(), upload.expiresAt()));
    }

    @Operation(operationId = "uploadOffset", summary = "How much of a file the server has")
    @Parameter(name = RESUMABLE, in = ParameterIn.HEADER, required = true, example = VERSION)
    @ApiResponse(responseCode = "204", description = "in the headers Upload-Offset and Upload-Length")
    @RequestMapping(
            path = {API + "/uploads/{upload}", "/uploads/{upload}"},
            method = RequestMethod.HEAD)
    ResponseEntity<Void> offset(Actor actor, @PathVariable UUID upload) {
        PartialUpload found = uploads.find(actor, upload);
        return ResponseEntity.noContent()
                .headers(headers(found))
                .header("Upload-Length", Long.toString(found.bytes()))
                .cacheControl(CacheControl.noStore())
                .build();
    }

    @Operation(
            operationId = "appendToUpload",
            summary = "Send a part of a file",
            description =
                    "The body is the part, of the type application/offset+octet-stream. With the last byte the file becomes"
                            + " evidence and the case is assessed; Content-Location then names the evidence.",
            requestBody =
                    @RequestBody(
                            content = @Content(mediaType = PART, schema = @Schema(type = "string", format = "binary"))))
    @Parameter(name = RESUMABLE, in = ParameterIn.HEADER, required = true, example = VERSION)
    @ApiResponse(responseCode = "204", description = "stored, see Upload-Offset")
    @ApiResponse(responseCode = "400", description = "a header is invalid")
    @ApiResponse(responseCode = "409", description = "the offset is another one, see received")
    @ApiResponse(responseCode = "412", description = "another version of the protocol")
    @ApiResponse(responseCode = "415", description = "not application/offset+octet-stream")
    @ApiResponse(responseCode = "422", description = "complete, but refused; errors state line, column and reason")
    @ApiResponse(responseCode = "460", description = "the part does not have its checksum")
    @PatchMapping(
            path = {API + "/uploads/{upload}", "/uploads/{upload}"},
            consumes = PART)
    ResponseEntity<Void> append(
            Actor actor,
            @PathVariable UUID upload,
            @Parameter(description = "bytes that the server has already", example = "0")
                    @RequestHeader(name = "Upload-Offset", defaultValue = "-1")
                    long offset,
            @Parameter(description = "sha1 or sha256, a blank, the digest of the part in Base64", example = "")
                    @RequestHeader(name = "Upload-Checksum", required = false)
                    String checksum,
            HttpServletRequest request)
            throws IOException {
        String given = checksum == null || checksum.isBlank() ? null : checksum;
        PartialUpload now = uploads.append(actor, upload, offset, request.getInputStream(), given);
        ResponseEntity.HeadersBuilder<?> answer = ResponseEntity.noContent().headers(headers(now));
        if (now.complete() && prefix(request).equals(API)) {
            EvidenceItem item = item(uploads.finish(actor, upload));
            answer.header(HttpHeaders.CONTENT_LOCATION, API + "/evidence/" + item.id());
        }
        return answer.build();
    }

    @Operation(operationId = "deleteUpload", summary = "Give up an upload")
    @Parameter(name = RESUMABLE, in = ParameterIn.HEADER, required = true, example = VERSION)
    @ApiResponse(responseCode = "204", description = "its parts are deleted; evidence stays")
    @DeleteMapping({API + "/uploads/{upload}", "/uploads/{upload}"})
    ResponseEntity<Void> delete(Actor actor, @PathVariable UUID upload) {
        uploads.delete(actor, upload);
        return ResponseEntity.noContent().header(RESUMABLE, VERSION).build();
    }

    @Operation(
            operationId = "finishUpload",
            summary = "Add a complete upload to the case as evidence",
            description = "For a sender whose connection broke after the last byte. Safe to repeat.")
    @ApiResponse(responseCode = "204", description = "stored, see Content-Location")
    @ApiResponse(responseCode = "409", description = "bytes are missing, see received")
    @ApiResponse(responseCode = "422", description = "refused; errors state line, column and reason")
    @PostMapping(API + "/uploads/{upload}/evidence")
    ResponseEntity<Void> finish(Actor actor, @PathVariable UUID upload) {
        EvidenceItem item = item(uploads.finish(actor, upload));
        return ResponseEntity.noContent()
                .header(HttpHeaders.CONTENT_LOCATION, API + "/evidence/" + item.id())
                .build();
    }

    private static EvidenceItem item(IntakeResult result) {
        if (result instanceof Rejected rejected) {
            throw rejected.exception();
        }
        return result instanceof Stored stored ? stored.item() : ((AlreadyStored) result).item();
    }

    private static String prefix(HttpServletRequest request) {
        return request.getRequestURI().startsWith(API) ? API : "";
    }

    private static HttpHeaders headers(PartialUpload upload) {
        HttpHeaders headers = new HttpHeaders();
        headers.set(RESUMABLE, VERSION);
        headers.set("Upload-Offset", Long.toString(upload.received()));
        headers.set("Upload-Expires", HTTP_DATE.format(upload.expiresAt()));
        return headers;
    }
}
