package underhook.adapter.geofile.aixm;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.OptionalDouble;
import java.util.function.DoubleConsumer;
import javax.xml.stream.XMLStreamException;
import org.jspecify.annotations.Nullable;
import underhook.adapter.geofile.source.Decimals;
import underhook.adapter.geofile.source.Unreadable;
import underhook.adapter.geofile.source.XmlCursor;
import underhook.core.finding.FindingCode;
import underhook.core.job.MapFeature.Shape;

/**
 * Reads one VerticalStructure. Mutable.
 *
 * @source AIXM-5.1.1 VerticalStructure, VerticalStructurePart; AIXM-TEMPORALITY 1.0 time slices
 */
final class StructureReader {
    private static final int MOST_PARTS = 20_000;

    private final XmlCursor cursor;
    private final Axes axes;
    private final List<Slice> slices = new ArrayList<>();
    private final List<Unreadable> faults = new ArrayList<>();
    private String identifier = "";
    private int parts;

    private StructureReader(XmlCursor cursor, Axes axes) {
        this.cursor = cursor;
        this.axes = axes;
    }

    /**
     * An obstacle as stated.
     *
     * @param faults what of it cannot be read
     */
    record Structure(int line, String identifier, List<Slice> slices, List<Unreadable> faults) {}

    /** Reads the current element. */
    static Structure read(XmlCursor cursor, Axes axes) throws XMLStreamException {
        int line = cursor.line();
        StructureReader reader = new StructureReader(cursor, axes);
        try {
            cursor.eachChild(
                    () -> {
                        switch (cursor.name()) {
                            case "identifier" -> reader.identifier = cursor.text();
                            case "timeSlice" -> cursor.eachChild(reader::readSlice);
                            default -> {
                                // Metadata and bounds say nothing more.
                            }
                        }
                    });
        } catch (Unreadable e) {
            reader.faults.add(e);
        }
        return new Structure(line, reader.identifier, reader.slices, reader.faults);
    }

    /** A time slice while it is read. */
    private static final class Draft {
        private String interpretation = "";
        private String begin = "";
        private double sequence;
        private double correction;
        private String name = "";
        private String type = "";
        private double radiusM;
        private double lengthM;
        private double widthM;
        private final List<Part> parts = new ArrayList<>();

        Slice finished() {
            boolean isWhole =
                    interpretation.equals("BASELINE") || interpretation.equals("SNAPSHOT");
            // The size of the whole would be counted twice where its parts are drawn.
            boolean isDrawn =
                    parts.stream()
                            .flatMap(part -> part.outlines().stream())
                            .anyMatch(outline -> outline.shape() != Shape.POINT);
            double reachM = isDrawn ? 0 : Math.max(radiusM, Math.hypot(lengthM, widthM) / 2);
            return new Slice(isWhole, begin, sequence, correction, name, type, reachM, parts);
        }
    }

    private void readSlice() throws XMLStreamException, Unreadable {
        if (!cursor.name().equals("VerticalStructureTimeSlice")) {
            return;
        }
        Draft draft = new Draft();
        cursor.eachChild(() -> readProperty(draft));
        slices.add(draft.finished());
    }

    private void readProperty(Draft draft) throws XMLStreamException, Unreadable {
        switch (cursor.name()) {
            case "validTime" -> cursor.eachChild(() -> cursor.eachChild(() -> readBegin(draft)));
            case "interpretation" -> draft.interpretation = cursor.text();
            case "sequenceNumber" -> draft.sequence = number("sequenceNumber");
            case "correctionNumber" -> draft.correction = number("correctionNumber");
            case "name" -> draft.name = cursor.text();
            case "type" -> draft.type = type();
            case "radius" -> length(value -> draft.radiusM = value);
            case "length" -> length(value -> draft.lengthM = value);
            case "width" -> length(value -> draft.widthM = value);
            case "part" ->
                    cursor.eachChild(
                            () -> {
                                Part part = readPart();
                                if (part != null) {
                                    draft.parts.add(part);
                                }
                            });
            default -> {
                // Lights, marks, notes and what it carries.
            }
        }
    }

    private void readBegin(Draft draft) throws XMLStreamException {
        if (cursor.name().equals("beginPosition") || cursor.name().equals("timePosition")) {
            draft.begin = cursor.text();
        }
    }

