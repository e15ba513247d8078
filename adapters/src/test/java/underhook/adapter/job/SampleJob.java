package underhook.adapter.job;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import underhook.app.port.FeatureReader;
import underhook.app.port.JobReading;
import underhook.app.port.MapReader;
import underhook.app.port.RasterReader;
import underhook.app.port.ReferenceSystem;
import underhook.app.port.ReferenceSystems;
import underhook.core.finding.Finding;
import underhook.core.finding.FindingCode;
import underhook.core.finding.Outcome;
import underhook.core.finding.Severity;
import underhook.core.geo.GeoPoint;
import underhook.core.geo.HeightField;
import underhook.core.geo.LocalFrame;
import underhook.core.geo.PlanePoint;

/** An invented job folder, complete and without fault, to be spoilt by tests. */
final class SampleJob {
    /** Texts of the files by name; a test changes them before reading. */
    final Map<String, String> files = new LinkedHashMap<>();

    final Map<String, byte[]> binaries = new LinkedHashMap<>();

    SampleJob() {
        files.put(
                "job.yaml",
                """
                version: 1
                name: Sample ridge
                date: 2026-09-08
                zone: -01:00
                crs: "EPSG:1"
                magnetic-variation-deg: 3
                machine-start: A
                loads: loads.csv
                places: places.csv
                machine: machine.yaml
                weather:
                  file: weather.csv
                  reference-elevation-m: 177
                  lapse-c-per-100m: 0.65
                  between: hold
                  until: "18:00"
                crews: crews.yaml
                rules: rules.yaml
                terrain:
                  file: terrain.tif
                  licence: CC-BY 4.0
                  attribution: Nobody
                zones: zones.geojson
                wires: wires.geojson
                map: map.geojson
                release-areas: release.geojson
                """);
        files.put(
                "places.csv",
                """
                id,kind,name,x_m,y_m,elevation_m,canopy_m,clearing_radius_m,guy_azimuths_deg,remarks
                A,laydown,River Bar,260,-130,100,,open,,
                S01,site,,380,120,100,0,open,0;120;240,
                S02,site,,820,260,100,19,14,,"steep, wet"
                H,landing,,900,300,,,,,
                """);
        files.put(
                "loads.csv",
                """
                id,kind,from,to,mass_kg,mass_lb,mass_status,length_m,width_m,height_m,after,combine_with
                L01,bag,A,S01,188,,,0.9,0.9,1.1,,
                L02,bag,A,S02,,440,,0.9,0.9,1.1,,L01
                L03,bag,A,S01,ca. 200,,,11,0.3,0.3,L01+20,
                L04,bag,A,S02,,,,11,0.3,0.3,L02|L03,
                """);
        files.put(
                "machine.yaml",
                """
                version: 1
                name: D-1
                rotor-radius-m: 5.1
                tail-reach-m: 7.5
                empty-mass-kg: 1110
                crew-mass-kg: 95
                max-internal-mass-kg: 1850
                max-external-mass-kg: 2050
                hook-limit-kg: 750
                fuel-usable-kg: 340
                fuel-gauge-spread-kg: 8
                burn-kg-per-min: 2.3
                hover-burn-kg-per-min: 2.5
                start-fuel-kg: 8
                reserve-min: 20
                seats: 4
                empty-line-speed-kt: 55
                cabin-speed-kt: 70
                climb-ft-per-min: 800
                descent-ft-per-min: 600
                hover-table:
                  source: invented
                  rounded-down-to-kg: 5
                  pressure-altitude-m: [0, 500, 1000]
                  rows:
                    - {oat-c: 0, mass-kg: [2050, 2050, 2025]}
                    - {oat-c: 10, mass-kg: [2050, 2050, 1950]}
                lines:
                  - {name: 25 m, length-m: 25, mass-kg: 34, limit-kg: 750}
                balance:
                  empty-arm-m: 3.20
                  crew-arm-m: 2.10
                  fuel-arm-m: 3.40
                  cabin-arm-m: 2.90
                  hook-arm-m: 3.15
                  envelope:
                    - {mass-kg: 1100, forward-arm-m: 2.9, aft-arm-m: 3.4}
                    - {mass-kg: 2050, forward-arm-m: 3.0, aft-arm-m: 3.3}
                """);
        files.put(
                "weather.csv",
                """
                time,qnh_hpa,oat_c,wind_from_deg,wind_kt,gust_kt,remarks
                07:00,1020,11,220,6,9,
                08:00,1020,14,220,7,,window
                """);
        files.put(
                "crews.yaml",
                """
                version: 1
                crews:
                  - id: P
                    people: 4
                    mass-each-kg: 100
                    start: A
                    from: "06:30"
                    roles: [hook, receive, guy]
                    stays: no
                    serves: [S01, S02]
                walks:
                  - {between: [S01, S02], minutes: 15}
                """);
        files.put(
                "rules.yaml",
                """
                version: 1
                construction-margin-percent: 10
                estimated-mass-percent: 15
                clearance-m: 5
                rotor-clearance-m: 5
                wire-clearance-m: 30
                strip-half-width-m: 30
                final-m: 150
                tailwind-limit-kt: 5
                crosswind-limit-kt: 20
                landing-slope-deg: 7
                hover-exit: no
                elevation-tolerance-m: 10
                trail-near-m: 60
                second-release-s: 45
                return-extra-s: 35
                boarding-min: 3
                line-change-min: 6
                refuel-min: 4
                refuel-kg-per-min: 25
                refuel-handler-busy-min: 3
                contingency-min: 10
                ballast-kg: 15
                least-speed-kt: 25
                combine-mass-kg: 300
                duty-from: "05:45"
                duty-hours: 12
                engine-on-hours: 3
                break-min: 30
                engine-on-day-hours: 6
                day-end-before-sunset-min: 30
                costs: {flying-per-min: 35.00, standing-per-min: 12.00, people-per-min: 10.55, currency: EUR}
                kinds:
                  - kind: bag
                    speed-kt: 55
                    hook-up-s: 75
                    set-down-s: 55
                    shares-hook: yes
                    trail-limit-deg: 30
                    drag-coefficient: 1.05
                    ready-after-min: 20
                    wind-mean-kt: 25
                    wind-gust-kt: 32
                    wind-spread-kt: 12
                """);
        files.put(
                "zones.geojson",
                collection(
                        "{\"id\": \"Z1\", \"rule\": \"no-fuel\", \"radius_m\": 200, \"kinds\": [\"bag\"]}",
                        "\"Point\", \"coordinates\": [-11.99, 46.80]"));
        files.put(
                "wires.geojson",
                collection(
                        "{\"id\": \"LL-1\", \"highest_m\": 18, \"voltage_v\": 66000}",
                        "\"LineString\", \"coordinates\": [[-12.0, 46.80], [-11.98, 46.81]]"));
        files.put(
                "map.geojson",
                collection(
                        "{\"id\": \"RV-9\", \"kind\": \"road\"}",
                        "\"LineString\", \"coordinates\": [[-12.0, 46.79], [-11.98, 46.79]]"));
        files.put(
                "release.geojson",
                collection(
                        "{\"id\": \"J1\", \"agreed\": true}",
                        "\"Polygon\", \"coordinates\": [[[-12, 46.8], [-11.99, 46.8],"
                                + " [-11.99, 46.81], [-12, 46.8]]]"));
        files.put("terrain.tif", "raster");
    }

