package underhook.adapter.osm;

import java.util.ArrayList;
import java.util.EnumSet;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import underhook.adapter.osm.OsmFile.Member;
import underhook.adapter.osm.OsmFile.Part;
import underhook.adapter.osm.OsmFile.Sink;
import underhook.adapter.osm.OsmFile.Spot;
import underhook.adapter.osm.OsmFile.Tags;

/**
 * One block of a PBF file: its table of texts and its groups of nodes, ways and relations.
 *
 * @source OSM-PBF definition of PrimitiveBlock, StringTable, DenseNodes, Node, Way and Relation
 */
final class PbfBlock {
    /** A block holds some thousand things; two million texts are no block. */
    private static final int MOST_TEXTS = 2_000_000;

    private static final long NANO_PER_E7 = 100;
    private static final int WAY_MEMBER = 1;

    private final List<PbfMessage> texts = new ArrayList<>();
    private final List<PbfMessage> groups = new ArrayList<>();
    private long granularityNano = 100;
    private long latOffsetNano;
    private long lonOffsetNano;

    PbfBlock(PbfMessage block) throws OsmFault {
        for (int field = block.next(); field != 0; field = block.next()) {
            switch (field) {
                case 1 -> readTexts(block.takeMessage());
                case 2 -> groups.add(block.takeMessage());
                case 17 -> granularityNano = block.takeNumber();
                case 19 -> latOffsetNano = block.takeNumber();
                case 20 -> lonOffsetNano = block.takeNumber();
                default -> block.skip();
            }
        }
    }

    private void readTexts(PbfMessage table) throws OsmFault {
        for (int field = table.next(); field != 0; field = table.next()) {
            if (field == 1) {
                texts.add(table.takeMessage());
            } else {
                table.skip();
            }
            if (texts.size() > MOST_TEXTS) {
                throw OsmFault.tooLarge("has a block with too many texts", "at most " + MOST_TEXTS);
            }
        }
    }

    /** Hands over the wanted parts; returns which parts there are. */
    EnumSet<Part> read(Set<Part> wanted, Sink sink) throws OsmFault {
        EnumSet<Part> held = EnumSet.noneOf(Part.class);
        for (PbfMessage group : groups) {
            for (int field = group.next(); field != 0; field = group.next()) {
                Part part =
                        switch (field) {
                            case 1, 2 -> Part.NODES;
                            case 3 -> Part.WAYS;
                            case 4 -> Part.RELATIONS;
                            default -> null;
                        };
                if (part != null) {
                    held.add(part);
                }
                if (part == null || !wanted.contains(part)) {
                    group.skip();
                    continue;
                }
                PbfMessage message = group.takeMessage();
                switch (field) {
                    case 1 -> readNode(message, sink);
                    case 2 -> readDense(message, sink);
                    case 3 -> readWay(message, sink);
                    default -> readRelation(message, sink);
                }
            }
        }
        return held;
    }

    private Spot spot(long lat, long lon) throws OsmFault {
        return Spot.of(
                toE7(latOffsetNano + granularityNano * lat),
                toE7(lonOffsetNano + granularityNano * lon));
    }

    /** To the nearest; a tie goes up, a hundredth of a millimetre. */
    private static long toE7(long nano) {
        return Math.floorDiv(nano + NANO_PER_E7 / 2, NANO_PER_E7);
    }

    private void readNode(PbfMessage node, Sink sink) throws OsmFault {
        Pairs tags = new Pairs();
        long id = 0;
        long lat = 0;
        long lon = 0;
        for (int field = node.next(); field != 0; field = node.next()) {
            switch (field) {
                case 1 -> id = node.takeSigned();
                case 2 -> tags.keys = node.takeMessage();
                case 3 -> tags.values = node.takeMessage();
                case 8 -> lat = node.takeSigned();
                case 9 -> lon = node.takeSigned();
                default -> node.skip();
            }
        }
        sink.node(id, spot(lat, lon), tags);
    }

