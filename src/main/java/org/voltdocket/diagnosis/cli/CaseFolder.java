package org.voltdocket.diagnosis.cli;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import org.voltdocket.diagnosis.CaseInput;
import org.voltdocket.diagnosis.Evidence;
import org.voltdocket.diagnosis.History;
import org.voltdocket.diagnosis.Origin;
import org.voltdocket.diagnosis.read.CaseRequestReader;
import org.voltdocket.diagnosis.read.FactsParser;
import org.voltdocket.diagnosis.read.FileReader;
import org.voltdocket.diagnosis.read.ParsedFile;
import org.voltdocket.diagnosis.read.ReadResult;
import org.voltdocket.diagnosis.read.RejectedFile;
import org.voltdocket.kernel.Sha256;

/**
 * A folder with one case: {@value #REQUEST} and the files of evidence beside it. Documents, hidden files and subfolders
 * are skipped. The case has no history: other folders are other cases.
 */
final class CaseFolder {

    static final String REQUEST = "case-request.json";

    private final Path folder;
    private final Instant now;
    private final List<String> refusals = new ArrayList<>();

    /** @param now tests and days that lie more than a day later are refused */
    CaseFolder(Path folder, Instant now) {
        this.folder = folder;
        this.now = now;
    }

    /** What was wrong with its files, one line each: file, line, column and reason. */
    List<String> refusals() {
        return refusals;
    }

    /**
     * Reads all files.
     *
     * @return null if a file was refused
     * @throws IOException if a file cannot be read
     */
    CaseInput read() throws IOException {
        CaseRequestReader.Result opened = CaseRequestReader.read(
                Files.readAllBytes(folder.resolve(REQUEST)),
                now.atOffset(ZoneOffset.UTC).toLocalDate());
        if (opened.refusal() != null) {
            refuse(folder.resolve(REQUEST), opened.refusal());
        }
        List<Evidence> evidence = new ArrayList<>();
        for (Path file : files()) {
            ReadResult read = new FileReader(file, now, size -> {}).read();
            if (read instanceof RejectedFile rejected) {
                refuse(file, rejected);
            } else if (read instanceof ParsedFile parsed && parsed.reading() != null && opened.request() != null) {
                evidence.add(evidence(opened.request(), Sha256.of(Files.readAllBytes(file)), parsed));
            }
        }
        return refusals.isEmpty() ? new CaseInput(opened.request().facts(), History.NONE, evidence) : null;
    }

    private static Evidence evidence(FactsParser.Parsed request, Sha256 sha256, ParsedFile file) {
        return new Evidence(
                Evidence.id(request.serial(), request.vin(), sha256).toString(),
                sha256,
                Origin.WORKSHOP,
                file.reading());
    }

    private List<Path> files() throws IOException {
        try (Stream<Path> files = Files.list(folder)) {
            return files.filter(Files::isRegularFile)
                    .filter(file -> !file.getFileName().toString().startsWith("."))
                    .filter(file -> !file.endsWith(REQUEST))
                    .sorted()
                    .toList();
        }
    }

    private void refuse(Path file, RejectedFile rejected) {
        if (rejected.errors().isEmpty()) {
            refusals.add(file + ": " + rejected.detail());
        }
        rejected.errors()
                .forEach(error -> refusals.add(
                        file + ", line " + error.line() + ", column " + error.column() + ": " + error.message()));
        if (rejected.more() > 0) {
            refusals.add(file + ": and " + rejected.more() + " more errors");
        }
    }
}
