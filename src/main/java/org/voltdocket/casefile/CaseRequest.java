package org.voltdocket.casefile;

import java.util.List;
import java.util.Map;
import org.voltdocket.diagnosis.read.FactsParser;
import org.voltdocket.kernel.RequestException;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;

/**
 * A parsed request to open a case.
 *
 * @param ignored dotted names of unknown members
 */
public record CaseRequest(NewCase newCase, List<String> ignored) {

    /**
     * Reads the JSON of {@code POST /api/v1/cases}.
     *
     * @throws RequestException if a key is missing or wrong, or a fact has a wrong type or cannot be right
     */
    public static CaseRequest read(JsonNode json) {
        FactsParser.Parsed parsed = valid(FactsParser.request(plain(json)));
        return new CaseRequest(new NewCase(parsed.serial(), parsed.vin(), parsed.facts()), parsed.ignored());
    }

    /**
     * Reads a form with the same rules: text fields named like the JSON's members, dotted ({@code
     * battery.capacityAh}); blank is not known, a decimal comma is taken.
     *
     * @throws RequestException as {@link #read}
     */
    public static CaseRequest ofForm(Map<String, String> fields) {
        return read(FactsForm.request(fields));
    }

    /** The merge patch that a form of facts means: a field left blank removes, a field that is absent stays. */
    public static JsonNode patchOfForm(Map<String, String> fields) {
        return FactsForm.json(fields::get, true);
    }

    /** Parses a merge patch of a case. */
    static FactsParser.Parsed patch(JsonNode json, CaseReference ref) {
        return valid(FactsParser.patch(plain(json), ref.serial(), ref.vin()));
    }

    private static Object plain(JsonNode json) {
        return json == null ? null : JsonMapper.shared().treeToValue(json, Object.class);
    }

    private static FactsParser.Parsed valid(FactsParser.Parsed parsed) {
        if (!parsed.errors().isEmpty()) {
            throw CaseRefusals.invalid(parsed.errors(), parsed.suggestion());
        }
        return parsed;
    }
}
