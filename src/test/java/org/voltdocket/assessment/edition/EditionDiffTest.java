package org.voltdocket.assessment.edition;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.StandardCharsets;
import org.junit.jupiter.api.Test;

/** Differences of small texts with the structure of an edition. */
class EditionDiffTest {

    private static final String OLD = """
            edition: "2026.1"
            rules:
              - {id: ripple, limit: 0.5, weights: {above: {wiring: 3}}}
              - {id: offset, limit: 1}
            """;

    private static EditionDiff against(String now) {
        return EditionDiff.between(OLD.getBytes(StandardCharsets.UTF_8), now.getBytes(StandardCharsets.UTF_8));
    }

    @Test
    void theSameTextHasNoDifference() {
        assertThat(against(OLD).isEmpty()).isTrue();
    }

    @Test
    void oneAndOnePointZeroAreTheSameNumber() {
        assertThat(against(OLD.replace("limit: 1}", "limit: 1.0}")).isEmpty()).isTrue();
    }

    @Test
    void aChangedMemberIsNamedWithBothValues() {
        EditionDiff difference = against(OLD.replace("wiring: 3", "wiring: 4.5"));
        assertThat(difference.changed()).singleElement().satisfies(row -> {
            assertThat(row.id()).isEqualTo("ripple");
            assertThat(row.lines()).containsExactly(new EditionDiff.Line("weights.above.wiring", "3", "4.5"));
        });
        assertThat(difference.added()).isEmpty();
        assertThat(difference.removed()).isEmpty();
    }

    @Test
    void addedAndRemovedRowsAreListedWhole() {
        EditionDiff difference = against(OLD.replace("id: offset", "id: drain"));
        assertThat(difference.added())
                .containsExactly(new EditionDiff.Row(
                        "drain",
                        java.util.List.of(
                                new EditionDiff.Line("id", null, "drain"), new EditionDiff.Line("limit", null, "1"))));
        assertThat(difference.removed()).extracting(EditionDiff.Row::id).containsExactly("offset");
    }

    @Test
    void membersOutsideTheRowsAreGeneral() {
        assertThat(against(OLD.replace("2026.1", "2026.2")).general())
                .containsExactly(new EditionDiff.Line("edition", "2026.1", "2026.2"));
    }
}
