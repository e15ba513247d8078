package underhook.adapter.osm;

import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import underhook.adapter.osm.OsmFile.Member;
import underhook.adapter.osm.OsmFile.Part;
import underhook.adapter.osm.OsmFile.Spot;
import underhook.adapter.osm.OsmFile.Tags;

/**
 * The first reading: what may touch the box is kept, the rest is let go. Mutable.
 *
 * <p>Nodes must come before ways and ways before relations.
 */
final class Survey implements OsmFile.Sink {
    /** Most positions and things that are held of a file's part in the box. */
    static final int MOST_HELD = 4_000_000;

    /** A node in the box that means something. */
    record Point(long id, Spot spot, List<Meaning> meanings) {}

    /** A way that may touch the box; one that means nothing is only counted. */
    @SuppressWarnings("ArrayRecordComponent") // never compared, and there are very many
    record Way(long id, long[] nodes, List<Meaning> meanings, List<WireMeaning> wires) {}

    /** A relation whose outline may touch the box. */
    @SuppressWarnings("ArrayRecordComponent") // never compared, and there are very many
    record Relation(long id, long[] ways, List<Meaning> meanings) {}

    private static final Set<String> AREA_TYPES = Set.of("multipolygon", "boundary");

    private final Reach reach;
    private final SideTable nodeSides;
    private final SideTable waySides;
    private final List<Point> points = new ArrayList<>();
    private final List<Way> ways = new ArrayList<>();
    private final List<Relation> relations = new ArrayList<>();
    private final EnumSet<Part> seen = EnumSet.noneOf(Part.class);
    private long passedOver;
    private long held;
    private boolean isUnordered;

    Survey(Reach reach, long fileBytes) {
        this.reach = reach;
        nodeSides = new SideTable(fileBytes);
        waySides = new SideTable(fileBytes / 8);
    }

    List<Point> points() {
        return points;
    }

    List<Way> ways() {
        return ways;
    }

    List<Relation> relations() {
        return relations;
    }

    /** Nodes with tags in the box that mean nothing to us. */
    long passedOver() {
        return passedOver;
    }

    /** Whether something came before what it is made of, so that it may have been let go wrongly. */
    boolean isUnordered() {
        return isUnordered;
    }

    boolean hasSeen(Part part) {
        return seen.contains(part);
    }

    @Override
    public void node(long id, Spot spot, Tags tags) throws OsmFault {
        isUnordered |= seen.contains(Part.WAYS) || seen.contains(Part.RELATIONS);
        seen.add(Part.NODES);
        nodeSides.add(id, reach.sides(spot));
        if (!reach.holds(spot)) {
            return;
        }
        Map<String, String> text = tags.toMap();
        if (text.isEmpty()) {
            return;
        }
        List<Meaning> meanings =
                Meaning.of(new Tagged(text)).stream()
                        .filter(meaning -> meaning.form() != Meaning.Form.LINE)
                        .toList();
        if (meanings.isEmpty()) {
            passedOver++;
        } else {
            hold(1);
            points.add(new Point(id, spot, meanings));
        }
    }

    @Override
    public void way(long id, long[] nodes, Tags tags) throws OsmFault {
        isUnordered |= seen.contains(Part.RELATIONS);
        seen.add(Part.WAYS);
        int sides = Reach.EVERY_SIDE;
        for (long node : nodes) {
            sides &= nodeSides.get(node);
        }
        waySides.add(id, sides);
        if (sides != 0) {
            return;
        }
        Map<String, String> text = tags.toMap();
        if (!text.isEmpty()) {
            hold(nodes.length);
            Tagged tagged = new Tagged(text);
            ways.add(new Way(id, nodes, Meaning.of(tagged), WireMeaning.of(tagged)));
        }
    }

    @Override
    public void relation(long id, List<Member> members, Tags tags) throws OsmFault {
        seen.add(Part.RELATIONS);
        long[] outer =
                members.stream()
                        .filter(member -> !member.isInner())
                        .mapToLong(Member::way)
                        .distinct()
                        .toArray();
        int sides = Reach.EVERY_SIDE;
        for (long way : outer) {
            sides &= waySides.get(way);
        }
        if (sides != 0) {
            return;
        }
        Map<String, String> text = tags.toMap();
        if (!AREA_TYPES.contains(text.getOrDefault("type", ""))) {
            return;
        }
        List<Meaning> meanings = Meaning.of(new Tagged(text));
        if (!meanings.isEmpty()) {
            hold(outer.length);
            relations.add(new Relation(id, outer, meanings));
        }
    }

    private void hold(int more) throws OsmFault {
        held += more;
        if (held > MOST_HELD) {
            throw tooMuch();
        }
    }

    static OsmFault tooMuch() {
        return OsmFault.tooLarge(
                "has more around the job than can be held",
                "at most " + MOST_HELD + " points; cut the file to the job's surroundings");
    }
}
