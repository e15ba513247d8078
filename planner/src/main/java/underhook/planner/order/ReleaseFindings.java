package underhook.planner.order;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.TreeSet;
import underhook.core.finding.Finding;
import underhook.core.finding.FindingCode;
import underhook.core.finding.Severity;
import underhook.core.job.Job;
import underhook.core.job.LoadShape;
import underhook.core.job.ReleaseArea;
import underhook.core.plan.Leg;
import underhook.core.plan.ReleaseLook;
import underhook.core.plan.ReleaseLook.Use;
import underhook.planner.route.ClearLegs;

/** What a person must know of letting loads go, each said once for a pair of places or a shape of load. */
final class ReleaseFindings {
    /** Longer than this without a spot where the load may be let go is said, s. @source PRACTICE own setting */
    private static final double CLOSED_S = 10;

    private record Seen(Leg leg, ClearLegs.Seen seen) {
        ReleaseLook look() {
            return seen.look();
        }

        String name() {
            return leg.from() + "-" + leg.to();
        }
    }

    private final Job job;
    private final Map<String, Seen> closed = new TreeMap<>();
    private final Map<String, Seen> unnamed = new TreeMap<>();
    private final Map<String, Seen> runsTo = new TreeMap<>();
    private final EnumMap<LoadShape, Seen> runs = new EnumMap<>(LoadShape.class);
    private final EnumMap<LoadShape, TreeSet<String>> runsOn = new EnumMap<>(LoadShape.class);

    ReleaseFindings(Job job) {
        this.job = job;
    }

    /** A loaded leg of the plan. */
    void add(Leg leg, Trip trip, ClearLegs.Seen seen) {
        Seen next = new Seen(leg, seen);
        closed.merge(
                next.name(),
                next,
                (a, b) -> b.look().longestClosedS() > a.look().longestClosedS() ? b : a);
        unnamed.merge(
                next.name(),
                next,
                (a, b) -> b.look().longestUnnamedS() > a.look().longestUnnamedS() ? b : a);
        if (!seen.runsTo().isEmpty()) {
            runsTo.merge(
                    next.name(),
                    next,
                    (a, b) -> b.seen().runsTo().size() > a.seen().runsTo().size() ? b : a);
        }
        if (seen.runsM() > 0) {
            LoadShape shape = trip.kinds().get(0).shape();
            runs.merge(shape, next, (a, b) -> b.seen().runsM() > a.seen().runsM() ? b : a);
            runsOn.computeIfAbsent(shape, unused -> new TreeSet<>()).add(next.name());
        }
    }

    List<Finding> list() {
        List<Finding> all = new ArrayList<>();
        closed.values().stream()
                .filter(one -> one.look().longestClosedS() > CLOSED_S)
                .forEach(one -> all.add(closed(one)));
        if (job.releaseAreas().stream().anyMatch(ReleaseArea::agreed)) {
            unnamed.values().stream()
                    .filter(one -> !isServed(one))
                    .forEach(one -> all.add(unnamed(one)));
        }
        runsTo.values().forEach(one -> all.add(runsTo(one)));
        runs.forEach((shape, one) -> all.add(runs(shape, one)));
        return all;
    }

    private static boolean isServed(Seen one) {
        return !one.seen().near().isEmpty()
                || one.look().stretches().isEmpty()
                || one.look().stretches().stream().anyMatch(part -> part.use() == Use.NAMED);
    }

    private static Finding closed(Seen one) {
        TreeSet<String> what = new TreeSet<>();
        double seconds = 0;
        TreeSet<String> now = new TreeSet<>();
        double best = 0;
        for (ReleaseLook.Stretch part : one.look().stretches()) {
            boolean shut = part.use() == Use.CLOSED || part.use() == Use.GUARDED;
            seconds = shut ? seconds + part.durationS() : 0;
            if (!shut) {
                now.clear();
            }
            now.addAll(shut ? part.what() : List.of());
            if (seconds > best) {
                best = seconds;
                what = new TreeSet<>(now);
            }
        }
        return new Finding(
                FindingCode.RELEASE_CLOSED,
                Severity.CAUTION,
                one.name(),
                Figures.text(one.look().longestClosedS(), 1),
                Figures.text(CLOSED_S, 0),
                "s",
                "rules",
                "With "
                        + one.leg().carrying().get(0)
                        + " there is no spot for "
                        + whole(one.look().longestClosedS())
                        + " s where it may be let go without a guard: it would come down on "
                        + String.join(", ", what)
                        + ".");
    }

    private static Finding unnamed(Seen one) {
        List<String> candidates = one.seen().candidates();
        return new Finding(
                FindingCode.RELEASE_UNNAMED,
                Severity.CAUTION,
                one.name(),
                Figures.text(one.look().longestUnnamedS(), 1),
                Figures.text(ClearLegs.REACHED_IN_S, 0),
                "s",
                "release-areas",
                "For "
                        + whole(one.look().longestUnnamedS())
                        + " s no agreed release area lies below or within "
                        + whole(ClearLegs.REACHED_IN_S)
                        + " s of flight. "
                        + (candidates.isEmpty()
                                ? "No other area is named there; perhaps one can be agreed."
                                : String.join(", ", candidates)
                                        + " would serve once the owner agrees."));
    }

    private static Finding runsTo(Seen one) {
        return Finding.of(
                FindingCode.RELEASE_RUNS,
                Severity.CAUTION,
                one.name(),
                "terrain",
                "Let go on a part of this way, "
                        + one.leg().carrying().get(0)
                        + " slides or rolls on: the ground is too steep to hold it. Below lies "
                        + String.join(", ", one.seen().runsTo())
                        + ". Keep people out of there while it is flown, or do not fly it.");
    }

    private Finding runs(LoadShape shape, Seen one) {
        TreeSet<String> names = runsOn.getOrDefault(shape, new TreeSet<>());
        return new Finding(
                FindingCode.RELEASE_RUNS,
                Severity.NOTE,
                one.name(),
                whole(one.seen().runsM()),
                "",
                "m",
                "terrain",
                "Let go over "
                        + whole(one.seen().runsM())
                        + " m of this way, "
                        + one.leg().carrying().get(0)
                        + " slides or rolls on into the valley: the ground is too steep to hold it."
                        + (names.size() == 1
                                ? " Keep what lies below free."
                                : " Loads of its shape do so on "
                                        + names.size()
                                        + " ways. Keep what lies below free."));
    }

    private static String whole(double valueRatio) {
        return Figures.text(Math.ceil(valueRatio), 0);
    }
}
