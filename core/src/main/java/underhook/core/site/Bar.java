package underhook.core.site;

/**
 * A level bar with round ends around a straight piece, or a disc where both ends are the same; it
 * reaches up without end.
 *
 * @param fromEastM one end, m east of the place
 * @param fromNorthM one end, m north of the place
 * @param toEastM other end, m east of the place
 * @param toNorthM other end, m north of the place
 * @param radiusM half its width, m
 * @param bottomAmslM its lowest, m AMSL
 */
record Bar(
        double fromEastM,
        double fromNorthM,
        double toEastM,
        double toNorthM,
        double radiusM,
        double bottomAmslM) {

    static Bar disc(double radiusM, double bottomAmslM) {
        return new Bar(0, 0, 0, 0, radiusM, bottomAmslM);
    }

    /** A disc drawn out from so far behind the place to so far ahead of it on a heading. */
    static Bar along(double headingGridRad, double behindM, double aheadM, Bar disc) {
        double east = Math.sin(headingGridRad);
        double north = Math.cos(headingGridRad);
        return new Bar(
                -behindM * east,
                -behindM * north,
                aheadM * east,
                aheadM * north,
                disc.radiusM(),
                disc.bottomAmslM());
    }

    /** The same, moved along a way and up, and wider by half a step of it. */
    Bar moved(Steps steps, double alongM, double upM) {
        double east = alongM * steps.eastFactor();
        double north = alongM * steps.northFactor();
        return new Bar(
                fromEastM + east,
                fromNorthM + north,
                toEastM + east,
                toNorthM + north,
                radiusM + Steps.STEP_M / 2,
                bottomAmslM + upM);
    }

    /** How far its piece reaches from the place, m. */
    double reachM() {
        return Math.sqrt(
                Math.max(
                        fromEastM * fromEastM + fromNorthM * fromNorthM,
                        toEastM * toEastM + toNorthM * toNorthM));
    }

    /** Level distance of a point to the piece, m. */
    double apartM(double eastM, double northM) {
        double dx = toEastM - fromEastM;
        double dy = toNorthM - fromNorthM;
        double px = eastM - fromEastM;
        double py = northM - fromNorthM;
        double square = dx * dx + dy * dy;
        double t = square > 0 ? Math.max(0, Math.min(1, (px * dx + py * dy) / square)) : 0;
        double ex = px - t * dx;
        double ey = py - t * dy;
        return Math.sqrt(ex * ex + ey * ey);
    }

    /**
     * Distance in space between what is so far apart in level and in height, m; both negative means
     * inside, by the smaller depth.
     */
    static double inSpaceM(double levelM, double heightM) {
        if (levelM <= 0) {
            return heightM <= 0 ? Math.max(levelM, heightM) : heightM;
        }
        return heightM <= 0 ? levelM : Math.sqrt(levelM * levelM + heightM * heightM);
    }
}
