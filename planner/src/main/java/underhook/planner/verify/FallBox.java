package underhook.planner.verify;

import java.util.List;

/**
 * Where a load may hit that is let go, as a box along the track. What it runs on the ground is apart.
 *
 * @param backM least distance along the track, m
 * @param forwardM most distance along the track, m
 * @param leftM most distance to the left, m
 * @param rightM most distance to the right, m
 * @param blows of what lands farthest forward, back, to the right and to the left
 */
record FallBox(double backM, double forwardM, double leftM, double rightM, List<Blow> blows) {
    private static final double GRAVITY_M_PER_S2 = 9.80665;

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
}
