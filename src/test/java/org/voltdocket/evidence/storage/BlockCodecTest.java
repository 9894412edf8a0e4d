package org.voltdocket.evidence.storage;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.Arrays;
import java.util.Random;
import org.junit.jupiter.api.Test;

class BlockCodecTest {

    @Test
    void givesBackEveryBit() {
        Random random = new Random(5);
        for (int n : new int[] {1, 2, 77, BlockCodec.ROWS}) {
            double[] times = new double[n + 3];
            float[] values = new float[n + 3];
            for (int i = 0; i < n + 3; i++) {
                times[i] = Double.longBitsToDouble(random.nextLong());
                values[i] = i % 3 == 0 ? Float.NaN : Float.intBitsToFloat(random.nextInt());
            }
            double[] timesBack = new double[n];
            float[] valuesBack = new float[n];
            BlockCodec.unpack(BlockCodec.pack(times, 3, n + 3), timesBack, 0, n);
            BlockCodec.unpack(BlockCodec.pack(values, 3, n + 3), valuesBack, 0, n);
            for (int i = 0; i < n; i++) {
                assertThat(Double.doubleToRawLongBits(timesBack[i]))
                        .isEqualTo(Double.doubleToRawLongBits(times[i + 3]));
                assertThat(Float.floatToRawIntBits(valuesBack[i])).isEqualTo(Float.floatToRawIntBits(values[i + 3]));
            }
        }
    }

    /** Values as instruments write them, with places and gaps of every kind, and the odd one that is no decimal. */
    @Test
    void givesBackDecimalsToTheBit() {
        Random random = new Random(6);
        for (int round = 0; round < 300; round++) {
            int n = 1 + random.nextInt(400);
            double power = Math.pow(10, random.nextInt(8));
            double blanks = random.nextInt(3) * 0.45;
            boolean odd = random.nextInt(5) == 0;
            double[] times = new double[n];
            float[] values = new float[n];
            double at = 0;
            for (int i = 0; i < n; i++) {
                at += (1 + random.nextInt(2000)) / power;
                times[i] = Math.round(at * power) / power;
                values[i] = random.nextDouble() < blanks
                        ? Float.NaN
                        : (float) (Math.round((random.nextGaussian() * 40) * power) / power);
            }
            if (odd) {
                values[random.nextInt(n)] = random.nextBoolean() ? -0.0f : Float.intBitsToFloat(0x7fc00001);
                times[n - 1] = at * Math.PI;
            }
            double[] timesBack = new double[n];
            float[] valuesBack = new float[n];
            BlockCodec.unpack(BlockCodec.pack(times, 0, n), timesBack, 0, n);
            BlockCodec.unpack(BlockCodec.pack(values, 0, n), valuesBack, 0, n);
            for (int i = 0; i < n; i++) {
                assertThat(Double.doubleToRawLongBits(timesBack[i])).isEqualTo(Double.doubleToRawLongBits(times[i]));
                assertThat(Float.floatToRawIntBits(valuesBack[i])).isEqualTo(Float.floatToRawIntBits(values[i]));
            }
        }
    }

    /** Blocks kept before decimals were packed are read as ever: a deflated stream never begins with the mark. */
    @Test
    void readsBlocksOfBitPatterns() {
        java.util.zip.Deflater deflater = new java.util.zip.Deflater(1, true);
        float[] values = {12.5f, Float.NaN, -3.25f};
        byte[] planes = new byte[12];
        for (int i = 0; i < 3; i++) {
            int bits = Float.floatToRawIntBits(values[i]);
            for (int plane = 0; plane < 4; plane++) {
                planes[plane * 3 + i] = (byte) (bits >>> 24 - 8 * plane);
            }
        }
        deflater.setInput(planes);
        deflater.finish();
        byte[] room = new byte[100];
        byte[] old = Arrays.copyOf(room, deflater.deflate(room));
        float[] back = new float[3];
        BlockCodec.unpack(old, back, 0, 3);
        assertThat(back).containsExactly(values);
    }

    @Test
    void packsDecimalsIntoLittle() {
        float[] volts = new float[BlockCodec.ROWS];
        Random random = new Random(7);
        for (int i = 0; i < volts.length; i++) {
            volts[i] = Math.round(1380 + random.nextGaussian() * 3) / 100f;
        }
        assertThat(BlockCodec.pack(volts, 0, volts.length).length).isLessThan(volts.length);
    }

    @Test
    void packsARegularTimeWell() {
        double[] times = new double[BlockCodec.ROWS];
        Arrays.setAll(times, i -> i * 0.01);
        assertThat(BlockCodec.pack(times, 0, times.length).length).isLessThan(times.length * 8 / 3);
    }

    @Test
    void noticesDamage() {
        byte[] packed = BlockCodec.pack(new float[] {12.5f, 12.6f, 12.7f}, 0, 3);
        long check = BlockCodec.check(packed);
        for (int i = 0; i < packed.length; i++) {
            byte[] damaged = packed.clone();
            damaged[i] ^= 4;
            RecordingBlockRepository.Block block =
                    new RecordingBlockRepository.Block("measured_v", 0, 3, check, damaged);
            assertThatThrownBy(block::checked).hasMessageContaining("check sum");
        }
        byte[] cut = Arrays.copyOf(packed, packed.length - 3);
        assertThatThrownBy(() -> BlockCodec.unpack(cut, new float[3], 0, 3)).isInstanceOf(IllegalStateException.class);
    }
}
