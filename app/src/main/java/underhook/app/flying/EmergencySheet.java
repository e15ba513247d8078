package underhook.app.flying;

import java.io.IOException;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Stream;
import underhook.app.port.EmergencyPlan;
import underhook.app.port.ReferenceSystem;
import underhook.core.ahead.Alternates;
import underhook.core.flown.FlownDay;
import underhook.core.flown.Tap;
import underhook.core.flown.TapKind;
import underhook.core.geo.GeoPoint;
import underhook.core.geo.LocalFrame;
import underhook.core.geo.PlaneLine;
import underhook.core.geo.PlanePoint;
import underhook.core.job.Crew;
import underhook.core.job.Job;
import underhook.core.job.Place;
import underhook.core.job.PlaceId;
import underhook.core.job.Wire;
import underhook.core.plan.CrewStay;
import underhook.core.plan.Plan;

/**
 * What whoever must call for help at a place needs, without network and without asking anybody.
 *
 * @param positions the place in three ways of writing it
 * @param plan what the job states; what it does not state is missing and said to be
 * @param wires of the job within reach of the place, nearest first
 * @param landing the nearest place where the job lets people land, and which the plan found neither too
 *     steep nor in trees: nobody has said that a rescue machine may, unless the plan names it
 * @param people who is to be here now
 * @param coming who is on the way here, and so neither here nor where they set out
 * @param counted who was counted here last
 * @param quietS how long nobody has tapped anything, s
 * @param overdue whether that is longer than the job allows while the machine is in the air
 */
