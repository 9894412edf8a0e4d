package org.voltdocket.diagnosis.quantity.sensor;

import java.util.Arrays;

/**
 * Equivalent circuit of a 12 V battery, driven by the reported current minus an unknown offset, block by block, with the
 * derivative of its voltage with respect to each parameter.
 *
 * <p>Rest voltage moving with counted charge; an ohmic part; one pair of double layer and charge transfer, whose
 * resistance differs between supplying and charging (charge acceptance) and falls as it is driven harder; two slow pairs
 * for the acid's diffusion; a surface charge that only charging builds. Circuits of this kind: Randles (1947); the starting
 * values, for 70 Ah, and their spreads are ours.
 */
final class BatteryCircuit {

    /**
     * Rest voltage, V. After it logarithms: ohmic part, Ω; charge transfer supplying, Ω; its bend, V; charge transfer
     * charging, Ω; double layer, F; quick and slow diffusion, Ω.
     */
    static final int REST = 0;

    /** Slope of the rest voltage over reported charge, V per Ah. */
    static final int SLOPE = 8;
    /** Behind it, 9: surface charge, Ω. What the sensor reads too high, A. */
    static final int OFFSET = 10;
    /** Number of parameters. */
    static final int ALL = 11;

    private static final double QUICK_S = 100;
    private static final double SLOW_S = 1200;
    private static final double SURFACE_S = 600;
    private static final double CHARGE_BEND_V = 0.5;
    /** Steps of the double layer in a block: one would blur a pair of a few seconds. */
    private static final int PARTS = 2;
    /** Offsets larger than this are rare, A (ours). */
    private static final double USUAL_A = 6;

    private final double[] volts;
    private final double[] amperes;
    private final double blockS;
    /** Blocks that have a voltage to fit and a current that is known. */
    final int[] used;

    /** Voltage seen less voltage said, V, by used block. */
    final double[] left;
    /** Slope of the voltage said, by used block and parameter. */
    final double[] slopes;
    /** Where the parameters start. */
    final double[] start;
    /** Standard deviation that the starting values are trusted with. */
    final double[] spread;

    /**
     * @param volts block means, V; NaN where none is to be fitted
     * @param amperes reported current, A; NaN where not told
     * @param slopeVPerAh slope of the rest voltage
     * @param scale 70 Ah over the capacity
     */
    BatteryCircuit(double[] volts, double[] amperes, double blockS, double slopeVPerAh, double scale) {
        this.volts = volts;
        this.amperes = amperes;
        this.blockS = blockS;
        this.used = used();
        this.left = new double[used.length];
        this.slopes = new double[used.length * ALL];
        this.start = new double[] {
            12.4,
            StrictMath.log(0.005 * scale),
            StrictMath.log(0.015 * scale),
            StrictMath.log(0.15),
            StrictMath.log(0.100 * scale),
            StrictMath.log(200 / scale),
            StrictMath.log(0.008 * scale),
            StrictMath.log(0.020 * scale),
            slopeVPerAh,
            0.008 * scale,
            0
        };
        this.spread = new double[] {0.5, 0.2, 0.3, 0.4, 0.5, 0.3, 0.6, 0.6, 0.3 * slopeVPerAh, 0.015 * scale, USUAL_A};
    }

    /** A current that is not told is taken for the last one; before the first one is told, for none. */
    private int[] used() {
        int[] out = new int[volts.length];
        int n = 0;
        boolean heard = false;
        for (int b = 0; b < volts.length; b++) {
            boolean told = !Double.isNaN(amperes[b]);
            heard |= told;
            if (!Double.isNaN(volts[b]) && (told || !heard)) {
                out[n++] = b;
            }
        }
        return Arrays.copyOf(out, n);
    }

