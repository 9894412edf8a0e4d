package org.voltdocket.dossier.testing;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import org.voltdocket.diagnosis.CrankingStandard;
import org.voltdocket.diagnosis.EvidenceKind;
import org.voltdocket.diagnosis.read.PlausibleRange;
import org.voltdocket.diagnosis.read.TestNumber;

/** The form of one kind of test record; its fields are named like the members of the record. */
public enum TestForm {
    BATTERY(
            EvidenceKind.BATTERY_TEST,
            number(TestNumber.REST_VOLTAGE, true),
            number(TestNumber.BATTERY_TEMPERATURE, true),
            number(TestNumber.CRANKING_CURRENT, false),
            choice(
                    "crankingStandard",
                    "cranking-standard",
                    Arrays.stream(CrankingStandard.values())
                            .map(CrankingStandard::id)
                            .toList()),
            number(TestNumber.INTERNAL_RESISTANCE, false),
            number(TestNumber.HOURS_SINCE_ENGINE_STOP, false),
            choice("chargedBefore", "yes-no", List.of("true", "false"))),
    CRANKING(
            EvidenceKind.CRANKING_TEST,
            number(TestNumber.MINIMUM_VOLTAGE, true),
            number(TestNumber.CRANKING_DURATION, false),
            number(TestNumber.BATTERY_TEMPERATURE, true)),
    CHARGING(
            EvidenceKind.CHARGING_TEST,
            number(TestNumber.IDLE_VOLTAGE, false),
            number(TestNumber.LOADED_VOLTAGE, false),
            number(TestNumber.RIPPLE, false),
            number(TestNumber.ENGINE_BAY_TEMPERATURE, true));

    private final EvidenceKind kind;
    private final List<Field> fields;

    TestForm(EvidenceKind kind, Field... fields) {
        this.kind = kind;
        this.fields = List.of(fields);
    }

    /**
     * One field.
     *
     * @param range null for a choice
     * @param words message group of the choices; empty for a number
     * @param choices empty for a number
     */
    public record Field(String name, boolean required, PlausibleRange range, String words, List<String> choices) {

        public boolean isNumber() {
            return range != null;
        }
    }

    /** The form of a kind of evidence; empty for recordings and documents. */
    public static Optional<TestForm> of(EvidenceKind kind) {
        return Arrays.stream(values()).filter(form -> form.kind == kind).findFirst();
    }

    /** The form by the identifier of its kind, such as {@code battery-test}. */
    public static Optional<TestForm> of(String kind) {
        return Arrays.stream(values())
                .filter(form -> form.kind.id().equals(kind))
                .findFirst();
    }

    public EvidenceKind kind() {
        return kind;
    }

    /** Fields in the order in which they are measured. */
    public List<Field> fields() {
        return fields;
    }

    private static Field number(TestNumber number, boolean required) {
        return new Field(number.id(), required, number.range(), "", List.of());
    }

    private static Field choice(String name, String words, List<String> choices) {
        return new Field(name, false, null, words, choices);
    }
}
