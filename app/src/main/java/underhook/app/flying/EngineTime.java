package underhook.app.flying;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;
import underhook.core.flown.FlownDay;
import underhook.core.flown.Tap;
import underhook.core.flown.TapKind;

/**
 * When the engine ran, by the taps; a run that has not ended goes on until now. A machine that moves runs, whether
 * somebody told that it was started or not: then since it was last told to stand or to be fuelled, or, told of neither,
 * for as long as it was planned to run by then.
 */
final class EngineTime {
    private static final Set<TapKind> MOVES =
            EnumSet.of(TapKind.TAKE_OFF, TapKind.HOOKED, TapKind.OFF, TapKind.LANDING);

    private final List<Run> runs = new ArrayList<>();
    private final boolean running;

    /** From start to shut-down. */
    private record Run(Instant from, Instant to) {
        long withinS(Instant since) {
            Instant start = from.isAfter(since) ? from : since;
            return Math.max(0, Duration.between(start, to).toSeconds());
        }
    }

    EngineTime(FlownDay flown, Instant now) {
        this(flown, now, tap -> Duration.ZERO);
    }

    /**
     * @param planned how long before such a tap the engine was to have run by then; counts for the first tap of a machine
     *     that moves, where nobody told of the engine before
     */
    EngineTime(FlownDay flown, Instant now, Function<Tap, Duration> planned) {
        Optional<Instant> since = Optional.empty();
        Optional<Instant> stood = Optional.empty();
        for (Tap tap : flown.taps()) {
            if (tap.kind() == TapKind.ENGINE_ON && since.isEmpty()) {
                since = Optional.of(tap.at());
            } else if (MOVES.contains(tap.kind()) && since.isEmpty()) {
                since = stood.or(() -> Optional.of(tap.at().minus(planned.apply(tap))));
            } else if (tap.kind() == TapKind.ENGINE_OFF) {
                since.ifPresent(from -> runs.add(new Run(from, tap.at())));
                since = Optional.empty();
                stood = Optional.of(tap.at());
            } else if (tap.kind() == TapKind.REFUELLED && since.isEmpty()) {
                stood = Optional.of(tap.at());
            }
        }
        running = since.isPresent();
        since.ifPresent(from -> runs.add(new Run(from, from.isAfter(now) ? from : now)));
    }

    /** Seconds with the engine on since a time. */
    long sinceS(Instant since) {
        return runs.stream().mapToLong(run -> run.withinS(since)).sum();
    }

    /** Whether it runs now. */
    boolean isRunning() {
        return running;
    }

    /** How often it was started at a time or after it. */
    long startsSince(Instant since) {
        return runs.stream().filter(run -> !run.from().isBefore(since)).count();
    }

    /** Seconds with the engine on in the day. */
    long dayS() {
        return sinceS(Instant.MIN);
    }

    /** Seconds with the engine on since the last break of at least so many seconds. */
    long sinceBreakS(double breakS) {
        long sum = 0;
        Instant next = Instant.MAX;
        for (int i = runs.size() - 1; i >= 0; i--) {
            Run run = runs.get(i);
            boolean wasBreak =
                    next.isBefore(Instant.MAX)
                            && Duration.between(run.to(), next).toSeconds() >= breakS;
            if (wasBreak) {
                return sum;
            }
            sum += run.withinS(Instant.MIN);
            next = run.from();
        }
        return sum;
    }
}
