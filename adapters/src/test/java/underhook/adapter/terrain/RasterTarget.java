package underhook.adapter.terrain;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.zip.ZipEntry;
import java.util.zip.ZipOutputStream;
import underhook.adapter.crs.Proj4jReferenceSystems;
import underhook.adapter.fuzz.Target;
import underhook.app.port.RasterReader;
import underhook.app.port.ReferenceSystem;
import underhook.core.geo.GeoPoint;
import underhook.core.geo.HeightField;
import underhook.core.geo.LocalFrame;
import underhook.core.geo.PlanePoint;

/** A raster by the ending of its name; heights of what is read are asked for. */
public final class RasterTarget implements Target {
    private final Proj4jReferenceSystems systems = new Proj4jReferenceSystems();
    private final RasterFiles files = new RasterFiles(systems);
    private final ReferenceSystem utm = systems.find("EPSG:25832").getValue();
    private final Path file;
    private final String name;

    private RasterTarget(Path file, String name) {
        this.file = file;
        this.name = name;
    }

    public static RasterTarget of(String name) {
        try {
            return new RasterTarget(Files.createTempDirectory("fuzz").resolve(name), name);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    @Override
    public List<byte[]> seeds() throws IOException {
        if (name.endsWith(".tif")) {
            return List.of(
                    TiffBytes.floats(ByteOrder.LITTLE_ENDIAN).encode(),
                    TiffBytes.floats(ByteOrder.LITTLE_ENDIAN).predicted(3).deflated().encode(),
                    TiffBytes.floats(ByteOrder.BIG_ENDIAN).tiled().lzw().encode(),
                    TiffBytes.words(ByteOrder.LITTLE_ENDIAN).predicted(2).lzw().encode(),
                    TiffBytes.words(ByteOrder.BIG_ENDIAN)
                            .deflated()
                            .text(42113, "-9999")
                            .text(
                                    42112,
                                    "<GDALMetadata><Item name=\"u\" sample=\"0\" role=\"unittype\">ft</Item></GDALMetadata>")
                            .encode());
        }
        if (name.endsWith(".asc")) {
            return List.of(
                    ascii("ncols 3\nnrows 2\nxllcorner 499950\nyllcorner 5200000\ncellsize 100\n"),
                    ascii(
                            "ncols 3\nnrows 2\nxllcenter 500000\nyllcenter 5200050\ndx 100\ndy 90\nNODATA_value -9999\n"));
        }
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        try (ZipOutputStream zip = new ZipOutputStream(out)) {
            zip.setLevel(9);
            zip.putNextEntry(new ZipEntry("N46E008.hgt"));
            zip.write(new byte[2 * 1201 * 1201]);
            zip.closeEntry();
        }
        return List.of(out.toByteArray());
    }

    private static byte[] ascii(String header) {
        return (header + "1 2.5 1e3\r\n-9999 NaN 6\n").getBytes(StandardCharsets.US_ASCII);
    }

    @Override
    public boolean read(byte[] bytes) throws IOException {
        Files.write(file, bytes);
        boolean hgt = name.endsWith(".zip");
        GeoPoint middle = hgt ? new GeoPoint(46.99, 8.2) : utm.toGeo(500_050, 5_200_050);
        RasterReader.Reading reading =
                files.read(
                        new RasterReader.Request(
                                file,
                                name,
                                name.endsWith(".asc") ? Optional.of(utm) : Optional.empty(),
                                "",
                                LocalFrame.of(middle),
                                40));
        if (reading.field().isPresent() == !reading.faults().isEmpty()) {
            throw new AssertionError("neither read nor refused");
        }
        Target.tell(reading.faults());
        reading.field().ifPresent(RasterTarget::ask);
        return reading.field().isPresent();
    }

    private static void ask(HeightField field) {
        for (int i = -5; i <= 5; i++) {
            if (field.covers(i * 9, -i * 7)) {
                double height = field.heightM(i * 9, -i * 7);
                if (!(height >= -1000 && height <= 9000)) {
                    throw new AssertionError("a height of " + height);
                }
            }
            PlanePoint centre = new PlanePoint(i * 9, 3);
            if (field.coversDisc(centre, 15)) {
                field.highestWithinM(centre, 15);
            }
        }
        field.cellSizeM();
    }
}
