package underhook.planner.verify;

import java.util.List;

/**
 * Where a load may hit that is let go, as a box along the track; worked out with small even steps.
 *
 * <p>The spreads are somewhat smaller than those a plan is made with, so that only a plan that is wrong is
 * refused: mass half as far off, drag 0.6 to 1.2 of its area, swing 6°, speed 3 in 100, half the gusts.
 * What it runs on the ground is apart.
 *
 * @param backM least distance along the track, m
 * @param forwardM most distance along the track, m
 * @param leftM most distance to the left, m
 * @param rightM most distance to the right, m
 * @param blows of what lands farthest forward, back, to the right and to the left
 */
record FallBox(double backM, double forwardM, double leftM, double rightM, List<Blow> blows) {
    FallBox {
        blows = List.copyOf(blows);
    }

    /**
     * A landing farthest to one side.
     *
     * @param outMPerS level speed to that side, not below 0
     * @param downMPerS speed into level ground
     */
    record Blow(double outMPerS, double downMPerS) {
        /**
         * How far it runs on to that side, m: the blow takes friction times the speed into the ground, the rest slides.
         *
         * @param fallRad by how much the ground falls to that side
         * @param capM where a run ends that friction does not end
         * @source DERIVED Coulomb friction, docs/calculations/fall.md
         */
        double runM(double frictionCoefficient, double fallRad, double capM) {
            double holdsRatio = frictionCoefficient * Math.cos(fallRad) - Math.sin(fallRad);
            if (holdsRatio <= 0) {
                return capM;
            }
            double alongMPerS = outMPerS * Math.cos(fallRad) + downMPerS * Math.sin(fallRad);
            double intoMPerS =
                    Math.max(0, downMPerS * Math.cos(fallRad) - outMPerS * Math.sin(fallRad));
            double leftMPerS = Math.max(0, alongMPerS - frictionCoefficient * intoMPerS);
            double slopeM = leftMPerS * leftMPerS / (2 * GRAVITY_M_PER_S2 * holdsRatio);
            return Math.min(capM, slopeM * Math.cos(fallRad));
        }
    }

    private static final double STEP_S = 0.02;
    private static final double GRAVITY_M_PER_S2 = 9.80665;
    private static final double SWING_RAD = Math.toRadians(6);
    private static final double SPEED_SPREAD_RATIO = 0.03;

    /**
     * How it is let go.
     *
     * @param heightM lower end above the ground, m
     * @param speedMPerS over the ground, m/s
     * @param aheadMPerS wind along the track, m/s; from behind is positive
     * @param rightMPerS wind across, m/s; from the left is positive
     * @param gustMPerS how far the wind may be off, m/s
     */
    record Release(
            double heightM,
            double speedMPerS,
            double aheadMPerS,
            double rightMPerS,
            double gustMPerS) {}

    /**
     * What is let go.
     *
     * @param lightCoefficient drag over mass at 1 m/s at its lightest and largest, 1/m
     * @param heavyCoefficient the same at its heaviest and smallest, 1/m
     * @param lineM from hook to load, m
     * @param trailRad how far it hangs back, rad
     */
    record Body(double lightCoefficient, double heavyCoefficient, double lineM, double trailRad) {}

    /** The box of all landings. */
    static FallBox of(Body body, Release release) {
        return new Corners(body, release).fall();
    }

    /** All corners of the spreads falling side by side; those still in the air come first. */
    private static final class Corners {
        private static final int ALL = 64;

        private final double[] dragCoefficient = new double[ALL];
        private final double[] windAheadMPerS = new double[ALL];
        private final double[] windRightMPerS = new double[ALL];
        private final double[] aheadM = new double[ALL];
        private final double[] rightM = new double[ALL];
        private final double[] heightM = new double[ALL];
        private final double[] aheadMPerS = new double[ALL];
        private final double[] rightMPerS = new double[ALL];
        private final double[] upMPerS = new double[ALL];
        private int falling = ALL;
        private double backM = Double.POSITIVE_INFINITY;
        private double forwardM = Double.NEGATIVE_INFINITY;
        private double mostLeftM = Double.NEGATIVE_INFINITY;
        private double mostRightM = Double.NEGATIVE_INFINITY;
        private final Blow[] blows = new Blow[4];

