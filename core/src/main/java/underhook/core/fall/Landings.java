package underhook.core.fall;

import java.util.ArrayList;
import java.util.List;
import underhook.core.job.LoadShape;
import underhook.core.unit.Units;

/**
 * Where a load hits from every corner of a release's spreads, whatever the ground does to it then.
 *
 * <p>Following the falls takes nearly all the work: whoever asks for one release over many slopes keeps
 * this.
 */
public final class Landings {
    /** What corners and their mixtures may miss: part of the box's size and a length. */
    private static final double PAD_RATIO = 0.02;

    private static final double PAD_M = 1;

    /** Each thing but the height has two values. */
    private static final int CORNERS = 2 * 2 * 2 * 2 * 2 * 2;

    private final List<FallingCorners.Impact> hits;

    private Landings(List<FallingCorners.Impact> hits) {
        this.hits = List.copyOf(hits);
    }

    /** Follows the falls from all corners. */
    public static Landings of(Release release) {
        double height = release.heightM();
        double spread = release.heightSpreadM();
        List<Double> heights =
                spread > 0 ? List.of(height - spread, height, height + spread) : List.of(height);
        List<FallingCorners.Start> starts = new ArrayList<>();
        List<FallingCorners.Wind> winds = new ArrayList<>();
        for (int corner = 0; corner < CORNERS; corner++) {
            starts.add(start(release, corner));
            winds.add(wind(release.drift(), corner));
        }
        return new Landings(new FallingCorners(starts, winds).untilGround(heights));
    }

    /** The ground that it may hit and run over. */
    public Patch patch(LoadShape shape, Patch.Ground ground) {
        Box box = new Box();
        Runout onwards = Runout.on(shape, ground.fallsForwardRad());
        Runout backwards = Runout.on(shape, -ground.fallsForwardRad());
        Runout rightwards = Runout.on(shape, ground.fallsRightRad());
        Runout leftwards = Runout.on(shape, -ground.fallsRightRad());
        for (FallingCorners.Impact hit : hits) {
            box.hold(hit.forwardM(), hit.rightM());
            double down = hit.downMPerS();
            double ahead = onwards.runM(Math.max(0, hit.forwardMPerS()), down);
            double behind = backwards.runM(Math.max(0, -hit.forwardMPerS()), down);
            double right = rightwards.runM(Math.max(0, hit.rightMPerS()), down);
            double left = leftwards.runM(Math.max(0, -hit.rightMPerS()), down);
            box.hold(hit.forwardM() + ahead, hit.rightM() + right);
            box.hold(hit.forwardM() - behind, hit.rightM() - left);
        }
        return box.toPatch();
    }

    private static FallingCorners.Wind wind(Release.Drift drift, int corner) {
        return new FallingCorners.Wind(
                boundedMPerS(drift.forwardMPerS() + side(corner, 1) * drift.spreadMPerS()),
                boundedMPerS(drift.rightMPerS() + side(corner, 2) * drift.spreadMPerS()));
    }

    private static FallingCorners.Start start(Release release, int corner) {
        double speed =
                Math.max(
                        0,
                        release.groundSpeedMPerS() + side(corner, 0) * release.speedSpreadMPerS());
        Release.Hanging hanging = release.hanging();
        Fall.Body body = side(corner, 3) > 0 ? hanging.heavy() : hanging.light();
        double swing = hanging.swingRad();
        double sidewaysM = side(corner, 5) * hanging.lineLengthM() * Math.sin(swing);
        double lengthwaysM =
                hanging.lineLengthM() * Math.sin(side(corner, 4) * swing - hanging.trailRad());
        // The swing is fastest where it is plumb and stands still at its ends; both at once is the
        // safe side.
        double swingMPerS =
                Math.sqrt(
                        2
                                * Units.STANDARD_GRAVITY_M_PER_S2
                                * hanging.lineLengthM()
                                * (1 - Math.cos(swing)));
        return new FallingCorners.Start(
                lengthwaysM,
                sidewaysM,
                speed + side(corner, 4) * swingMPerS,
                side(corner, 5) * swingMPerS,
                body.retardationCoefficient());
    }

    private static double boundedMPerS(double windMPerS) {
        return Math.max(-60, Math.min(60, windMPerS));
    }

    private static int side(int bits, int bit) {
        return (bits >> bit & 1) == 0 ? -1 : 1;
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
