package underhook.adapter.job;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import underhook.app.port.MapBox;
import underhook.app.port.MapReader;
import underhook.core.geo.GeoPoint;
import underhook.core.job.CrossingRule;
import underhook.core.job.Hanging;
import underhook.core.job.MapFeature;
import underhook.core.job.Wire;
import underhook.core.job.WireKind;

/** A map of things that a test made up, for files that end in {@code .map}. */
final class FakeMap implements MapReader {
    final List<MapFeature> features = new ArrayList<>();
    final List<Wire> wires = new ArrayList<>();
    final List<MapBox> asked = new ArrayList<>();

    private final Map<String, FakeMap> editions = new HashMap<>();

    /** What a file of this name holds instead. */
    FakeMap edition(String fileName, FakeMap other) {
        editions.put(fileName, other);
        return this;
    }

    /** A house, given by one corner. */
    FakeMap house(String id, double latDeg, double lonDeg) {
        features.add(
                new MapFeature(
                        id,
                        MapFeature.Kind.HOUSE,
                        MapFeature.Shape.POINT,
                        List.of(new GeoPoint(latDeg, lonDeg)),
                        0,
                        CrossingRule.NEVER,
                        OptionalDouble.empty(),
                        false,
                        "inside"));
        return this;
    }

    /** A power line of two supports on one parallel. */
    FakeMap wire(String id, double latDeg, double westDeg, double eastDeg) {
        wires.add(
                new Wire(
                        id,
                        List.of(new GeoPoint(latDeg, westDeg), new GeoPoint(latDeg, eastDeg)),
                        20,
                        5,
                        true,
                        20_000,
                        CrossingRule.NEVER,
                        30,
                        0.2,
                        true,
                        Hanging.of(WireKind.POWER, true),
                        "inside"));
        return this;
    }

    @Override
    public boolean reads(String fileName) {
        return fileName.endsWith(".map");
    }

    @Override
    public String usualLicence() {
        return "ODbL 1.0";
    }

    @Override
    public String usualAttribution() {
        return "© Somebody's contributors";
    }

    @Override
    public Contents read(Path file, String statedName, MapBox box) {
        FakeMap other = editions.get(String.valueOf(file.getFileName()));
        if (other != null) {
            return other.read(file.resolveSibling("any"), statedName, box);
        }
        asked.add(box);
        return new Contents(
                features.stream().filter(one -> box.touches(one.outline())).toList(),
                wires.stream().filter(one -> box.touches(one.supports())).toList(),
                3,
                List.of());
    }
}
