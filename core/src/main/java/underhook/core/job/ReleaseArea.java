package underhook.core.job;

import java.util.List;
import underhook.core.geo.GeoPoint;

/** Ground where a load may be let go. */
public record ReleaseArea(String id, List<GeoPoint> outline, boolean agreed, String source) {
    public ReleaseArea {
        outline = List.copyOf(outline);
        if (outline.size() < 3) {
            throw new IllegalArgumentException("release area " + id + " needs three points.");
        }
    }
}
