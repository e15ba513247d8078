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
    /** What corners and their mixtures may miss: part of the box's size and a length. */
    private static final double PAD_RATIO = 0.02;

    private static final double PAD_M = 1;

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
        Box box = new Box();
        for (int corner = 0; corner < CORNERS; corner++) {
            FallPath.Impact hit = path(release, corner).untilGround();
            box.hold(hit.forwardM(), hit.rightM());
            double down = hit.downMPerS();
            double ahead =
                    Runout.runM(
                            shape, Math.max(0, hit.forwardMPerS()), down, ground.fallsForwardRad);
            double behind =
                    Runout.runM(
                            shape, Math.max(0, -hit.forwardMPerS()), down, -ground.fallsForwardRad);
            double right =
                    Runout.runM(shape, Math.max(0, hit.rightMPerS()), down, ground.fallsRightRad);
            double left =
                    Runout.runM(shape, Math.max(0, -hit.rightMPerS()), down, -ground.fallsRightRad);
            box.hold(hit.forwardM() + ahead, hit.rightM() + right);
            box.hold(hit.forwardM() - behind, hit.rightM() - left);
        }
        return box.toPatch();
    }

    /** Height has three values, each other thing two. */
    private static final int CORNERS = 3 * 2 * 2 * 2 * 2 * 2 * 2;

    private static FallPath path(Release release, int corner) {
        int rest = corner / 3;
        double height = release.heightM() + (corner % 3 - 1) * release.heightSpreadM();
        double speed =
                Math.max(
                        0, release.groundSpeedMPerS() + side(rest, 0) * release.speedSpreadMPerS());
        Release.Drift drift = release.drift();
        Release.Drift wind =
                new Release.Drift(
                        boundedMPerS(drift.forwardMPerS() + side(rest, 1) * drift.spreadMPerS()),
                        boundedMPerS(drift.rightMPerS() + side(rest, 2) * drift.spreadMPerS()),
                        drift.groundFactor(),
                        0);
        Release.Hanging hanging = release.hanging();
        Fall.Body body = side(rest, 3) > 0 ? hanging.heavy() : hanging.light();
        double swing = hanging.swingRad();
        double sidewaysM = side(rest, 5) * hanging.lineLengthM() * Math.sin(swing);
        double lengthwaysM =
                hanging.lineLengthM() * Math.sin(side(rest, 4) * swing - hanging.trailRad());
        // The swing is fastest where it is plumb and stands still at its ends; both at once is the
        // safe side.
        double swingMPerS =
                Math.sqrt(
                        2
                                * underhook.core.unit.Units.STANDARD_GRAVITY_M_PER_S2
                                * hanging.lineLengthM()
                                * (1 - Math.cos(swing)));
        return new FallPath(
                new FallPath.Start(
                        height,
                        lengthwaysM,
                        sidewaysM,
                        speed + side(rest, 4) * swingMPerS,
                        side(rest, 5) * swingMPerS,
                        body.retardationCoefficient()),
                wind);
    }

    private static double boundedMPerS(double windMPerS) {
        return Math.max(-60, Math.min(60, windMPerS));
    }

    private static int side(int bits, int bit) {
        return (bits >> bit & 1) == 0 ? -1 : 1;
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

    private static final class Box {
        private double backM = Double.POSITIVE_INFINITY;
        private double forwardM = Double.NEGATIVE_INFINITY;
        private double leftmostM = Double.POSITIVE_INFINITY;
        private double rightmostM = Double.NEGATIVE_INFINITY;

        void hold(double alongM, double acrossM) {
            backM = Math.min(backM, alongM);
            forwardM = Math.max(forwardM, alongM);
            leftmostM = Math.min(leftmostM, acrossM);
            rightmostM = Math.max(rightmostM, acrossM);
        }

        Patch toPatch() {
            double alongM = PAD_M + PAD_RATIO * (forwardM - backM);
            double acrossM = PAD_M + PAD_RATIO * (rightmostM - leftmostM);
            return new Patch(
                    backM - alongM,
                    forwardM + alongM,
                    -(leftmostM - acrossM),
                    rightmostM + acrossM);
        }
    }
}
