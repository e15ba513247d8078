package underhook.planner.search;

import java.util.List;
import java.util.stream.IntStream;

/**
 * Ways of putting loads on hooks together, from each group of which one is flown.
 *
 * @param groups for each group of loads its ways, each a list of trips; the first is that of the day
 */
public record HookChoices(List<List<List<Integer>>> groups) {
    public HookChoices {
        groups =
                groups.stream()
                        .map(group -> group.stream().map(List::copyOf).toList())
                        .map(List::copyOf)
                        .toList();
        if (groups.stream().anyMatch(List::isEmpty)) {
            throw new IllegalArgumentException("a group must have at least one way.");
        }
    }

    /** Every trip of a day as it is. */
    public static HookChoices asFlown(Ordered day) {
        return new HookChoices(
                IntStream.range(0, day.releasedS().size())
                        .filter(day::isFlown)
                        .mapToObj(k -> List.of(List.of(k)))
                        .toList());
    }

    /** For each of so many trips whether some way flies it. */
    boolean[] placed(int trips) {
        boolean[] placed = new boolean[trips];
        groups.forEach(group -> group.forEach(way -> way.forEach(k -> placed[k] = true)));
        return placed;
    }

    /** For each of so many trips whether every way of its group flies it. */
    boolean[] certain(int trips) {
        boolean[] certain = new boolean[trips];
        for (List<List<Integer>> group : groups) {
            group.get(0).stream()
                    .filter(k -> group.stream().allMatch(way -> way.contains(k)))
                    .forEach(k -> certain[k] = true);
        }
        return certain;
    }
}
