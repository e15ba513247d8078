package underhook.adapter.osm;

import java.util.Arrays;
import java.util.BitSet;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import underhook.adapter.osm.OsmFile.Member;
import underhook.adapter.osm.OsmFile.Spot;
import underhook.adapter.osm.OsmFile.Tags;

/** Positions of the nodes that are asked for, and stated heights of supports among them. Mutable. */
final class Positions implements OsmFile.Sink {
    /** Keys of what may carry a wire. */
    private static final Set<String> SUPPORT_KEYS =
            Set.of("power", "aerialway", "man_made", "communication", "telecom", "utility");

    private final long[] ids;
    private final int[] latsE7;
    private final int[] lonsE7;
    private final BitSet known = new BitSet();
    private final Map<Long, Stated> heights = new HashMap<>();

    Positions(long[] sortedIds) {
        ids = sortedIds;
        latsE7 = new int[ids.length];
        lonsE7 = new int[ids.length];
    }

    @Override
    public void node(long id, Spot spot, Tags tags) throws OsmFault {
        int at = Arrays.binarySearch(ids, id);
        if (at < 0) {
            return;
        }
        latsE7[at] = spot.latE7();
        lonsE7[at] = spot.lonE7();
        known.set(at);
        Map<String, String> text = tags.toMap();
        if (text.keySet().stream().anyMatch(key -> SUPPORT_KEYS.contains(stem(key)))) {
            Stated.heightOf(text).ifPresent(height -> heights.put(id, height));
        }
    }

    private static String stem(String key) {
        return key.substring(key.indexOf(':') + 1);
    }

    @Override
    public void way(long id, long[] nodes, Tags tags) {}

    @Override
    public void relation(long id, List<Member> members, Tags tags) {}

    Optional<Spot> find(long id) {
        int at = Arrays.binarySearch(ids, id);
        return at >= 0 && known.get(at)
                ? Optional.of(new Spot(latsE7[at], lonsE7[at]))
                : Optional.empty();
    }

    Optional<Stated> findHeight(long id) {
        return Optional.ofNullable(heights.get(id));
    }
}
