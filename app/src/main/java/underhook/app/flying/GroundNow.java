package underhook.app.flying;

import java.time.Instant;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import underhook.app.desk.DayLooks.Look;
import underhook.app.flying.ToldChanges.Told;
import underhook.app.port.KeptJob.KeptPlan;
import underhook.app.port.KeptTap;
import underhook.app.port.ReadJob;
import underhook.app.replan.Change;
import underhook.app.replan.ChangedJob;
import underhook.app.replan.Proposal;
import underhook.core.job.Job;
import underhook.core.job.PlaceId;
import underhook.planner.order.DayLook;
import underhook.planner.route.LegSection;

/**
 * The plan over the ground as it was told to be: from the moment somebody says so a place is where it was
 * moved to, and what stands in the way stands there. Safe for threads.
 */
final class GroundNow {
    private static final String BEFORE =
            " (told before the files were changed: see whether they know of it)";

    private Optional<Seen> seen = Optional.empty();

    /** What was told of a plan's ground, and the look that comes of both. */
    private record Seen(KeptPlan plan, List<Told> told, Look look) {}

    /** The same plan over the ground now. */
    synchronized Look of(Look planned, ToldChanges all) {
        List<Told> told = all.ofTheGround();
        if (told.isEmpty()) {
            return planned;
        }
        KeptPlan plan = planned.plan().kept();
        if (seen.filter(one -> one.plan().equals(plan) && one.told().equals(told)).isEmpty()) {
            seen = Optional.of(new Seen(plan, told, look(planned, told)));
        }
        return seen.orElseThrow().look();
    }

    private static Look look(Look planned, List<Told> told) {
        Job changed =
                ChangedJob.after(
                        planned.job().job(), Instant.MIN, told.stream().map(Told::change).toList());
        ReadJob read = planned.job().with(changed);
        return new Look(
                planned.plan(),
                read,
                new DayLook(changed, read.ground()),
                new LegSection(changed, read.ground()));
    }

    /** What was told of a place's ground and the plan does not know, in words. */
    static List<String> unplanned(
            Look planned, List<KeptTap> rows, ToldChanges all, PlaceId place) {
        Set<String> known = knownTo(planned, rows);
        ZoneId zone = planned.job().job().zone();
        List<String> words = new ArrayList<>();
        Stream.concat(all.ofTheGround().stream(), all.closed().stream())
                .filter(told -> isAbout(told, place) && !known.contains(told.tap().id()))
                .forEach(told -> words.add(told.change().words(zone)));
        all.before().stream()
                .filter(told -> isAbout(told, place))
                .forEach(told -> words.add(told.change().words(zone) + BEFORE));
        return words;
    }

    private static boolean isAbout(Told told, PlaceId place) {
        return told.change() instanceof Change.PlaceClosed closed
                ? closed.place().equals(place)
                : ToldChanges.placeOf(told.change()).equals(Optional.of(place));
    }

    /** An order made while the day was flown knows all that was told before it. */
    private static Set<String> knownTo(Look planned, List<KeptTap> rows) {
        if (!Proposal.isOrder(planned.plan().kept().id())) {
            return Set.of();
        }
        Instant plannedAt = planned.plan().plan().plannedAt();
        return rows.stream()
                .filter(row -> !row.arrival().receivedAt().isAfter(plannedAt))
                .map(row -> row.tap().id())
                .collect(Collectors.toSet());
    }
}