    /** Fills {@link #left} and, where wanted, {@link #slopes} for these parameters. */
    void run(double[] at, boolean sloped) {
        double ohm = StrictMath.exp(at[1]);
        double quick = StrictMath.exp(at[6]);
        double slow = StrictMath.exp(at[7]);
        double keepQuick = StrictMath.exp(-blockS / QUICK_S);
        double keepSlow = StrictMath.exp(-blockS / SLOW_S);
        double keepSurface = StrictMath.exp(-blockS / SURFACE_S);
        Layer layer = new Layer(at, blockS / PARTS);
        double current = 0;
        double per = 0;
        double lagQuick = 0;
        double lagSlow = 0;
        double lagCharge = 0;
        double counted = 0;
        double perQuick = 0;
        double perSlow = 0;
        double perCharge = 0;
        double perCounted = 0;
        int row = 0;
        for (int b = 0; b < volts.length && row < used.length; b++) {
            if (!Double.isNaN(amperes[b])) {
                current = amperes[b] - at[OFFSET];
                per = -1;
            }
            layer.block(current, per, sloped);
            lagQuick = keepQuick * lagQuick + (1 - keepQuick) * current;
            lagSlow = keepSlow * lagSlow + (1 - keepSlow) * current;
            lagCharge = keepSurface * lagCharge + (1 - keepSurface) * Math.max(current, 0);
            counted += current * blockS / 3600;
            perQuick = keepQuick * perQuick + (1 - keepQuick) * per;
            perSlow = keepSlow * perSlow + (1 - keepSlow) * per;
            perCharge = keepSurface * perCharge + (1 - keepSurface) * (current > 0 ? per : 0);
            perCounted += per * blockS / 3600;
            if (b != used[row]) {
                continue;
            }
            double said = at[REST] + ohm * current + layer.mean + quick * lagQuick + slow * lagSlow;
            left[row] = volts[b] - said - at[SLOPE] * counted - at[9] * lagCharge;
            if (sloped) {
                int to = row * ALL;
                slopes[to] = 1;
                slopes[to + 1] = ohm * current;
                System.arraycopy(layer.meanPer, 0, slopes, to + 2, Layer.OWN);
                slopes[to + 6] = quick * lagQuick;
                slopes[to + 7] = slow * lagSlow;
                slopes[to + SLOPE] = counted;
                slopes[to + 9] = lagCharge;
                slopes[to + OFFSET] = ohm * per
                        + layer.meanPer[Layer.OWN]
                        + quick * perQuick
                        + slow * perSlow
                        + at[SLOPE] * perCounted
                        + at[9] * perCharge;
            }
            row++;
        }
    }

    /** Double layer and charge transfer: C·dη/dt = i - f(η), f(η) = η/R·√(1 + (η/bend)²), by linearised implicit steps. */
    private static final class Layer {
        /** Parameters of its own: charge transfer supplying, its bend, charge transfer charging, capacity. */
        static final int OWN = 4;

        private final double supplyOhm;
        private final double supplyBendV;
        private final double chargeOhm;
        private final double faradPerS;
        private double eta;
        private final double[] per = new double[OWN + 1];
        double mean;
        final double[] meanPer = new double[OWN + 1];

        Layer(double[] at, double stepS) {
            this.supplyOhm = StrictMath.exp(at[2]);
            this.supplyBendV = StrictMath.exp(at[3]);
            this.chargeOhm = StrictMath.exp(at[4]);
            this.faradPerS = StrictMath.exp(at[5]) / stepS;
        }

        void block(double current, double perOffset, boolean sloped) {
            mean = 0;
            Arrays.fill(meanPer, 0);
            for (int part = 0; part < PARTS; part++) {
                step(current, perOffset, sloped);
                mean += eta / PARTS;
                for (int p = 0; sloped && p <= OWN; p++) {
                    meanPer[p] += per[p] / PARTS;
                }
            }
        }

        private void step(double current, double perOffset, boolean sloped) {
            boolean supplies = eta < 0;
            double ohm = supplies ? supplyOhm : chargeOhm;
            double u = eta / (supplies ? supplyBendV : CHARGE_BEND_V);
            double root = Math.sqrt(1 + u * u);
            double flow = eta / ohm * root;
            double slope = (1 + 2 * u * u) / (ohm * root);
            double stiff = faradPerS + slope;
            double rise = (current - flow) / stiff;
            if (sloped) {
                double bend =
                        u * (3 + 2 * u * u) / (ohm * (supplies ? supplyBendV : CHARGE_BEND_V) * root * root * root);
                double ohmic = (flow + rise * slope) / stiff;
                double bent = (eta / ohm * u * u / root + rise * eta * bend) / stiff;
                double follows = (slope + rise * bend) / stiff;
                per[0] += (supplies ? ohmic : 0) - follows * per[0];
                per[1] += (supplies ? bent : 0) - follows * per[1];
                per[2] += (supplies ? 0 : ohmic) - follows * per[2];
                per[3] -= follows * per[3] + rise * faradPerS / stiff;
                per[4] += perOffset / stiff - follows * per[4];
            }
            eta += rise;
        }
    }
}
