package underhook.planner.order;

import java.util.List;
import java.util.Optional;
import underhook.core.finding.Finding;
import underhook.core.finding.FindingCode;
import underhook.core.finding.Severity;
import underhook.core.geo.GeoPoint;
import underhook.core.geo.Ground;
import underhook.core.geo.PlanePoint;
import underhook.core.job.Job;
import underhook.core.job.Place;
import underhook.core.job.Zone;

/** What zones forbid at the places that lie in them. */
final class ZonesAtPlaces {
    private final Job job;
    private final Ground ground;

    ZonesAtPlaces(Job job, Ground ground) {
        this.job = job;
        this.ground = ground;
    }

    /** The zone in which a place lies and where no fuel is handled; empty when there is none. */
    Optional<Zone> findNoFuel(Place place) {
        return job.zones().stream()
                .filter(zone -> zone.rule() == Zone.Rule.NO_FUEL && holds(zone, place))
                .findFirst();
    }

    /** Fuel that stands where none may be handled. */
    List<Finding> list() {
        return job.places().stream()
                .filter(Place::fuel)
                .flatMap(place -> findNoFuel(place).map(zone -> noFuel(place, zone)).stream())
                .toList();
    }

    private static Finding noFuel(Place place, Zone zone) {
        return Finding.of(
                FindingCode.FUEL_PLACE,
                Severity.CAUTION,
                place.id().value(),
                zone.source(),
                "Not used for fuel: it lies in zone "
                        + zone.id()
                        + ", where no fuel is handled. Perhaps another place for the fuel.");
    }

    /** The place as it may be used: no fuel is kept where none is handled. */
    Place asUsable(Place place) {
        return place.fuel() && findNoFuel(place).isPresent()
                ? new Place(
                        place.id(),
                        place.kind(),
                        place.name(),
                        place.position(),
                        place.statedElevationAmslM(),
                        place.canopyM(),
                        place.canopySpreadM(),
                        place.clearingRadiusM(),
                        place.exposureFactor(),
                        place.agreed(),
                        place.standing(),
                        false,
                        place.landingAsked(),
                        place.guyAzimuthsTrueRad(),
                        place.remarks())
                : place;
    }

    /** The zone in which nobody with these kinds hovers so low over a place. */
    Optional<Zone> findTooLow(Place place, List<String> kinds, double hookAglM) {
        return job.zones().stream()
                .filter(
                        zone ->
                                zone.rule() == Zone.Rule.NO_HOVER_BELOW
                                        || zone.rule() == Zone.Rule.MIN_HEIGHT)
                .filter(
                        zone ->
                                zone.kinds().isEmpty()
                                        || zone.kinds().stream().anyMatch(kinds::contains))
                .filter(zone -> hookAglM < zone.minAglM() && holds(zone, place))
                .findFirst();
    }

    private boolean holds(Zone zone, Place place) {
        return zone.isActiveOn(job.date()) && isIn(zone, place);
    }

    boolean isIn(Zone zone, Place place) {
        PlanePoint at = ground.frame().toPlane(place.position());
        if (zone.outline().size() == 1) {
            return plane(zone.outline().get(0)).distanceToM(at) <= zone.radiusM();
        }
        List<PlanePoint> ring = zone.outline().stream().map(this::plane).toList();
        boolean in = false;
        for (int i = 0; i < ring.size(); i++) {
            PlanePoint a = ring.get(i);
            PlanePoint b = ring.get((i + 1) % ring.size());
            if ((a.northM() > at.northM()) != (b.northM() > at.northM())) {
                double share = (at.northM() - a.northM()) / (b.northM() - a.northM());
                in ^= at.eastM() < a.eastM() + share * (b.eastM() - a.eastM());
            }
        }
        return in;
    }

    private PlanePoint plane(GeoPoint point) {
        return ground.frame().toPlane(point);
    }
}
