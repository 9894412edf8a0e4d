package org.voltdocket.casefile;

import java.util.List;
import java.util.Map;
import tools.jackson.databind.JsonNode;

/**
 * A request to open a case, read once at the door.
 *
 * @param ignored dotted names of members that mean nothing here
 */
public record CaseRequest(NewCase newCase, List<String> ignored) {

    /**
     * Reads the JSON of {@code POST /api/v1/cases}.
     *
     * @throws InvalidFactsException if a key is missing or wrong, or a fact has a wrong type or cannot be right
     */
    public static CaseRequest read(JsonNode json) {
        return FactsParser.request(json);
    }

    /**
     * Reads a form with the same rules: text fields named like the JSON's members, dotted ({@code
     * battery.capacityAh}); blank is not known, a decimal comma is taken.
     *
     * @throws InvalidFactsException as {@link #read}
     */
    public static CaseRequest ofForm(Map<String, String> fields) {
        return FactsParser.request(FactsForm.request(fields));
    }

    /** The merge patch that a form of facts means: a field left blank removes, a field that is absent stays. */
    public static JsonNode patchOfForm(Map<String, String> fields) {
        return FactsForm.json(fields::get, true);
    }
}