    private static String collection(String properties, String geometry) {
        return "{\"type\": \"FeatureCollection\", \"features\": [\n{\"type\": \"Feature\","
                + " \"properties\": "
                + properties
                + ",\n \"geometry\": {\"type\": "
                + geometry
                + "}}\n]}\n";
    }

    /** Replaces a piece of a file that must be there. */
    SampleJob with(String file, String piece, String other) {
        String text = files.getOrDefault(file, "");
        if (!text.contains(piece)) {
            throw new IllegalArgumentException(file + " has no " + piece);
        }
        files.put(file, text.replace(piece, other));
        return this;
    }

    SampleJob file(String file, String text) {
        files.put(file, text);
        return this;
    }

    JobReading readIn(Path folder, List<FeatureReader> features, List<MapReader> maps) {
        writeTo(folder);
        return reader(features, maps).read(folder);
    }

    JobReading readIn(Path folder) {
        writeTo(folder);
        return reader().read(folder);
    }

    void writeTo(Path folder) {
        try {
            for (Map.Entry<String, String> file : files.entrySet()) {
                Files.write(
                        folder.resolve(file.getKey()),
                        file.getValue().getBytes(StandardCharsets.UTF_8));
            }
            for (Map.Entry<String, byte[]> file : binaries.entrySet()) {
                Files.write(folder.resolve(file.getKey()), file.getValue());
            }
        } catch (IOException failed) {
            throw new UncheckedIOException(failed);
        }
    }

