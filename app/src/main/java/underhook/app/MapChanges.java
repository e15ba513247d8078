package underhook.app;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeSet;
import underhook.app.MapThing.Site;
import underhook.app.port.EditionReader;
import underhook.app.port.EditionReader.Editions;
import underhook.app.port.Fault;
import underhook.app.port.MapBox;
import underhook.core.geo.GeoPoint;
import underhook.core.job.Place;

/**
 * Says what a newer edition of a map file has that the job's does not, and the other way round.
 *
 * <p>Things are the same when their ids are; ids of public maps change, so what is left over is the same
 * when it is of one kind and lies within 5 m.
 */
public final class MapChanges {
    /** As far around the places as the job reads a public map, m. */
    private static final double NEAR_M = 5000;

    private final EditionReader reader;

    /** What happened to a thing. */
    public enum What {
        APPEARED,
        MOVED,
        CHANGED,
        VANISHED
    }

    /**
     * One change.
     *
     * @param kind what it is: a kind of map feature, or {@code wire}
     * @param id in the newer edition, or in the older when it vanished
     * @param detail what exactly, in words; may be empty
     * @param at its first corner
     * @param place the nearest place
     * @param distanceM from that place, m
     */
    public record Change(
            What what,
            String kind,
            String id,
            String detail,
            GeoPoint at,
            String place,
            double distanceM) {}

    /**
     * What came of it.
     *
     * @param faults of the job or the newer file; when there are any, nothing was compared
     * @param replaced the job's file that was compared with
     * @param compared how many things of the newer edition lie within the job's box
     * @param changes nearest to a place or a planned straight line first
     */
    public record Result(List<Fault> faults, String replaced, int compared, List<Change> changes) {
        public Result {
            faults = List.copyOf(faults);
            changes = List.copyOf(changes);
        }
    }

    public MapChanges(EditionReader reader) {
        this.reader = reader;
    }

    /**
     * Compares.
     *
     * @param replaces the job's file as job.yaml names it; empty to find it by name or format
     */
    public Result compare(Path folder, Path newer, String replaces) {
        EditionReader.Reading reading = reader.readEdition(folder, newer, replaces);
        if (reading.editions().isEmpty()) {
            return new Result(reading.faults(), "", 0, List.of());
        }
        Editions editions = reading.editions().get();
        Site site = Site.of(editions.job());
        List<MapBox> boxes =
                MapBox.around(
                        editions.job().places().stream().map(Place::position).toList(), NEAR_M);
        List<MapThing> older = MapThing.listOf(editions.older(), boxes, site);
        List<MapThing> latest = MapThing.listOf(editions.newer(), boxes, site);
        List<Ranked> ranked = new ArrayList<>();
        match(older, latest)
                .forEach(
                        pair ->
                                pair.change()
                                        .ifPresent(what -> ranked.add(rank(pair, what, site))));
        ranked.sort(
                Comparator.comparingDouble(Ranked::nearM).thenComparing(one -> one.change.id()));
        return new Result(
                List.of(),
                editions.replaced(),
                latest.size(),
                ranked.stream().map(Ranked::change).toList());
    }

    private record Ranked(double nearM, Change change) {}

    private static Ranked rank(Pair pair, What what, Site site) {
        MapThing thing = pair.latest.or(() -> pair.older).orElseThrow();
        Site.Nearest nearest = site.nearest(thing);
        Change change =
                new Change(
                        what,
                        thing.kind(),
                        thing.id(),
                        pair.detail(),
                        thing.at(),
                        nearest.place(),
                        nearest.placeM());
        return new Ranked(nearest.anyM(), change);
    }

    /** A thing of either edition, or of both. */
    private record Pair(Optional<MapThing> older, Optional<MapThing> latest) {
        Optional<What> change() {
            if (older.isEmpty()) {
                return Optional.of(What.APPEARED);
            }
            if (latest.isEmpty()) {
                return Optional.of(What.VANISHED);
            }
            if (older.get().isMovedIn(latest.get())) {
                return Optional.of(What.MOVED);
            }
            return older.get().values().equals(latest.get().values())
                    ? Optional.empty()
                    : Optional.of(What.CHANGED);
        }

        String detail() {
            List<String> details = new ArrayList<>();
            if (older.isPresent() && latest.isPresent()) {
                MapThing before = older.get();
                MapThing after = latest.get();
                if (before.isMovedIn(after)) {
                    details.add("moved by " + Math.round(before.movedM(after)) + " m");
                }
                TreeSet<String> names = new TreeSet<>(before.values().keySet());
                names.addAll(after.values().keySet());
                for (String name : names) {
                    String was = before.values().getOrDefault(name, "unknown");
                    String is = after.values().getOrDefault(name, "unknown");
                    if (!was.equals(is)) {
                        details.add(name + " " + was + " before, " + is + " now");
                    }
                }
            }
            return String.join("; ", details);
        }
    }

    private static List<Pair> match(List<MapThing> older, List<MapThing> latest) {
        Map<String, MapThing> waiting = new LinkedHashMap<>();
        older.forEach(thing -> waiting.put(thing.key(), thing));
        List<Pair> pairs = new ArrayList<>();
        List<MapThing> unmatched = new ArrayList<>();
        for (MapThing thing : latest) {
            MapThing same = waiting.remove(thing.key());
            if (same == null) {
                unmatched.add(thing);
            } else {
                pairs.add(new Pair(Optional.of(same), Optional.of(thing)));
            }
        }
        MapThing.Squares squares = new MapThing.Squares(waiting.values());
        for (MapThing thing : unmatched) {
            Optional<MapThing> same = squares.take(thing);
            same.ifPresent(one -> waiting.remove(one.key()));
            pairs.add(new Pair(same, Optional.of(thing)));
        }
        waiting.values()
                .forEach(thing -> pairs.add(new Pair(Optional.of(thing), Optional.empty())));
        return pairs;
    }
}
