package org.voltdocket.assessment.edition;

import com.networknt.schema.Error;
import com.networknt.schema.InputFormat;
import com.networknt.schema.Schema;
import com.networknt.schema.SchemaRegistry;
import com.networknt.schema.SpecificationVersion;
import com.networknt.schema.path.NodePath;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.ByteBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.StandardCharsets;
import java.util.Comparator;
import java.util.List;
import java.util.stream.Stream;
import org.springframework.core.io.ClassPathResource;
import org.voltdocket.diagnosis.rulebook.RuleValidator;
import org.voltdocket.diagnosis.rulebook.Rulebook;
import org.yaml.snakeyaml.LoaderOptions;
import org.yaml.snakeyaml.Yaml;
import org.yaml.snakeyaml.constructor.SafeConstructor;
import org.yaml.snakeyaml.error.MarkedYAMLException;
import org.yaml.snakeyaml.error.YAMLException;
import org.yaml.snakeyaml.nodes.Node;
import tools.jackson.core.JacksonException;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;

/** Says what is wrong with the text of an edition, and where: as YAML, by the schema, by the judge, by its own examples. */
final class EditionValidator {

    private static final int MOST_BYTES = 1 << 20;
    private static final Schema SCHEMA = schema();

    private EditionValidator() {}

    /** In the order of the text; empty where the judge can use it. */
    static List<EditionError> errors(byte[] text) {
        if (text.length == 0 || text.length > MOST_BYTES) {
            return List.of(new EditionError(1, 1, "An edition has 1 byte to 1 MiB; this has " + text.length + "."));
        }
        try {
            String decoded = StandardCharsets.UTF_8
                    .newDecoder()
                    .decode(ByteBuffer.wrap(text))
                    .toString();
            Node root = yaml().compose(new java.io.StringReader(decoded));
            if (root == null) {
                return List.of(new EditionError(1, 1, "The text is empty."));
            }
            Object tree = yaml().load(decoded);
            return inTree(YamlPositions.of(root), JsonMapper.shared().writeValueAsString(tree), text);
        } catch (CharacterCodingException e) {
            return List.of(new EditionError(1, 1, "The text is not UTF-8."));
        } catch (MarkedYAMLException e) {
            return List.of(YamlPositions.at(e.getProblemMark(), "This is no YAML: " + e.getProblem() + "."));
        } catch (JacksonException e) {
            return List.of(new EditionError(1, 1, "The text refers to itself, or is nested too deeply."));
        } catch (YAMLException e) {
            return List.of(new EditionError(1, 1, "This is no YAML: " + e.getMessage()));
        }
    }

    private static Yaml yaml() {
        LoaderOptions options = new LoaderOptions();
        options.setAllowDuplicateKeys(false);
        return new Yaml(new SafeConstructor(options));
    }

    private static List<EditionError> inTree(YamlPositions places, String json, byte[] text) {
        List<EditionError> bySchema = SCHEMA.validate(json, InputFormat.JSON).stream()
                .map(error -> places.at(pointer(error), sentence(error)))
                .distinct()
                .sorted(Comparator.comparingInt(EditionError::line).thenComparingInt(EditionError::column))
                .toList();
        if (!bySchema.isEmpty()) {
            return bySchema;
        }
        try {
            return byRows(places, Rulebook.read(new ByteArrayInputStream(text)));
        } catch (IllegalArgumentException e) {
            int colon = e.getMessage().indexOf(": ");
            String place = colon < 0 ? "" : e.getMessage().substring(0, colon);
            return List.of(places.at(YamlPositions.pointer(place), e.getMessage()));
        }
    }

    private static List<EditionError> byRows(YamlPositions places, Rulebook book) {
        return RuleValidator.of(book).stream()
                .map(flaw -> {
                    String place = "rules[" + flaw.row() + "]";
                    String name = place + " (" + book.rules().get(flaw.row()).id() + ")." + flaw.member();
                    return places.at(YamlPositions.pointer(place + "." + flaw.member()), name + ": " + flaw.why());
                })
                .toList();
    }

    private static String pointer(Error error) {
        NodePath at = error.getInstanceLocation();
        StringBuilder pointer = new StringBuilder();
        for (int i = 0; i < at.getNameCount(); i++) {
            pointer.append('/').append(at.getElement(i));
        }
        boolean key = error.getProperty() != null && error.getKeyword().matches("additionalProperties|propertyNames");
        return key ? pointer + "/" + error.getProperty() : pointer.toString();
    }

    private static String sentence(Error error) {
        String where = Stream.of(error.getInstanceLocation().toString())
                .filter(path -> !path.isEmpty())
                .findFirst()
                .orElse("the rule book");
        JsonNode found = error.getInstanceNode();
        boolean tell = found != null && found.isValueNode() && !"propertyNames".equals(error.getKeyword());
        return where + ": " + error.getMessage() + (tell ? "; found " + found : "") + ".";
    }

    private static Schema schema() {
        try (InputStream in = new ClassPathResource("shared/schemas/rulebook.json").getInputStream()) {
            String text = new String(in.readAllBytes(), StandardCharsets.UTF_8);
            return SchemaRegistry.withDefaultDialect(SpecificationVersion.DRAFT_2020_12)
                    .getSchema(text);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
