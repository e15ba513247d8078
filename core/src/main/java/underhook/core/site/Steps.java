package underhook.core.site;

/**
 * A straight way away from the place, in steps.
 *
 * @param eastFactor eastward part of its bearing
 * @param northFactor northward part of its bearing
 * @param needM margin to keep on it, m
 * @param beyondM columns that reach nearer to the place than this are left out, m
 */
record Steps(double eastFactor, double northFactor, double needM, double beyondM) {
    static final double STEP_M = 0.5;

    static final int COUNT = (int) (Columns.WITHIN_M / STEP_M);

    static Steps of(double bearingGridRad, double needM, double beyondM) {
        return new Steps(Math.sin(bearingGridRad), Math.cos(bearingGridRad), needM, beyondM);
    }

    /** How far along the way a point lies, m. */
    double alongM(double eastM, double northM) {
        return eastM * eastFactor + northM * northFactor;
    }

    /** How far beside the way a point lies, m. */
    double asideM(double eastM, double northM) {
        return Math.abs(eastM * northFactor - northM * eastFactor);
    }
}
