package org.voltdocket.assessment;

import java.nio.charset.StandardCharsets;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.voltdocket.casefile.CaseFacts;
import org.voltdocket.casefile.FactsJson;
import org.voltdocket.diagnosis.EvidenceKind;
import org.voltdocket.diagnosis.History;
import org.voltdocket.diagnosis.write.AssessmentJson;
import org.voltdocket.evidence.EvidenceItem;
import org.voltdocket.kernel.Sha256;

/** Digest of the input of an assessment, independent of the order of arrival. Documents have no reading and are left out. */
final class InputDigest {

    private InputDigest() {}

    static Sha256 of(CaseFacts file, History history, List<EvidenceItem> items) {
        Map<String, Object> facts = new LinkedHashMap<>();
        FactsJson.flat(file.facts())
                .forEach(
                        (name, value) -> facts.put(name, value instanceof Double d ? AssessmentJson.number(d) : value));
        Map<String, Object> input = new LinkedHashMap<>();
        input.put("batterySerial", file.ref().serial().value());
        input.put("vin", file.ref().vin().value());
        input.put("facts", facts);
        input.put("batteriesInVehicle", history.batteriesInVehicle());
        input.put("vehiclesOfBattery", history.vehiclesOfBattery());
        if (!history.underAnotherSerial().isEmpty()) { // what has none keeps the digest that it was judged under
            input.put(
                    "underAnotherSerial",
                    history.underAnotherSerial().stream().map(Sha256::hex).toList());
        }
        input.put(
                "evidence",
                items.stream()
                        .filter(item -> item.kind() != EvidenceKind.DOCUMENT)
                        .sorted(Comparator.comparing(EvidenceItem::sha256))
                        .map(item -> item.sha256().hex() + " " + item.origin().id())
                        .toList());
        return Sha256.of(StoredAssessmentJson.JSON.writeValueAsString(input).getBytes(StandardCharsets.UTF_8));
    }
}
