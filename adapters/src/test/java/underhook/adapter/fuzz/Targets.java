package underhook.adapter.fuzz;

import java.util.Map;
import java.util.function.Supplier;
import underhook.adapter.crs.WktTarget;
import underhook.adapter.job.JobFileTarget;
import underhook.adapter.job.ReportTarget;
import underhook.adapter.job.SheetTarget;
import underhook.adapter.planfile.PlanTarget;
import underhook.adapter.terrain.RasterTarget;

/** Every reader of bytes by name. */
final class Targets {
    private static final Map<String, Supplier<Target>> BY_NAME =
            Map.ofEntries(
                    Map.entry("geotiff", () -> RasterTarget.of("a.tif")),
                    Map.entry("hgt", () -> RasterTarget.of("N46E008.hgt.zip")),
                    Map.entry("asc", () -> RasterTarget.of("a.asc")),
                    Map.entry("wkt", WktTarget::new),
                    Map.entry("yaml", () -> JobFileTarget.of("yaml")),
                    Map.entry("csv", () -> JobFileTarget.of("csv")),
                    Map.entry("geojson", () -> JobFileTarget.of("geojson")),
                    Map.entry("xlsx", SheetTarget::new),
                    Map.entry("report", ReportTarget::new),
                    Map.entry("plan", PlanTarget::new));

    private Targets() {}

    static Iterable<String> names() {
        return BY_NAME.keySet().stream().sorted().toList();
    }

    static Target of(String name) {
        Supplier<Target> supplier = BY_NAME.get(name);
        if (supplier == null) {
            throw new IllegalArgumentException(name + " must be one of " + names());
        }
        return supplier.get();
    }
}
