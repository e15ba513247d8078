package underhook.core.flown;

import java.time.Instant;
import java.util.ArrayList;
import java.util.Collection;
import java.util.Comparator;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import underhook.core.finding.Finding;

/**
 * The day that the taps add up to.
 *
 * @param taps that count, in order: each once, without those taken back
 * @param lifts in the order of hook-up
 * @param sums what the machine did
 * @param now how everything stands after the last tap
 * @param conflicts taps that the day did not allow; they are kept, and what they say is believed
 */
public record FlownDay(
        List<Tap> taps,
        List<FlownLift> lifts,
        MachineSums sums,
        Standing now,
        List<Conflict> conflicts) {
    /** A tap that the day did not allow, and why. */
    public record Conflict(Tap tap, Finding finding) {}

    /** What was tapped within one second, in the order in which a lift goes; never by whose device named it first. */
    static final Comparator<Tap> IN_ORDER =
            Comparator.comparing(Tap::at).thenComparing(Tap::kind).thenComparing(Tap::id);

    public FlownDay {
        taps = List.copyOf(taps);
        lifts = List.copyOf(lifts);
        conflicts = List.copyOf(conflicts);
    }

    /** The day; the same whatever order the taps arrive in, and however often. */
    public static FlownDay of(Collection<Tap> arrived, TrainedHands hands) {
        return of(arrived, hands, IN_ORDER);
    }

    /**
     * The day of a table that somebody wrote, perhaps to the minute: what has one time happened in the order of its
     * rows.
     */
    public static FlownDay ofRows(List<Tap> rows, TrainedHands hands) {
        Map<String, Integer> turns = new HashMap<>();
        rows.forEach(tap -> turns.putIfAbsent(tap.id(), turns.size()));
        // What is told of the engine afterwards comes from no row of its own.
        Comparator<Tap> asWritten =
                Comparator.comparing(Tap::at)
                        .thenComparing(tap -> turns.getOrDefault(tap.id(), turns.size()));
        return of(rows, hands, asWritten.thenComparing(IN_ORDER));
    }

    private static FlownDay of(
            Collection<Tap> arrived, TrainedHands hands, Comparator<Tap> inOrder) {
        Map<String, Tap> once = new HashMap<>();
        for (Tap tap : arrived) {
            // Two different taps of one id come from a broken device; the earlier one stays,
            // everywhere.
            once.merge(tap.id(), tap, (a, b) -> inOrder.compare(a, b) <= 0 ? a : b);
        }
        List<Tap> ordered = new ArrayList<>(once.values());
        ordered.sort(inOrder);
        Set<String> takenBack = takenBack(ordered);
        List<Conflict> conflicts = new ArrayList<>();
        ordered = withEngine(ordered, takenBack, hands, conflicts);
        ordered.sort(inOrder);
        Tapping tapping = new Tapping(hands);
        List<Tap> counted = new ArrayList<>();
        for (Tap tap : ordered) {
            if (tap.kind() == TapKind.UNDONE) {
                String undone = tap.undoes().orElseThrow();
                if (!once.containsKey(undone)) {
                    conflicts.add(new Conflict(tap, Refusals.unknownTap(tap, undone)));
                }
            } else if (!takenBack.contains(tap.id())) {
                tapping.refusal(tap).ifPresent(why -> conflicts.add(new Conflict(tap, why)));
                tapping.take(tap);
                counted.add(tap);
            }
        }
        return new FlownDay(counted, tapping.lifts(), tapping.sums(), tapping.now(), conflicts);
    }

    /** With the engine off and on again where that was told afterwards and can have been. */
    private static List<Tap> withEngine(
            List<Tap> ordered,
            Set<String> takenBack,
            TrainedHands hands,
            List<Conflict> conflicts) {
        List<Tap> told =
                ordered.stream()
                        .filter(tap -> !takenBack.contains(tap.id()))
                        .filter(tap -> EngineStood.of(tap).isPresent())
                        .toList();
        if (told.isEmpty()) {
            return new ArrayList<>(ordered);
        }
        List<Tap> others =
                ordered.stream()
                        .filter(tap -> tap.kind() != TapKind.UNDONE)
                        .filter(tap -> !takenBack.contains(tap.id()))
                        .toList();
        Tapping tapping = new Tapping(hands);
        others.forEach(tapping::take);
        EngineStood engine = new EngineStood(others, tapping.lifts());
        List<Tap> all = new ArrayList<>(ordered);
        for (Tap tap : told) {
            Optional<Finding> no = engine.refusal(tap);
            no.ifPresent(why -> conflicts.add(new Conflict(tap, why)));
            all.addAll(no.isPresent() ? List.of() : EngineStood.asTaps(tap));
        }
        return all;
    }

    /** Taking back can be taken back; whoever tapped last is right. */
    private static Set<String> takenBack(List<Tap> ordered) {
        Set<String> takenBack = new HashSet<>();
        for (int i = ordered.size() - 1; i >= 0; i--) {
            Tap tap = ordered.get(i);
            if (tap.kind() == TapKind.UNDONE && !takenBack.contains(tap.id())) {
                takenBack.add(tap.undoes().orElseThrow());
            }
        }
        return takenBack;
    }

    /**
     * Why this tap may not be made now; empty when it may.
     *
     * <p>To be asked on a device before a tap is shown. A tap that was made all the same, on a device
     * without news of the others, is not lost: {@link #of} keeps it among the conflicts.
     */
    public static Optional<Finding> refusal(Collection<Tap> arrived, TrainedHands hands, Tap tap) {
        List<Tap> with = new ArrayList<>(arrived);
        with.add(tap);
        return of(with, hands).conflicts().stream()
                .filter(conflict -> conflict.tap().id().equals(tap.id()))
                .map(Conflict::finding)
                .findFirst();
    }

    /** When the last thing happened; empty before the first. */
    public Optional<Instant> lastAt() {
        return taps.isEmpty() ? Optional.empty() : Optional.of(taps.get(taps.size() - 1).at());
    }
}