        Corners(Body body, Release release) {
            double swing =
                    Math.sqrt(2 * GRAVITY_M_PER_S2 * body.lineM() * (1 - Math.cos(SWING_RAD)));
            for (int i = 0; i < ALL; i++) {
                dragCoefficient[i] =
                        side(i, 0) > 0 ? body.heavyCoefficient() : body.lightCoefficient();
                windAheadMPerS[i] = release.aheadMPerS() + side(i, 1) * release.gustMPerS();
                windRightMPerS[i] = release.rightMPerS() + side(i, 2) * release.gustMPerS();
                aheadM[i] = body.lineM() * Math.sin(side(i, 3) * SWING_RAD - body.trailRad());
                rightM[i] = side(i, 4) * body.lineM() * Math.sin(SWING_RAD);
                aheadMPerS[i] =
                        release.speedMPerS() * (1 + side(i, 5) * SPEED_SPREAD_RATIO)
                                + side(i, 3) * swing;
                rightMPerS[i] = side(i, 4) * swing;
                heightM[i] = release.heightM();
            }
        }

        private static int side(int corner, int bit) {
            return (corner >> bit & 1) == 0 ? -1 : 1;
        }

        FallBox fall() {
            land();
            // Drag only holds up: nothing is down before what falls in no air would be.
            int before = (int) (Math.sqrt(2 * heightM[0] / GRAVITY_M_PER_S2) / STEP_S) - 1;
            for (int i = 0; falling > 0; i++) {
                step(falling);
                if (i >= before) {
                    land();
                }
            }
            return new FallBox(backM, forwardM, mostLeftM, mostRightM, List.of(blows));
        }

        private void step(int count) {
            double[] drag = dragCoefficient;
            double[] windAhead = windAheadMPerS;
            double[] windRight = windRightMPerS;
            double[] vAhead = aheadMPerS;
            double[] vRight = rightMPerS;
            double[] vUp = upMPerS;
            for (int i = 0; i < count; i++) {
                double ahead = vAhead[i] - windAhead[i];
                double right = vRight[i] - windRight[i];
                double up = vUp[i];
                double through = drag[i] * Math.sqrt(ahead * ahead + right * right + up * up);
                vAhead[i] -= through * ahead * STEP_S;
                vRight[i] -= through * right * STEP_S;
                vUp[i] -= (through * up + GRAVITY_M_PER_S2) * STEP_S;
            }
            move(aheadM, vAhead, count);
            move(rightM, vRight, count);
            move(heightM, vUp, count);
        }

        private static void move(double[] atM, double[] speedMPerS, int count) {
            for (int i = 0; i < count; i++) {
                atM[i] += speedMPerS[i] * STEP_S;
            }
        }

        private Blow blow(double outMPerS, int corner) {
            return new Blow(Math.max(0, outMPerS), -upMPerS[corner]);
        }

        /** The last in the air takes the place of one that has landed. */
        private void land() {
            for (int i = falling - 1; i >= 0; i--) {
                if (!(heightM[i] > 0)) {
                    if (aheadM[i] > forwardM) {
                        forwardM = aheadM[i];
                        blows[0] = blow(aheadMPerS[i], i);
                    }
                    if (aheadM[i] < backM) {
                        backM = aheadM[i];
                        blows[1] = blow(-aheadMPerS[i], i);
                    }
                    if (rightM[i] > mostRightM) {
                        mostRightM = rightM[i];
                        blows[2] = blow(rightMPerS[i], i);
                    }
                    if (-rightM[i] > mostLeftM) {
                        mostLeftM = -rightM[i];
                        blows[3] = blow(-rightMPerS[i], i);
                    }
                    falling--;
                    put(falling, i);
                }
            }
        }

        private void put(int from, int to) {
            dragCoefficient[to] = dragCoefficient[from];
            windAheadMPerS[to] = windAheadMPerS[from];
            windRightMPerS[to] = windRightMPerS[from];
            aheadM[to] = aheadM[from];
            rightM[to] = rightM[from];
            heightM[to] = heightM[from];
            aheadMPerS[to] = aheadMPerS[from];
            rightMPerS[to] = rightMPerS[from];
            upMPerS[to] = upMPerS[from];
        }
    }
}
