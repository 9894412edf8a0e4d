package org.voltdocket.evidence;

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
            BlockStore.Block block = new BlockStore.Block("measured_v", 0, 3, check, damaged);
            assertThatThrownBy(block::checked).hasMessageContaining("check sum");
        }
        byte[] cut = Arrays.copyOf(packed, packed.length - 3);
        assertThatThrownBy(() -> BlockCodec.unpack(cut, new float[3], 0, 3)).isInstanceOf(IllegalStateException.class);
    }
}
