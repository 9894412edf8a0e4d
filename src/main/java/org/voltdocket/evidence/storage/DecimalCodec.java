package org.voltdocket.evidence.storage;

/**
 * Compresses decimals of few places, as instruments write them: each becomes a whole number of the last place, of
 * which only the differences of neighbours (of times, the differences of those) are written byte plane by byte plane. Without
 * loss: if a value would not be restored exactly, the block is not compressed this way.
 *
 * <p>A block begins with {@link #MARK}, places, planes and order, then a flag whether every row has a value; if not, one bit per row
 * follows. No deflated stream can begin with the mark (RFC 1951, 3.2.3: block type 3 is reserved).
 */
final class DecimalCodec {

    /** First byte of a block packed this way. */
    static final byte MARK = 0x07;

    /** Bytes before the deflated part. */
    static final int HEAD = 5;

    private static final double[] POWERS = {1, 10, 100, 1e3, 1e4, 1e5, 1e6};
    private static final double LARGEST = 1L << 50;
    private static final int NOT_A_NUMBER = Float.floatToRawIntBits(Float.NaN);

    private DecimalCodec() {}

    /** A block taken apart. */
    record Head(int places, int planes, int order, boolean whole) {

        static Head of(byte[] packed) {
            if (packed.length < HEAD || packed[1] < 0 || packed[1] >= POWERS.length || packed[2] < 1 || packed[2] > 8) {
                throw new IllegalStateException("a block of a recording is damaged");
            }
            return new Head(packed[1], packed[2], packed[3], packed[4] == 1);
        }
    }

    /** Whole numbers of the last place. */
    private record Whole(int places, long[] numbers, byte[] present, int count) {}

    /** @return what to deflate after the head, with the head in its first {@link #HEAD} bytes; null where it does not suit */
    static byte[] lay(double[] values, int from, int to) {
        long[] numbers = new long[to - from];
        int places = 0;
        for (int i = from; i < to; i++) {
            while (places < POWERS.length && !same(values[i], places)) {
                places++;
            }
            if (places == POWERS.length) {
                return null;
            }
        }
        for (int i = from; i < to; i++) {
            numbers[i - from] = Math.round(values[i] * POWERS[places]);
        }
        return lay(new Whole(places, numbers, null, numbers.length), 2);
    }

    /** As {@link #lay(double[], int, int)}; NaN stands for no value. */
    static byte[] lay(float[] values, int from, int to) {
        int n = to - from;
        byte[] present = new byte[(n + 7) / 8];
        int count = 0;
        int places = 0;
        for (int i = from; i < to; i++) {
            if (Float.isNaN(values[i])) {
                if (Float.floatToRawIntBits(values[i]) != NOT_A_NUMBER) {
                    return null;
                }
                continue;
            }
            while (places < POWERS.length && !same(values[i], places)) {
                places++;
            }
            if (places == POWERS.length) {
                return null;
            }
            present[(i - from) >> 3] |= (byte) (1 << ((i - from) & 7));
            count++;
        }
        long[] numbers = new long[count];
        int at = 0;
        for (int i = from; i < to; i++) {
            if (!Float.isNaN(values[i])) {
                numbers[at++] = Math.round(values[i] * POWERS[places]);
            }
        }
        return lay(new Whole(places, numbers, count == n ? null : present, count), 1);
    }

    private static boolean same(double value, int places) {
        double whole = value * POWERS[places];
        return Math.abs(whole) < LARGEST
                && Double.doubleToRawLongBits(Math.round(whole) / POWERS[places]) == Double.doubleToRawLongBits(value);
    }

    private static boolean same(float value, int places) {
        double whole = value * POWERS[places];
        return Math.abs(whole) < LARGEST
                && Float.floatToRawIntBits((float) (Math.round(whole) / POWERS[places]))
                        == Float.floatToRawIntBits(value);
    }

    private static byte[] lay(Whole whole, int order) {
        long[] steps = whole.numbers();
        long any = 0;
        long before = 0;
        long step = 0;
        for (int i = 0; i < whole.count(); i++) {
            long difference = steps[i] - before;
            before = steps[i];
            long kept = order == 2 ? difference - step : difference;
            step = difference;
            steps[i] = kept << 1 ^ kept >> 63;
            any |= steps[i];
        }
        int planes = Math.max(1, (71 - Long.numberOfLeadingZeros(any)) / 8);
        int bits = whole.present() == null ? 0 : whole.present().length;
        byte[] out = new byte[HEAD + bits + planes * whole.count()];
        out[0] = MARK;
        out[1] = (byte) whole.places();
        out[2] = (byte) planes;
        out[3] = (byte) order;
        out[4] = (byte) (bits == 0 ? 1 : 0);
        if (bits > 0) {
            System.arraycopy(whole.present(), 0, out, HEAD, bits);
        }
        for (int plane = 0; plane < planes; plane++) {
            int start = HEAD + bits + plane * whole.count();
            for (int i = 0; i < whole.count(); i++) {
                out[start + i] = (byte) (steps[i] >>> 8 * plane);
            }
        }
        return out;
    }

    /** Bytes that the deflated part gives back at most. */
    static int room(Head head, int n) {
        return (head.whole() ? 0 : (n + 7) / 8) + head.planes() * n;
    }

    static void read(Head head, byte[] laid, int length, double[] into, int from, int n) {
        Numbers numbers = new Numbers(head, laid, length, n);
        for (int i = 0; i < n; i++) {
            into[from + i] = numbers.next() / POWERS[head.places()];
        }
    }

    static void read(Head head, byte[] laid, int length, float[] into, int from, int n) {
        Numbers numbers = new Numbers(head, laid, length, n);
        for (int i = 0; i < n; i++) {
            boolean there = head.whole() || (laid[i >> 3] & 1 << (i & 7)) != 0;
            into[from + i] = there ? (float) (numbers.next() / POWERS[head.places()]) : Float.NaN;
        }
    }

    /** Puts the whole numbers together again, one after the other. */
    private static final class Numbers {

        private final Head head;
        private final byte[] laid;
        private final int bits;
        private final int count;
        private int at;
        private long number;
        private long step;

        Numbers(Head head, byte[] laid, int length, int n) {
            this.head = head;
            this.laid = laid;
            this.bits = head.whole() ? 0 : (n + 7) / 8;
            this.count = (length - bits) / head.planes();
        }

        double next() {
            if (at == count) {
                throw new IllegalStateException("a block of a recording is cut short");
            }
            long kept = 0;
            for (int plane = 0; plane < head.planes(); plane++) {
                kept |= (laid[bits + plane * count + at] & 0xffL) << 8 * plane;
            }
            at++;
            kept = kept >>> 1 ^ -(kept & 1);
            step = head.order() == 2 ? step + kept : kept;
            number += step;
            return number;
        }
    }
}
