package org.voltdocket.browser;

import com.google.zxing.BarcodeFormat;
import com.google.zxing.MultiFormatWriter;
import com.google.zxing.WriterException;
import com.google.zxing.common.BitMatrix;
import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.RenderingHints;
import java.awt.geom.AffineTransform;
import java.awt.image.BufferedImage;
import java.awt.image.ConvolveOp;
import java.awt.image.Kernel;
import java.io.BufferedOutputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import javax.imageio.ImageIO;

/** A photo of a label, drawn: codes one below the other, turned, blurred, and in low light with the noise of a sensor. */
record LabelPicture(List<Code> codes, double degrees, double blurPx, double light) {

    static final int WIDTH = 1280;
    static final int HEIGHT = 960;

    /** One code of the label. */
    record Code(BarcodeFormat format, String text) {}

    static LabelPicture of(BarcodeFormat format, String text) {
        return new LabelPicture(List.of(new Code(format, text)), 0, 0, 1);
    }

    LabelPicture turned(double angle) {
        return new LabelPicture(codes, angle, blurPx, light);
    }

    /** @param sigma standard deviation of the blur, px */
    LabelPicture blurred(double sigma) {
        return new LabelPicture(codes, degrees, sigma, light);
    }

    /** @param share of the full brightness, 0 to 1 */
    LabelPicture inLight(double share) {
        return new LabelPicture(codes, degrees, blurPx, share);
    }

    BufferedImage image() {
        BufferedImage image = new BufferedImage(WIDTH, HEIGHT, BufferedImage.TYPE_INT_RGB);
        Graphics2D g = image.createGraphics();
        g.setRenderingHint(RenderingHints.KEY_INTERPOLATION, RenderingHints.VALUE_INTERPOLATION_BILINEAR);
        g.setColor(new Color(90, 96, 92));
        g.fillRect(0, 0, WIDTH, HEIGHT);
        g.setTransform(AffineTransform.getRotateInstance(Math.toRadians(degrees), WIDTH / 2.0, HEIGHT / 2.0));
        int high = 250 * codes.size();
        g.setColor(Color.WHITE);
        g.fillRect(WIDTH / 2 - 480, HEIGHT / 2 - high / 2 - 20, 960, high + 40);
        for (int i = 0; i < codes.size(); i++) {
            BufferedImage code = draw(codes.get(i));
            g.drawImage(code, (WIDTH - code.getWidth()) / 2, HEIGHT / 2 - high / 2 + 250 * i + 15, null);
        }
        g.dispose();
        return exposed(blurPx > 0 ? blurred(image) : image);
    }

    byte[] png() {
        try {
            ByteArrayOutputStream out = new ByteArrayOutputStream();
            ImageIO.write(image(), "png", out);
            return out.toByteArray();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static BufferedImage draw(Code code) {
        boolean linear = code.format() == BarcodeFormat.CODE_39 || code.format() == BarcodeFormat.CODE_128;
        try {
            BitMatrix bits =
                    new MultiFormatWriter().encode(code.text(), code.format(), linear ? 900 : 220, linear ? 180 : 220);
            BufferedImage image = new BufferedImage(bits.getWidth(), bits.getHeight(), BufferedImage.TYPE_INT_RGB);
            for (int y = 0; y < bits.getHeight(); y++) {
                for (int x = 0; x < bits.getWidth(); x++) {
                    image.setRGB(x, y, bits.get(x, y) ? 0x101010 : 0xffffff);
                }
            }
            return image;
        } catch (WriterException e) {
            throw new IllegalArgumentException(e);
        }
    }

    private BufferedImage blurred(BufferedImage image) {
        int radius = (int) Math.ceil(3 * blurPx);
        float[] weights = new float[2 * radius + 1];
        float sum = 0;
        for (int i = -radius; i <= radius; i++) {
            weights[i + radius] = (float) Math.exp(-i * i / (2 * blurPx * blurPx));
            sum += weights[i + radius];
        }
        for (int i = 0; i < weights.length; i++) {
            weights[i] /= sum;
        }
        ConvolveOp across = new ConvolveOp(new Kernel(weights.length, 1, weights), ConvolveOp.EDGE_NO_OP, null);
        ConvolveOp down = new ConvolveOp(new Kernel(1, weights.length, weights), ConvolveOp.EDGE_NO_OP, null);
        return down.filter(across.filter(image, null), null);
    }

    /** Less light and the noise of a sensor with it, standard deviation 4 of 255. */
    private BufferedImage exposed(BufferedImage image) {
        if (light >= 1) {
            return image;
        }
        Random noise = new Random(7);
        for (int y = 0; y < HEIGHT; y++) {
            for (int x = 0; x < WIDTH; x++) {
                int rgb = image.getRGB(x, y);
                int grey = (int) ((rgb & 0xff) * light + 4 * noise.nextGaussian());
                int level = Math.max(0, Math.min(255, grey));
                image.setRGB(x, y, level << 16 | level << 8 | level);
            }
        }
        return image;
    }

    /** Writes a film of pictures as YUV4MPEG2, 10 frames a second, for the fake camera of a browser. */
    static void film(Path file, List<LabelPicture> pictures) throws IOException {
        try (OutputStream out = new BufferedOutputStream(Files.newOutputStream(file))) {
            out.write(("YUV4MPEG2 W" + WIDTH + " H" + HEIGHT + " F10:1 Ip A1:1 C420mpeg2\n")
                    .getBytes(StandardCharsets.US_ASCII));
            byte[] colourless = new byte[WIDTH * HEIGHT / 2];
            Arrays.fill(colourless, (byte) 128);
            for (LabelPicture picture : pictures) {
                BufferedImage image = picture.image();
                byte[] luminance = new byte[WIDTH * HEIGHT];
                for (int i = 0; i < luminance.length; i++) {
                    int rgb = image.getRGB(i % WIDTH, i / WIDTH);
                    luminance[i] = (byte) (16 + (rgb >> 8 & 0xff) * 219 / 255);
                }
                out.write("FRAME\n".getBytes(StandardCharsets.US_ASCII));
                out.write(luminance);
                out.write(colourless);
            }
        }
    }
}
