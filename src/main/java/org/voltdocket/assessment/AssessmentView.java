package org.voltdocket.assessment;

import com.fasterxml.jackson.annotation.JsonInclude;
import com.fasterxml.jackson.annotation.JsonPropertyOrder;
import io.swagger.v3.oas.annotations.media.Schema;
import java.math.BigDecimal;
import java.time.Instant;
import java.util.List;
import java.util.Map;
import org.voltdocket.diagnosis.Assessment;
import org.voltdocket.diagnosis.write.AssessmentJson;

/** An assessment in JSON. What is not known is absent. */
@Schema(name = "Assessment", description = "Assessment of a case by one edition of the rule book.")
@JsonInclude(JsonInclude.Include.NON_NULL)
@JsonPropertyOrder({
    "rulebook",
    "assessedAt",
    "batteryVerdict",
    "batteryReason",
    "leaning",
    "said",
    "causes",
    "findings",
    "estimates",
    "nextSteps",
    "missing"
})
public record AssessmentView(
        @Schema(description = "edition of the rule book", example = "2026.1")
        String rulebook,

        Instant assessedAt,

        @Schema(allowableValues = {"sound", "failed", "not-judged"})
        String batteryVerdict,

        @Schema(
                description = "why the battery has its verdict",
                allowableValues = {
                    "tested-charged",
                    "defect",
                    "wear",
                    "kind-open",
                    "too-discharged",
                    "no-test",
                    "facts-missing",
                    "conflict"
                })
        String batteryReason,

        @Schema(
                allowableValues = {
                    "battery-side",
                    "vehicle-side",
                    "usage-side",
                    "no-fault-seen",
                    "open",
                    "contradictory"
                })
        String leaning,

        @Schema(description = "the verdict in one sentence") String said,

        @Schema(description = "all causes, most probable first; probabilities add to 1")
        List<CauseView> causes,

        List<FindingView> findings,

        @Schema(description = "by name; absent if the evidence does not support an estimate")
        Map<String, EstimateView> estimates,

        @Schema(description = "what to do next, most useful first")
        List<String> nextSteps,

        @Schema(description = "what would make the verdict more certain")
        List<String> missing) {

    /** A cause, its probability and what moved it. */
    @Schema(name = "RankedCause")
    @JsonInclude(JsonInclude.Include.NON_NULL)
    @JsonPropertyOrder({"cause", "probability", "weights"})
    public record CauseView(
            @Schema(
                    allowableValues = {
                        "battery-defect",
                        "battery-worn",
                        "charging-source",
                        "current-sensor",
                        "charge-control",
                        "wiring",
                        "standing-drain",
                        "duty",
                        "misfit",
                        "none"
                    })
            String cause,

            @Schema(minimum = "0", maximum = "1") BigDecimal probability,
            List<WeightView> weights) {}

    /** What one finding gave a cause. */
    @Schema(name = "Weight")
    @JsonInclude(JsonInclude.Include.NON_NULL)
    @JsonPropertyOrder({"finding", "decibans"})
    public record WeightView(
            @Schema(description = "id of the finding") String finding,

            @Schema(description = "10·log10 of the likelihood ratio; positive speaks for the cause")
            BigDecimal decibans) {}

    /** One measured quantity set against its limit. */
    @Schema(name = "Finding")
    @JsonInclude(JsonInclude.Include.NON_NULL)
    @JsonPropertyOrder({
        "id",
        "rule",
        "evidence",
        "quantity",
        "value",
        "low",
        "high",
        "unit",
        "limit",
        "limitHigh",
        "comparison",
        "result",
        "source",
        "said"
    })
    public record FindingView(
            String id,
            @Schema(description = "row of the rule book") String rule,

            @Schema(description = "id of the evidence; absent where it rests on facts or several items")
            String evidence,

            String quantity,
            BigDecimal value,

            @Schema(description = "lower end of the 95 % interval")
            BigDecimal low,

            @Schema(description = "upper end of the 95 % interval")
            BigDecimal high,

            String unit,
            BigDecimal limit,
            @Schema(description = "upper limit of a window") BigDecimal limitHigh,

            @Schema(
                    allowableValues = {"at-most", "at-least", "within", "is"},
                    description = "comparison of the value with the limit")
            String comparison,

            @Schema(allowableValues = {"inside", "outside", "uncertain"})
            String result,

            @Schema(description = "where the limit comes from")
            String source,

            @Schema(description = "one sentence") String said) {

        /** The finding as it is served. */
        public static FindingView of(Assessment.Finding f) {
            return new FindingView(
                    f.id(),
                    f.rule(),
                    f.evidence(),
                    f.quantity(),
                    AssessmentJson.number(f.value()),
                    AssessmentJson.number(f.low()),
                    AssessmentJson.number(f.high()),
                    f.unit(),
                    AssessmentJson.number(f.limit()),
                    AssessmentJson.number(f.limitHigh()),
                    f.comparison(),
                    f.result().id(),
                    f.source(),
                    f.said());
        }
    }

    /** An estimate with its 95 % interval, all in one unit. */
    @Schema(name = "Estimate")
    @JsonInclude(JsonInclude.Include.NON_NULL)
    @JsonPropertyOrder({"value", "low", "high", "unit"})
    public record EstimateView(BigDecimal value, BigDecimal low, BigDecimal high, String unit) {}

    /** A stretch of a recording, s from its start. */
    @Schema(name = "RegimeSpan")
    @JsonInclude(JsonInclude.Include.NON_NULL)
    @JsonPropertyOrder({"from", "to", "regime"})
    public record RegimeView(
            BigDecimal from,
            BigDecimal to,

            @Schema(allowableValues = {"rest", "cranking", "charging", "holding", "discharging", "stopped", "unknown"})
            String regime) {

        /** The stretch as it is served. */
        public static RegimeView of(Assessment.RegimeSpan span) {
            return new RegimeView(
                    AssessmentJson.number(span.from()),
                    AssessmentJson.number(span.to()),
                    span.regime().id());
        }
    }
}
