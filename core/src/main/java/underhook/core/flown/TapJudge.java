package underhook.core.flown;

import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.Optional;
import underhook.core.finding.Finding;

/**
 * Judges taps as they come in; the same answers as {@link FlownDay#refusal}, without going through the
 * whole day for a tap that was made after all others. Not safe for threads.
 */
public final class TapJudge {
    private final TrainedHands hands;
    private final List<Tap> known;
    private Optional<Standpoint> standpoint = Optional.empty();

    /** The day after all taps that are known, and the last of them. */
    private record Standpoint(Tapping tapping, Optional<Tap> last) {}

    public TapJudge(Collection<Tap> known, TrainedHands hands) {
        this.known = new ArrayList<>(known);
        this.hands = hands;
    }

    /** Why the day does not allow a tap; empty when it does. */
    public Optional<Finding> refusal(Tap tap) {
        return changesWhatWas(tap) || !isLast(tap)
                ? FlownDay.refusal(known, hands, tap)
                : stand().tapping().refusal(tap);
    }

    /** Counts a tap, allowed or not, with those that are known. */
    public void add(Tap tap) {
        boolean follows = !changesWhatWas(tap) && isLast(tap);
        known.add(tap);
        if (follows) {
            Tapping tapping = stand().tapping();
            tapping.take(tap);
            standpoint = Optional.of(new Standpoint(tapping, Optional.of(tap)));
        } else {
            standpoint = Optional.empty();
        }
    }

    private static boolean changesWhatWas(Tap tap) {
        return tap.kind() == TapKind.UNDONE || EngineStood.of(tap).isPresent();
    }

    private boolean isLast(Tap tap) {
        return stand().last().filter(last -> FlownDay.IN_ORDER.compare(last, tap) >= 0).isEmpty();
    }

    private Standpoint stand() {
        if (standpoint.isEmpty()) {
            Tapping tapping = new Tapping(hands);
            List<Tap> counted = FlownDay.of(known, hands).taps();
            counted.forEach(tapping::take);
            // One that was taken back still stands in the order of the day.
            Optional<Tap> last = known.stream().max(FlownDay.IN_ORDER);
            standpoint = Optional.of(new Standpoint(tapping, last));
        }
        return standpoint.get();
    }
}
