package org.voltdocket.notice.finder;

import static org.assertj.core.api.Assertions.assertThat;

import java.awt.image.BufferedImage;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Collections;
import java.util.OptionalLong;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.voltdocket.notice.Photos;

/** A photo scaled and compressed anew is found, by an index too; other photos are not; a blank one is not compared. */
class PerceptualHashTest {

    @TempDir
    private Path folder;

    @Test
    void theSamePhotoScaledAndCompressedAnewIsNear() throws IOException {
        for (int seed = 0; seed < 10; seed++) {
            BufferedImage photo = Photos.scene(seed, 1600, 1200);
            long original = print(Photos.jpeg(photo, 0.92f)).orElseThrow();
            byte[][] copies = {
                Photos.jpeg(photo, 0.4f),
                Photos.jpeg(Photos.scaled(photo, 800, 600), 0.75f),
                Photos.jpeg(Photos.scaled(photo, 1023, 771), 0.6f),
                Photos.png(Photos.scaled(photo, 640, 480))
            };
            for (byte[] copy : copies) {
                long other = print(copy).orElseThrow();
                assertThat(PerceptualHash.distance(original, other))
                        .as("seed %d", seed)
                        .isLessThanOrEqualTo(PerceptualHash.MOST_BITS);
                assertThat(Collections.disjoint(PerceptualHash.bands(original), PerceptualHash.bands(other)))
                        .isFalse();
            }
        }
    }

    @Test
    void otherPhotosAreFar() {
        long[] hashes = new long[80];
        for (int i = 0; i < hashes.length; i++) {
            hashes[i] = PerceptualHash.hash(Photos.scene(1000 + i, 400, 300)).orElseThrow();
        }
        for (int i = 0; i < hashes.length; i++) {
            for (int j = 0; j < i; j++) {
                assertThat(PerceptualHash.distance(hashes[i], hashes[j])).isGreaterThan(PerceptualHash.MOST_BITS);
            }
        }
    }

    @Test
    void whateverSixBitsDifferOneBandIsShared() {
        Random chance = new Random(5);
        for (int i = 0; i < 2000; i++) {
            long one = chance.nextLong();
            long other = one;
            for (int bit = 0; bit < PerceptualHash.MOST_BITS; bit++) {
                other ^= 1L << chance.nextInt(64);
            }
            assertThat(Collections.disjoint(PerceptualHash.bands(one), PerceptualHash.bands(other)))
                    .isFalse();
        }
        assertThat(PerceptualHash.bands(0)).hasSize(7).doesNotHaveDuplicates();
    }

    @Test
    void aBlankOneAndABrokenOneAreNotCompared() throws IOException {
        assertThat(PerceptualHash.hash(new BufferedImage(300, 200, BufferedImage.TYPE_INT_RGB)))
                .isEmpty();
        byte[] jpeg = Photos.jpeg(Photos.scene(1, 400, 300), 0.8f);
        assertThat(print(java.util.Arrays.copyOf(jpeg, 300))).isEmpty();
        assertThat(print("no image at all".getBytes(java.nio.charset.StandardCharsets.UTF_8)))
                .isEmpty();
    }

    private OptionalLong print(byte[] content) throws IOException {
        Path file = folder.resolve("photo");
        Files.write(file, content);
        return PerceptualHash.of(file);
    }
}
