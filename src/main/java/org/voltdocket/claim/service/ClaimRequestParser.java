package org.voltdocket.claim.service;

import io.swagger.v3.oas.annotations.media.Schema;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.UUID;
import org.voltdocket.claim.ClaimAction;
import org.voltdocket.claim.ClaimStepRequest;
import org.voltdocket.kernel.RequestException;
import org.voltdocket.warranty.UseClass;
import tools.jackson.databind.JsonNode;

/** Reads the bodies of requests. Members that mean nothing here are passed over. */
public final class ClaimRequestParser {

    private ClaimRequestParser() {}

    /** What opens a claim. */
    @Schema(name = "ClaimRequest")
    public record Opening(
            @Schema(example = "129.90") String amount,

            @Schema(description = "ISO 4217", example = "EUR")
            String currency,

            @Schema(
                    allowableValues = {"private", "commercial", "taxi"},
                    description = "how the vehicle is used; private where it is not said")
            String useClass) {

        /** @throws RequestException if a member is no text */
        public static Opening read(JsonNode body) {
            return new Opening(text(body, "amount"), text(body, "currency"), text(body, "useClass"));
        }
    }

    /** An objection, or the answer to one. */
    @Schema(name = "ClaimWords")
    public record Words(
            @Schema(description = "1 to 2000 characters") String reason) {

        /** @throws RequestException if it is no text */
        public static Words read(JsonNode body) {
            return new Words(text(body, "reason"));
        }
    }

    /** What goes with a step. */
    @Schema(name = "ClaimStepRequest")
    public record Step(
            @Schema(description = "a decision needs one, of 40 characters or more where the leaning does not carry it")
            String reason,

            @Schema(description = "of ask: kinds of evidence or names of facts", example = "[\"charging-test\"]")
            List<String> items,

            @Schema(
                    description = "of ask: what has no such name, in words",
                    example = "[\"A photograph of the date code\"]")
            List<String> others,

            @Schema(description = "of approve and goodwill: what is paid, if less than asked for")
            String amount,

            @Schema(
                    description =
                            "the claim's version that you read; where it has another one now, the answer is 409 and tells"
                                    + " the changes since")
            Long version) {}

    /**
     * A step with what the body says; no body is an empty one.
     *
     * @throws RequestException if a member has another form
     */
    public static ClaimStepRequest read(
            ClaimAction action, JsonNode body, OptionalLong ifVersion, Optional<UUID> ifAssessment) {
        return new ClaimStepRequest(
                action,
                text(body, "reason"),
                texts(body, "items"),
                texts(body, "others"),
                Optional.ofNullable(text(body, "amount")),
                version(body).isPresent() ? version(body) : ifVersion,
                ifAssessment);
    }

    static UseClass use(String id) {
        try {
            return id == null || id.isBlank() ? UseClass.PRIVATE : UseClass.of(id.strip());
        } catch (IllegalArgumentException e) {
            throw RequestException.invalid(
                    "claim-refused", "useClass", "'useClass' says how the vehicle is used: " + e.getMessage());
        }
    }

    private static OptionalLong version(JsonNode body) {
        JsonNode member = member(body, "version");
        if (member != null && !(member.isIntegralNumber() && member.canConvertToLong())) {
            throw RequestException.invalid(
                    "claim-refused", "version", "'version' is a whole number, as the claim names it; read " + member);
        }
        return member == null ? OptionalLong.empty() : OptionalLong.of(member.longValue());
    }

    private static List<String> texts(JsonNode body, String name) {
        List<String> texts = new ArrayList<>();
        JsonNode listed = member(body, name);
        if (listed != null && !listed.isArray()) {
            throw RequestException.invalid("claim-refused", name, "'" + name + "' is a list of texts; read " + listed);
        }
        for (JsonNode text : listed == null ? List.<JsonNode>of() : listed) {
            if (!text.isString()) {
                throw RequestException.invalid(
                        "claim-refused", name, "'" + name + "' is a list of texts; read " + text);
            }
            texts.add(text.stringValue());
        }
        return texts;
    }

    private static String text(JsonNode body, String name) {
        JsonNode member = member(body, name);
        if (member != null && !member.isString()) {
            throw RequestException.invalid("claim-refused", name, "'" + name + "' is a text in quotes; read " + member);
        }
        return member == null ? null : member.stringValue();
    }

    private static JsonNode member(JsonNode body, String name) {
        if (body == null || body.isNull()) {
            return null;
        }
        if (!body.isObject()) {
            throw RequestException.invalid("claim-refused", "body", "the body is a JSON object");
        }
        JsonNode member = body.get(name);
        return member == null || member.isNull() ? null : member;
    }
}
