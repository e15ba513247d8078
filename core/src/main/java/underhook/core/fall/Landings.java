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

    /** Height has three values, each other thing two. */
    private static final int CORNERS = 3 * 2 * 2 * 2 * 2 * 2 * 2;

    private final List<FallPath.Impact> hits;

    private Landings(List<FallPath.Impact> hits) {
        this.hits = List.copyOf(hits);
    }

    /** Follows the falls from all corners. */
    public static Landings of(Release release) {
        List<FallPath.Impact> hits = new ArrayList<>();
        // Without a spread of the height its three values are one.
        int step = release.heightSpreadM() > 0 ? 1 : 3;
        for (int corner = 0; corner < CORNERS; corner += step) {
            hits.add(path(release, corner).untilGround());
        }
        return new Landings(hits);
    }

    /** The ground that it may hit and run over. */
    public Patch patch(LoadShape shape, Patch.Ground ground) {
        Box box = new Box();
        double forwardRad = ground.fallsForwardRad();
        double rightRad = ground.fallsRightRad();
        for (FallPath.Impact hit : hits) {
            box.hold(hit.forwardM(), hit.rightM());
            double down = hit.downMPerS();
            double ahead = Runout.runM(shape, Math.max(0, hit.forwardMPerS()), down, forwardRad);
            double behind = Runout.runM(shape, Math.max(0, -hit.forwardMPerS()), down, -forwardRad);
            double right = Runout.runM(shape, Math.max(0, hit.rightMPerS()), down, rightRad);
            double left = Runout.runM(shape, Math.max(0, -hit.rightMPerS()), down, -rightRad);
            box.hold(hit.forwardM() + ahead, hit.rightM() + right);
            box.hold(hit.forwardM() - behind, hit.rightM() - left);
        }
        return box.toPatch();
    }

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
                                * Units.STANDARD_GRAVITY_M_PER_S2
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
