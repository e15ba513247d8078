package underhook.adapter.job;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import underhook.adapter.job.Feature.Shape;
import underhook.adapter.job.Mentions.Family;
import underhook.adapter.job.text.Fields;
import underhook.adapter.job.text.Quantity;
import underhook.adapter.job.text.Range;
import underhook.adapter.job.text.Source;
import underhook.adapter.job.text.Source.At;
import underhook.adapter.job.text.Source.Found;
import underhook.core.finding.FindingCode;
import underhook.core.geo.GeoPoint;
import underhook.core.job.CrossingRule;
import underhook.core.job.Hanging;
import underhook.core.job.Hours;
import underhook.core.job.MapFeature;
import underhook.core.job.ReleaseArea;
import underhook.core.job.Wire;
import underhook.core.job.WireKind;
import underhook.core.job.Zone;
import underhook.core.unit.Units;

/** Reads zones, wires, the map and release areas. Mutable while it reads. */
final class MapFiles {
    private static final Range DISTANCE = Range.of(0, 9999, "between 0 and 9999 m");

    /** No line was built for more than 1150 kV; from memory. */
    private static final Range VOLTAGE = Range.of(0, 1_500_000, "between 0 and 1500000 V");

    private static final Range SOME_HEIGHT = Range.above(0, 1000, "above 0 and at most 1000 m");

    private final FeatureFiles files;
    private final Mentions mentions;
    private final List<Zone> zones = new ArrayList<>();
    private final List<Wire> wires = new ArrayList<>();
    private final List<MapFeature> features = new ArrayList<>();
    private final List<ReleaseArea> areas = new ArrayList<>();

    MapFiles(FeatureFiles files, Mentions mentions) {
        this.files = files;
        this.mentions = mentions;
    }

    List<Zone> zones() {
        return zones;
    }

    List<Wire> wires() {
        return wires;
    }

    List<MapFeature> features() {
        return features;
    }

    List<ReleaseArea> areas() {
        return areas;
    }

    /** Reads a file by the field of job.yaml that names it; gives the positions in it. */
    List<Position> read(FileReference file, Source source) {
        List<Position> positions = new ArrayList<>();
        files.read(
                file,
                source,
                feature -> {
                    positions.addAll(feature.outline());
                    int before = source.faults().count();
                    refuseLongPiece(feature);
                    switch (file.role()) {
                        case "zones" -> readZone(feature, source, before);
                        case "wires" -> readWire(feature, source, before);
                        case "map" -> readMap(feature, source, before);
                        default -> readArea(feature, source, before);
                    }
                });
        return positions;
    }

    private static boolean isSound(Feature feature, Source source, int before) {
        return !feature.outline().isEmpty() && source.faults().count() == before;
    }

    private String id(Feature feature, Family family) {
        Fields fields = feature.properties();
        String id = fields.id("id");
        if (feature.part() > 0 && !id.isEmpty()) {
            id = id + "-" + feature.part();
        }
        mentions.declare(family, fields, "id", id);
        return id;
    }

    private static void requireShape(Feature feature, Source source, List<Shape> allowed) {
        if (!allowed.contains(feature.shape())) {
            source.fault(
                    FindingCode.FIELD_UNREADABLE,
                    new At(feature.line(), "geometry"),
                    "does not fit",
                    new Found(
                            feature.shape().word(),
                            String.join(" or ", allowed.stream().map(Shape::word).toList())));
        }
    }

    private void readZone(Feature feature, Source source, int before) {
        Fields fields = feature.properties();
        requireShape(feature, source, List.of(Shape.AREA, Shape.POINT));
        String id = id(feature, Family.ZONE);
        String name = fields.text("name", "");
        Zone.Rule rule = fields.choice("rule", Zone.Rule.class);
        List<String> kinds = fields.list("kinds");
        kinds.forEach(kind -> mentions.mention(Family.KIND, fields, "kinds", kind));
        Optional<Double> minM = find(fields, "min_agl", DISTANCE);
        Range radii = Range.above(0, 50_000, "above 0 and at most 50000 m");
        Optional<Double> radiusM = find(fields, "radius", radii);
        Optional<LocalDate> from = fields.findDate("closed_from");
        Optional<LocalDate> until = fields.findDate("closed_until");
        Optional<Hours> hours = HoursFields.read(fields);
        feature.refuseUnknown();
        boolean isPoint = feature.shape() == Shape.POINT;
        boolean needsHeight = rule == Zone.Rule.MIN_HEIGHT || rule == Zone.Rule.NO_HOVER_BELOW;
        if (isPoint && radiusM.isEmpty()) {
            fields.missing("radius_m");
        }
        if (needsHeight && minM.isEmpty()) {
            fields.missing("min_agl_m");
        }
        if (from.isPresent() && until.isPresent() && until.get().isBefore(from.get())) {
            fields.fault(
                    FindingCode.FIELD_OUT_OF_RANGE,
                    "closed_until",
                    "is before closed_from",
                    new Found(until.get().toString(), "a later day"));
        }
        if (rule == Zone.Rule.NO_FUEL && hours.isPresent() && !hours.get().isAllDay()) {
            fields.fault(
                    FindingCode.FIELD_OUT_OF_RANGE,
                    "hours_from",
                    "is stated for no-fuel",
                    new Found(
                            hours.get().say(),
                            "no hours: where no fuel is handled, none is all day"));
        }
        if (isSound(feature, source, before)) {
            zones.add(
                    new Zone(
                            id,
                            name,
                            feature.points(),
                            isPoint ? radiusM.orElse(0.0) : 0,
                            rule,
                            kinds,
                            minM.orElse(0.0),
                            from,
                            until,
                            hours.orElseThrow(),
                            source.name()));
        }
    }

