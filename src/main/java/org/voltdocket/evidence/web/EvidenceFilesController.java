package org.voltdocket.evidence.web;

import io.swagger.v3.oas.annotations.Operation;
import io.swagger.v3.oas.annotations.media.Content;
import io.swagger.v3.oas.annotations.responses.ApiResponse;
import io.swagger.v3.oas.annotations.tags.Tag;
import jakarta.servlet.http.HttpServletResponse;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.util.Base64;
import java.util.UUID;
import org.springframework.http.ContentDisposition;
import org.springframework.http.HttpHeaders;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.RestController;
import org.springframework.web.context.request.ServletWebRequest;
import org.voltdocket.evidence.EvidenceArchive;
import org.voltdocket.evidence.EvidenceItem;
import org.voltdocket.kernel.Actor;

/** The original bytes, bit for bit. */
@RestController
@Tag(name = "Evidence")
class EvidenceFilesController {

    private final EvidenceArchive archive;

    EvidenceFilesController(EvidenceArchive archive) {
        this.archive = archive;
    }

    /**
     * Streams a file with its digest as {@code Repr-Digest} (RFC 9530), as {@code Digest} (RFC 3230, for older readers)
     * and as entity tag. If the stored bytes are damaged or their store fails, the answer is a problem detail before the first byte,
     * and ends early after it.
     */
    @Operation(
            summary = "The original bytes, bit for bit",
            description = "Repr-Digest, Digest and the entity tag carry the SHA-256 of the file.")
    @ApiResponse(responseCode = "200", description = "the file", content = @Content(mediaType = "*/*"))
    @ApiResponse(responseCode = "304", description = "not modified (If-None-Match)")
    @GetMapping({"/api/v1/evidence/{id}/content", "/evidence/{id}/content"})
    void content(Actor actor, @PathVariable UUID id, ServletWebRequest request, HttpServletResponse response)
            throws IOException {
        EvidenceItem item = archive.item(actor, id);
        if (request.getHeader(HttpHeaders.IF_NONE_MATCH) != null && request.checkNotModified(tag(item))) {
            digests(item, response);
            return;
        }
        archive.writeContent(id, new FirstHead(item, response));
    }

    private static String tag(EvidenceItem item) {
        return "\"" + item.sha256().hex() + "\"";
    }

    private static void digests(EvidenceItem item, HttpServletResponse response) {
        response.setHeader(HttpHeaders.ETAG, tag(item));
        String digest = Base64.getEncoder().encodeToString(item.sha256().bytes());
        response.setHeader("Repr-Digest", "sha-256=:" + digest + ":");
        response.setHeader("Digest", "sha-256=" + digest);
        response.setHeader(HttpHeaders.CACHE_CONTROL, "private, no-cache");
    }

    private static void head(EvidenceItem item, HttpServletResponse response) {
        digests(item, response);
        response.setContentType(item.mediaType());
        response.setContentLengthLong(item.bytes());
        response.setHeader("X-Content-Type-Options", "nosniff");
        response.setHeader(
                HttpHeaders.CONTENT_DISPOSITION,
                ContentDisposition.attachment()
                        .filename(item.downloadName(), StandardCharsets.UTF_8)
                        .build()
                        .toString());
    }

    /** Sets the headers with the first byte, so that an unreadable file can still be answered with a problem detail. */
    private static final class FirstHead extends OutputStream {

        private final EvidenceItem item;
        private final HttpServletResponse response;
        private OutputStream body;

        FirstHead(EvidenceItem item, HttpServletResponse response) {
            this.item = item;
            this.response = response;
        }

        @Override
        public void write(int b) throws IOException {
            write(new byte[] {(byte) b}, 0, 1);
        }

        @Override
        public void write(byte[] bytes, int from, int length) throws IOException {
            if (length == 0) {
                return;
            }
            if (body == null) {
                head(item, response);
                body = response.getOutputStream();
            }
            body.write(bytes, from, length);
        }
    }
}
