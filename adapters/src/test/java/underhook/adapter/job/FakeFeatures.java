package underhook.adapter.job;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.function.Consumer;
import underhook.app.port.Fault;
import underhook.app.port.FeatureReader;
import underhook.app.port.ReferenceSystem;
import underhook.app.port.Wgs84;
import underhook.core.finding.FindingCode;

/** Hands over features that a test made up, for files with any of its endings. */
final class FakeFeatures implements FeatureReader {
    private final List<String> endings;
    private final List<StatedFeature> features = new ArrayList<>();
    private ReferenceSystem own = Wgs84.SYSTEM;
    boolean hasSystem = true;
    String layerAsked = "";

    FakeFeatures(String... endings) {
        this.endings = List.of(endings);
    }

    /** Adds a feature; values are names and values in turn, corners x and y in turn. */
    FakeFeatures add(Shape shape, List<String> values, double... corners) {
        Map<String, String> named = new LinkedHashMap<>();
        for (int i = 0; i < values.size(); i += 2) {
            named.put(values.get(i), values.get(i + 1));
        }
        List<Corner> outline = new ArrayList<>();
        for (int i = 0; i < corners.length; i += 2) {
            outline.add(new Corner(corners[i], corners[i + 1], OptionalDouble.empty()));
        }
        features.add(new StatedFeature(features.size() + 1, 0, named, shape, own, outline, false));
        return this;
    }

    FakeFeatures in(ReferenceSystem system) {
        own = system;
        return this;
    }

    @Override
    public boolean reads(String fileName) {
        return endings.stream().anyMatch(fileName::endsWith);
    }

    @Override
    public Set<String> usualNames() {
        return Set.of("fid");
    }

    @Override
    public List<Fault> read(Request request, Consumer<StatedFeature> sink) {
        layerAsked = request.layer();
        if (!hasSystem && request.referenceSystem().isEmpty()) {
            return List.of(
                    new Fault(
                            FindingCode.REFERENCE_SYSTEM_MISSING,
                            request.statedName(),
                            0,
                            "",
                            "has no reference system",
                            "",
                            "one"));
        }
        for (StatedFeature one : features) {
            sink.accept(
                    new StatedFeature(
                            one.line(),
                            one.part(),
                            one.values(),
                            one.shape(),
                            request.referenceSystem().orElse(one.system()),
                            one.outline(),
                            one.hasHoles()));
        }
        return List.of();
    }
}
