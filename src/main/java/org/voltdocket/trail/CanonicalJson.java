package org.voltdocket.trail;

import java.util.Map;
import org.springframework.stereotype.Component;
import tools.jackson.core.type.TypeReference;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.SerializationFeature;
import tools.jackson.databind.cfg.JsonNodeFeature;
import tools.jackson.databind.json.JsonMapper;

/** JSON with its members in the order of their names and no blanks: the same value is always the same text. */
@Component
class CanonicalJson {

    private final JsonMapper mapper = JsonMapper.builder()
            .enable(SerializationFeature.ORDER_MAP_ENTRIES_BY_KEYS)
            .enable(JsonNodeFeature.WRITE_PROPERTIES_SORTED)
            .build();

    String write(Map<String, ?> value) {
        JsonNode tree = mapper.valueToTree(value);
        return mapper.writeValueAsString(tree);
    }

    Map<String, Object> read(String text) {
        return mapper.readValue(text, new TypeReference<Map<String, Object>>() {});
    }
}
