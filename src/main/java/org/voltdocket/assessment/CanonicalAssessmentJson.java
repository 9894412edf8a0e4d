package org.voltdocket.assessment;

import com.fasterxml.jackson.annotation.JsonInclude;
import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;
import tools.jackson.core.StreamWriteFeature;
import tools.jackson.databind.DeserializationFeature;
import tools.jackson.databind.MapperFeature;
import tools.jackson.databind.json.JsonMapper;

/**
 * JSON that is the same on every machine: members in the declared order, numbers rounded to ten significant
 * digits without exponent. The text of a {@code double} differs between Java versions; this does not.
 */
final class CanonicalAssessmentJson {

    private static final MathContext DIGITS = new MathContext(10, RoundingMode.HALF_EVEN);

    /** Writes and reads what is kept. */
    static final JsonMapper JSON = JsonMapper.builder()
            .disable(MapperFeature.SORT_PROPERTIES_ALPHABETICALLY)
            .enable(StreamWriteFeature.WRITE_BIGDECIMAL_AS_PLAIN)
            .disable(DeserializationFeature.FAIL_ON_UNKNOWN_PROPERTIES)
            .changeDefaultPropertyInclusion(all -> all.withValueInclusion(JsonInclude.Include.NON_NULL))
            .build();

    private CanonicalAssessmentJson() {}

    /**
     * The number as it is stored and served.
     *
     * @throws IllegalArgumentException if it is infinite or NaN
     */
    static BigDecimal number(double value) {
        if (Double.isNaN(value) || Double.isInfinite(value)) {
            throw new IllegalArgumentException("an assessment holds " + value + " where a number belongs");
        }
        BigDecimal rounded = new BigDecimal(value).round(DIGITS);
        return rounded.signum() == 0 ? BigDecimal.ZERO : plain(rounded.stripTrailingZeros());
    }

    /** As {@link #number(double)}; null stays null. */
    static BigDecimal number(Double value) {
        return value == null ? null : number(value.doubleValue());
    }

    private static BigDecimal plain(BigDecimal stripped) {
        return stripped.scale() < 0 ? stripped.setScale(0) : stripped;
    }
}
