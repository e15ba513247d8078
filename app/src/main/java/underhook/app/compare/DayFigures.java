package underhook.app.compare;

import java.time.Instant;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.stream.Stream;
import underhook.core.plan.DayPrice;
import underhook.core.plan.LeftOut;
import underhook.core.plan.Leg;
import underhook.core.plan.Plan;
import underhook.core.plan.ReleaseLook;
import underhook.core.plan.ReleaseLook.Use;
import underhook.core.plan.Summary;

/**
 * A whole day in the few figures by which it is set beside another.
 *
 * @param flightS time in the air, s
 * @param leftOut loads that stay behind, each with the code of its reason
 * @param cutShort whether its search was stopped before it was through
 */
public record DayFigures(
        double flightS,
        Instant finishAt,
        Optional<DayPrice> price,
        int rotations,
        int refuels,
        int lineChanges,
        List<String> leftOut,
        Over over,
        boolean cutShort) {
    /**
     * What loads are carried over, away from their ends.
     *
     * @param closedS time in which a load let go may hit people, houses, closed ground or live wires, s
     * @param guardedS time in which it may hit what a guard keeps people away from, s
     * @param longestS longest time on end of either, s
     * @param crossings how often each road, trail, wire or zone is crossed, by its id
     */
    public record Over(
            double closedS, double guardedS, double longestS, Map<String, Integer> crossings) {
        public Over {
            crossings = Collections.unmodifiableMap(new TreeMap<>(crossings));
        }

        private static Over of(List<Leg> loaded) {
            Map<String, Integer> crossings = new TreeMap<>();
            loaded.stream()
                    .flatMap(leg -> leg.crossings().stream())
                    .forEach(one -> crossings.merge(one.feature(), 1, Integer::sum));
            return new Over(
                    sumS(loaded, Use.CLOSED),
                    sumS(loaded, Use.GUARDED),
                    looks(loaded).mapToDouble(ReleaseLook::longestClosedS).max().orElse(0),
                    crossings);
        }

        private static double sumS(List<Leg> loaded, Use use) {
            return looks(loaded)
                    .flatMap(look -> look.stretches().stream())
                    .filter(stretch -> stretch.use() == use)
                    .mapToDouble(ReleaseLook.Stretch::durationS)
                    .sum();
        }

        private static Stream<ReleaseLook> looks(List<Leg> loaded) {
            return loaded.stream().flatMap(leg -> leg.release().stream());
        }

        /** All crossings together. */
        public int countCrossings() {
            return crossings.values().stream().mapToInt(Integer::intValue).sum();
        }
    }

    public DayFigures {
        leftOut = List.copyOf(leftOut);
    }

    /** The figures of a plan. */
    public static DayFigures of(Plan plan) {
        Summary summary = plan.summary();
        List<Leg> loaded =
                plan.steps().stream()
                        .flatMap(step -> step.rotation().stream())
                        .flatMap(rotation -> rotation.legs().stream())
                        .filter(leg -> !leg.carrying().isEmpty())
                        .toList();
        return new DayFigures(
                summary.flightS(),
                summary.finishAt(),
                summary.price(),
                summary.rotations(),
                summary.refuels(),
                summary.lineChanges(),
                plan.leftOut().stream().map(DayFigures::word).toList(),
                Over.of(loaded),
                summary.cutShort());
    }

    private static String word(LeftOut out) {
        return out.load() + " (" + out.code() + ")";
    }
}
