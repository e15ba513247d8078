package underhook.planner.verify;

/**
 * How far a written figure may be off our own before it is refused. Each covers rounding in the file or
 * the difference of two right ways to compute, never a margin that the job asks for.
 */
final class Tolerance {
    /** Times are written in whole seconds. */
    static final double TIME_S = 1.0;

    /** Several rounded times add up in a total of the day. */
    static final double TOTAL_TIME_S = 5.0;

    /** Fuel is written in whole kilograms or finer; the chain is kept unrounded on our side. */
    static final double FUEL_KG = 1.0;

    /** Masses are rounded to whole kilograms, to the safe side. */
    static final double MASS_KG = 1.0;

    /** Floating-point dust of sums of masses. */
    static final double DUST_KG = 1e-6;

    /** Floating-point dust of lengths, and the seventh decimal of a degree (1 cm), m. */
    static final double LENGTH_M = 0.05;

    /** Plane and ellipsoid distances of one leg, and coordinates of seven decimals, m. */
    static final double DISTANCE_M = 2.0;

    /** Scale of the plane within a day's reach, besides {@link #DISTANCE_M}. */
    static final double DISTANCE_FRACTION = 0.001;

    /** Time for a distance: pilots fly by whole knots; half a knot in 25 is 2 percent. */
    static final double LEG_TIME_FRACTION = 0.98;

    /** A path ends over its place: placing over a hook is by eye within a rotor radius, m. */
    static final double PATH_END_M = 5.0;

    /** A speed written in tenths of a knot, m/s. */
    static final double SPEED_M_PER_S = 0.06;

    /** Trail speed: air density along the leg is known to about 2 percent, speed to half of that. */
    static final double TRAIL_SPEED_FACTOR = 1.02;

    /** Head and cross wind written in tenths of a knot, m/s. */
    static final double WIND_M_PER_S = 0.06;

    /** Floating-point dust of wind limits converted from knots, m/s. */
    static final double WIND_DUST_M_PER_S = 1e-6;

    /** A track drawn through points rounded to centimetres is off by less than 0.1°: of 25 m/s of wind, m/s. */
    static final double DRAWN_WIND_M_PER_S = 0.04;

    /** Height sampled on two different sets of points, m. */
    static final double CLEARANCE_M = 0.5;

    /** What is no higher round a machine on the ground is grass. @source common practice, no source */
    static final double GRASS_M = 0.3;

    /** Same, for a place near the limit in plan. */
    static final double PLAN_M = 0.5;

    /** Ways in are stated in whole degrees or finer and drawn through points rounded to centimetres. */
    static final double WAY_IN_RAD = Math.toRadians(0.75);

    /** Azimuths paced out from a pole. */
    static final double BEARING_RAD = Math.toRadians(5);

    /** Sunrise by two published algorithms differs by less than a minute, s. */
    static final double SUN_S = 60.0;

    /**
     * A day that begins at sunrise, with the rounded times in it, s: the plan waits that minute longer than its
     * own sunrise, which may be as much later than ours.
     */
    static final double DAY_TIME_S = 2 * SUN_S + TOTAL_TIME_S;

    /** Slope from two stencils on the same cells, rad. */
    static final double SLOPE_RAD = Math.toRadians(0.5);

    private Tolerance() {}
}
