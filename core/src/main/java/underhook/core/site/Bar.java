package underhook.core.site;

/**
 * A level bar with round ends on a line through the place, or a disc where both ends are the same; it
 * reaches up without end.
 *
 * @param eastFactor eastward part of its line's bearing
 * @param northFactor northward part of its line's bearing
 * @param fromM one end along the line, m from the place
 * @param toM other end along the line, m from the place, not below the first
 * @param radiusM half its width, m
 * @param bottomAmslM its lowest, m AMSL
 */
record Bar(
        double eastFactor,
        double northFactor,
        double fromM,
        double toM,
        double radiusM,
        double bottomAmslM) {

    static Bar disc(double radiusM, double bottomAmslM) {
        return new Bar(0, 1, 0, 0, radiusM, bottomAmslM);
    }

    /** A disc drawn out from so far behind the place to so far ahead of it on a heading. */
    static Bar along(double headingGridRad, double behindM, double aheadM, Bar disc) {
        return new Bar(
                Math.sin(headingGridRad),
                Math.cos(headingGridRad),
                -behindM,
                aheadM,
                disc.radiusM(),
                disc.bottomAmslM());
    }

    /**
     * The same, moved along a way and up, and wider by half a step of it. A disc may go any way, a bar
     * only along its own line.
     */
    Bar moved(Steps steps, double alongM, double upM) {
        boolean isDisc = toM - fromM <= 0;
        double east = isDisc ? steps.eastFactor() : eastFactor;
        double north = isDisc ? steps.northFactor() : northFactor;
        double ownM = alongM * steps.alongM(east, north);
        return new Bar(
                east,
                north,
                fromM + ownM,
                toM + ownM,
                radiusM + Steps.STEP_M / 2,
                bottomAmslM + upM);
    }

    /** How far its ends lie from the place, m. */
    double reachM() {
        return Math.max(Math.abs(fromM), Math.abs(toM));
    }

    /** Level distance of a point to its middle line, m. */
    double apartM(double eastM, double northM) {
        double alongM = eastM * eastFactor + northM * northFactor;
        double asideM = eastM * northFactor - northM * eastFactor;
        double beyondM = Math.max(0, Math.max(fromM - alongM, alongM - toM));
        return Math.sqrt(beyondM * beyondM + asideM * asideM);
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
