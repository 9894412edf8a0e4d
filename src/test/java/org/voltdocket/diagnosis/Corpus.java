package org.voltdocket.diagnosis;

import static java.nio.charset.StandardCharsets.UTF_8;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.voltdocket.casefile.CaseRequest;
import org.voltdocket.casefile.NewCase;
import org.voltdocket.diagnosis.read.FileReading;
import org.voltdocket.kernel.Sha256;
import tools.jackson.databind.json.JsonMapper;

/**
 * The corpus: sample cases, one for each cause, as a workshop would send them ({@code shared/samples/<cause>}: the request
 * that opens the case, and the files of evidence), and what each edition of the rule book says of them ({@code
 * shared/expected/<edition>/<cause>.json}; from the measured voltage alone, in the folder {@code measured-v} beside).
 */
public final class Corpus {

    static final Path SAMPLES = Path.of("shared/samples");
    /** Samples judged as they are. */
    static final String ALL = "all";
    /** Samples judged from the measured voltage alone, and the folder that holds what is expected of them. */
    static final String VOLTAGE = "measured-v";

    static final List<String> CHANNELS = List.of(ALL, VOLTAGE);
    static final String REQUEST = "case-request.json";

    private Corpus() {}

    /** Names of the sample cases. */
    static List<String> names() {
        return list(SAMPLES).stream()
                .filter(Files::isDirectory)
                .map(folder -> folder.getFileName().toString())
                .toList();
    }

    /** Files in a folder, sorted by name. */
    static List<Path> list(Path folder) {
        try (Stream<Path> files = Files.list(folder)) {
            return files.sorted().toList();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** A sample read through the doors that a workshop's files take. */
    public static CaseInput input(String name) {
        NewCase opened = CaseRequest.read(
                        JsonMapper.shared().readTree(text(SAMPLES.resolve(name).resolve(REQUEST))))
                .newCase();
        List<Evidence> evidence = new ArrayList<>();
        for (Path file : list(SAMPLES.resolve(name))) {
            if (!file.endsWith(REQUEST)) {
                Sha256 digest = Sha256.of(bytes(file));
                String id = Evidence.id(opened.serial(), opened.vin(), digest).toString();
                evidence.add(new Evidence(id, digest, Origin.WORKSHOP, FileReading.of(file)));
            }
        }
        return new CaseInput(opened.facts(), History.NONE, evidence);
    }

    /** A sample as it is, or with no channel but the measured voltage in its recordings of the vehicle. */
    static CaseInput input(String name, String channels) {
        CaseInput whole = input(name);
        return channels.equals(ALL) ? whole : measuredVoltageOnly(whole);
    }

    /** The same case with no channel but {@code measured_v} in its drive, standing and cranking recordings. */
    public static CaseInput measuredVoltageOnly(CaseInput whole) {
        List<Evidence> bare = whole.evidence().stream()
                .map(item -> item.reading() instanceof Recording recording
                                && recording.kind() != EvidenceKind.DISCHARGE_RECORDING
                        ? new Evidence(item.id(), item.sha256(), item.origin(), bare(recording))
                        : item)
                .toList();
        return new CaseInput(whole.facts(), whole.history(), bare);
    }

    private static Recording bare(Recording recording) {
        return new Recording(
                recording.kind(),
                recording.startedAt().orElse(null),
                recording.timeS(),
                Map.of(Channel.MEASURED_V, recording.channel(Channel.MEASURED_V)),
                recording.marks());
    }

    /** Where the assessment expected of a sample lies. */
    static Path expected(String edition, String channels, String name) {
        Path folder = Path.of("shared/expected").resolve(edition);
        return (channels.equals(ALL) ? folder : folder.resolve(channels)).resolve(name + ".json");
    }

    /** Where the digest of the edition lies that the expectations rest on. */
    static Path digest(String edition) {
        return Path.of("shared/expected").resolve(edition + ".sha256");
    }

    static String text(Path file) {
        return new String(bytes(file), UTF_8);
    }

    private static byte[] bytes(Path file) {
        try {
            return Files.readAllBytes(file);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
