package underhook.app.port;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import underhook.core.ahead.Alternates;
import underhook.core.geo.GeoPoint;
import underhook.core.geo.LocalFrame;
import underhook.core.geo.PlaneLine;
import underhook.core.geo.PlanePoint;
import underhook.core.job.Job;
import underhook.core.job.Place;
import underhook.core.job.Wire;
import underhook.core.plan.Plan;

/**
 * What can be told of a place beforehand to whoever comes to help, on paper and on devices.
 *
 * @param positions the place in three ways of writing it
 * @param wires of the job within reach of the place, nearest first
 * @param landing the nearest place where the job lets people land, and which the plan found neither too
 *     steep nor in trees: nobody has said that a rescue machine may, unless the emergency plan names it
 */
public record RescuePoint(
        Place place, Positions positions, List<NearWire> wires, Optional<Landing> landing) {
    /** Wires within this distance are named. @source PRACTICE far over any fall or swing */
    public static final double NEAR_M = 300;

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

    /**
     * What is asked about.
     *
     * @param system of the job's places, where it is known
     */
    public record Asked(
            Job job,
            Optional<Plan> plan,
            EmergencyPlan emergency,
            Optional<ReferenceSystem> system) {}

    public RescuePoint {
        wires = List.copyOf(wires);
    }

    public static RescuePoint of(Asked asked, Place place) {
        return new RescuePoint(
                place,
                positions(place.position(), asked.system()),
                wires(asked.job(), place),
                landing(asked, place));
    }

    /** A position as it is told to rescuers. */
    public static Positions positions(GeoPoint point, Optional<ReferenceSystem> system) {
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

    private static String text(String pattern, Object... values) {
        return String.format(Locale.ROOT, pattern, values);
    }
}