    private double number(String field) throws XMLStreamException, Unreadable {
        String text = cursor.text();
        return text.isEmpty() ? 0 : Decimals.read(field, text);
    }

    private String type() throws XMLStreamException {
        return cursor.text().toUpperCase(Locale.ROOT);
    }

    private void length(DoubleConsumer consumer) throws XMLStreamException, Unreadable {
        Lengths.read(cursor).ifPresent(consumer);
    }

    /** A part while it is read. */
    private static final class PartDraft {
        private String designator = "";
        private String type = "";
        private OptionalDouble extentM = OptionalDouble.empty();
        private OptionalDouble heightM = OptionalDouble.empty();
        private OptionalDouble notedM = OptionalDouble.empty();
        private OptionalDouble topAmslM = OptionalDouble.empty();
        private OptionalDouble accuracyM = OptionalDouble.empty();
        private List<Outline> outlines = List.of();

        Part finished() {
            return new Part(
                    designator,
                    type,
                    extentM,
                    heightM.isPresent() ? heightM : notedM,
                    topAmslM,
                    accuracyM,
                    outlines);
        }
    }

    private @Nullable Part readPart() throws XMLStreamException, Unreadable {
        if (!cursor.name().equals("VerticalStructurePart")) {
            return null;
        }
        parts++;
        if (parts > MOST_PARTS) {
            throw Unreadable.of(FindingCode.TOO_LARGE, "has more than " + MOST_PARTS + " parts")
                    .in("part");
        }
        PartDraft draft = new PartDraft();
        cursor.eachChild(
                () -> {
                    try {
                        readPartProperty(draft);
                    } catch (Unreadable e) {
                        faults.add(e);
                    }
                });
        return draft.finished();
    }

    private void readPartProperty(PartDraft draft) throws XMLStreamException, Unreadable {
        switch (cursor.name()) {
            case "designator" -> draft.designator = cursor.text();
            case "type" -> draft.type = type();
            case "verticalExtent" -> draft.extentM = positive(Lengths.read(cursor));
            case "height" -> draft.heightM = positive(Lengths.read(cursor));
            case "annotation" -> readNote(draft);
            case "horizontalProjection_location", "horizontalProjection" ->
                    readGeometry(draft, Shape.POINT);
            case "horizontalProjection_linearExtent" -> readGeometry(draft, Shape.LINE);
            case "horizontalProjection_surfaceExtent" -> readGeometry(draft, Shape.AREA);
            default -> {
                // Its lights have positions too, which are not where it stands.
            }
        }
    }

    /** What is not above ground is no height. */
    private static OptionalDouble positive(OptionalDouble lengthM) throws Unreadable {
        if (lengthM.isPresent() && lengthM.getAsDouble() >= 2000) {
            throw Unreadable.range("verticalExtent", "is higher than anything that stands")
                    .found(lengthM.getAsDouble() + " m");
        }
        return lengthM.isPresent() && lengthM.getAsDouble() > 0 ? lengthM : OptionalDouble.empty();
    }

    private void readGeometry(PartDraft draft, Shape shape) throws XMLStreamException, Unreadable {
        Gml gml = new Gml(cursor, shape);
        gml.read(axes);
        draft.outlines = gml.outlines();
        draft.topAmslM = gml.topAmslM();
        draft.accuracyM = gml.accuracyM();
    }

    /** A rope has no extent of its own; guidelines put its height above ground into a note. */
    private void readNote(PartDraft draft) throws XMLStreamException, Unreadable {
        StringBuilder property = new StringBuilder();
        StringBuilder text = new StringBuilder();
        cursor.eachChild(
                () ->
                        cursor.eachChild(
                                () -> {
                                    if (cursor.name().equals("propertyName")) {
                                        property.append(cursor.text());
                                    } else if (cursor.name().equals("translatedNote")) {
                                        text.append(cursor.text()).append(' ');
                                    }
                                }));
        if (property.toString().equals("verticalExtent")) {
            OptionalDouble notedM = Lengths.inWords(text.toString());
            boolean isHigher = notedM.orElse(0) > draft.notedM.orElse(0);
            draft.notedM = isHigher && notedM.orElse(0) < 2000 ? notedM : draft.notedM;
        }
    }
}
