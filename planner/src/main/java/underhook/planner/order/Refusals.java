package underhook.planner.order;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeSet;
import underhook.planner.route.ClearLegs;

/** Why ways between two places were refused, all hours, lines and loads together. Safe for threads. */
final class Refusals {
    /** What stood against ways from one place to another. */
    static final class Why {
        /** Ids of what a load let go, or the empty line, could hit. */
        final TreeSet<String> inReach = new TreeSet<>();

        /** The fewest of them that one way alone has: with these opened it would do. */
        List<String> fewest = List.of();

        /** Whether something of that lies at the start, at the end. */
        boolean atStart;

        boolean atEnd;

        /** Whether a part lies over ground of which no height is known. */
        boolean unknownGround;

        /** Whether every way tried was refused by the map itself. */
        boolean noWay;

        /** Whether the wind holds the machine nearly still. */
        boolean wind;

        /** How many ways in and out were tried. */
        int tried;

        boolean isEmpty() {
            return tried == 0;
        }

        private boolean isFewer(List<String> ids) {
            return !ids.isEmpty() && (fewest.isEmpty() || ids.size() < fewest.size());
        }
    }

    private final Map<Way, Why> byPlaces = new HashMap<>();

    private record Way(int from, int to) {}

    /** What stood against ways from one place to another; empty where none was refused. */
    synchronized Why between(int from, int to) {
        return byPlaces.getOrDefault(new Way(from, to), new Why());
    }

    private Why of(int from, int to) {
        return byPlaces.computeIfAbsent(new Way(from, to), unused -> new Why());
    }

    synchronized void add(int from, int to, ClearLegs.Found found) {
        Why why = of(from, to);
        why.tried++;
        why.inReach.addAll(found.inReach());
        if (!found.unknownGround() && why.isFewer(found.inReach())) {
            why.fewest = found.inReach();
        }
        why.atStart |= found.side().isAtStart();
        why.atEnd |= found.side().isAtEnd();
        why.unknownGround |= found.unknownGround();
        why.noWay |= found.inReach().isEmpty() && !found.unknownGround();
    }

    synchronized void addWind(int from, int to) {
        Why why = of(from, to);
        why.tried++;
        why.wind = true;
    }
}