    private void readDense(PbfMessage dense, Sink sink) throws OsmFault {
        PbfMessage ids = PbfMessage.EMPTY;
        PbfMessage lats = PbfMessage.EMPTY;
        PbfMessage lons = PbfMessage.EMPTY;
        PbfMessage pairs = PbfMessage.EMPTY;
        for (int field = dense.next(); field != 0; field = dense.next()) {
            switch (field) {
                case 1 -> ids = dense.takeMessage();
                case 8 -> lats = dense.takeMessage();
                case 9 -> lons = dense.takeMessage();
                case 10 -> pairs = dense.takeMessage();
                default -> dense.skip();
            }
        }
        long id = 0;
        long lat = 0;
        long lon = 0;
        while (ids.hasMore()) {
            id += ids.signed();
            lat += lats.signed();
            lon += lons.signed();
            sink.node(id, spot(lat, lon), denseTags(pairs));
        }
        if (lats.hasMore() || lons.hasMore()) {
            throw PbfMessage.broken();
        }
    }

    /** Keys and values in turns; a zero ends each node's. A group without any tag has no zeros. */
    private Tags denseTags(PbfMessage pairs) throws OsmFault {
        Map<String, String> tags = Map.of();
        while (pairs.hasMore()) {
            long key = pairs.varint();
            if (key == 0) {
                break;
            }
            if (tags.isEmpty()) {
                tags = new HashMap<>();
            }
            tags.put(text(key), text(pairs.varint()));
        }
        if (tags.isEmpty()) {
            return Tags.NONE;
        }
        Map<String, String> read = tags;
        return () -> read;
    }

    private void readWay(PbfMessage way, Sink sink) throws OsmFault {
        Pairs tags = new Pairs();
        long id = 0;
        PbfMessage refs = PbfMessage.EMPTY;
        for (int field = way.next(); field != 0; field = way.next()) {
            switch (field) {
                case 1 -> id = way.takeNumber();
                case 2 -> tags.keys = way.takeMessage();
                case 3 -> tags.values = way.takeMessage();
                case 8 -> refs = way.takeMessage();
                default -> way.skip();
            }
        }
        LongList nodes = new LongList();
        for (long node = 0; refs.hasMore(); ) {
            node += refs.signed();
            nodes.add(node);
            checkCount(nodes.size());
        }
        sink.way(id, nodes.toArray(), tags);
    }

    private void readRelation(PbfMessage relation, Sink sink) throws OsmFault {
        Pairs tags = new Pairs();
        long id = 0;
        PbfMessage roles = PbfMessage.EMPTY;
        PbfMessage ids = PbfMessage.EMPTY;
        PbfMessage types = PbfMessage.EMPTY;
        for (int field = relation.next(); field != 0; field = relation.next()) {
            switch (field) {
                case 1 -> id = relation.takeNumber();
                case 2 -> tags.keys = relation.takeMessage();
                case 3 -> tags.values = relation.takeMessage();
                case 8 -> roles = relation.takeMessage();
                case 9 -> ids = relation.takeMessage();
                case 10 -> types = relation.takeMessage();
                default -> relation.skip();
            }
        }
        List<Member> members = new ArrayList<>();
        for (long member = 0; ids.hasMore(); ) {
            member += ids.signed();
            long role = roles.varint();
            if (types.varint() == WAY_MEMBER) {
                members.add(Member.of(member, text(role)));
            }
            checkCount(members.size());
        }
        sink.relation(id, members, tags);
    }

    private static void checkCount(int count) throws OsmFault {
        if (count > OsmFile.MOST_REFERENCES) {
            throw OsmFault.tooLarge(
                    "has a way or relation of too many parts",
                    "at most " + OsmFile.MOST_REFERENCES);
        }
    }

    private String text(long number) throws OsmFault {
        if (number < 0 || number >= texts.size()) {
            throw PbfMessage.broken();
        }
        // Cut short: a million things may name the same endless text.
        return texts.get((int) number).text(OsmFile.LONGEST_TEXT);
    }

    /** Tags as two lists of numbers of texts. */
    private final class Pairs implements Tags {
        private PbfMessage keys = PbfMessage.EMPTY;
        private PbfMessage values = PbfMessage.EMPTY;

        @Override
        public Map<String, String> toMap() throws OsmFault {
            PbfMessage key = keys.again();
            PbfMessage value = values.again();
            Map<String, String> tags = new HashMap<>();
            while (key.hasMore()) {
                tags.put(text(key.varint()), text(value.varint()));
            }
            return tags;
        }
    }
}
