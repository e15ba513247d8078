package underhook.planner.route;

import underhook.core.unit.Units;
import underhook.planner.route.RoundedWay.Turn;
import underhook.planner.route.RoundedWay.Turning;
import underhook.planner.route.TightString.Bends;

/** What turns take beyond flying straight. */
record TurnTimes(Bends bends, Turning turning) {
    /** Whether a corner lies at the inner end of the first or last part. */
    boolean isAtFinal(int corner) {
        int lastPiece = bends.way().size() - 2;
        return turning.finalM() > 0
                && ((corner == 1 && bends.isRigid(0))
                        || (corner == lastPiece && bends.isRigid(lastPiece)));
    }

    /** The bank with which the corner is cut by no more than obstacles stand out. */
    Turn tooTight(int corner) {
        double half = Math.abs(bends.turnRad(corner)) / 2;
        double radiusM = Obstacles.MARGIN_M / (1 / Math.cos(Math.min(half, 1.57)) - 1);
        double speedMPerS = turning.leastMPerS();
        double bankRad =
                Math.atan(speedMPerS * speedMPerS / (Units.STANDARD_GRAVITY_M_PER_S2 * radiusM));
        return new Turn(bends.way().get(corner), 0, speedMPerS, bankRad);
    }

    /** Time lost by flying a turn slower than the rest, s. */
    double slowS(Turn turn, Disc disc, double lengthM) {
        if (turn.isKept()) {
            return spotS(disc.first());
        }
        double slowerMPerS = turning.airspeedMPerS() - turn.speedMPerS();
        if (slowerMPerS <= 0) {
            return 0;
        }
        double arcS = lengthM / turn.speedMPerS() - lengthM / turning.airspeedMPerS();
        // Beside a hover it is slow anyway; elsewhere it slows down before and speeds up after.
        double changeS =
                isAtFinal(disc.first()) || isAtFinal(disc.last())
                        ? 0
                        : slowerMPerS
                                * slowerMPerS
                                / (RoundedWay.SPEED_CHANGE_M_PER_S2 * turning.airspeedMPerS());
        return arcS + changeS;
    }

    /** Stopping, turning no quicker than in a turn at the least speed, and going on, s. */
    private double spotS(int corner) {
        double turnsRadPerS =
                Units.STANDARD_GRAVITY_M_PER_S2
                        * Math.tan(turning.bankRad())
                        / turning.leastMPerS();
        double stopS =
                isAtFinal(corner) ? 0 : turning.airspeedMPerS() / RoundedWay.SPEED_CHANGE_M_PER_S2;
        return Math.abs(bends.turnRad(corner)) / turnsRadPerS + stopS;
    }
}
