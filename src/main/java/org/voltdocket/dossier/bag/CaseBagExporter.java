package org.voltdocket.dossier.bag;

import static java.nio.charset.StandardCharsets.UTF_8;

import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import org.springframework.stereotype.Component;
import org.voltdocket.casefile.CaseReference;
import org.voltdocket.claim.Claim;
import org.voltdocket.claim.DocumentKind;
import org.voltdocket.claim.repository.ClaimDocument;
import org.voltdocket.claim.repository.ClaimDocumentRepository;
import org.voltdocket.dossier.Dossier;
import org.voltdocket.evidence.EvidenceArchive;
import org.voltdocket.evidence.EvidenceItem;
import org.voltdocket.trail.TrailEntry;
import org.voltdocket.trail.TrailHead;
import tools.jackson.databind.SerializationFeature;
import tools.jackson.databind.json.JsonMapper;

/** Exports cases as bags. Originals are streamed from storage; the same dossier gives the same bytes. */
@Component
public class CaseBagExporter {

    private final EvidenceArchive archive;
    private final ClaimDocumentRepository papers;
    private final JsonMapper json;

    CaseBagExporter(EvidenceArchive archive, ClaimDocumentRepository papers, JsonMapper json) {
        this.papers = papers;
        this.archive = archive;
        this.json = json.rebuild().enable(SerializationFeature.INDENT_OUTPUT).build();
    }

    /** Name of the bag, and of its directory. */
    public static String name(Dossier dossier) {
        return "voltdocket-" + dossier.file().ref().number().value();
    }

    /**
     * Reads every original once, so that the caller can still answer with an error instead of an incomplete bag.
     *
     * @throws IllegalStateException if stored bytes do not match their digest
     */
    public void check(Dossier dossier) {
        stored(dossier).forEach(item -> archive.writeContent(item.id(), OutputStream.nullOutputStream()));
    }

    /**
     * Writes a bag and leaves the stream open. If stored bytes are damaged it stops, so that the file is not a valid zip and cannot be mistaken for
     * a complete bag.
     *
     * @param caseJson the case as the API returns it
     * @param claimJson the claim as the API returns it; empty where the case has none
     * @param earlier claims before that one
     * @param report the printed report
     * @throws IllegalStateException if stored bytes do not match their digest
     */
    public void write(
            Dossier dossier,
            byte[] caseJson,
            Optional<byte[]> claimJson,
            List<Earlier> earlier,
            byte[] report,
            OutputStream out)
            throws IOException {
        BagWriter bag = new BagWriter(out, name(dossier), dossier.changedAt());
        bag.tag("how-to-verify.txt", howToVerify(dossier));
        bag.payload("report.pdf", to -> to.write(report));
        bag.payload("case.json", to -> to.write(caseJson));
        if (claimJson.isPresent()) {
            bag.payload("claim.json", to -> to.write(claimJson.get()));
        }
        if (dossier.claim().isPresent()) {
            papers(bag, "claim/", dossier.claim().get());
        }
        for (Earlier one : earlier) {
            String folder = "claims/" + one.claim().place() + "/";
            bag.payload(folder + "claim.json", to -> to.write(one.json()));
            papers(bag, folder, one.claim());
        }
        bag.payload("trail.json", to -> to.write(trail(dossier)));
        List<EvidenceItem> items = stored(dossier);
        for (int i = 0; i < items.size(); i++) {
            EvidenceItem item = items.get(i);
            bag.payload(
                    "evidence/" + BagFileNames.of(i + 1, item.downloadName()),
                    to -> archive.writeContent(item.id(), to));
        }
        bag.finish(info(dossier));
    }

    /** The items whose originals were not erased. */
    private List<EvidenceItem> stored(Dossier dossier) {
        Set<UUID> erased = archive.erased(dossier.file().ref().id());
        return dossier.evidence().stream()
                .filter(item -> !erased.contains(item.id()))
                .toList();
    }

    /**
     * A claim before the latest.
     *
     * @param json the claim as the API returns it
     */
    public record Earlier(Claim claim, byte[] json) {}

    /** The documents of the decision, where there is one. */
    private void papers(BagWriter bag, String folder, Claim claim) throws IOException {
        for (DocumentKind kind : DocumentKind.values()) {
            Optional<ClaimDocument> paper = papers.read(claim.id(), kind);
            if (paper.isPresent()) {
                bag.payload(
                        folder + kind.id() + ".pdf", to -> to.write(paper.get().bytes()));
            }
        }
    }

    private static Map<String, String> info(Dossier dossier) {
        CaseReference ref = dossier.file().ref();
        Map<String, String> info = new LinkedHashMap<>();
        info.put(
                "Bagging-Date",
                LocalDate.ofInstant(dossier.changedAt(), ZoneOffset.UTC).toString());
        info.put("Bag-Software-Agent", "Voltdocket");
        info.put("External-Identifier", ref.number().value());
        info.put("External-Description", "Battery " + ref.serial() + " in vehicle " + ref.vin());
        List<TrailEntry> trail = dossier.trail();
        if (!trail.isEmpty()) {
            TrailEntry last = trail.get(trail.size() - 1);
            info.put("Trail-Head", new TrailHead(last.position(), last.hash()).toString());
        }
        return info;
    }

    private byte[] trail(Dossier dossier) {
        return json.writeValueAsBytes(
                dossier.trail().stream().map(CaseBagExporter::entry).toList());
    }

    private static Map<String, Object> entry(TrailEntry entry) {
        Map<String, Object> out = new LinkedHashMap<>();
        out.put("position", entry.position());
        out.put("at", entry.at().toString());
        out.put("user", entry.actor().user());
        out.put("role", entry.actor().role().name());
        out.put("act", entry.act());
        out.put("subject", entry.subject());
        out.put("details", entry.details());
        out.put("hash", entry.hash().hex());
        return out;
    }

    private static String howToVerify(Dossier dossier) throws IOException {
        try (InputStream in = CaseBagExporter.class.getResourceAsStream("/bag/how-to-verify.txt")) {
            if (in == null) {
                throw new IOException("the program is not whole: it has no text on how to verify a bag");
            }
            return new String(in.readAllBytes(), UTF_8)
                    .replace("{number}", dossier.file().ref().number().value())
                    .replace("{name}", name(dossier));
        }
    }
}