    private static Optional<Double> find(Fields fields, String base, Range range) {
        OptionalDouble value = fields.findQuantity(base, Quantity.LENGTH, range);
        return value.isPresent() ? Optional.of(value.getAsDouble()) : Optional.empty();
    }

    private void readWire(Feature feature, Source source, int before) {
        Fields fields = feature.properties();
        requireShape(feature, source, List.of(Shape.LINE));
        String id = id(feature, Family.WIRE);
        double highestM = fields.quantity("highest", Quantity.LENGTH, SOME_HEIGHT);
        double lateralM = find(fields, "lateral", DISTANCE).orElse(5.0);
        boolean live = fields.yesNo("live", true);
        double voltageV = fields.findQuantity("voltage", Quantity.VOLTAGE, VOLTAGE).orElse(0);
        CrossingRule crossing =
                fields.findChoice("crossing", CrossingRule.class).orElse(CrossingRule.NEVER);
        double aboveM = find(fields, "crossing_above", SOME_HEIGHT).orElse(30.0);
        double squareRad =
                fields.findQuantity(
                                "crossing_off_square",
                                Quantity.ANGLE,
                                Range.of(0, Math.PI / 2, "between 0 and 90 degrees"))
                        .orElse(Units.degToRad(15));
        boolean registered = fields.yesNo("registered", true);
        Hanging hanging = readHanging(fields, feature.outline().size());
        feature.refuseUnknown();
        if (isSound(feature, source, before)) {
            wires.add(
                    new Wire(
                            id,
                            feature.points(),
                            highestM,
                            lateralM,
                            live,
                            voltageV,
                            crossing,
                            aboveM,
                            squareRad,
                            registered,
                            hanging,
                            source.name()));
        }
    }

    /** Where a point has slipped, the piece to it lies over the whole job or leaves out what it bounds. */
    private static void refuseLongPiece(Feature feature) {
        List<GeoPoint> points = feature.points();
        for (int i = 1; i < points.size(); i++) {
            if (Axes.isFar(points.get(i), points.get(i - 1))) {
                feature.properties()
                        .fault(
                                FindingCode.FIELD_OUT_OF_RANGE,
                                "geometry",
                                "has a piece of more than 50 km between two points",
                                Found.allowing(
                                        "a point at each bend or support, and one every 50 km"));
                return;
            }
        }
    }

    private Hanging readHanging(Fields fields, int supports) {
        WireKind kind = fields.findChoice("kind", WireKind.class).orElse(WireKind.POWER);
        List<Double> tops = fields.numbers("support_tops_m", SOME_HEIGHT);
        if (!tops.isEmpty() && tops.size() != supports) {
            fields.fault(
                    FindingCode.FIELD_OUT_OF_RANGE,
                    "support_tops_m",
                    "has " + tops.size() + " heights",
                    Found.allowing("one for each of the " + supports + " supports"));
            tops = List.of();
        }
        return new Hanging(
                kind,
                tops,
                fields.findQuantity("sag", Quantity.LENGTH, SOME_HEIGHT),
                fields.findNumber("tension_n", Range.above(0, 1e7, "above 0 and at most 1e7 N")),
                fields.findNumber(
                        "weight_n_per_m", Range.above(0, 1000, "above 0 and at most 1000 N/m")),
                fields.findNumber("diameter_m", Range.above(0, 1, "above 0 and at most 1 m")),
                fields.yesNo("height_estimated", false));
    }

    private void readMap(Feature feature, Source source, int before) {
        Fields fields = feature.properties();
        String id = id(feature, Family.FEATURE);
        MapFeature.Kind kind = fields.choice("kind", MapFeature.Kind.class);
        double bufferM = find(fields, "buffer", DISTANCE).orElse(0.0);
        CrossingRule crossing =
                fields.findChoice("crossing", CrossingRule.class).orElse(usualCrossing(kind));
        Optional<Double> heightM = find(fields, "height", DISTANCE);
        boolean estimated = fields.yesNo("height_estimated", false);
        feature.refuseUnknown();
        if (isSound(feature, source, before)) {
            MapFeature.Shape shape = MapFeature.Shape.valueOf(feature.shape().name());
            features.add(
                    new MapFeature(
                            id,
                            kind,
                            shape,
                            feature.points(),
                            bufferM,
                            crossing,
                            heightM.map(OptionalDouble::of).orElse(OptionalDouble.empty()),
                            estimated,
                            source.name()));
        }
    }

    private static CrossingRule usualCrossing(MapFeature.Kind kind) {
        return switch (kind) {
            case ROAD, TRACK, TRAIL, RAILWAY -> CrossingRule.GUARDED;
            case HOUSE, PEOPLE, MAST -> CrossingRule.NEVER;
            case WATER, FOREST, PROTECTED -> CrossingRule.ALLOWED;
        };
    }

    private void readArea(Feature feature, Source source, int before) {
        Fields fields = feature.properties();
        requireShape(feature, source, List.of(Shape.AREA));
        if (feature.hasHoles()) {
            source.fault(
                    FindingCode.FIELD_UNREADABLE,
                    new At(feature.line(), "geometry"),
                    "has a hole",
                    Found.allowing("an area without holes"));
        }
        String id = id(feature, Family.AREA);
        boolean agreed = fields.yesNo("agreed", true);
        feature.refuseUnknown();
        if (isSound(feature, source, before)) {
            areas.add(new ReleaseArea(id, feature.points(), agreed, source.name()));
        }
    }
}
