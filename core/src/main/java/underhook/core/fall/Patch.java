package underhook.core.fall;

import java.util.List;
import underhook.core.geo.PlanePoint;
import underhook.core.job.LoadShape;

/**
 * The ground that a load may hit and run over when it is let go, as a box along the track.
 *
 * <p>Distances are from the point under the belly hook at the moment of letting go. The box holds every
 * landing that the stated spreads allow; where they are two standard deviations of independent errors it
 * holds more than 95 of 100 (checked by sampling). A footprint is no guarantee: loads glide, tumble and
 * bounce.
 *
 * @param backM from the point to the box's near end, m along the track; negative lies behind
 * @param forwardM to its far end, m along the track
 * @param leftM to its left edge, m to the left of the track; negative lies right of it
 * @param rightM to its right edge, m to the right of the track
 */
public record Patch(double backM, double forwardM, double leftM, double rightM) {
    public Patch {
        if (!(backM <= forwardM && -leftM <= rightM)) {
            throw new IllegalArgumentException("the box is turned inside out.");
        }
    }

    /** Slope of the ground where it may land: rad below the horizontal forward and to the right. */
    public record Ground(double fallsForwardRad, double fallsRightRad) {
        /** Level ground. */
        public static final Ground LEVEL = new Ground(0, 0);
    }

    /**
     * Where a load may land and how far it may run.
     *
     * @param release how it is let go
     * @param shape how it moves on the ground
     * @param ground slope where it lands
     * @source DERIVED fall with drag from every corner of the spreads, and {@link Runout}
     */
    public static Patch of(Release release, LoadShape shape, Ground ground) {
        return Landings.of(release).patch(shape, ground);
    }

    /** From the point under the hook to the farthest corner, m: what lies further off is not hit. */
    public double reachM() {
        return Math.hypot(
                Math.max(Math.abs(backM), Math.abs(forwardM)),
                Math.max(Math.abs(leftM), Math.abs(rightM)));
    }

    /** Whether a landing lies in the box. */
    public boolean holds(double alongTrackM, double acrossM) {
        return alongTrackM >= backM
                && alongTrackM <= forwardM
                && acrossM >= -leftM
                && acrossM <= rightM;
    }

    /** The four corners in the plane, anticlockwise: near left, near right, far right, far left. */
    public List<PlanePoint> outline(PlanePoint under, double trackGridRad) {
        double across = trackGridRad + Math.PI / 2;
        PlanePoint near = under.towards(trackGridRad, backM);
        PlanePoint far = under.towards(trackGridRad, forwardM);
        return List.of(
                near.towards(across, -leftM),
                near.towards(across, rightM),
                far.towards(across, rightM),
                far.towards(across, -leftM));
    }
}
