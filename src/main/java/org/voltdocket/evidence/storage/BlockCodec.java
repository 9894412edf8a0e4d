package org.voltdocket.evidence.storage;

import java.util.Arrays;
import java.util.zip.CRC32;
import java.util.zip.DataFormatException;
import java.util.zip.Deflater;
import java.util.zip.Inflater;

/**
 * Compresses up to {@value #ROWS} values without loss: decimals by {@link DecimalCodec}; for other values the
 * differences of neighbouring bit patterns (times) or the patterns themselves (channels) are written byte plane by byte
 * plane, the highest first. Both are deflated.
 */
public final class BlockCodec {

    /** Rows of a full block. */
    public static final int ROWS = 65_536;

    private BlockCodec() {}

    public static byte[] pack(double[] values, int from, int to) {
        byte[] decimals = DecimalCodec.lay(values, from, to);
        return decimals == null ? patterns(values, from, to) : deflate(decimals, DecimalCodec.HEAD);
    }

    private static byte[] patterns(double[] values, int from, int to) {
        int n = to - from;
        byte[] planes = new byte[n * Double.BYTES];
        long before = 0;
        for (int i = 0; i < n; i++) {
            long bits = Double.doubleToRawLongBits(values[from + i]);
            long difference = bits - before;
            before = bits;
            for (int plane = 0, shift = 56; plane < Double.BYTES; plane++, shift -= 8) {
                planes[plane * n + i] = (byte) (difference >>> shift);
            }
        }
        return deflate(planes, 0);
    }

    public static byte[] pack(float[] values, int from, int to) {
        byte[] decimals = DecimalCodec.lay(values, from, to);
        return decimals == null ? patterns(values, from, to) : deflate(decimals, DecimalCodec.HEAD);
    }

    private static byte[] patterns(float[] values, int from, int to) {
        int n = to - from;
        byte[] planes = new byte[n * Float.BYTES];
        for (int i = 0; i < n; i++) {
            int bits = Float.floatToRawIntBits(values[from + i]);
            planes[i] = (byte) (bits >>> 24);
            planes[n + i] = (byte) (bits >>> 16);
            planes[2 * n + i] = (byte) (bits >>> 8);
            planes[3 * n + i] = (byte) bits;
        }
        return deflate(planes, 0);
    }

    /** @throws IllegalStateException if the block is damaged */
    public static void unpack(byte[] packed, double[] into, int from, int n) {
        if (packed.length > 0 && packed[0] == DecimalCodec.MARK) {
            DecimalCodec.Head head = DecimalCodec.Head.of(packed);
            byte[] laid = new byte[DecimalCodec.room(head, n)];
            DecimalCodec.read(head, laid, inflate(packed, DecimalCodec.HEAD, laid), into, from, n);
            return;
        }
        byte[] planes = whole(packed, n * Double.BYTES);
        long bits = 0;
        for (int i = 0; i < n; i++) {
            long difference = 0;
            for (int plane = 0; plane < Double.BYTES; plane++) {
                difference = difference << 8 | planes[plane * n + i] & 0xff;
            }
            bits += difference;
            into[from + i] = Double.longBitsToDouble(bits);
        }
    }

    /** @throws IllegalStateException if the block is damaged */
    public static void unpack(byte[] packed, float[] into, int from, int n) {
        if (packed.length > 0 && packed[0] == DecimalCodec.MARK) {
            DecimalCodec.Head head = DecimalCodec.Head.of(packed);
            byte[] laid = new byte[DecimalCodec.room(head, n)];
            DecimalCodec.read(head, laid, inflate(packed, DecimalCodec.HEAD, laid), into, from, n);
            return;
        }
        byte[] planes = whole(packed, n * Float.BYTES);
        for (int i = 0; i < n; i++) {
            into[from + i] = Float.intBitsToFloat(planes[i] << 24
                    | (planes[n + i] & 0xff) << 16
                    | (planes[2 * n + i] & 0xff) << 8
                    | planes[3 * n + i] & 0xff);
        }
    }

    /** CRC-32 of a packed block. */
    static long check(byte[] packed) {
        CRC32 crc = new CRC32();
        crc.update(packed);
        return crc.getValue();
    }

    /** The first bytes as they are, the rest deflated. */
    private static byte[] deflate(byte[] plain, int head) {
        Deflater deflater = new Deflater(Deflater.BEST_SPEED, true);
        try {
            deflater.setInput(plain, head, plain.length - head);
            deflater.finish();
            byte[] out = new byte[plain.length + plain.length / 1000 + 64];
            System.arraycopy(plain, 0, out, 0, head);
            int n = head;
            while (!deflater.finished()) {
                n += deflater.deflate(out, n, out.length - n);
                out = n == out.length ? Arrays.copyOf(out, n * 2) : out;
            }
            return Arrays.copyOf(out, n);
        } finally {
            deflater.end();
        }
    }

    private static byte[] whole(byte[] packed, int size) {
        byte[] plain = new byte[size];
        if (inflate(packed, 0, plain) < size) {
            throw new IllegalStateException("a block of a recording is cut short");
        }
        return plain;
    }

    /** Fills as much as the block gives. */
    private static int inflate(byte[] packed, int from, byte[] plain) {
        Inflater inflater = new Inflater(true);
        try {
            inflater.setInput(packed, from, packed.length - from);
            int n = 0;
            while (n < plain.length) {
                int more = inflater.inflate(plain, n, plain.length - n);
                if (more == 0) {
                    break;
                }
                n += more;
            }
            return n;
        } catch (DataFormatException e) {
            throw new IllegalStateException("a block of a recording is damaged", e);
        } finally {
            inflater.end();
        }
    }
}
