package underhook.adapter.osm;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import underhook.adapter.osm.OsmFile.Spot;
import underhook.adapter.osm.Outline.Piece;
import underhook.adapter.osm.Survey.Point;
import underhook.adapter.osm.Survey.Relation;
import underhook.adapter.osm.Survey.Way;
import underhook.app.port.MapReader.Contents;
import underhook.core.geo.GeoPoint;
import underhook.core.job.CrossingRule;
import underhook.core.job.Hanging;
import underhook.core.job.MapFeature;
import underhook.core.job.Wire;
import underhook.core.unit.Units;

/** Makes our things of nodes, ways and relations. Mutable while it makes them. */
final class Things {
    /**
     * How far a drawn line may be off, m: traced from pictures from above whose own place is good to a few
     * metres. @source PRACTICE
     */
    private static final double LATERAL_M = 5;

    private static final double CROSSING_ABOVE_M = 30;
    private static final double CROSSING_OFF_SQUARE_DEG = 15;

    private final Reach reach;
    private final Positions positions;
    private final String source;
    private final List<MapFeature> features = new ArrayList<>();
    private final List<Wire> wires = new ArrayList<>();
    private final Set<String> ids = new HashSet<>();
    private final Set<Long> carriers = new HashSet<>();
    private long passedOver;
    private long joinedNodes;

    Things(Reach reach, Positions positions, String source) {
        this.reach = reach;
        this.positions = positions;
        this.source = source;
    }

    /** All things; {@code members} has the nodes of the ways that relations name, as far as known. */
    Contents of(Survey survey, Map<Long, long[]> members) throws OsmFault {
        passedOver = survey.passedOver();
        survey.ways().forEach(this::addWay);
        for (Relation relation : survey.relations()) {
            addRelation(relation, members);
        }
        survey.points().forEach(this::addPoint);
        return new Contents(features, wires, passedOver, List.of());
    }

    private void addPoint(Point point) {
        for (Meaning meaning : point.meanings()) {
            // What carries a drawn wire is in the wire, with its height.
            if (meaning.form() != Meaning.Form.SUPPORT || !carriers.contains(point.id())) {
                addFeature(
                        "n" + point.id(), meaning, MapFeature.Shape.POINT, List.of(point.spot()));
            }
        }
    }

    private void addWay(Way way) {
        Outline outline = Outline.of(way.nodes(), positions);
        List<Piece> pieces = outline.pieces(reach);
        String id = "w" + way.id();
        if (way.meanings().isEmpty() && way.wires().isEmpty()) {
            passedOver += pieces.isEmpty() ? 0 : 1;
            return;
        }
        if (!outline.isWhole() && !pieces.isEmpty()) {
            passedOver++;
        }
        for (WireMeaning wire : way.wires()) {
            for (int i = 0; i < pieces.size(); i++) {
                addWire(pieces.size() == 1 ? id : id + "-" + (i + 1), wire, pieces.get(i));
            }
        }
        for (Meaning meaning : way.meanings()) {
            addOutline(id, meaning, outline);
        }
    }

    private void addRelation(Relation relation, Map<Long, long[]> members) throws OsmFault {
        List<long[]> known = new ArrayList<>();
        for (long way : relation.ways()) {
            long[] nodes = members.get(way);
            if (nodes != null) {
                known.add(nodes);
                joinedNodes += nodes.length;
            }
        }
        if (joinedNodes > Survey.MOST_HELD) {
            throw Survey.tooMuch();
        }
        boolean isCut = known.size() < relation.ways().length;
        int before = features.size();
        int number = 0;
        for (long[] ring : Rings.join(known)) {
            number++;
            Outline outline = Outline.of(ring, positions);
            isCut |= !Rings.isClosed(ring) || !outline.isWhole();
            for (Meaning meaning : relation.meanings()) {
                addOutline("r" + relation.id() + "-" + number, asArea(meaning), outline);
            }
        }
        passedOver += isCut && features.size() > before ? 1 : 0;
    }

    /** A relation of outlines is an area, whatever its ways would be alone. */
    private static Meaning asArea(Meaning meaning) {
        return new Meaning(
                meaning.kind(), Meaning.Form.AREA, meaning.heightM(), meaning.heightEstimated());
    }

    private void addOutline(String id, Meaning meaning, Outline outline) {
        boolean isArea =
                meaning.form() != Meaning.Form.LINE
                        && Rings.isClosed(outline.nodes())
                        && outline.isWhole();
        if (isArea) {
            List<Spot> ring = outline.ring(reach);
            if (!ring.isEmpty()) {
                addFeature(id, meaning, MapFeature.Shape.AREA, ring);
            }
            return;
        }
        List<Piece> pieces = outline.pieces(reach);
        for (int i = 0; i < pieces.size(); i++) {
            String part = pieces.size() == 1 ? id : id + "-" + (i + 1);
            addFeature(part, meaning, MapFeature.Shape.LINE, pieces.get(i).spots());
        }
    }

    private void addFeature(
            String id, Meaning meaning, MapFeature.Shape shape, List<Spot> outline) {
        features.add(
                new MapFeature(
                        unused(id),
                        meaning.kind(),
                        shape,
                        toGeo(outline),
                        0,
                        crossing(meaning.kind()),
                        meaning.heightM(),
                        meaning.heightEstimated(),
                        source));
    }

    private static CrossingRule crossing(MapFeature.Kind kind) {
        return switch (kind) {
            case ROAD, TRACK, TRAIL, RAILWAY -> CrossingRule.GUARDED;
            case HOUSE, PEOPLE, MAST -> CrossingRule.NEVER;
            case WATER, FOREST, PROTECTED -> CrossingRule.ALLOWED;
        };
    }

    private void addWire(String id, WireMeaning wire, Piece piece) {
        List<Optional<Stated>> stated = piece.nodes().stream().map(positions::findHeight).toList();
        List<Double> tops =
                stated.stream()
                        .map(top -> top.map(Stated::heightM).orElse(wire.highestM()))
                        .toList();
        boolean anyStated = stated.stream().anyMatch(Optional::isPresent);
        boolean allStated =
                stated.stream().allMatch(top -> top.isPresent() && !top.get().isRough());
        carriers.addAll(piece.nodes());
        wires.add(
                new Wire(
                        unused(id),
                        toGeo(piece.spots()),
                        tops.stream().mapToDouble(top -> top).max().orElseThrow(),
                        LATERAL_M,
                        true,
                        wire.voltageV(),
                        CrossingRule.NEVER,
                        CROSSING_ABOVE_M,
                        Units.degToRad(CROSSING_OFF_SQUARE_DEG),
                        true,
                        new Hanging(
                                wire.kind(),
                                anyStated ? tops : List.of(),
                                OptionalDouble.empty(),
                                OptionalDouble.empty(),
                                OptionalDouble.empty(),
                                OptionalDouble.empty(),
                                !allStated),
                        source));
    }

    /** A thing that means several things has a number behind its id from the second on. */
    private String unused(String id) {
        String free = id;
        for (int i = 2; !ids.add(free); i++) {
            free = id + "." + i;
        }
        return free;
    }

    private static List<GeoPoint> toGeo(List<Spot> spots) {
        return spots.stream().map(s -> new GeoPoint(s.latE7() / 1e7, s.lonE7() / 1e7)).toList();
    }
}
