package org.voltdocket.casefile;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.HashMap;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.voltdocket.kernel.FieldError;
import org.voltdocket.kernel.RequestException;
import tools.jackson.databind.JsonNode;

class FactsFormTest {

    private final Map<String, String> form =
            new HashMap<>(Map.of("batterySerial", "KX4-2291-077", "vin", "WP0ZZZ99ZTS392124"));

    @Test
    void aFormIsReadWithTheRulesOfJson() {
        form.put("battery.capacityAh", " 70,5 ");
        form.put("vehicle.stopStart", "true");
        form.put("complaint", "  ");
        NewCase read = CaseRequest.ofForm(form).newCase();
        assertThat(read.facts().battery().capacityAh()).isEqualTo(70.5);
        assertThat(read.facts().vehicle().stopStart()).isTrue();
        assertThat(read.facts().complaint()).isNull();
    }

    @ParameterizedTest
    @ValueSource(strings = {"Infinity", "NaN", "1e999", "seventy", "-1"})
    void whatIsNoCapacityIsRefusedByName(String text) {
        form.put("battery.capacityAh", text);
        assertThatThrownBy(() -> CaseRequest.ofForm(form))
                .isInstanceOfSatisfying(
                        RequestException.class,
                        refused -> assertThat(refused.errors())
                                .extracting(FieldError::field)
                                .containsExactly("battery.capacityAh"));
    }

    @Test
    void aBlankFieldRemovesInAPatchAndAnAbsentOneStays() {
        JsonNode patch = CaseRequest.patchOfForm(Map.of("complaint", "", "battery.capacityAh", "70"));
        assertThat(patch.get("complaint").isNull()).isTrue();
        assertThat(patch.get("battery").get("capacityAh").asDouble()).isEqualTo(70);
        assertThat(patch.get("battery").has("ratedCrankingA")).isFalse();
    }

    @Test
    void severalErrorsAreListedTogether() {
        form.put("vin", "WP0ZZZ99ZTS392125");
        form.put("batterySerial", "");
        assertThatThrownBy(() -> CaseRequest.ofForm(form))
                .isInstanceOfSatisfying(
                        RequestException.class,
                        refused -> assertThat(refused.errors())
                                .extracting(FieldError::field)
                                .contains("batterySerial"));
    }
}
