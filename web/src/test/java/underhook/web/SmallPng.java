package underhook.web;

import java.awt.image.BufferedImage;
import java.awt.image.IndexColorModel;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import javax.imageio.ImageIO;

/** A picture with the 256 colours that it uses most; every other becomes the nearest of them. */
final class SmallPng {
    private static final int COLOURS = 256;
    private static final int ROUNDING = 0xf8f8f8;

    private SmallPng() {}

    static byte[] of(byte[] png) throws IOException {
        BufferedImage image = ImageIO.read(new ByteArrayInputStream(png));
        int[] pixels =
                image.getRGB(0, 0, image.getWidth(), image.getHeight(), null, 0, image.getWidth());
        Map<Integer, Integer> counts = new HashMap<>();
        for (int pixel : pixels) {
            counts.merge(pixel & ROUNDING, 1, Integer::sum);
        }
        List<Integer> kept =
                counts.entrySet().stream()
                        .sorted(
                                Comparator.comparing(Map.Entry<Integer, Integer>::getValue)
                                        .reversed()
                                        .thenComparing(Map.Entry::getKey))
                        .limit(COLOURS)
                        .map(Map.Entry::getKey)
                        .toList();
        int[] palette = kept.stream().mapToInt(SmallPng::whole).toArray();
        Map<Integer, Integer> nearest = new HashMap<>();
        BufferedImage small =
                new BufferedImage(
                        image.getWidth(),
                        image.getHeight(),
                        BufferedImage.TYPE_BYTE_INDEXED,
                        new IndexColorModel(8, palette.length, palette, 0, false, -1, 0));
        for (int i = 0; i < pixels.length; i++) {
            int index =
                    nearest.computeIfAbsent(
                            pixels[i] & ROUNDING, colour -> nearest(palette, whole(colour)));
            small.getRaster().setSample(i % image.getWidth(), i / image.getWidth(), 0, index);
        }
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        ImageIO.write(small, "png", out);
        return out.toByteArray();
    }

    /** With the low bits back that rounding cut off, so that white stays white. */
    private static int whole(int colour) {
        return colour | (colour >> 5 & 0x070707);
    }

    private static int nearest(int[] palette, int colour) {
        int best = 0;
        for (int i = 1; i < palette.length; i++) {
            if (apart(palette[i], colour) < apart(palette[best], colour)) {
                best = i;
            }
        }
        return best;
    }

    private static int apart(int one, int other) {
        int sum = 0;
        for (int shift = 0; shift <= 16; shift += 8) {
            int step = (one >> shift & 0xff) - (other >> shift & 0xff);
            sum += step * step;
        }
        return sum;
    }
}
