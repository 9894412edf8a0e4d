package org.voltdocket.assessment.edition;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.yaml.snakeyaml.error.Mark;
import org.yaml.snakeyaml.nodes.MappingNode;
import org.yaml.snakeyaml.nodes.Node;
import org.yaml.snakeyaml.nodes.NodeTuple;
import org.yaml.snakeyaml.nodes.ScalarNode;
import org.yaml.snakeyaml.nodes.SequenceNode;

/** Where in a YAML text each node stands, by JSON Pointer (RFC 6901). */
final class YamlPositions {

    private static final Pattern STEP = Pattern.compile("\\[(\\d+)]|([A-Za-z0-9-]+)");
    private static final int DEEPEST = 20;

    private final Map<String, Mark> marks = new HashMap<>();

    private YamlPositions() {}

    static YamlPositions of(Node root) {
        YamlPositions places = new YamlPositions();
        places.add("", root, root.getStartMark(), 0);
        return places;
    }

    private void add(String pointer, Node node, Mark mark, int depth) {
        marks.put(pointer, mark);
        if (depth == DEEPEST) {
            return; // a text that refers to itself
        }
        if (node instanceof MappingNode mapping) {
            for (NodeTuple pair : mapping.getValue()) {
                String key = pair.getKeyNode() instanceof ScalarNode scalar ? scalar.getValue() : "?";
                add(pointer + "/" + key, pair.getValueNode(), pair.getKeyNode().getStartMark(), depth + 1);
            }
        } else if (node instanceof SequenceNode sequence) {
            List<Node> items = sequence.getValue();
            for (int i = 0; i < items.size(); i++) {
                add(pointer + "/" + i, items.get(i), items.get(i).getStartMark(), depth + 1);
            }
        }
    }

    /** An error at the node, or at the nearest one around it that the text has. */
    EditionError at(String pointer, String message) {
        String nearest = pointer;
        while (!marks.containsKey(nearest)) {
            nearest = nearest.substring(0, nearest.lastIndexOf('/'));
        }
        return at(marks.get(nearest), message);
    }

    static EditionError at(Mark mark, String message) {
        return mark == null
                ? new EditionError(1, 1, message)
                : new EditionError(mark.getLine() + 1, mark.getColumn() + 1, message);
    }

    /** The pointer of a place as the judge's reader names it: {@code rules[3] (ripple).weights.above}. */
    static String pointer(String place) {
        StringBuilder pointer = new StringBuilder();
        Matcher step = STEP.matcher(place.replaceFirst("^the rule book\\.?", "").replaceAll(" \\([^)]*\\)", ""));
        while (step.find()) {
            pointer.append('/').append(step.group(1) == null ? step.group(2) : step.group(1));
        }
        return pointer.toString();
    }
}
