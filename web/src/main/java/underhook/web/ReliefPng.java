package underhook.web;

import java.awt.image.BufferedImage;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import javax.imageio.ImageIO;
import underhook.app.desk.Relief;

/** Paints relief as a picture in shades of grey; where the terrain is not known it is clear. */
final class ReliefPng {
    private static final int OPAQUE = 0xFF000000;

    private ReliefPng() {}

    static byte[] paint(Relief relief) throws IOException {
        BufferedImage image =
                new BufferedImage(relief.columns(), relief.rows(), BufferedImage.TYPE_INT_ARGB);
        for (int row = 0; row < relief.rows(); row++) {
            for (int column = 0; column < relief.columns(); column++) {
                if (relief.isKnown(column, row)) {
                    int grey = (int) Math.round(255 * relief.brightnessFraction(column, row));
                    image.setRGB(column, row, OPAQUE | grey << 16 | grey << 8 | grey);
                }
            }
        }
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        ImageIO.setUseCache(false);
        ImageIO.write(image, "png", out);
        return out.toByteArray();
    }
}
