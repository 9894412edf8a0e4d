package org.voltdocket.notice.finder;

import java.awt.image.BufferedImage;
import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Iterator;
import java.util.List;
import java.util.OptionalLong;
import javax.imageio.ImageIO;
import javax.imageio.ImageReadParam;
import javax.imageio.ImageReader;
import javax.imageio.stream.ImageInputStream;

/**
 * The perceptual hash of a photo: 64 bits, each telling whether of two neighbouring cells of a grid of 9 by 8 the left one
 * is brighter (the difference hash, common practice). It survives scaling and compressing anew; it does not survive turning
 * or cutting. That {@value #MOST_BITS} bits of 64 may differ is our choice: two unrelated photos differ in 32 on average.
 */
final class PerceptualHash {

    /** Most bits in which two photos may differ and still count as one. */
    static final int MOST_BITS = 6;

    /** One band more than bits may differ, so that two photos that count as one share at least one band. */
    private static final int BANDS = MOST_BITS + 1;

    private static final int ACROSS = 9;
    private static final int DOWN = 8;
    /** Least difference of two cells, of 255, that is more than noise; and how many of 64 must have it. */
    private static final double LEAST_STEP = 2;

    private static final int LEAST_STEPS = 24;
    /** Decoding takes about a second for each 20 million pixels; a larger photo is kept but not compared. */
    private static final long MOST_PIXELS = 64_000_000;

    private PerceptualHash() {}

    /** The hash; empty where the file is no image that can be read, or shows so little that any other would be alike. */
    static OptionalLong of(Path file) {
        try (ImageInputStream in = ImageIO.createImageInputStream(file.toFile())) {
            Iterator<ImageReader> readers = ImageIO.getImageReaders(in);
            if (!readers.hasNext()) {
                return OptionalLong.empty();
            }
            ImageReader reader = readers.next();
            try {
                reader.setInput(in, true, true);
                return hash(read(reader));
            } finally {
                reader.dispose();
            }
        } catch (IOException | RuntimeException e) {
            return OptionalLong.empty(); // kept as evidence all the same; it cannot be compared
        }
    }

    /** Reads every so many pixels only, so that a large photo takes little memory. */
    private static BufferedImage read(ImageReader reader) throws IOException {
        int width = reader.getWidth(0);
        int height = reader.getHeight(0);
        if ((long) width * height > MOST_PIXELS) {
            throw new IOException("too large to compare");
        }
        ImageReadParam every = reader.getDefaultReadParam();
        int step = Math.max(1, Math.min(width, height) / 256);
        every.setSourceSubsampling(step, step, 0, 0);
        return reader.read(0, every);
    }

    static OptionalLong hash(BufferedImage image) {
        double[][] cells = cells(image);
        long hash = 0;
        int steps = 0;
        for (int y = 0; y < DOWN; y++) {
            for (int x = 0; x + 1 < ACROSS; x++) {
                double step = cells[y][x] - cells[y][x + 1];
                hash = hash << 1 | (step > 0 ? 1 : 0);
                steps += Math.abs(step) >= LEAST_STEP ? 1 : 0;
            }
        }
        return steps < LEAST_STEPS ? OptionalLong.empty() : OptionalLong.of(hash);
    }

    /** Mean brightness of each cell (weights of ITU-R BT.601), 0 to 255. */
    private static double[][] cells(BufferedImage image) {
        double[][] sums = new double[DOWN][ACROSS];
        long[][] counts = new long[DOWN][ACROSS];
        for (int y = 0; y < image.getHeight(); y++) {
            int row = y * DOWN / image.getHeight();
            for (int x = 0; x < image.getWidth(); x++) {
                int rgb = image.getRGB(x, y);
                int column = x * ACROSS / image.getWidth();
                sums[row][column] += 0.299 * (rgb >> 16 & 255) + 0.587 * (rgb >> 8 & 255) + 0.114 * (rgb & 255);
                counts[row][column]++;
            }
        }
        for (int y = 0; y < DOWN; y++) {
            for (int x = 0; x < ACROSS; x++) {
                sums[y][x] /= Math.max(1, counts[y][x]);
            }
        }
        return sums;
    }

    /** The hash in bands, each with its place: what an index can find. */
    static List<String> bands(long hash) {
        List<String> bands = new ArrayList<>();
        for (int band = 0; band < BANDS; band++) {
            int from = 64 * band / BANDS;
            int bits = 64 * (band + 1) / BANDS - from;
            bands.add(band + ":" + (hash >>> from & (1L << bits) - 1));
        }
        return bands;
    }

    static int distance(long one, long other) {
        return Long.bitCount(one ^ other);
    }
}
