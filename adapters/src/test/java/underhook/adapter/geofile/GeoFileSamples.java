package underhook.adapter.geofile;

import static java.nio.ByteOrder.LITTLE_ENDIAN;
import static java.nio.charset.StandardCharsets.UTF_8;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.SQLException;
import java.util.zip.ZipEntry;
import java.util.zip.ZipOutputStream;

/** Small files that are right. */
final class GeoFileSamples {
    private static final byte LITTLE = 1;

    private GeoFileSamples() {}

    /** Sixty lines of two points. */
    static byte[] geoPackage(Path file) throws IOException, SQLException {
        SmallGeoPackage.make(file, SmallGeoPackage.things(4326));
        for (int i = 0; i < 60; i++) {
            SmallGeoPackage.insert(
                    file,
                    "row " + i,
                    SmallGeoPackage.blob(
                            LITTLE_ENDIAN,
                            0,
                            4326,
                            LITTLE,
                            1002,
                            2,
                            11.0,
                            46.0,
                            1.0,
                            11.1,
                            46.1,
                            2.0));
        }
        return Files.readAllBytes(file);
    }

    static byte[] kmz() throws IOException {
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        try (ZipOutputStream zip = new ZipOutputStream(bytes)) {
            zip.putNextEntry(new ZipEntry("doc.kml"));
            zip.write(KmlReaderTest.SAMPLE.getBytes(UTF_8));
        }
        return bytes.toByteArray();
    }
}
