package org.voltdocket.dossier.bag;

import static java.nio.charset.StandardCharsets.UTF_8;

import java.io.IOException;
import java.io.OutputStream;
import java.time.Instant;
import java.time.LocalDateTime;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.function.Function;
import java.util.zip.ZipEntry;
import java.util.zip.ZipOutputStream;

/**
 * Writes a BagIt bag, version 1.0 (RFC 8493), as a zip file in one pass: whatever goes through is digested on its way, and
 * the manifests follow it. Only the digests are held in memory.
 */
final class BagWriter {

    private final ZipOutputStream zip;
    private final String base;
    private final LocalDateTime date;
    private final List<FileDigests> payload = new ArrayList<>();
    private final List<FileDigests> tags = new ArrayList<>();

    /** Writes the content of one file. */
    interface Content {
        void writeTo(OutputStream out) throws IOException;
    }

    /**
     * @param base name of the bag's directory
     * @param date of every file in it
     */
    BagWriter(OutputStream out, String base, Instant date) throws IOException {
        this.zip = new ZipOutputStream(out, UTF_8);
        this.base = base;
        this.date = LocalDateTime.ofInstant(date, ZoneOffset.UTC);
        tag("bagit.txt", "BagIt-Version: 1.0\nTag-File-Character-Encoding: UTF-8\n");
    }

    /** Adds a file of the payload; {@code path} is below {@code data/}, in portable characters. */
    void payload(String path, Content content) throws IOException {
        payload.add(file("data/" + path, content));
    }

    /** Adds a file about the bag. */
    void tag(String path, String text) throws IOException {
        tags.add(file(path, out -> out.write(text.getBytes(UTF_8))));
    }

    /** Ends the bag with its description and manifests; leaves the stream open. */
    void finish(Map<String, String> info) throws IOException {
        long bytes = payload.stream().mapToLong(FileDigests::bytes).sum();
        StringBuilder text = new StringBuilder();
        info.forEach(
                (label, value) -> text.append(label).append(": ").append(value).append('\n'));
        tag("bag-info.txt", text + "Payload-Oxum: " + bytes + "." + payload.size() + "\n");
        tag("manifest-sha256.txt", manifest(payload, FileDigests::sha256));
        tag("manifest-sha512.txt", manifest(payload, FileDigests::sha512));
        String of256 = manifest(tags, FileDigests::sha256);
        String of512 = manifest(tags, FileDigests::sha512);
        file("tagmanifest-sha256.txt", out -> out.write(of256.getBytes(UTF_8)));
        file("tagmanifest-sha512.txt", out -> out.write(of512.getBytes(UTF_8)));
        zip.finish();
    }

    private FileDigests file(String path, Content content) throws IOException {
        ZipEntry entry = new ZipEntry(base + "/" + path);
        entry.setTimeLocal(date);
        zip.putNextEntry(entry);
        DigestingOutputStream through = new DigestingOutputStream(zip);
        content.writeTo(through);
        zip.closeEntry();
        return through.digested(path);
    }

    private static String manifest(List<FileDigests> files, Function<FileDigests, String> digest) {
        StringBuilder text = new StringBuilder();
        for (FileDigests file : files) {
            text.append(digest.apply(file)).append("  ").append(file.path()).append('\n');
        }
        return text.toString();
    }
}
