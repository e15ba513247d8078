package underhook.adapter.osm;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.EnumSet;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import underhook.adapter.osm.OsmFile.Member;
import underhook.adapter.osm.OsmFile.Part;
import underhook.adapter.osm.OsmFile.Sink;
import underhook.adapter.osm.OsmFile.Spot;
import underhook.adapter.osm.OsmFile.Tags;
import underhook.adapter.osm.Survey.Relation;
import underhook.adapter.osm.Survey.Way;
import underhook.app.port.Fault;
import underhook.app.port.MapBox;
import underhook.app.port.MapReader;
import underhook.core.finding.FindingCode;

/** Reads OpenStreetMap files: PBF, and XML plain or packed. */
public final class OsmMapReader implements MapReader {
    @Override
    public boolean reads(String fileName) {
        return OsmFile.isNamed(fileName);
    }

    @Override
    public String usualLicence() {
        return "ODbL 1.0";
    }

    @Override
    public String usualAttribution() {
        return "© OpenStreetMap contributors, ODbL 1.0";
    }

    @Override
    public Contents read(Path file, String statedName, MapBox box) {
        try {
            if (!Files.isRegularFile(file)) {
                return failed(missing(statedName));
            }
            if (!OsmFile.isNamed(statedName)) {
                throw OsmFault.unreadable(
                        "is no map of OpenStreetMap by its name",
                        statedName,
                        ".osm.pbf, .pbf, .osm, .osm.xml, .osm.gz or .osm.bz2");
            }
            return read(OsmFile.of(file, statedName), new Request(file, statedName, box));
        } catch (OsmFault e) {
            return failed(e.toFault(statedName));
        } catch (IOException e) {
            return failed(
                    OsmFault.unreadable("cannot be read", String.valueOf(e.getMessage()), "")
                            .toFault(statedName));
        }
    }

    private record Request(Path path, String statedName, MapBox box) {}

    private static Contents read(OsmFile file, Request request) throws IOException {
        Reach reach = new Reach(request.box);
        Survey survey = survey(file, reach, Files.size(request.path));
        if (!survey.hasSeen(Part.NODES)) {
            throw OsmFault.unreadable(
                    "holds no positions",
                    "",
                    "a file with nodes, not only ways and their outlines");
        }
        Map<Long, long[]> members = members(file, survey);
        Positions positions = new Positions(wanted(survey, members));
        file.read(Set.of(Part.NODES), positions);
        return new Things(reach, positions, request.statedName).of(survey, members);
    }

    private static Survey survey(OsmFile file, Reach reach, long bytes) throws IOException {
        Survey survey = new Survey(reach, bytes);
        file.read(EnumSet.allOf(Part.class), survey);
        if (!survey.isUnordered()) {
            return survey;
        }
        Survey again = new Survey(reach, bytes);
        for (Part part : Part.values()) {
            file.read(Set.of(part), again);
        }
        return again;
    }

    /** Nodes of the ways that the relations name, as far as the file has them. */
    private static Map<Long, long[]> members(OsmFile file, Survey survey) throws IOException {
        Set<Long> wanted = new HashSet<>();
        for (Relation relation : survey.relations()) {
            for (long way : relation.ways()) {
                wanted.add(way);
            }
        }
        Map<Long, long[]> members = new HashMap<>();
        if (!wanted.isEmpty()) {
            file.read(Set.of(Part.WAYS), new MemberWays(wanted, members));
        }
        return members;
    }

    private static long[] wanted(Survey survey, Map<Long, long[]> members) {
        LongList nodes = new LongList();
        for (Way way : survey.ways()) {
            nodes.addAll(way.nodes());
        }
        members.values().forEach(nodes::addAll);
        return nodes.toSorted();
    }

    /** Keeps the wanted ways. */
    private static final class MemberWays implements Sink {
        private final Set<Long> wanted;
        private final Map<Long, long[]> members;
        private long held;

        MemberWays(Set<Long> wanted, Map<Long, long[]> members) {
            this.wanted = wanted;
            this.members = members;
        }

        @Override
        public void node(long id, Spot spot, Tags tags) {}

        @Override
        public void way(long id, long[] nodes, Tags tags) throws OsmFault {
            if (wanted.contains(id)) {
                members.put(id, nodes);
                held += nodes.length;
            }
            if (held > Survey.MOST_HELD) {
                throw Survey.tooMuch();
            }
        }

        @Override
        public void relation(long id, List<Member> parts, Tags tags) {}
    }

    private static Contents failed(Fault fault) {
        return new Contents(List.of(), List.of(), 0, List.of(fault));
    }

    private static Fault missing(String name) {
        return new Fault(FindingCode.FILE_MISSING, name, 0, "", "there is no such file", "", "");
    }
}
