package underhook.adapter.job;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.function.Consumer;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import underhook.adapter.job.Feature.Shape;
import underhook.adapter.job.text.Fields;
import underhook.adapter.job.text.Json;
import underhook.adapter.job.text.Node;
import underhook.adapter.job.text.Renaming;
import underhook.adapter.job.text.Source;
import underhook.adapter.job.text.Source.At;
import underhook.adapter.job.text.Source.Found;
import underhook.adapter.job.text.TextFile;
import underhook.app.port.ReferenceSystem;
import underhook.app.port.Wgs84;
import underhook.core.finding.FindingCode;

/** Reads the features of a GeoJSON file. Mutable while it reads. */
final class GeoJsonFile {
    private static final long MOST_BYTES = 64L << 20;
    private static final Pattern NUMBER =
            Pattern.compile("-?[0-9]{1,12}(\\.[0-9]{1,30})?([eE][+-]?[0-9]{1,2})?");
    private static final Pattern OLD_CRS_EPSG = Pattern.compile(".*EPSG:[:0-9.]*?([0-9]{4,6})");
    private static final double FARTHEST_COORDINATE = 1e8;

    private final FileReference file;
    private final Source source;
    private final Renaming renaming;
    private final Consumer<Feature> reader;
    private final Set<String> unknownSaid = new HashSet<>();
    private ReferenceSystem system = Wgs84.SYSTEM;
    private boolean isReadable = true;
    private boolean hasFeatures;

    private GeoJsonFile(
            FileReference file, Source source, Renaming renaming, Consumer<Feature> reader) {
        this.file = file;
        this.source = source;
        this.renaming = renaming;
        this.reader = reader;
    }

    /** Hands every feature to the reader; one whose geometry has a fault is not handed over. */
    static void read(
            FileReference file, Source source, Renaming renaming, Consumer<Feature> reader) {
        Optional<String> text = TextFile.read(file.path(), source, MOST_BYTES);
        if (text.isPresent()) {
            GeoJsonFile json = new GeoJsonFile(file, source, renaming, reader);
            json.chooseSystem();
            int before = source.faults().count();
            Json.readFeatures(text.get(), source, json::readMember);
            if (!json.hasFeatures && source.faults().count() == before) {
                source.fault(
                        FindingCode.FIELD_MISSING,
                        new At(1, "features"),
                        "is missing",
                        Found.allowing("a FeatureCollection"));
            }
        }
    }

    private void chooseSystem() {
        if (file.system().isOwn()) {
            isReadable = file.system().system().isPresent();
            system = file.system().system().orElse(Wgs84.SYSTEM);
        }
    }

    private void readMember(Node.Entry member) {
        switch (member.name()) {
            case "feature" -> readFeature(member);
            case "features" -> {
                hasFeatures = true;
                if (!(member.value() instanceof Node.Items)) {
                    fault(
                            member.line(),
                            "features",
                            "is no list",
                            Found.allowing(
                                    "a list of features; an empty one where there are none"));
                }
            }
            case "type" -> {
                if (!(member.value() instanceof Node.Scalar scalar
                        && scalar.text().equals("FeatureCollection"))) {
                    fault(member.line(), "type", "is no FeatureCollection", Found.NOTHING);
                }
            }
            case "crs" -> readOldCrs(member);
            default -> {
                // Anybody may add members of their own here; they say nothing about the features.
            }
        }
    }

    /** The member that GeoJSON had before 2016; some programs still write it. */
    private void readOldCrs(Node.Entry member) {
        String name = "";
        if (member.value() instanceof Node.Mapping mapping) {
            Optional<Fields> inner =
                    Json.fields(mapping, source, Renaming.none()).findMapping("properties");
            name = inner.map(fields -> fields.text("name", "")).orElse("");
        }
        Matcher epsg = OLD_CRS_EPSG.matcher(name.toUpperCase(Locale.ROOT));
        boolean isWgs84 =
                name.toUpperCase(Locale.ROOT).endsWith("CRS84")
                        || (epsg.matches() && epsg.group(1).equals("4326"));
        if (!file.system().isOwn() && !isWgs84) {
            isReadable = false;
            source.fault(
                    FindingCode.REFERENCE_SYSTEM_MISSING,
                    new At(member.line(), "crs"),
                    "is not the system that GeoJSON has by itself",
                    new Found(name, "the same system stated for this file in job.yaml"));
        }
    }

    private void fault(int line, String field, String what, Found found) {
        source.fault(FindingCode.FIELD_UNREADABLE, new At(line, field), what, found);
    }

    private void readFeature(Node.Entry member) {
        if (!(member.value() instanceof Node.Mapping mapping)) {
            fault(member.line(), "features", "holds " + member.value().kind(), Found.NOTHING);
            return;
        }
        Optional<Node.Mapping> properties = Optional.empty();
        Optional<Node.Mapping> geometry = Optional.empty();
        List<Node.Entry> outerId = new ArrayList<>();
        for (Node.Entry entry : mapping.entries()) {
            boolean isMapping = entry.value() instanceof Node.Mapping;
            if (isMapping && entry.name().equals("properties")) {
                properties = Optional.of((Node.Mapping) entry.value());
            } else if (isMapping && entry.name().equals("geometry")) {
                geometry = Optional.of((Node.Mapping) entry.value());
            } else if (entry.name().equals("id")) {
                outerId.add(entry);
            }
        }
        if (geometry.isEmpty()) {
            fault(member.line(), "geometry", "is missing", Found.NOTHING);
            return;
        }
        Node.Mapping named = withId(properties, outerId, member.line());
        readGeometry(named, geometry.get());
    }

