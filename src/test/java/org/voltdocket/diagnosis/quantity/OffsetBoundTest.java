package org.voltdocket.diagnosis.quantity;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;

/** The information that is left for one unknown beside others, on designs whose answer is known. */
class OffsetBoundTest {

    private static final double[][] CONSTANT = {{1}, {1}, {1}, {1}, {1}};
    private static final double[] LINE = {-2, -1, 0, 1, 2};

    @Test
    void theSlopeOfAStraightLineHasTheSumOfSquaresAboutTheMean() {
        assertThat(OffsetBound.left(CONSTANT, LINE, new double[1])).isCloseTo(10, within(1e-9));
        assertThat(OffsetBound.left(CONSTANT, new double[] {3, 4, 5, 6, 7}, new double[1]))
                .isCloseTo(10, within(1e-9));
    }

    @Test
    void whatAnotherTermExplainsIsNoInformation() {
        assertThat(OffsetBound.left(CONSTANT, new double[] {4, 4, 4, 4, 4}, new double[1]))
                .isCloseTo(0, within(1e-9));
    }

    /** One term of weight p: Σx² - (Σx)²/(n + p). */
    @Test
    void aPullOnTheOtherTermLeavesMore() {
        assertThat(OffsetBound.left(CONSTANT, new double[] {4, 4, 4, 4, 4}, new double[] {3}))
                .isCloseTo(80 - 400 / 8.0, within(1e-9));
    }

    /** A term that never moves, as charge acceptance where nothing charges, takes nothing away. */
    @Test
    void aTermThatIsNeverThereTakesNothing() {
        double[][] terms = {{1, 0}, {1, 0}, {1, 0}, {1, 0}, {1, 0}};
        assertThat(OffsetBound.left(terms, LINE, new double[2])).isCloseTo(10, within(1e-9));
    }
}
