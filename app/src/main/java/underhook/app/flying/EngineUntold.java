package underhook.app.flying;

import java.time.Duration;
import java.time.Instant;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import underhook.core.flown.FlownDay;
import underhook.core.flown.TapKind;
import underhook.core.plan.Step;

/**
 * Times in which the plan has the engine off and nobody told that it was: they count as running.
 *
 * @param assumedS so long together, s
 * @param longestS the longest between two lifts, s
 */
record EngineUntold(long assumedS, long longestS) {
    /** Between lifts that were hooked, and since the last one. */
    static EngineUntold of(List<Step> steps, List<LiftState> lifts, FlownDay flown, Instant now) {
        List<LiftState> hooked =
                lifts.stream()
                        .filter(lift -> lift.hookedAt().isPresent())
                        .sorted(Comparator.comparing(lift -> lift.hookedAt().orElseThrow()))
                        .toList();
        long sumS = 0;
        long longestS = 0;
        for (int i = 0; i < hooked.size(); i++) {
            LiftState lift = hooked.get(i);
            Instant hookedAt = lift.hookedAt().orElseThrow();
            Duration late = Duration.between(lift.lift().rotation().hookedAt(), hookedAt);
            Instant from = lift.doneAt().orElse(lift.step().endAt().plus(late));
            Instant to = i + 1 < hooked.size() ? hooked.get(i + 1).hookedAt().orElseThrow() : now;
            long plannedS = 0;
            for (int at = lift.lift().step() + 1; at < steps.size(); at++) {
                Step step = steps.get(at);
                if (step.rotation().isPresent()) {
                    break;
                }
                boolean begun = step.startAt().plus(late).isBefore(to);
                plannedS +=
                        begun && !step.engineRunning() ? spanS(step.startAt(), step.endAt()) : 0;
            }
            long untoldS =
                    Math.min(plannedS, Math.max(0, spanS(from, to))) - stoodS(flown, hookedAt, to);
            sumS += Math.max(0, untoldS);
            longestS = Math.max(longestS, untoldS);
        }
        return new EngineUntold(sumS, longestS);
    }

    /** How long it was told to be off between two times. */
    private static long stoodS(FlownDay flown, Instant from, Instant to) {
        long sumS = 0;
        Optional<Instant> off = Optional.empty();
        for (var tap : flown.taps()) {
            if (tap.kind() == TapKind.ENGINE_OFF) {
                off = off.or(() -> Optional.of(tap.at()));
            } else if (tap.kind() == TapKind.ENGINE_ON) {
                sumS += off.map(at -> overlapS(at, tap.at(), from, to)).orElse(0L);
                off = Optional.empty();
            } else if (tap.kind() == TapKind.HOOKED) {
                off = Optional.empty();
            }
        }
        return sumS + off.map(at -> overlapS(at, to, from, to)).orElse(0L);
    }

    private static long overlapS(Instant off, Instant on, Instant from, Instant to) {
        Instant begin = off.isAfter(from) ? off : from;
        return Math.max(0, spanS(begin, on.isBefore(to) ? on : to));
    }

    private static long spanS(Instant from, Instant to) {
        return Duration.between(from, to).toSeconds();
    }

    /** In whole minutes, rounded up: nobody is told of less than may be wrong. */
    static long minutes(long spanS) {
        return Math.floorDiv(spanS + 59, 60);
    }
}
