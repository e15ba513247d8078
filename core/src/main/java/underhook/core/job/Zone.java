package underhook.core.job;

import java.time.LocalDate;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import underhook.core.geo.GeoPoint;
import underhook.core.geo.LocalFrame;

/**
 * Ground over which a rule holds.
 *
 * @param outline closed ring without its repeated last point; one point with a radius is a circle
 * @param radiusM radius around a single point, m; 0 for a ring
 * @param rule what may not be done
 * @param kinds kinds of load that the rule is about; empty means every flight, the empty line too
 * @param minAglM least height above ground for {@code MIN_HEIGHT} and {@code NO_HOVER_BELOW}, m
 * @param closedFrom first day of the rule, when it is seasonal
 * @param closedUntil last day of the rule, when it is seasonal
 */
public record Zone(
        String id,
        String name,
        List<GeoPoint> outline,
        double radiusM,
        Rule rule,
        List<String> kinds,
        double minAglM,
        Optional<LocalDate> closedFrom,
        Optional<LocalDate> closedUntil,
        String source) {
    private static final int CIRCLE_CORNERS = 72;

    /** What may not be done. */
    public enum Rule {
        NO_OVERFLIGHT,
        MIN_HEIGHT,
        NO_HOVER_BELOW,
        NO_FUEL
    }

    public Zone {
        Objects.requireNonNull(id, "id");
        outline = List.copyOf(outline);
        kinds = List.copyOf(kinds);
        if (outline.size() == 1 ? !(radiusM > 0) : outline.size() < 3) {
            throw new IllegalArgumentException(
                    "zone " + id + " needs a ring or a point with radius.");
        }
        if (!(minAglM >= 0)) {
            throw new IllegalArgumentException("minAglM (" + minAglM + ") must not be negative.");
        }
    }

    /** Corners of its ring, without the repeated last; a circle lies inside of them. */
    public List<GeoPoint> ring() {
        return outline.size() > 1
                ? outline
                : LocalFrame.aroundCircle(outline.get(0), radiusM, CIRCLE_CORNERS);
    }

    /** Whether the rule holds on that day. */
    public boolean isActiveOn(LocalDate day) {
        boolean begun = closedFrom.map(first -> !day.isBefore(first)).orElse(true);
        boolean notOver = closedUntil.map(last -> !day.isAfter(last)).orElse(true);
        return begun && notOver;
    }
}
