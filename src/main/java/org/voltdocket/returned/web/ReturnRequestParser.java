package org.voltdocket.returned.web;

import io.swagger.v3.oas.annotations.media.Schema;
import java.time.DateTimeException;
import java.time.Instant;
import java.time.LocalDateTime;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.time.format.DateTimeParseException;
import java.util.Arrays;
import java.util.Optional;
import java.util.stream.Collectors;
import org.voltdocket.kernel.BatterySerial;
import org.voltdocket.kernel.CaseNumber;
import org.voltdocket.kernel.RequestException;
import org.voltdocket.returned.BatteryCondition;
import org.voltdocket.returned.BenchOutcome;
import org.voltdocket.returned.ReturnErrors;
import org.voltdocket.returned.bench.BenchStep;
import org.voltdocket.returned.bench.StepAction;
import tools.jackson.databind.JsonNode;

/** Parses request bodies. Unknown members are ignored. */
public final class ReturnRequestParser {

    private ReturnRequestParser() {}

    /** A request to register a battery. */
    @Schema(name = "ReturnRequest")
    public record Arrival(
            String batterySerial,

            @Schema(description = "number of the pallet it arrived on, where that is noted")
            String pallet) {}

    /** A request to record an outcome. */
    @Schema(name = "ReturnOutcomeRequest")
    public record Conclusion(
            @Schema(
                    allowableValues = {
                        "defect-confirmed",
                        "wear-confirmed",
                        "no-fault-found",
                        "damaged-by-use",
                        "not-tested"
                    })
            String outcome,

            String reason) {}

    /** A visual inspection. */
    @Schema(name = "ReturnConditionRequest")
    public record Look(
            boolean cracked,
            boolean leaking,
            boolean swollen,
            boolean frozen,

            @Schema(allowableValues = {"sound", "corroded", "damaged"})
            String terminals,

            String note) {}

    /** A step of the bench procedure. */
    public record BenchStepRequest(
            String step,

            @Schema(allowableValues = {"start", "finish", "break-off"})
            String act,

            @Schema(description = "ISO 8601 with offset; absent for now")
            String at,

            String note) {}

    /** @throws RequestException (400) if it is missing or invalid */
    public static BatterySerial serial(JsonNode body) {
        return serial(text(body, "batterySerial"));
    }

    /** @throws RequestException (400) if it is missing or invalid */
    public static BatterySerial serial(String text) {
        try {
            return BatterySerial.parse(text);
        } catch (IllegalArgumentException e) {
            throw ReturnErrors.invalid("batterySerial", e.getMessage().replaceAll("\\.$", ""));
        }
    }

    /** @throws RequestException (400) if it is none of the five */
    public static BenchOutcome finding(String text) {
        return BenchOutcome.of(text == null ? "" : text)
                .orElseThrow(() -> oneOf(
                        "outcome",
                        Arrays.stream(BenchOutcome.values())
                                .map(BenchOutcome::id)
                                .collect(Collectors.joining(", ")),
                        text));
    }

    /** @throws RequestException (400) if terminals is none of the three, or a member is no truth value */
    public static BatteryCondition look(JsonNode body) {
        return new BatteryCondition(
                truth(body, "cracked"),
                truth(body, "leaking"),
                truth(body, "swollen"),
                truth(body, "frozen"),
                terminals(text(body, "terminals")),
                text(body, "note"),
                null,
                null);
    }

    /** @throws RequestException (400) if it is none of the three */
    public static BatteryCondition.Terminals terminals(String text) {
        return BatteryCondition.Terminals.of(text == null ? "" : text)
                .orElseThrow(() -> oneOf("terminals", "sound, corroded, damaged", text));
    }

    /** @throws RequestException (400) if there is no such step */
    public static BenchStep step(String text) {
        return BenchStep.of(text == null ? "" : text)
                .orElseThrow(() -> oneOf(
                        "step",
                        Arrays.stream(BenchStep.values()).map(BenchStep::id).collect(Collectors.joining(", ")),
                        text));
    }

    /** @throws RequestException (400) if there is no such act */
    public static StepAction act(String text) {
        return StepAction.of(text == null ? "" : text)
                .orElseThrow(() -> oneOf("act", "start, finish, break-off", text));
    }

    /** @throws RequestException (400) if it is not a time */
    public static Optional<Instant> at(String text) {
        try {
            return text == null || text.isBlank()
                    ? Optional.empty()
                    : Optional.of(OffsetDateTime.parse(text.strip()).toInstant());
        } catch (DateTimeException e) {
            throw ReturnErrors.invalid("at", "'at' is a time such as 2026-03-04T08:40:00+01:00; read '" + text + "'");
        }
    }

    /**
     * A time from a form, which is UTC like all times on the pages.
     *
     * @throws RequestException (400) if it is not a time
     */
    public static Optional<Instant> formTime(String text) {
        try {
            return text == null || text.isBlank()
                    ? Optional.empty()
                    : Optional.of(LocalDateTime.parse(text.strip()).toInstant(ZoneOffset.UTC));
        } catch (DateTimeParseException e) {
            return at(text);
        }
    }

    /** @throws RequestException (400) if it is not a case number */
    public static CaseNumber caseNumber(String text) {
        try {
            return CaseNumber.parse(text);
        } catch (IllegalArgumentException e) {
            throw ReturnErrors.invalid("case", e.getMessage().replaceAll("\\.$", ""));
        }
    }

    /** @throws RequestException (400) if the member is present and not a text */
    public static String text(JsonNode body, String name) {
        JsonNode member = member(body, name);
        if (member != null && !member.isString()) {
            throw ReturnErrors.invalid(name, "'" + name + "' is a text in quotes; read " + member);
        }
        return member == null ? null : member.stringValue();
    }

    private static boolean truth(JsonNode body, String name) {
        JsonNode member = member(body, name);
        if (member != null && !member.isBoolean()) {
            throw ReturnErrors.invalid(name, "'" + name + "' is true or false; read " + member);
        }
        return member != null && member.booleanValue();
    }

    private static JsonNode member(JsonNode body, String name) {
        if (body == null || !body.isObject()) {
            throw ReturnErrors.invalid("body", "the body is a JSON object");
        }
        JsonNode member = body.get(name);
        return member == null || member.isNull() ? null : member;
    }

    private static RequestException oneOf(String field, String known, String read) {
        return ReturnErrors.invalid(
                field,
                "'" + field + "' is one of " + known + "; read " + (read == null ? "nothing" : "'" + read + "'"));
    }
}
