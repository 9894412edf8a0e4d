package org.voltdocket.ui;

import jakarta.servlet.http.HttpServletResponse;
import java.io.IOException;
import java.util.Base64;
import org.springframework.http.ContentDisposition;
import org.springframework.http.HttpHeaders;
import org.springframework.http.MediaType;
import org.springframework.web.context.request.ServletWebRequest;
import org.voltdocket.kernel.Sha256;

/** A printed document as an answer: {@code Repr-Digest} (RFC 9530) and entity tag carry its SHA-256; 304 where they are known. */
public final class PdfResponse {

    private PdfResponse() {}

    public static void write(
            byte[] document, Sha256 digest, String name, ServletWebRequest request, HttpServletResponse response)
            throws IOException {
        response.setHeader("Repr-Digest", "sha-256=:" + Base64.getEncoder().encodeToString(digest.bytes()) + ":");
        response.setHeader(HttpHeaders.CACHE_CONTROL, "private, no-cache");
        if (request.checkNotModified("\"" + digest.hex() + "\"")) {
            return;
        }
        head(response, MediaType.APPLICATION_PDF_VALUE, ContentDisposition.inline(), name);
        response.setContentLength(document.length);
        response.getOutputStream().write(document);
    }

    /** Says what comes and under which name it is kept. */
    public static void head(
            HttpServletResponse response, String type, ContentDisposition.Builder disposition, String name) {
        response.setContentType(type);
        response.setHeader("X-Content-Type-Options", "nosniff");
        response.setHeader(
                HttpHeaders.CONTENT_DISPOSITION,
                disposition.filename(name).build().toString());
    }
}
