package underhook.adapter.geofile.aixm;

import java.util.List;
import java.util.OptionalDouble;

/**
 * A part of an obstacle as stated.
 *
 * @param extentM from its own foot to its top, m
 * @param heightM from the ground to its top, m, where that is stated
 * @param topAmslM elevation of its top, m
 * @param accuracyM how far its position may be off, m
 * @param outlines where it stands; empty when nobody says
 */
record Part(
        String designator,
        String type,
        OptionalDouble extentM,
        OptionalDouble heightM,
        OptionalDouble topAmslM,
        OptionalDouble accuracyM,
        List<Outline> outlines) {
    Part {
        outlines = List.copyOf(outlines);
    }

    /** Elevation of its foot, where both are stated. */
    OptionalDouble footAmslM() {
        return topAmslM.isPresent() && extentM.isPresent()
                ? OptionalDouble.of(topAmslM.getAsDouble() - extentM.getAsDouble())
                : OptionalDouble.empty();
    }

    boolean isNear(Part other, double distanceM) {
        return outlines.isEmpty()
                || other.outlines.isEmpty()
                || outlines.stream()
                        .anyMatch(
                                mine ->
                                        other.outlines.stream()
                                                .anyMatch(its -> mine.isNear(its, distanceM)));
    }
}
