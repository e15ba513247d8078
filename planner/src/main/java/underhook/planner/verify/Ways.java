package underhook.planner.verify;

import java.util.List;
import underhook.core.job.Load;
import underhook.core.job.MapFeature;
import underhook.core.job.Zone;

/** Outlines of the job in the plane, and which rule holds for whom. */
final class Ways {
    private Ways() {}

    static Shape shapeOf(Day day, Zone zone) {
        return new Shape(
                zone.outline().stream().map(p -> day.planeOf(p)).toList(),
                zone.outline().size() == 1 ? zone.radiusM() : 0,
                zone.outline().size() > 1);
    }

    static Shape shapeOf(Day day, MapFeature feature) {
        return new Shape(
                feature.outline().stream().map(p -> day.planeOf(p)).toList(),
                0,
                feature.shape() == MapFeature.Shape.AREA);
    }

    /** Whether a zone's rule holds today for what hangs on the hook. */
    static boolean applies(Day day, Zone zone, List<Load> loads) {
        return zone.isActiveOn(day.job().date())
                && (zone.kinds().isEmpty()
                        || loads.stream().anyMatch(load -> zone.kinds().contains(load.kind())));
    }
}
