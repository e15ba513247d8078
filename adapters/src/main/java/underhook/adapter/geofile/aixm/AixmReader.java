package underhook.adapter.geofile.aixm;

import java.nio.file.Path;
import java.util.Locale;
import javax.xml.stream.XMLStreamException;
import underhook.adapter.geofile.source.Faults;
import underhook.adapter.geofile.source.Unreadable;
import underhook.adapter.geofile.source.XmlCursor;
import underhook.app.port.MapBox;
import underhook.app.port.MapReader;

/** Reads the obstacles of an AIXM message. */
public final class AixmReader implements MapReader {
    /** Registers of whole countries are large, but streamed. */
    private static final long MOST_BYTES = 1L << 30;

    private static final String SCHEMA = "http://www.aixm.aero/schema/5.";

    @Override
    public boolean reads(String fileName) {
        String small = fileName.toLowerCase(Locale.ROOT);
        return small.endsWith(".xml") || small.endsWith(".aixm");
    }

    @Override
    public String usualLicence() {
        return "";
    }

    @Override
    public String usualAttribution() {
        return "";
    }

    @Override
    public Contents read(Path file, String statedName, MapBox box) {
        Faults faults = new Faults(statedName);
        Obstacles obstacles = new Obstacles(statedName, box, faults);
        XmlCursor.read(file, MOST_BYTES, faults, cursor -> readMessage(cursor, obstacles));
        return obstacles.contents();
    }

    private static void readMessage(XmlCursor cursor, Obstacles obstacles)
            throws XMLStreamException, Unreadable {
        boolean isOurs = cursor.namespace().startsWith(SCHEMA);
        if (!cursor.name().equals("AIXMBasicMessage") || !isOurs) {
            throw Unreadable.file("is no AIXM message")
                    .found(cursor.name())
                    .allowing("AIXMBasicMessage of AIXM 5.1, 5.1.1 or 5.2");
        }
        Axes[] axes = {Axes.UNKNOWN};
        cursor.eachChild(
                () -> {
                    switch (cursor.name()) {
                        case "boundedBy" ->
                                cursor.eachChild(
                                        () -> axes[0] = axesOf(cursor.attribute("srsName")));
                        case "hasMember" ->
                                cursor.eachChild(() -> readMember(cursor, axes[0], obstacles));
                        default -> {
                            // The message's own metadata.
                        }
                    }
                });
    }

    /** A system that is not known leaves it to each geometry to state its own. */
    private static Axes axesOf(String srsName) {
        try {
            return Axes.UNKNOWN.or(srsName);
        } catch (Unreadable e) {
            return Axes.UNKNOWN;
        }
    }

    private static void readMember(XmlCursor cursor, Axes axes, Obstacles obstacles)
            throws XMLStreamException {
        boolean isStructure =
                cursor.name().equals("VerticalStructure") && cursor.namespace().startsWith(SCHEMA);
        if (isStructure) {
            obstacles.add(StructureReader.read(cursor, axes));
        }
    }
}
