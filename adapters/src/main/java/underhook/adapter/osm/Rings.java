package underhook.adapter.osm;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;

/** Joins ways end to end, in either direction, into rings as far as they close. */
final class Rings {
    private final List<long[]> ways;
    private final Map<Long, ArrayDeque<Integer>> byEnd = new HashMap<>();
    private final Set<Integer> used = new HashSet<>();

    private Rings(List<long[]> ways) {
        this.ways = ways;
        for (int i = 0; i < ways.size(); i++) {
            long[] way = ways.get(i);
            byEnd.computeIfAbsent(way[0], end -> new ArrayDeque<>()).add(i);
            byEnd.computeIfAbsent(way[way.length - 1], end -> new ArrayDeque<>()).add(i);
        }
    }

    /** Rings, first node repeated at the end, and chains that do not close; in the order of the ways. */
    static List<long[]> join(List<long[]> ways) {
        Rings rings = new Rings(ways.stream().filter(way -> way.length > 1).toList());
        List<long[]> joined = new ArrayList<>();
        for (int i = 0; i < rings.ways.size(); i++) {
            if (!rings.used.contains(i)) {
                joined.add(rings.chainFrom(i));
            }
        }
        return joined;
    }

    static boolean isClosed(long[] nodes) {
        return nodes.length > 3 && nodes[0] == nodes[nodes.length - 1];
    }

    private long[] chainFrom(int first) {
        used.add(first);
        LongList forward = new LongList();
        forward.addAll(ways.get(first));
        long[] chain = extended(forward, ways.get(first)[0]);
        if (chain[0] == chain[chain.length - 1]) {
            return chain;
        }
        // Open at this end: what is missing may join at the other.
        LongList backward = new LongList();
        backward.addAll(reversed(chain));
        return extended(backward, chain[chain.length - 1]);
    }

    /** Goes on from the last node as long as an unused way begins or ends there. */
    private long[] extended(LongList chain, long start) {
        long end = chain.last();
        while (end != start) {
            int next = unusedAt(end);
            if (next < 0) {
                break;
            }
            used.add(next);
            long[] way = ways.get(next);
            long[] onward = way[0] == end ? way : reversed(way);
            for (int i = 1; i < onward.length; i++) {
                chain.add(onward[i]);
            }
            end = chain.last();
        }
        return chain.toArray();
    }

    private int unusedAt(long node) {
        ArrayDeque<Integer> candidates = byEnd.get(node);
        while (candidates != null && !candidates.isEmpty()) {
            int way = candidates.remove();
            if (!used.contains(way)) {
                return way;
            }
        }
        return -1;
    }

    private static long[] reversed(long[] nodes) {
        long[] back = new long[nodes.length];
        for (int i = 0; i < nodes.length; i++) {
            back[i] = nodes[nodes.length - 1 - i];
        }
        return back;
    }
}
