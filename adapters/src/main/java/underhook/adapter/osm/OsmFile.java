package underhook.adapter.osm;

import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;

/** A file of nodes, ways and relations that can be read again and again. */
interface OsmFile {
    /** Most nodes of a way and members of a relation; the public server takes far fewer. */
    int MOST_REFERENCES = 1_000_000;

    /** Most letters of a key or value that are looked at; the public server takes 255. */
    int LONGEST_TEXT = 1000;

    /** What a file is made of, in the order that files usually have. */
    enum Part {
        NODES,
        WAYS,
        RELATIONS
    }

    /** Hands over the wanted parts in the order of the file. */
    void read(Set<Part> wanted, Sink sink) throws IOException;

    /** Takes what is read. Positions are in units of 1e-7 degrees, as the public server keeps them. */
    interface Sink {
        void node(long id, Spot spot, Tags tags) throws OsmFault;

        void way(long id, long[] nodes, Tags tags) throws OsmFault;

        void relation(long id, List<Member> members, Tags tags) throws OsmFault;
    }

    /**
     * A position.
     *
     * @param latE7 latitude, 1e-7 degrees north
     * @param lonE7 longitude, 1e-7 degrees east
     */
    record Spot(int latE7, int lonE7) {
        private static final long QUARTER_E7 = 900_000_000;

        static Spot of(long latE7, long lonE7) throws OsmFault {
            if (Math.abs(latE7) > QUARTER_E7 || Math.abs(lonE7) > 2 * QUARTER_E7) {
                throw OsmFault.unreadable(
                        "has a node that lies nowhere on Earth", latE7 + " " + lonE7, "");
            }
            return new Spot((int) latE7, (int) lonE7);
        }
    }

    /** Tags, which are turned into text only where somebody asks. */
    interface Tags {
        /** No tags. */
        Tags NONE = Map::of;

        Map<String, String> toMap() throws OsmFault;
    }

    /** A way in a relation. Other members do not matter to us. */
    record Member(long way, boolean isInner) {
        static Member of(long way, String role) {
            return new Member(way, role.equals("inner"));
        }
    }

    /** Whether a file of this name is one of ours. */
    static boolean isNamed(String name) {
        String lower = name.toLowerCase(Locale.ROOT);
        return isPbf(lower)
                || lower.endsWith(".osm")
                || lower.endsWith(".osm.xml")
                || lower.endsWith(".osm.gz")
                || lower.endsWith(".osm.bz2");
    }

    /** A reader by the name's ending. */
    static OsmFile of(Path file, String name) {
        String lower = name.toLowerCase(Locale.ROOT);
        return isPbf(lower) ? new PbfFile(file) : new XmlFile(file, lower);
    }

    private static boolean isPbf(String lower) {
        return lower.endsWith(".pbf");
    }
}
