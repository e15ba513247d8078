package underhook.adapter.geofile;

import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.function.Consumer;
import underhook.app.port.FeatureReader.Shape;
import underhook.app.port.FeatureReader.StatedFeature;
import underhook.app.port.ReferenceSystem;

/**
 * What the parts of one feature share.
 *
 * @param line line or row of the file, from 1
 * @param values in the order of the file
 */
record Row(int line, Map<String, String> values, ReferenceSystem system) {
    Row {
        values = Collections.unmodifiableMap(values);
    }

    /** Hands the feature over, part by part; a feature of no parts has no geometry. */
    void hand(List<Part> parts, Consumer<StatedFeature> sink) {
        if (parts.isEmpty()) {
            hand(new Part(Shape.NONE, List.of(), false), 0, sink);
        } else if (parts.size() == 1) {
            hand(parts.get(0), 0, sink);
        } else {
            for (int i = 0; i < parts.size(); i++) {
                hand(parts.get(i), i + 1, sink);
            }
        }
    }

    private void hand(Part part, int number, Consumer<StatedFeature> sink) {
        sink.accept(
                new StatedFeature(
                        line,
                        number,
                        values,
                        part.shape(),
                        system,
                        part.outline(),
                        part.hasHoles()));
    }
}
