package underhook.planner.order;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import underhook.core.finding.Finding;
import underhook.core.finding.FindingCode;
import underhook.core.finding.Severity;
import underhook.core.geo.GeoPoint;
import underhook.core.geo.PlanePoint;
import underhook.core.job.Crew;
import underhook.core.job.LoadId;
import underhook.core.job.PlaceId;
import underhook.core.job.Zone;
import underhook.core.plan.Drop;
import underhook.core.plan.Leg;
import underhook.core.plan.Limit;
import underhook.core.plan.Rotation;
import underhook.core.plan.Step;

/** What is within the rules and still to be watched: wind just below a limit, a zone close by, people who do not count. */
final class Watchpoints {
    private final DayModel model;
    private final List<Finding> all = new ArrayList<>();

    Watchpoints(DayModel model) {
        this.model = model;
    }

    List<Finding> list(List<Step> steps) {
        Set<PlaceId> hookedAt = new TreeSet<>(Comparator.comparing(PlaceId::value));
        Set<PlaceId> used = new TreeSet<>(Comparator.comparing(PlaceId::value));
        for (Step step : steps) {
            step.rotation()
                    .ifPresent(
                            rotation -> {
                                wind(rotation);
                                hookedAt.add(pickUp(rotation));
                                rotation.drops().stream().map(Drop::place).forEach(used::add);
                            });
        }
        used.addAll(hookedAt);
        used.forEach(this::zones);
        model.zoneHours().timed().forEach(zone -> hours(zone, steps));
        untrained(hookedAt);
        return List.copyOf(all);
    }

    private PlaceId pickUp(Rotation rotation) {
        return model.job.getLoad(rotation.loads().get(0)).from();
    }

    private void wind(Rotation rotation) {
        rotation.limits().stream()
                .filter(limit -> limit.code().startsWith("WIND_") && limit.isNear())
                .min(Comparator.comparingDouble(Limit::marginPercent))
                .ifPresent(
                        limit ->
                                all.add(
                                        new Finding(
                                                FindingCode.WIND_AT_LIMIT,
                                                Severity.CAUTION,
                                                rotation.loads().get(0).value(),
                                                Figures.text(
                                                        Math.ceil(limit.value() * 10 - 1e-6) / 10,
                                                        1),
                                                Figures.text(limit.limit(), 1),
                                                limit.unit(),
                                                limit.source(),
                                                "The wind is just within the limit of this load: "
                                                        + words(limit.code())
                                                        + ". Ask for it again before the lift.")));
    }

    /** "gust at S10" for "WIND_GUST at S10". */
    private static String words(String code) {
        int at = code.indexOf(" at ");
        String name = at < 0 ? code : code.substring(0, at);
        String what =
                switch (name) {
                    case "WIND_GUST" -> "gust";
                    case "WIND_SPREAD" -> "gust less mean wind";
                    default -> "mean wind";
                };
        return at < 0 ? what : what + code.substring(at);
    }

    private void zones(PlaceId place) {
        for (Zone zone : model.job.zones()) {
            double distanceM = distanceM(zone, model.points.get(model.place(place)));
            boolean counts = zone.rule() != Zone.Rule.NO_FUEL && zone.isActiveOn(model.job.date());
            if (counts && distanceM <= model.rules.flying().finalM()) {
                all.add(
                        new Finding(
                                FindingCode.PLACE_NEAR_ZONE,
                                Severity.NOTE,
                                place.value(),
                                Figures.text(Math.floor(distanceM), 0),
                                Figures.text(model.rules.flying().finalM(), 0),
                                "m",
                                zone.source(),
                                "The zone "
                                        + zone.id()
                                        + (zone.hours().isAllDay()
                                                ? ""
                                                : ", which holds " + zone.hours().say() + ",")
                                        + " begins "
                                        + Figures.text(Math.floor(distanceM), 0)
                                        + " m away, nearer than a last part is long. Mind it on the"
                                        + " way in and out."));
            }
        }
    }

    /** What is flown where a zone holds at other times: it hangs on the clock. */
    private void hours(Zone zone, List<Step> steps) {
        Set<String> flown = new TreeSet<>();
        for (Step step : steps) {
            List<Leg> legs = step.rotation().map(Rotation::legs).orElse(step.legs());
            for (Leg leg : legs) {
                if (isOver(zone, leg) || hoversIn(zone, leg)) {
                    List<String> loads = leg.carrying().stream().map(LoadId::value).toList();
                    flown.addAll(loads.isEmpty() ? List.of(leg.from() + "-" + leg.to()) : loads);
                }
            }
        }
        if (!flown.isEmpty()) {
            all.add(
                    Finding.of(
                            FindingCode.ZONE_HOURS,
                            Severity.CAUTION,
                            zone.id(),
                            zone.source(),
                            "It holds "
                                    + zone.hours().say()
                                    + ". Flown over it, close by it or low in it at other times: "
                                    + String.join(", ", flown)
                                    + ". Should the day run ahead or late, look at the clock and order the"
                                    + " rest anew first."));
        }
    }

    private boolean isOver(Zone zone, Leg leg) {
        List<String> kinds = kinds(leg);
        List<PlanePoint> way =
                leg.path().stream()
                        .map(point -> model.ground.frame().toPlane(point.position()))
                        .toList();
        return IntStream.range(1, way.size())
                .mapToObj(i -> model.finder().closed().blockers(way.get(i - 1), way.get(i), kinds))
                .anyMatch(ids -> ids.contains(zone.id()));
    }

    private boolean hoversIn(Zone zone, Leg leg) {
        boolean about =
                zone.rule() == Zone.Rule.NO_HOVER_BELOW
                        && !leg.carrying().isEmpty()
                        && (zone.kinds().isEmpty()
                                || kinds(leg).stream().anyMatch(zone.kinds()::contains));
        return about
                && Stream.of(leg.from(), leg.to())
                        .anyMatch(
                                place ->
                                        model.zoneHours()
                                                .wholeDay()
                                                .places
                                                .isIn(zone, model.job.getPlace(place)));
    }

    private List<String> kinds(Leg leg) {
        return leg.carrying().stream().map(load -> model.job.getLoad(load).kind()).toList();
    }

    /** To the edge, from inside as from outside. */
    private double distanceM(Zone zone, PlanePoint point) {
        if (zone.outline().size() == 1) {
            double fromMiddleM = DayFindings.distanceM(model, zone.outline(), point);
            return Math.max(0, fromMiddleM - zone.radiusM());
        }
        List<GeoPoint> ring = new ArrayList<>(zone.outline());
        ring.add(ring.get(0));
        return DayFindings.distanceM(model, ring, point);
    }

    private void untrained(Set<PlaceId> hookedAt) {
        for (Crew crew : model.job.crews()) {
            if (crew.stays()
                    && hookedAt.contains(crew.start())
                    && !crew.roles().contains(Crew.Role.HOOK)) {
                all.add(
                        Finding.of(
                                FindingCode.HANDLER_UNTRAINED,
                                Severity.NOTE,
                                crew.id().value(),
                                "crews",
                                crew.id()
                                        + " at "
                                        + crew.start()
                                        + " is not trained to hook and is not counted for it."));
            }
        }
    }
}
