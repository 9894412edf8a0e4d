package org.voltdocket.dossier.upload;

import java.nio.charset.StandardCharsets;
import java.util.Base64;
import java.util.LinkedHashMap;
import java.util.Map;
import org.voltdocket.kernel.RequestException;

/**
 * What the header {@code Upload-Metadata} says: pairs of a key and a value in Base64, parted by commas.
 *
 * @param fileName never blank
 * @param note null where there is none
 * @param sha256 expected digest of the whole file, hexadecimal; null where there is none
 */
record UploadMetadata(String fileName, String note, String sha256) {

    /** @throws RequestException if a value is not Base64 or a digest is none */
    static UploadMetadata of(String header) {
        Map<String, String> values = new LinkedHashMap<>();
        for (String pair : header == null || header.isBlank() ? new String[0] : header.split(",")) {
            String[] parts = pair.strip().split(" ", 2);
            values.put(parts[0], parts.length < 2 ? "" : decoded(parts[0], parts[1].strip()));
        }
        String sha256 = values.get("sha256");
        if (sha256 != null && !sha256.matches("[0-9a-f]{64}")) {
            throw invalid("sha256 in Upload-Metadata is to be 64 hexadecimal digits in lower case.");
        }
        String name = values.getOrDefault("filename", "");
        String note = values.getOrDefault("note", "");
        return new UploadMetadata(name.isBlank() ? "file" : name, note.isBlank() ? null : note, sha256);
    }

    static RequestException invalid(String message) {
        return RequestException.of(400, "upload-headers", message);
    }

    private static String decoded(String key, String value) {
        try {
            return new String(Base64.getDecoder().decode(value), StandardCharsets.UTF_8);
        } catch (IllegalArgumentException e) {
            throw invalid("The value of '" + key + "' in Upload-Metadata is not Base64.");
        }
    }
}