    /** Properties with the feature's own id where they state none. */
    private static Node.Mapping withId(
            Optional<Node.Mapping> properties, List<Node.Entry> outerId, int line) {
        List<Node.Entry> entries = new ArrayList<>();
        properties.ifPresent(mapping -> entries.addAll(mapping.entries()));
        if (entries.stream().noneMatch(entry -> entry.name().equalsIgnoreCase("id"))) {
            entries.addAll(outerId);
        }
        return new Node.Mapping(line, entries);
    }

    private void readGeometry(Node.Mapping properties, Node.Mapping geometry) {
        String type = "";
        Optional<Node> coordinates = Optional.empty();
        for (Node.Entry entry : geometry.entries()) {
            if (entry.name().equals("type") && entry.value() instanceof Node.Scalar scalar) {
                type = scalar.text();
            } else if (entry.name().equals("coordinates")) {
                coordinates = Optional.of(entry.value());
            }
        }
        boolean isMany = type.startsWith("Multi");
        Optional<Shape> shape = shape(isMany ? type.substring("Multi".length()) : type);
        if (shape.isEmpty()) {
            fault(
                    geometry.line(),
                    "geometry",
                    "is of an unknown type",
                    new Found(type, "Point, LineString, Polygon, or Multi of them"));
            return;
        }
        if (coordinates.isEmpty()) {
            fault(geometry.line(), "coordinates", "is missing", Found.NOTHING);
            return;
        }
        List<Node> parts = List.of(coordinates.get());
        if (isMany) {
            parts = items(coordinates.get());
        }
        for (int i = 0; i < parts.size(); i++) {
            readPart(new Part(properties, isMany ? i + 1 : 0, shape.get()), parts.get(i));
        }
    }

    private static Optional<Shape> shape(String type) {
        return switch (type) {
            case "Point" -> Optional.of(Shape.POINT);
            case "LineString" -> Optional.of(Shape.LINE);
            case "Polygon" -> Optional.of(Shape.AREA);
            default -> Optional.empty();
        };
    }

    private record Part(Node.Mapping properties, int number, Shape shape) {}

    private List<Node> items(Node node) {
        if (node instanceof Node.Items items && !items.nodes().isEmpty()) {
            return items.nodes();
        }
        fault(
                node.line(),
                "coordinates",
                node instanceof Node.Items ? "is empty" : "is " + node.kind(),
                Found.allowing("lists of numbers"));
        return List.of();
    }

    private void readPart(Part part, Node coordinates) {
        int before = source.faults().count();
        List<Node> rings = part.shape == Shape.AREA ? items(coordinates) : List.of(coordinates);
        if (rings.isEmpty()) {
            return;
        }
        List<Position> outline = new ArrayList<>();
        List<Node> pairs = part.shape == Shape.POINT ? rings : items(rings.get(0));
        for (Node pair : pairs) {
            readPair(pair).ifPresent(outline::add);
        }
        if (source.faults().count() == before && isReadable) {
            checkLength(part, outline, coordinates.line());
        }
        if (source.faults().count() == before && isReadable) {
            reader.accept(
                    new Feature(
                            part.properties.line(),
                            Json.fields(part.properties, source, renaming),
                            part.number,
                            part.shape,
                            part.shape == Shape.AREA
                                    ? outline.subList(0, outline.size() - 1)
                                    : outline,
                            rings.size() > 1,
                            unknownSaid));
        }
    }

    private void checkLength(Part part, List<Position> outline, int line) {
        if (part.shape == Shape.LINE && outline.size() < 2) {
            fault(line, "coordinates", "is no line", Found.allowing("two points or more"));
        }
        if (part.shape == Shape.AREA) {
            boolean isClosed =
                    outline.size() >= 4
                            && outline.get(0)
                                    .point()
                                    .equals(outline.get(outline.size() - 1).point());
            if (!isClosed) {
                fault(
                        line,
                        "coordinates",
                        "is no closed ring",
                        Found.allowing("four points or more, the last the same as the first"));
            }
        }
    }

    private Optional<Position> readPair(Node node) {
        List<Node> numbers = items(node);
        if (numbers.isEmpty()) {
            return Optional.empty();
        }
        double[] pair = new double[2];
        for (int i = 0; i < 2; i++) {
            String text =
                    i < numbers.size() && numbers.get(i) instanceof Node.Scalar scalar
                            ? scalar.text()
                            : "";
            boolean isNumber = NUMBER.matcher(text).matches();
            pair[i] = isNumber ? Double.parseDouble(text) : Double.NaN;
            if (!(Math.abs(pair[i]) <= FARTHEST_COORDINATE)) {
                fault(
                        node.line(),
                        "coordinates",
                        isNumber ? "is out of any range" : "is no number",
                        new Found(text, "two numbers, x and y"));
                return Optional.empty();
            }
        }
        if (!isReadable) {
            return Optional.empty();
        }
        boolean isDegrees = Math.abs(pair[0]) <= 180 && Math.abs(pair[1]) <= 90;
        Position.Pair stated = new Position.Pair(system, pair[0], pair[1]);
        if (system == Wgs84.SYSTEM && !isDegrees && stated.swapped().toGeo().isEmpty()) {
            source.fault(
                    FindingCode.FIELD_OUT_OF_RANGE,
                    new At(node.line(), "coordinates"),
                    "is no longitude and latitude",
                    new Found(
                            stated.typed(), "degrees, or a crs stated for this file in job.yaml"));
            return Optional.empty();
        }
        return Position.of(source, new At(node.line(), "coordinates"), stated);
    }
}
