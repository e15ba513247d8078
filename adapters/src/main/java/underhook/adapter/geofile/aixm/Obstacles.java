package underhook.adapter.geofile.aixm;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import underhook.adapter.geofile.aixm.Heights.Height;
import underhook.adapter.geofile.aixm.StructureReader.Structure;
import underhook.adapter.geofile.source.Faults;
import underhook.app.port.MapBox;
import underhook.app.port.MapReader.Contents;
import underhook.core.job.CrossingRule;
import underhook.core.job.Hanging;
import underhook.core.job.MapFeature;
import underhook.core.job.MapFeature.Shape;
import underhook.core.job.Wire;
import underhook.core.job.WireKind;
import underhook.core.unit.Units;

/** Keeps what of a message touches the box, in the words of a job. Mutable. */
final class Obstacles {
    /** What registers ask for beyond aerodromes. @source ICAO-10066 appendix 8, obstacle data for area 1 */
    private static final double USUAL_ACCURACY_M = 50;

    private static final double MOST_BUFFER_M = 9999;
    private static final int LONGEST_ID = 40;

    /** As of a wire in the job's own files that says nothing else. @source PRACTICE own setting */
    private static final double CROSSING_ABOVE_M = 30;

    private static final double CROSSING_OFF_SQUARE_RAD = Units.degToRad(15);

    private final String source;
    private final MapBox box;
    private final Faults faults;
    private final Set<String> ids = new HashSet<>();
    private final Map<String, Integer> used = new HashMap<>();
    private final List<MapFeature> features = new ArrayList<>();
    private final List<Wire> wires = new ArrayList<>();
    private long passedOver;

    Obstacles(String source, MapBox box, Faults faults) {
        this.source = source;
        this.box = box;
        this.faults = faults;
    }

    Contents contents() {
        return new Contents(features, wires, passedOver, faults.list());
    }

    void add(Structure structure) {
        List<Slice> counting = Slice.counting(structure.slices());
        boolean isPlaced = !counting.isEmpty();
        boolean isHere =
                structure.slices().stream()
                        .flatMap(slice -> slice.parts().stream())
                        .anyMatch(this::isHere);
        // What cannot be placed at all may stand here.
        if (isHere || !isPlaced) {
            structure.faults().forEach(fault -> faults.add(structure.line(), fault));
            passedOver += isPlaced ? 0 : 1;
        }
        for (Slice slice : counting) {
            Heights heights = new Heights(slice);
            for (Part part : slice.parts()) {
                passedOver += isHere && part.outlines().isEmpty() ? 1 : 0;
                for (Outline outline : part.outlines()) {
                    if (outline.touches(box)) {
                        add(new Thing(structure, slice, part, outline), heights);
                    }
                }
            }
        }
    }

    private boolean isHere(Part part) {
        return part.outlines().stream().anyMatch(outline -> outline.touches(box));
    }

    /** One outline of a part, with everything that it belongs to. */
    private record Thing(Structure structure, Slice slice, Part part, Outline outline) {
        /** The most particular name that there is. */
        String name() {
            if (!part.designator().isEmpty()) {
                return part.designator();
            }
            return slice.name().isEmpty() ? structure.identifier() : slice.name();
        }

        double accuracyM() {
            return part.accuracyM().orElse(USUAL_ACCURACY_M);
        }
    }

    private void add(Thing thing, Heights heights) {
        Optional<WireKind> wire =
                thing.outline.shape() == Shape.LINE
                        ? Kinds.wire(thing.slice.typeOf(thing.part), thing.slice.type())
                        : Optional.empty();
        if (wire.isPresent()) {
            addWire(thing, wire.get(), heights.ofWire(thing.part, thing.outline.points()));
        } else {
            addMast(thing, heights.of(thing.part));
        }
    }

    private void addMast(Thing thing, Height height) {
        double bufferM = Math.max(0, thing.accuracyM()) + thing.slice.reachM();
        features.add(
                new MapFeature(
                        id(thing.name()),
                        MapFeature.Kind.MAST,
                        thing.outline.shape(),
                        thing.outline.points(),
                        Math.min(MOST_BUFFER_M, bufferM),
                        CrossingRule.NEVER,
                        OptionalDouble.of(Math.min(height.topM(), 1999)),
                        height.isEstimated(),
                        source));
    }

    private void addWire(Thing thing, WireKind kind, Height height) {
        wires.add(
                new Wire(
                        id(thing.name()),
                        thing.outline.points(),
                        height.topM(),
                        Math.max(0, thing.accuracyM()),
                        kind != WireKind.CABLEWAY,
                        0,
                        CrossingRule.NEVER,
                        CROSSING_ABOVE_M,
                        CROSSING_OFF_SQUARE_RAD,
                        true,
                        Hanging.of(kind, height.isEstimated()),
                        source));
    }

    /** A word that nothing else of the file has. */
    private String id(String name) {
        String word = name.replaceAll("[^\\p{L}\\p{N}._-]+", "-");
        String base = cut(word.isEmpty() ? "obstacle" : word, "");
        String id = base;
        while (!ids.add(id)) {
            id = cut(base, "-" + (1 + used.merge(base, 1, Integer::sum)));
        }
        return id;
    }

    private static String cut(String base, String ending) {
        int most = LONGEST_ID - ending.length();
        return (base.length() <= most ? base : base.substring(0, most)) + ending;
    }
}
