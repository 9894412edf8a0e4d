package org.voltdocket.diagnosis.write;

import java.io.StringWriter;
import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;
import java.time.Instant;
import java.util.List;
import org.voltdocket.diagnosis.Assessment;
import tools.jackson.core.JsonGenerator;
import tools.jackson.core.ObjectWriteContext;
import tools.jackson.core.StreamWriteFeature;
import tools.jackson.core.json.JsonFactory;

/**
 * An assessment as JSON, the same text on every machine: members in a fixed order, unknown values left out, numbers rounded
 * to ten significant digits and written without an exponent. The server keeps and serves this text.
 */
public final class AssessmentJson {

    private static final MathContext DIGITS = new MathContext(10, RoundingMode.HALF_EVEN);
    private static final JsonFactory JSON = JsonFactory.builder()
            .enable(StreamWriteFeature.WRITE_BIGDECIMAL_AS_PLAIN)
            .build();

    private final JsonGenerator json;

    private AssessmentJson(JsonGenerator json) {
        this.json = json;
    }

    /** The assessment as one JSON object on one line. */
    public static String of(Assessment assessment, Instant assessedAt) {
        StringWriter text = new StringWriter();
        try (JsonGenerator json = JSON.createGenerator(ObjectWriteContext.empty(), text)) {
            new AssessmentJson(json).write(assessment, assessedAt);
        }
        return text.toString();
    }

    /**
     * The number as it is kept and served.
     *
     * @throws IllegalArgumentException if it is infinite or not a number
     */
    public static BigDecimal number(double value) {
        if (Double.isNaN(value) || Double.isInfinite(value)) {
            throw new IllegalArgumentException("an assessment holds " + value + " where a number belongs");
        }
        BigDecimal rounded = new BigDecimal(value).round(DIGITS);
        return rounded.signum() == 0 ? BigDecimal.ZERO : plain(rounded.stripTrailingZeros());
    }

    /** As {@link #number(double)}; null stays null. */
    public static BigDecimal number(Double value) {
        return value == null ? null : number(value.doubleValue());
    }

    private static BigDecimal plain(BigDecimal stripped) {
        return stripped.scale() < 0 ? stripped.setScale(0) : stripped;
    }

    private void write(Assessment assessment, Instant assessedAt) {
        json.writeStartObject();
        member("rulebook", assessment.rulebook());
        member("assessedAt", assessedAt.toString());
        member("batteryVerdict", assessment.batteryVerdict().id());
        member("batteryReason", assessment.batteryReason().id());
        member("leaning", assessment.leaning().id());
        member("said", assessment.said());
        json.writeArrayPropertyStart("causes");
        assessment.causes().forEach(this::write);
        json.writeEndArray();
        json.writeArrayPropertyStart("findings");
        assessment.findings().forEach(this::write);
        json.writeEndArray();
        json.writeObjectPropertyStart("estimates");
        assessment.estimates().forEach(this::write);
        json.writeEndObject();
        member("nextSteps", assessment.nextSteps());
        member("missing", assessment.missing());
        json.writeEndObject();
    }

    private void write(Assessment.RankedCause cause) {
        json.writeStartObject();
        member("cause", cause.cause().id());
        member("probability", number(cause.probability()));
        json.writeArrayPropertyStart("weights");
        for (Assessment.Weight weight : cause.weights()) {
            json.writeStartObject();
            member("finding", weight.finding());
            member("decibans", number(weight.decibans()));
            json.writeEndObject();
        }
        json.writeEndArray();
        json.writeEndObject();
    }

    private void write(Assessment.Finding finding) {
        json.writeStartObject();
        member("id", finding.id());
        member("rule", finding.rule());
        member("evidence", finding.evidence());
        member("quantity", finding.quantity());
        member("value", number(finding.value()));
        member("low", number(finding.low()));
        member("high", number(finding.high()));
        member("unit", finding.unit());
        member("limit", number(finding.limit()));
        member("limitHigh", number(finding.limitHigh()));
        member("comparison", finding.comparison());
        member("result", finding.result().id());
        member("source", finding.source());
        member("said", finding.said());
        json.writeEndObject();
    }

    private void write(String name, Assessment.Estimate estimate) {
        json.writeObjectPropertyStart(name);
        member("value", number(estimate.value()));
        member("low", number(estimate.low()));
        member("high", number(estimate.high()));
        member("unit", estimate.unit());
        json.writeEndObject();
    }

    private void member(String name, String value) {
        if (value != null) {
            json.writeStringProperty(name, value);
        }
    }

    private void member(String name, BigDecimal value) {
        if (value != null) {
            json.writeNumberProperty(name, value);
        }
    }

    private void member(String name, List<String> values) {
        json.writeArrayPropertyStart(name);
        values.forEach(json::writeString);
        json.writeEndArray();
    }
}
