package org.voltdocket.diagnosis.read;

import static org.voltdocket.diagnosis.read.RejectedFile.Reason.CASE_REQUEST;

import java.nio.charset.StandardCharsets;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.voltdocket.kernel.FieldError;
import tools.jackson.core.JacksonException;
import tools.jackson.core.JsonParser;
import tools.jackson.core.JsonToken;
import tools.jackson.core.ObjectReadContext;
import tools.jackson.core.StreamReadFeature;
import tools.jackson.core.TokenStreamLocation;
import tools.jackson.core.json.JsonFactory;

/** Reads a file with the request that opens a case: keys and facts as in {@code POST /api/v1/cases}. */
public final class CaseRequestReader {

    private static final JsonFactory JSON = JsonFactory.builder()
            .enable(StreamReadFeature.STRICT_DUPLICATE_DETECTION)
            .build();

    private final FileErrors errors = new FileErrors();
    private final Map<String, TokenStreamLocation> places = new HashMap<>();

    private CaseRequestReader() {}

    /**
     * A request or the reason why the file was refused.
     *
     * @param request null if the file was refused
     * @param refusal null if the file was read
     */
    public record Result(FactsParser.Parsed request, RejectedFile refusal) {}

    /**
     * Reads a request.
     *
     * @param bytes the file, UTF-8
     * @param today days that lie more than one day ahead are refused
     */
    public static Result read(byte[] bytes, LocalDate today) {
        return new CaseRequestReader().parse(new String(bytes, StandardCharsets.UTF_8), today);
    }

    private Result parse(String text, LocalDate today) {
        Object json;
        try (JsonParser parser =
                JSON.createParser(ObjectReadContext.empty(), text.startsWith("\uFEFF") ? text.substring(1) : text)) {
            json = parser.nextToken() == null ? null : value(parser, "");
            if (parser.nextToken() != null) {
                error(parser.currentTokenLocation(), "Something follows the object.");
            }
        } catch (JacksonException e) {
            error(e.getLocation(), "This is not valid JSON: " + e.getOriginalMessage());
            return refused();
        }
        FactsParser.Parsed parsed = FactsParser.request(json);
        List<FieldError> wrong = new ArrayList<>(parsed.errors());
        if (wrong.isEmpty()) {
            wrong.addAll(FactsParser.impossibleDays(parsed.facts(), today));
        }
        wrong.forEach(one -> error(places.get(one.field()), one.message()));
        return errors.none() ? new Result(parsed, null) : refused();
    }

    /** The value at the current token, as {@link Fact} takes it; notes the place of each member. */
    private Object value(JsonParser parser, String path) {
        return switch (parser.currentToken()) {
            case START_OBJECT -> object(parser, path);
            case START_ARRAY -> array(parser, path);
            case VALUE_STRING -> parser.getString();
            case VALUE_NUMBER_INT, VALUE_NUMBER_FLOAT -> parser.getNumberValue();
            case VALUE_TRUE -> true;
            case VALUE_FALSE -> false;
            default -> null;
        };
    }

    private Map<String, Object> object(JsonParser parser, String path) {
        Map<String, Object> members = new LinkedHashMap<>();
        while (parser.nextToken() != JsonToken.END_OBJECT) {
            String name = parser.currentName();
            String inner = path.isEmpty() ? name : path + "." + name;
            places.put(inner, parser.currentTokenLocation());
            parser.nextToken();
            members.put(name, value(parser, inner));
        }
        return members;
    }

    private List<Object> array(JsonParser parser, String path) {
        List<Object> items = new ArrayList<>();
        while (parser.nextToken() != JsonToken.END_ARRAY) {
            items.add(value(parser, path));
        }
        return items;
    }

    private void error(TokenStreamLocation place, String message) {
        errors.add(() -> place == null
                ? new FileError(1, 1, message)
                : new FileError(Math.max(1, place.getLineNr()), Math.max(1, place.getColumnNr()), message));
    }

    private Result refused() {
        return new Result(null, errors.refuse(CASE_REQUEST, "The case request is not valid."));
    }
}
