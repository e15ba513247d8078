package underhook.planner.odds;

import java.time.Instant;
import java.util.List;
import java.util.stream.Stream;
import underhook.core.job.Job;
import underhook.core.job.Load;
import underhook.core.job.Zone;
import underhook.core.plan.Drop;
import underhook.core.plan.Rotation;
import underhook.core.plan.Step;

/**
 * When zones that hold for some hours of the day leave a lift its ends. What lies between is flown round while it holds:
 * that costs little, and is not counted.
 */
final class ZoneTimes {
    /** A zone is over no place that is so near. */
    private static final double NOWHERE_M = -1;

    private final Job job;
    private final Clock clock;
    private final List<Zone> timed;

    ZoneTimes(Job job, Clock clock) {
        this.job = job;
        this.clock = clock;
        this.timed =
                job.zones().stream()
                        .filter(zone -> !zone.hours().isAllDay() && zone.isActiveOn(job.date()))
                        .toList();
    }

    /**
     * The time round a lift in which no zone over one of its ends holds.
     *
     * @return it opens for its hook-up, and closes for its last release: with time left for the way back
     */
    Windows.Window of(Step step, Rotation rotation) {
        Windows.Window open =
                new Windows.Window(Double.NEGATIVE_INFINITY, Double.POSITIVE_INFINITY);
        for (Zone zone : timed) {
            if (isOverAnEnd(zone, step, rotation)) {
                for (Zone.Spell spell : zone.listSpells(job.date(), job.zone())) {
                    open = open.and(beside(spell, zone, step));
                }
            }
        }
        return open;
    }

    /** Before a spell or after it, as the lift is planned; always where it is planned in the midst of it. */
    private Windows.Window beside(Zone.Spell spell, Zone zone, Step step) {
        Rotation rotation = step.rotation().orElseThrow();
        Instant hooked = rotation.hookedAt();
        Instant released = rotation.drops().get(rotation.drops().size() - 1).releasedAt();
        // What is about some kinds says nothing of the way back.
        Instant gone = zone.kinds().isEmpty() ? step.endAt() : released;
        double backS = clock.timeS(gone) - clock.timeS(released);
        boolean after = !spell.from().isBefore(gone);
        boolean before = !hooked.isBefore(spell.until());
        return new Windows.Window(
                before ? clock.timeS(spell.until()) : Double.NEGATIVE_INFINITY,
                after ? clock.timeS(spell.from()) - backS : Double.POSITIVE_INFINITY);
    }

    private boolean isOverAnEnd(Zone zone, Step step, Rotation rotation) {
        List<Load> loads = rotation.loads().stream().map(job::getLoad).toList();
        boolean about =
                zone.kinds().isEmpty()
                        || loads.stream().anyMatch(load -> zone.kinds().contains(load.kind()));
        double nearM =
                switch (zone.rule()) {
                    case NO_OVERFLIGHT, MIN_HEIGHT -> job.rules().distances().stripHalfWidthM();
                    case NO_HOVER_BELOW -> step.lineLengthM() < zone.minAglM() ? 0 : NOWHERE_M;
                    case NO_FUEL -> NOWHERE_M;
                };
        return about
                && nearM >= 0
                && Stream.concat(
                                Stream.of(loads.get(0).from()),
                                rotation.drops().stream().map(Drop::place))
                        .anyMatch(place -> zone.distanceToM(job.getPlace(place)) <= nearM);
    }
}
