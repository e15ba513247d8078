package underhook.planner.order;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.IntStream;
import org.jspecify.annotations.Nullable;
import underhook.core.geo.PlanePoint;
import underhook.core.job.Zone;
import underhook.core.site.Rig;
import underhook.planner.route.ClosedWays;
import underhook.planner.route.Memo;
import underhook.planner.route.PlaceHour;
import underhook.planner.route.PlaceWind;
import underhook.planner.route.RankedWays;
import underhook.planner.route.RoomView;
import underhook.planner.route.WayIn;

/** The ways in to the places of a day with what hangs there, hour by hour. */
final class WaysIn {
    private final DayModel day;
    private final List<Memo<Ranked, Optional<RankedWays>>> ranked = new ArrayList<>();
    private final Memo<Rigged, RoomView> roomViews;

    WaysIn(DayModel day) {
        this.day = day;
        this.roomViews = Memo.of();
        day.air().slots.forEach(unused -> ranked.add(Memo.of()));
    }

    /** Of the same places: what is known of hours that are alike is kept. */
    WaysIn(DayModel day, WaysIn before) {
        this.day = day;
        this.roomViews = before.roomViews;
        List<DayAir.Slot> slotsBefore = before.day.air().slots;
        for (DayAir.Slot slot : day.air().slots) {
            int same = slotsBefore.indexOf(slot);
            this.ranked.add(same < 0 ? Memo.of() : before.ranked.get(same));
        }
    }

    /** Takes over what stands round the places. */
    void keepRoomsOf(WaysIn before) {
        roomViews.learn(before.roomViews);
    }

    /** The way in to a place with what hangs there; empty when there is none. */
    Optional<WayIn> wayIn(int place, int slot, List<String> kinds, Rig rig) {
        return findTooLow(place, slot, kinds, rig).isPresent()
                ? Optional.empty()
                : findWayIn(place, slot, kinds, rig);
    }

    /** The same where a load is hooked up: the heading of the way out must have room in the hover too. */
    Optional<WayIn> hookUp(int place, int slot, List<String> kinds, Rig rig) {
        return findTooLow(place, slot, kinds, rig).isPresent()
                ? Optional.empty()
                : rankWays(new Hung(place, slot, slot, kinds, rig, true, closed(slot)), Map.of())
                        .map(RankedWays::best);
    }

    /** The zone in which the hover over a place would be lower than is allowed in an hour. */
    Optional<Zone> findTooLow(int place, int slot, List<String> kinds, Rig rig) {
        return closed(slot).places.findTooLow(day.places.get(place), kinds, rig.hookAglM());
    }

    /**
     * Whether zones that hold for some hours leave a trip its way in one, there and back, and hover high enough with the
     * longest line. What else closes a way is the same all day.
     */
    boolean isOpen(Trip trip, int slot) {
        if (day.zoneHours().timed().isEmpty()) {
            return true;
        }
        int longest = day.linesByLength().get(day.machine.lines().size() - 1);
        Rig rig = trip.rig(day.machine.lines().get(longest).lengthM());
        ClosedWays ground = closed(slot).finder.closed();
        PlanePoint from = day.points.get(trip.from());
        PlanePoint to = day.points.get(trip.to());
        return findTooLow(trip.from(), slot, trip.kindNames(), rig.withoutCredit()).isEmpty()
                && findTooLow(trip.to(), slot, trip.kindNames(), rig).isEmpty()
                && ground.isJoined(from, to, trip.kindNames())
                && ground.isJoined(to, from, List.of());
    }

    private ZoneHours.Then closed(int slot) {
        return day.air().slots.get(slot).closed();
    }

    private Optional<WayIn> findWayIn(int place, int slot, List<String> kinds, @Nullable Rig rig) {
        return rankWays(new Hung(place, slot, slot, kinds, rig, false, closed(slot)), Map.of())
                .map(RankedWays::best);
    }

    /**
     * What hangs over a place in an hour.
     *
     * @param slotComes the first hour in which it may come there
     * @param slot the hour in which it is let go, or leaves
     * @param rig none where room is not asked for
     * @param hooksUp whether it is hooked up there: then it hovers on the heading of the way out
     * @param closed what is closed on the way
     */
    record Hung(
            int place,
            int slotComes,
            int slot,
            List<String> kinds,
            @Nullable Rig rig,
            boolean hooksUp,
            ZoneHours.Then closed) {}

    /** All that the ways to a place in an hour hang on. */
    private record Ranked(
            int place,
            List<String> kinds,
            @Nullable Rig rig,
            boolean hooksUp,
            List<PlaceWind> alsoWinds,
            ZoneHours.Then closed) {}

    private record Rigged(int place, Rig rig, boolean hooksUp) {}

    /** Those with nothing shut are kept: they are asked for again and again. */
    Optional<RankedWays> rankWays(Hung at, Map<Long, List<String>> shut) {
        if (!shut.isEmpty()) {
            return at.closed().finder.approaches().rankWays(placeHour(at), shut);
        }
        return ranked.get(at.slot())
                .get(
                        new Ranked(
                                at.place(),
                                at.kinds(),
                                at.rig(),
                                at.hooksUp(),
                                alsoWinds(at),
                                at.closed()),
                        unused -> at.closed().finder.approaches().rankWays(placeHour(at), shut));
    }

    /** Winds of the hours before in which it may come, but for those of its own hour. */
    private List<PlaceWind> alsoWinds(Hung at) {
        List<PlaceWind> own = day.air().winds(at.place(), at.slot());
        return IntStream.range(at.slotComes(), at.slot())
                .boxed()
                .flatMap(slot -> day.air().winds(at.place(), slot).stream())
                .filter(wind -> !own.contains(wind))
                .distinct()
                .toList();
    }

    private PlaceHour placeHour(Hung at) {
        Rig rig = at.rig();
        return new PlaceHour(
                day.points.get(at.place()),
                day.air().winds(at.place(), at.slot()),
                alsoWinds(at),
                at.kinds(),
                day.air().convergenceRad(at.place()),
                day.sky().suns(at.place(), at.slot()),
                rig == null
                        ? RoomView.NOT_ASKED
                        : roomView(new Rigged(at.place(), rig, at.hooksUp())));
    }

    private RoomView roomView(Rigged at) {
        return roomViews.get(
                at, unused -> new KnownRoom(day.room(at.place()), at.rig(), at.hooksUp()));
    }
}
