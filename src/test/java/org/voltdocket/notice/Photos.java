package org.voltdocket.notice;

import java.awt.Color;
import java.awt.GradientPaint;
import java.awt.Graphics2D;
import java.awt.RenderingHints;
import java.awt.image.BufferedImage;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.Random;
import javax.imageio.IIOImage;
import javax.imageio.ImageIO;
import javax.imageio.ImageWriteParam;
import javax.imageio.ImageWriter;
import javax.imageio.stream.MemoryCacheImageOutputStream;

/** Invented photos: shapes and light by chance, the same for the same seed at any size. */
public final class Photos {

    private Photos() {}

    public static BufferedImage scene(long seed, int width, int height) {
        BufferedImage image = new BufferedImage(width, height, BufferedImage.TYPE_INT_RGB);
        Graphics2D g = image.createGraphics();
        g.setRenderingHint(RenderingHints.KEY_ANTIALIASING, RenderingHints.VALUE_ANTIALIAS_ON);
        g.scale(width / 1000.0, height / 1000.0);
        Random chance = new Random(seed);
        g.setPaint(new GradientPaint(0, 0, colour(chance), 1000, 1000, colour(chance)));
        g.fillRect(0, 0, 1000, 1000);
        for (int i = 0; i < 40; i++) {
            g.setColor(colour(chance));
            int x = chance.nextInt(1000) - 100;
            int y = chance.nextInt(1000) - 100;
            int w = 60 + chance.nextInt(300);
            int h = 60 + chance.nextInt(300);
            if (i % 2 == 0) {
                g.fillOval(x, y, w, h);
            } else {
                g.fillRect(x, y, w, h);
            }
        }
        g.dispose();
        return image;
    }

    public static BufferedImage scaled(BufferedImage from, int width, int height) {
        BufferedImage image = new BufferedImage(width, height, BufferedImage.TYPE_INT_RGB);
        Graphics2D g = image.createGraphics();
        g.setRenderingHint(RenderingHints.KEY_INTERPOLATION, RenderingHints.VALUE_INTERPOLATION_BILINEAR);
        g.drawImage(from, 0, 0, width, height, null);
        g.dispose();
        return image;
    }

    public static byte[] jpeg(BufferedImage image, float quality) {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        ImageWriter writer = ImageIO.getImageWritersByFormatName("jpeg").next();
        ImageWriteParam how = writer.getDefaultWriteParam();
        how.setCompressionMode(ImageWriteParam.MODE_EXPLICIT);
        how.setCompressionQuality(quality);
        try (MemoryCacheImageOutputStream to = new MemoryCacheImageOutputStream(out)) {
            writer.setOutput(to);
            writer.write(null, new IIOImage(image, null, null), how);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        } finally {
            writer.dispose();
        }
        return out.toByteArray();
    }

    public static byte[] png(BufferedImage image) {
        try {
            ByteArrayOutputStream out = new ByteArrayOutputStream();
            ImageIO.write(image, "png", out);
            return out.toByteArray();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static Color colour(Random chance) {
        return new Color(chance.nextInt(256), chance.nextInt(256), chance.nextInt(256));
    }
}
