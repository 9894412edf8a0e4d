package org.voltdocket.assessment.edition;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.StandardCharsets;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** What is wrong with an edition's text is told with its line and column. */
class EditionValidatorTest {

    private static final String GOOD = EditionTexts.text("2090.0");

    @Test
    void aRightTextHasNoErrors() {
        assertThat(errors(GOOD)).isEmpty();
        assertThat(errors(EditionTexts.draft(EditionTexts.tilted("2090.0")))).isEmpty();
    }

    /** The line and column are those of {@code mark} in the spoilt text, counted here by another way. */
    @ParameterizedTest
    @CsvSource(delimiter = '|', textBlock = """
            atMost: 1.15      | atMos: 1.15               | atMos:               | atMos
            unit: ratio       | unit: furlongs            | unit: furlongs       | furlongs
            quantity: sensor-gain | quantity: sensor-gone | quantity: sensor-gone | nothing measures 'sensor-gone'
            id: sensor-gain   | id: sensor-gone           | id: sensor-gone      | no sentence for 'sensor-gone'
            value: 1.16, result: above | value: 1.14, result: above | result: above}| not above
            misfit: 0.04      | misfit: 0.05              | odds: {battery       | they add to 1
            none: 0.16        | nothing: 0.16             | nothing: 0.16        | nothing
            atLeast: 0.85     | atLeast: [0.85            | atMost: 1.15         | no YAML
            issued:           | issued: x\\nissued:       | issued: "2026         | duplicate key issued
            """)
    void anErrorStandsWhereItIs(String from, String to, String mark, String message) {
        String spoilt = GOOD.replaceFirst(java.util.regex.Pattern.quote(from), to.replace("\\n", "\n"));
        assertThat(spoilt).isNotEqualTo(GOOD);
        List<EditionError> errors = errors(spoilt);
        assertThat(errors).anySatisfy(error -> {
            assertThat(error.message()).contains(message);
            String[] lines = spoilt.split("\n", -1);
            assertThat(lines[error.line() - 1])
                    .as("line %d of %s", error.line(), errors)
                    .contains(mark.contains("result: above}") ? "value: 1.14, result: above" : mark);
        });
    }

    @Test
    void theColumnIsThatOfTheMember() {
        String spoilt = GOOD.replaceFirst("issued: \"[^\"]*\"", "issued: soon");
        EditionError error = errors(spoilt).get(0);
        assertThat(error.column()).isEqualTo(1);
        assertThat(spoilt.split("\n")[error.line() - 1]).startsWith("issued: soon");
        String deeper = GOOD.replaceFirst("(misfit: -[0-9.]+), none: -[0-9.]+", "$1, none: many");
        EditionError inside = errors(deeper).get(0);
        assertThat(deeper.split("\n")[inside.line() - 1].substring(inside.column() - 1))
                .startsWith("none: many");
    }

    @Test
    void whatIsNoTextIsRefused() {
        assertThat(EditionValidator.errors(new byte[0])).hasSize(1);
        assertThat(EditionValidator.errors(new byte[] {(byte) 0xc3, (byte) 0x28})
                        .get(0)
                        .message())
                .contains("UTF-8");
        assertThat(EditionValidator.errors(new byte[(1 << 20) + 1])).hasSize(1);
        assertThat(errors("a: &a [*a]")).isNotEmpty();
        assertThat(errors("# nothing\n")).isNotEmpty();
        assertThat(errors("- 1\n- 2\n")).isNotEmpty();
    }

    @Test
    void aComparisonNamesTheRowTheMemberAndBothValues() {
        String other =
                GOOD.replace("atMost: 1.15", "atMost: 1.25").replace("id: sensor-gain\n", "id: sensor-gain-new\n");
        EditionDiff diff = EditionDiff.between(EditionTexts.bytes(GOOD), EditionTexts.bytes(other));
        assertThat(diff.added()).extracting(EditionDiff.Row::id).containsExactly("sensor-gain-new");
        assertThat(diff.removed()).extracting(EditionDiff.Row::id).containsExactly("sensor-gain");
        EditionDiff limit = EditionDiff.between(
                EditionTexts.bytes(GOOD), EditionTexts.bytes(GOOD.replace("atMost: 1.15", "atMost: 1.25")));
        assertThat(limit.changed()).singleElement().satisfies(row -> {
            assertThat(row.id()).isEqualTo("sensor-gain");
            assertThat(row.lines()).containsExactly(new EditionDiff.Line("atMost", "1.15", "1.25"));
        });
        EditionDiff same = EditionDiff.between(
                EditionTexts.bytes(GOOD), EditionTexts.bytes(GOOD.replace("atMost: 1.15", "atMost: 1.150")));
        assertThat(same.isEmpty()).isTrue();
    }

    private static List<EditionError> errors(String text) {
        return EditionValidator.errors(text.getBytes(StandardCharsets.UTF_8));
    }
}
