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
                Double number = number(text);
                if (number == null) {
                    home.put(fact.member(), text);
                } else {
                    home.put(fact.member(), number);
                }
            }
            default -> home.put(fact.member(), text);
        }
    }

    /** The number that the text is, with a decimal point or comma; null where it is none or not finite. */
    private static Double number(String text) {
        try {
            double number = Double.parseDouble(text.replace(',', '.'));
            return Double.isFinite(number) ? number : null;
        } catch (NumberFormatException e) {
            return null;
        }
    }
}
