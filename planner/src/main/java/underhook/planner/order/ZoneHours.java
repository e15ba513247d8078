package underhook.planner.order;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import underhook.core.geo.Ground;
import underhook.core.job.Job;
import underhook.core.job.Zone;
import underhook.planner.route.LegFinder;
import underhook.planner.route.Memo;

/**
 * Which zones' rules hold in which hours of a day, and what is closed then. Safe for threads.
 *
 * <p>For each set of zones that hold at once there is one {@link Then}, made when first asked for; where no zone has
 * hours there is one alone, the whole day's.
 */
final class ZoneHours {
    /**
     * The hours of the weather are cut this much before a zone closes too: what is begun so late may still be under way
     * when it does, and keeps off.
     *
     * @source PRACTICE longer than nearly all ways; what takes longer keeps off from a whole row before
     */
    private static final long AHEAD_S = 600;

    /** The ground as it is closed while the same zones' rules hold. One for each set of them. */
    static final class Then {
        /** The job with the zones alone whose rules hold. */
        final Job job;

        final LegFinder finder;
        final ZonesAtPlaces places;

        private Then(Job job, Ground ground) {
            this.job = job;
            this.finder = new LegFinder(job, ground);
            this.places = new ZonesAtPlaces(job, ground);
        }
    }

    private final Job job;
    private final Ground ground;

    /** Those that hold on the day but for some hours. */
    private final List<Zone> timed;

    private final Then wholeDay;

    /** By a figure 1 for each timed zone that holds, 0 for each other. */
    private final Memo<List<Integer>, Then> thens = Memo.of();

    ZoneHours(Job job, Ground ground) {
        this.job = job;
        this.ground = ground;
        this.timed =
                job.zones().stream()
                        .filter(zone -> !zone.hours().isAllDay() && zone.isActiveOn(job.date()))
                        .toList();
        this.wholeDay = new Then(job, ground);
    }

    /** As if every rule that holds at some hour of the day held throughout. */
    Then wholeDay() {
        return wholeDay;
    }

    /** Zones that hold on the day, but for some hours of it. */
    List<Zone> timed() {
        return timed;
    }

    /** What is closed at some time from one instant to another. */
    Then during(Instant from, Instant until) {
        if (timed.isEmpty()) {
            return wholeDay;
        }
        List<Integer> holding =
                timed.stream().map(zone -> job.isInForce(zone, from, until) ? 1 : 0).toList();
        return holding.contains(0) ? thens.get(holding, this::make) : wholeDay;
    }

    private Then make(List<Integer> holding) {
        List<Zone> all = new ArrayList<>(job.zones());
        for (int i = 0; i < timed.size(); i++) {
            if (holding.get(i) == 0) {
                all.remove(timed.get(i));
            }
        }
        return new Then(job.withZones(all), ground);
    }

    /** When a row of the weather is cut in two, in any order: where a rule begins or ends, and a little before it begins. */
    List<Instant> listCuts() {
        return timed.stream()
                .flatMap(zone -> zone.listSpells(job.date(), job.zone()).stream())
                .flatMap(
                        spell ->
                                Stream.of(
                                        spell.from().minusSeconds(AHEAD_S),
                                        spell.from(),
                                        spell.until()))
                .toList();
    }
}
