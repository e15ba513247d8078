package underhook.adapter.fuzz;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.Map;
import underhook.adapter.crs.WktTarget;
import underhook.adapter.geofile.GeoFileTarget;
import underhook.adapter.job.JobFileTarget;
import underhook.adapter.job.ReportTarget;
import underhook.adapter.job.SheetTarget;
import underhook.adapter.osm.OsmTarget;
import underhook.adapter.planfile.PlanTarget;
import underhook.adapter.terrain.RasterTarget;

/** Every reader of bytes by name. */
final class Targets {
    private static final Map<String, Making> BY_NAME =
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
                    Map.entry("plan", PlanTarget::new),
                    Map.entry("osm", () -> OsmTarget.of(".osm")),
                    Map.entry("osm-gz", () -> OsmTarget.of(".osm.gz")),
                    Map.entry("osm-pbf", () -> OsmTarget.of(".pbf")),
                    Map.entry("gpkg", () -> GeoFileTarget.of("a.gpkg")),
                    Map.entry("kml", () -> GeoFileTarget.of("a.kml")),
                    Map.entry("kmz", () -> GeoFileTarget.of("a.kmz")),
                    Map.entry("gpx", () -> GeoFileTarget.of("a.gpx")),
                    Map.entry("aixm", () -> GeoFileTarget.of("a.xml")));

    /** Some make a folder for themselves. */
    private interface Making {
        Target make() throws IOException;
    }

    private Targets() {}

    static Iterable<String> names() {
        return BY_NAME.keySet().stream().sorted().toList();
    }

    static Target of(String name) {
        Making making = BY_NAME.get(name);
        if (making == null) {
            throw new IllegalArgumentException(name + " must be one of " + names());
        }
        try {
            return making.make();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
