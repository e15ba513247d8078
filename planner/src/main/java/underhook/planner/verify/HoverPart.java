package underhook.planner.verify;

import underhook.core.geo.PlanePoint;

/**
 * A part of a hover: what is level and has round ends, with all that is above it.
 *
 * @param name as the message says it
 * @param a one end of its middle line
 * @param b the other end; the same for what is round
 * @param halfWidthM half its width, m, not negative
 * @param lowestAmslM its lowest, m AMSL
 * @param hangs whether it is the line or what hangs on it
 */
record HoverPart(
        String name,
        PlanePoint a,
        PlanePoint b,
        double halfWidthM,
        double lowestAmslM,
        boolean hangs) {

    /** The part at a place, from so far behind it to so far ahead on a heading. */
    HoverPart drawnOut(double headingGridRad, double behindM, double aheadM) {
        return new HoverPart(
                name,
                Plane.along(a, headingGridRad, -behindM),
                Plane.along(a, headingGridRad, aheadM),
                halfWidthM,
                lowestAmslM,
                hangs);
    }

    /** The part so much further on a bearing and higher. */
    HoverPart moved(double bearingGridRad, double alongM, double upM) {
        return new HoverPart(
                name,
                Plane.along(a, bearingGridRad, alongM),
                Plane.along(b, bearingGridRad, alongM),
                halfWidthM,
                lowestAmslM + upM,
                hangs);
    }

    /** Level distance to a point, m; negative over it. */
    double asideM(PlanePoint p) {
        return Plane.toSegmentM(p, a, b) - halfWidthM;
    }

    /** Level distance to a straight edge, m; negative over it. */
    double asideM(Plane.Stretch edge) {
        return Plane.stretchesApartM(new Plane.Stretch(a, b), edge) - halfWidthM;
    }

    /** Distance in space to what stands so far aside up to a height, m; not above 0 inside it. */
    double apartM(double asideM, double topAmslM) {
        double above = lowestAmslM - topAmslM;
        return asideM <= 0 && above <= 0
                ? Math.max(asideM, above)
                : Math.hypot(Math.max(0, asideM), Math.max(0, above));
    }

    /** How far any of it lies from a place, m. */
    double reachM(PlanePoint place) {
        return Math.max(Plane.apartM(place, a), Plane.apartM(place, b)) + halfWidthM;
    }
}
