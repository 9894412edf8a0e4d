package org.voltdocket.casefile;

import java.util.Map;
import java.util.function.Function;
import org.voltdocket.diagnosis.read.Fact;
import tools.jackson.databind.node.JsonNodeFactory;
import tools.jackson.databind.node.ObjectNode;

/** Turns the text fields of a form into the JSON that a request would have, so that one reader judges both. */
final class FactsForm {

    private FactsForm() {}

    /** Blank fields are left out, or null where {@code blankRemoves}. */
    static ObjectNode json(Function<String, String> field, boolean blankRemoves) {
        ObjectNode json = JsonNodeFactory.instance.objectNode();
        for (Fact fact : Fact.values()) {
            String text = field.apply(fact.path());
            ObjectNode home = fact.group().isEmpty() ? json : json.withObjectProperty(fact.group());
            if (text != null && !text.isBlank()) {
                put(home, fact, text.strip());
            } else if (text != null && blankRemoves) {
                home.putNull(fact.member());
            }
        }
        return json;
    }

    static ObjectNode request(Map<String, String> fields) {
        ObjectNode json = json(fields::get, false);
        json.put("batterySerial", fields.getOrDefault("batterySerial", ""));
        json.put("vin", fields.getOrDefault("vin", ""));
        return json;
    }

    private static void put(ObjectNode home, Fact fact, String text) {
        switch (fact) {
            case STOP_START -> {
                if (text.equals("true") || text.equals("false")) {
                    home.put(fact.member(), text.equals("true"));
                } else {
                    home.put(fact.member(), text);
                }
            }
            case CAPACITY, RATED_CRANKING, FITTED_ODOMETER, REQUIRED_CAPACITY, ODOMETER, REPLACED_BEFORE -> {
                try {
                    home.put(fact.member(), Double.parseDouble(text.replace(',', '.')));
                } catch (NumberFormatException e) {
                    home.put(fact.member(), text);
                }
            }
            default -> home.put(fact.member(), text);
        }
    }
}