public record EmergencySheet(
        Place place,
        Positions positions,
        EmergencyPlan plan,
        List<NearWire> wires,
        Optional<Landing> landing,
        List<Present> people,
        List<Coming> coming,
        Optional<Tap> counted,
        Optional<Long> quietS,
        boolean overdue) {
    /** Wires within this distance are named. @source PRACTICE far over any fall or swing */
    private static final double NEAR_M = 300;

    /**
     * A position.
     *
     * @param degrees decimal degrees on WGS 84
     * @param minutes degrees and decimal minutes on WGS 84
     * @param grid easting and northing in the job's own system; empty where it is not known
     * @param system name of that system
     */
    public record Positions(String degrees, String minutes, Optional<String> grid, String system) {}

    /** A wire and how far off it runs on the map. */
    public record NearWire(Wire wire, double distanceM) {}

    /** A landing place and how far off it lies. */
    public record Landing(Place place, double distanceM, boolean stated) {}

    /** A crew that is to be here. */
    public record Present(Crew crew, Instant untilAt) {}

    /** A crew that walks or is flown here, from where it was last and by when it is to be here. */
    public record Coming(Crew crew, PlaceId from, Instant expectedAt) {}

    /** What is asked about. */
    public record Asked(Job job, Optional<Plan> plan, FlownDay flown, EmergencyPlan emergency) {}

    public EmergencySheet {
        wires = List.copyOf(wires);
        people = List.copyOf(people);
        coming = List.copyOf(coming);
    }

    /**
     * The sheet of a place.
     *
     * @param system of the job's places, where it is known
     */
    public static EmergencySheet of(
            Asked asked, Place place, Optional<ReferenceSystem> system, Instant now)
            throws IOException {
        FlownDay flown = asked.flown();
        List<Crew> crews = asked.job().crews();
        List<CrewStay> stays =
                CrewsThere.lines(asked.plan().map(Plan::crews).orElse(List.of()), flown, now);
        Optional<Long> quietS =
                flown.lastAt().map(at -> Math.max(0, Duration.between(at, now).toSeconds()));
        boolean overdue =
                flown.now().inTheAir()
                        && quietS.isPresent()
                        && asked.emergency().overdueS().isPresent()
                        && quietS.get() > asked.emergency().overdueS().getAsDouble();
        return new EmergencySheet(
                place,
                positions(place.position(), system),
                asked.emergency(),
                wires(asked.job(), place),
                landing(asked, place),
                people(crews, stays, place.id(), now),
                coming(crews, stays, place.id(), now),
                counted(flown, place),
                quietS,
                overdue);
    }

    static Positions positions(GeoPoint point, Optional<ReferenceSystem> system) {
        Optional<String> grid =
                system.filter(one -> !one.isGeographic())
                        .map(one -> one.fromGeo(point))
                        .map(xy -> text("%.0f E  %.0f N", xy.x(), xy.y()));
        return new Positions(
                text(
                        "%.6f° %s  %.6f° %s",
                        Math.abs(point.latDeg()),
                        point.latDeg() < 0 ? "S" : "N",
                        Math.abs(point.lonDeg()),
                        point.lonDeg() < 0 ? "W" : "E"),
                minutes(point.latDeg(), 2, point.latDeg() < 0 ? "S" : "N")
                        + "  "
                        + minutes(point.lonDeg(), 3, point.lonDeg() < 0 ? "W" : "E"),
                grid,
                grid.isPresent() ? system.map(ReferenceSystem::name).orElse("") : "");
    }

    /** Rounded as one number, so that no minute is ever written as 60. */
    private static String minutes(double valueDeg, int digits, String side) {
        long thousandths = Math.round(Math.abs(valueDeg) * 60_000);
        long whole = thousandths / 60_000;
        double rest = (thousandths % 60_000) / 1000.0;
        return text("%0" + digits + "d° %06.3f' %s", whole, rest, side);
    }

    private static List<NearWire> wires(Job job, Place place) {
        LocalFrame frame = LocalFrame.of(place.position());
        PlanePoint here = frame.toPlane(place.position());
        List<NearWire> near = new ArrayList<>();
        for (Wire wire : job.wires()) {
            double least = Double.POSITIVE_INFINITY;
            for (int i = 1; i < wire.supports().size(); i++) {
                PlanePoint from = frame.toPlane(wire.supports().get(i - 1));
                PlanePoint to = frame.toPlane(wire.supports().get(i));
                least = Math.min(least, new PlaneLine(from, to).distanceToM(here));
            }
            if (least <= NEAR_M) {
                near.add(new NearWire(wire, Math.floor(least)));
            }
        }
        near.sort(Comparator.comparingDouble(NearWire::distanceM));
        return near;
    }

    private static Optional<Landing> landing(Asked asked, Place place) {
        LocalFrame frame = LocalFrame.of(place.position());
        Optional<Landing> stated =
                asked.emergency().landings().stream()
                        .filter(one -> one.serves().isEmpty() || one.serves().contains(place.id()))
                        .flatMap(one -> asked.job().findPlace(one.place()).stream())
                        .map(one -> new Landing(one, distanceM(frame, one), true))
                        .min(Comparator.comparingDouble(Landing::distanceM));
        return stated.isPresent()
                ? stated
                : asked.job().places().stream()
                        .filter(one -> mayLand(one, asked.plan()))
                        .map(one -> new Landing(one, distanceM(frame, one), false))
                        .min(Comparator.comparingDouble(Landing::distanceM));
    }

    /** A machine may land there, and the plan did not find it too steep or in trees. */
    static boolean mayLand(Place place, Optional<Plan> plan) {
        return place.agreed()
                && !place.isSite()
                && plan.filter(one -> Alternates.isRefused(one, place.id())).isEmpty();
    }

    private static double distanceM(LocalFrame frame, Place place) {
        PlanePoint there = frame.toPlane(place.position());
        return Math.ceil(Math.hypot(there.eastM(), there.northM()));
    }

    static List<Present> people(
            List<Crew> crews, List<CrewStay> stays, PlaceId place, Instant now) {
        return during(stays, place, now)
                .filter(stay -> !stay.isOnTheWay())
                .flatMap(stay -> of(stay, crews).map(crew -> new Present(crew, stay.toAt())))
                .toList();
    }

    static List<Coming> coming(List<Crew> crews, List<CrewStay> stays, PlaceId place, Instant now) {
        return during(stays, place, now)
                .filter(CrewStay::isOnTheWay)
                .flatMap(
                        stay ->
                                of(stay, crews)
                                        .map(
                                                crew ->
                                                        new Coming(
                                                                crew,
                                                                before(stay, stays, crew),
                                                                stay.toAt())))
                .toList();
    }

    /** Who leaves at this moment has left. */
    private static Stream<CrewStay> during(List<CrewStay> stays, PlaceId place, Instant now) {
        return stays.stream()
                .filter(stay -> stay.place().equals(place))
                .filter(stay -> !stay.fromAt().isAfter(now) && stay.toAt().isAfter(now));
    }

    private static Stream<Crew> of(CrewStay stay, List<Crew> crews) {
        return crews.stream().filter(crew -> crew.id().equals(stay.crew()));
    }

    private static PlaceId before(CrewStay way, List<CrewStay> stays, Crew crew) {
        return stays.stream()
                .filter(stay -> stay.crew().equals(crew.id()))
                .filter(stay -> !stay.toAt().isAfter(way.fromAt()))
                .max(Comparator.comparing(CrewStay::toAt))
                .map(CrewStay::place)
                .orElse(crew.start());
    }

    private static Optional<Tap> counted(FlownDay flown, Place place) {
        return flown.taps().stream()
                .filter(tap -> tap.kind() == TapKind.COUNTED)
                .filter(tap -> tap.place().filter(at -> at.equals(place.id())).isPresent())
                .reduce((earlier, later) -> later);
    }

    private static String text(String pattern, Object... values) {
        return String.format(Locale.ROOT, pattern, values);
    }
}