    static JobFolderReader reader() {
        return reader(List.of(), List.of());
    }

    static JobFolderReader reader(List<FeatureReader> features, List<MapReader> maps) {
        return reader(
                request ->
                        new RasterReader.Reading(
                                Optional.of(
                                        new Disc(
                                                request.frame(),
                                                switch (request.statedName()) {
                                                    case "coarse.tif" -> 90;
                                                    case "coarse-66ft.tif" -> 20.1168;
                                                    default -> 10;
                                                })),
                                List.of()),
                features,
                maps);
    }

    static JobFolderReader reader(
            RasterReader rasters, List<FeatureReader> features, List<MapReader> maps) {
        return new JobFolderReader(
                new PlaneSystems(),
                new JobFolderReader.Readers(rasters, features, maps),
                (where, date, zone) -> date.getMonthValue() != 12);
    }

    /** Knows one system, EPSG:1: metres east and north of 46.8 N 12 W. */
    private static final class PlaneSystems implements ReferenceSystems {
        @Override
        public Outcome<ReferenceSystem> find(String code) {
            if (code.equals("EPSG:1")) {
                return Outcome.done(new Plane());
            }
            return Outcome.refused(
                    Finding.of(
                            FindingCode.REFERENCE_SYSTEM_UNKNOWN,
                            Severity.STOP,
                            code,
                            "",
                            "only EPSG:1 is known"));
        }
    }

    static final class Plane implements ReferenceSystem {
        private final LocalFrame frame = LocalFrame.of(new GeoPoint(46.8, -12));

        @Override
        public String name() {
            return "EPSG:1";
        }

        @Override
        public boolean isGeographic() {
            return false;
        }

        @Override
        public double metresPerUnit() {
            return 1;
        }

        @Override
        public GeoPoint toGeo(double x, double y) {
            if (Math.abs(x) > 300_000 || Math.abs(y) > 4_000_000) {
                throw new IllegalArgumentException("outside");
            }
            return frame.toGeo(new PlanePoint(x, y));
        }

        @Override
        public Xy fromGeo(GeoPoint point) {
            PlanePoint plane = frame.toPlane(point);
            return new Xy(plane.eastM(), plane.northM());
        }
    }

    /** Flat ground, 100 m AMSL, within 5 km of the plane's centre. */
    record Disc(LocalFrame frame, double cellSizeM) implements HeightField {
        @Override
        public boolean covers(double eastM, double northM) {
            GeoPoint point = frame.toGeo(new PlanePoint(eastM, northM));
            if (Math.abs(point.latDeg() - 46.8) > 1 || Math.abs(point.lonDeg() + 12) > 1) {
                return false;
            }
            PlanePoint plane = LocalFrame.of(new GeoPoint(46.8, -12)).toPlane(point);
            return Math.hypot(plane.eastM(), plane.northM()) < 5000;
        }

        @Override
        public double heightM(double eastM, double northM) {
            return 100;
        }

        @Override
        public double highestWithinM(PlanePoint centre, double radiusM) {
            return 100;
        }

        @Override
        public boolean coversDisc(PlanePoint centre, double radiusM) {
            return covers(centre.eastM(), centre.northM());
        }
    }
}
