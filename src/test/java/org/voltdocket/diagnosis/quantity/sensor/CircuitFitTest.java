package org.voltdocket.diagnosis.quantity.sensor;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Random;
import org.hipparchus.analysis.differentiation.FiniteDifferencesDifferentiator;
import org.hipparchus.analysis.differentiation.UnivariateDerivative1;
import org.junit.jupiter.api.Test;
import org.voltdocket.diagnosis.Made;

/** The circuit and its fit on voltages that were made by the circuit itself, with known parameters and known noise. */
class CircuitFitTest {

    private static final int BLOCKS = 400;
    private static final double BLOCK_S = 5;
    private static final double SLOPE = 0.012;

    private static double[] currents(Random chance) {
        return Made.steps(chance, BLOCKS, -35, 25, 2, 25);
    }

    private static BatteryCircuit circuit(double[] volts, double[] reported) {
        return new BatteryCircuit(volts, reported, BLOCK_S, SLOPE, 1);
    }

    /** What the circuit says at these parameters, V, by block. */
    private static double[] said(double[] reported, double[] at) {
        BatteryCircuit bare = circuit(new double[BLOCKS], reported);
        bare.run(at, false);
        double[] out = new double[BLOCKS];
        for (int b = 0; b < BLOCKS; b++) {
            out[b] = -bare.left[b];
        }
        return out;
    }

    private static double[] truth(Random chance, BatteryCircuit any, double offset) {
        double[] at = any.start.clone();
        for (int p = 0; p < BatteryCircuit.OFFSET; p++) {
            at[p] += 0.5 * any.spread[p] * chance.nextGaussian();
        }
        at[BatteryCircuit.OFFSET] = offset;
        return at;
    }

    /** Each slope against the finite differences of a general library (Hipparchus, eight points). */
    @Test
    void theSlopesAreThoseOfFiniteDifferences() {
        double[] reported = currents(new Random(3));
        BatteryCircuit circuit = circuit(new double[BLOCKS], reported);
        double[] at = truth(new Random(4), circuit, 2.5);
        circuit.run(at, true);
        double[] slopes = circuit.slopes.clone();
        for (int p = 0; p < BatteryCircuit.ALL; p++) {
            for (int row : new int[] {3, 60, 211, BLOCKS - 1}) {
                int along = p;
                double step = 1e-4 * Math.max(Math.abs(at[p]), 0.01);
                double slope = new FiniteDifferencesDifferentiator(4, step)
                        .differentiate((double x) -> {
                            double[] moved = at.clone();
                            moved[along] = x;
                            circuit.run(moved, false);
                            return -circuit.left[row];
                        })
                        .value(new UnivariateDerivative1(at[p], 1))
                        .getFirstDerivative();
                assertThat(slopes[row * BatteryCircuit.ALL + p])
                        .as("parameter %d, row %d", p, row)
                        .isCloseTo(slope, within(1e-5 * Math.abs(slope) + 1e-6));
            }
        }
    }

    @Test
    void anOffsetComesBackWithoutNoise() {
        for (double offset : new double[] {-6, -1, 0, 0.5, 4, 8}) {
            double[] reported = currents(new Random(7));
            double[] volts = said(reported, truth(new Random(8), circuit(new double[BLOCKS], reported), offset));
            CircuitFit fit = new CircuitFit(circuit(volts, reported), 0);
            assertThat(fit.at()[BatteryCircuit.OFFSET]).as("offset %s", offset).isCloseTo(offset, within(0.25));
        }
    }

    /** With correlated noise of 10 mV the 95 % interval holds the truth in 82 to 99 of 100 cases: the bend at no current makes few blocks tell. What is said
     * of a vehicle adds the circuit's own error. */
    @Test
    void theIntervalCoversTheTruth() {
        int covered = 0;
        int draws = 100;
        for (int draw = 0; draw < draws; draw++) {
            Random chance = new Random(900 + draw);
            double[] reported = currents(chance);
            double offset = -4 + 8 * chance.nextDouble();
            double[] volts = said(reported, truth(chance, circuit(new double[BLOCKS], reported), offset));
            double[] noise = Made.noise(chance, BLOCKS, 0.010, 0.7);
            for (int b = 0; b < BLOCKS; b++) {
                volts[b] += noise[b];
            }
            CircuitFit fit = new CircuitFit(circuit(volts, reported), 0);
            covered += Math.abs(fit.at()[BatteryCircuit.OFFSET] - offset) <= 1.96 * fit.offsetSe() ? 1 : 0;
        }
        assertThat(covered / (double) draws).isBetween(0.82, 0.99);
    }

    @Test
    void gapsAndSpikesDoNotMoveIt() {
        Random chance = new Random(21);
        double[] reported = currents(chance);
        double[] volts = said(reported, truth(chance, circuit(new double[BLOCKS], reported), 3));
        for (int b = 100; b < 130; b++) {
            volts[b] = Double.NaN;
        }
        volts[50] += 1.5;
        volts[300] -= 2;
        CircuitFit fit = new CircuitFit(circuit(volts, reported), 0);
        assertThat(fit.at()[BatteryCircuit.OFFSET]).isCloseTo(3, within(0.4));
    }
}
