package underhook.adapter.job;

import java.util.List;
import java.util.Locale;
import java.util.Set;
import underhook.adapter.job.text.Fields;
import underhook.core.geo.GeoPoint;

/**
 * One feature of a file, or one part of a feature with several.
 *
 * @param part which part, from 1; 0 for a feature of one part
 * @param outline one point, a line, or a ring without its repeated last point; empty when the position
 *     has a fault
 * @param hasHoles whether the area has holes, which are not in the outline
 * @param unknownSaid names of unknown properties that were reported
 */
record Feature(
        int line,
        Fields properties,
        int part,
        Shape shape,
        List<Position> outline,
        boolean hasHoles,
        Set<String> unknownSaid) {
    /** What kind of outline a feature has. */
    enum Shape {
        POINT,
        LINE,
        AREA;

        String word() {
            return name().toLowerCase(Locale.ROOT);
        }
    }

    /** Reports properties that nobody asked for, each name once for the file. */
    void refuseUnknown() {
        properties.refuseUnknown(unknownSaid);
    }

    List<GeoPoint> points() {
        return outline.stream().map(Position::point).toList();
    }
}
