package underhook.core.job;

import java.time.Instant;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.time.ZoneId;
import java.time.ZonedDateTime;
import java.time.zone.ZoneOffsetTransition;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.stream.IntStream;
import underhook.core.geo.GeoPoint;
import underhook.core.geo.LocalFrame;
import underhook.core.geo.PlaneLine;
import underhook.core.geo.PlanePoint;

/**
 * Ground over which a rule holds.
 *
 * @param outline closed ring without its repeated last point; one point with a radius is a circle
 * @param radiusM radius around a single point, m; 0 for a ring
 * @param rule what may not be done
 * @param kinds kinds of load that the rule is about; empty means every flight, the empty line too
 * @param minAglM least height above ground for {@code MIN_HEIGHT} and {@code NO_HOVER_BELOW}, m
 * @param closedFrom first day of the rule, when it is seasonal
 * @param closedUntil last day of the rule, when it is seasonal
 * @param hours when of each of these days the rule holds, local time
 */
public record Zone(
        String id,
        String name,
        List<GeoPoint> outline,
        double radiusM,
        Rule rule,
        List<String> kinds,
        double minAglM,
        Optional<LocalDate> closedFrom,
        Optional<LocalDate> closedUntil,
        Hours hours,
        String source) {
    private static final int CIRCLE_CORNERS = 72;

    /** What may not be done. */
    public enum Rule {
        NO_OVERFLIGHT,
        MIN_HEIGHT,
        NO_HOVER_BELOW,
        NO_FUEL
    }

    public Zone {
        Objects.requireNonNull(id, "id");
        Objects.requireNonNull(hours, "hours");
        outline = List.copyOf(outline);
        kinds = List.copyOf(kinds);
        if (outline.size() == 1 ? !(radiusM > 0) : outline.size() < 3) {
            throw new IllegalArgumentException(
                    "zone " + id + " needs a ring or a point with radius.");
        }
        if (!(minAglM >= 0)) {
            throw new IllegalArgumentException("minAglM (" + minAglM + ") must not be negative.");
        }
    }

    /** Corners of its ring, without the repeated last; a circle lies inside of them. */
    public List<GeoPoint> ring() {
        return outline.size() > 1
                ? outline
                : LocalFrame.aroundCircle(outline.get(0), radiusM, CIRCLE_CORNERS);
    }

    /** How far a place lies outside of it in plan, m; 0 within. */
    public double distanceToM(Place place) {
        LocalFrame frame = LocalFrame.of(place.position());
        PlanePoint at = frame.toPlane(place.position());
        List<PlanePoint> ring = outline.stream().map(frame::toPlane).toList();
        if (ring.size() == 1) {
            return Math.max(0, ring.get(0).distanceToM(at) - radiusM);
        }
        return PlaneLine.isInside(at, ring)
                ? 0
                : IntStream.range(0, ring.size())
                        .mapToObj(i -> new PlaneLine(ring.get(i), ring.get((i + 1) % ring.size())))
                        .mapToDouble(side -> side.distanceToM(at))
                        .min()
                        .orElseThrow();
    }

    /** Whether the rule holds on that day, at some hour of it. */
    public boolean isActiveOn(LocalDate day) {
        boolean begun = closedFrom.map(first -> !day.isBefore(first)).orElse(true);
        boolean notOver = closedUntil.map(last -> !day.isAfter(last)).orElse(true);
        return begun && notOver;
    }

    /**
     * When the rule holds on a day, from its first instant to the first after it, and on the days before and after:
     * flights go on over midnight. Whether it holds in the season is that day's. Where the clock skips a time of its,
     * or has it twice, the longer counts.
     *
     * @param zone of the local times
     * @return in order; empty when it does not hold on the day, all three days when it holds all day
     */
    public List<Spell> listSpells(LocalDate day, ZoneId zone) {
        if (!isActiveOn(day)) {
            return List.of();
        }
        if (hours.isAllDay()) {
            Instant from = day.minusDays(1).atStartOfDay(zone).toInstant();
            return List.of(new Spell(from, day.plusDays(2).atStartOfDay(zone).toInstant()));
        }
        List<Spell> all = new ArrayList<>();
        for (int days = -1; days <= 1; days++) {
            LocalDate on = day.plusDays(days);
            boolean toTheEnd = hours.until().equals(Hours.ALL_DAY.until());
            Instant from = earlier(on.atTime(hours.from()), zone);
            Instant until =
                    toTheEnd
                            ? on.plusDays(1).atStartOfDay(zone).toInstant()
                            : ZonedDateTime.of(on.atTime(hours.until()), zone)
                                    .withLaterOffsetAtOverlap()
                                    .toInstant();
            all.add(new Spell(from, until));
        }
        return all;
    }

    /** When the clock skips that time, when it begins to. */
    private static Instant earlier(LocalDateTime local, ZoneId zone) {
        ZoneOffsetTransition change = zone.getRules().getTransition(local);
        return change != null && change.isGap()
                ? change.getInstant()
                : local.atZone(zone).withEarlierOffsetAtOverlap().toInstant();
    }

    /**
     * Some time of a rule.
     *
     * @param until the first instant after it
     */
    public record Spell(Instant from, Instant until) {
        /** Whether it has some time in common with a flight that begins and ends then. */
        public boolean touches(Instant begin, Instant end) {
            return from.isBefore(end) && begin.isBefore(until);
        }
    }
}
