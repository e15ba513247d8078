package underhook.core.load;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import underhook.core.load.SpeedLimit.Allowed;
import underhook.core.load.SpeedLimit.Hung;
import underhook.core.unit.Ranges;

/**
 * One way to mend a load that trails too far, as it would then be flown.
 *
 * @param kind what is changed
 * @param ballastKg mass added at the line's end, kg, rounded up; 0 if none
 * @param pieces how many of the load hang together
 * @param lineLengthM length of the line, m
 * @param limit how fast it may then be flown
 */
public record Remedy(
        Kind kind, double ballastKg, int pieces, double lineLengthM, SpeedLimit limit) {
    /** What is changed. */
    public enum Kind {
        /** Nothing but the speed. */
        SLOWER,
        /** Mass without area under the load. */
        BALLAST,
        /** Several of the same packed into one of the same shape. */
        BUNDLE,
        /** A drogue behind it stops the load from turning; it trails farther. */
        DROGUE,
        /** A line of half the length: less line in the wind, a shorter swing, nearer to the tail. */
        SHORTER_LINE
    }

    private static final int MOST_BALLAST_KG = 1000;
    private static final int MOST_PIECES = 20;

    /**
     * What can be changed, with its numbers. Ballast and bundle are sought for the wanted speed and left
     * out where 1000 kg or 20 pieces do not reach it; the others say how fast they allow.
     *
     * @param wantedMPerS true airspeed, m/s, above 0
     * @param drogueAreaM2 drag coefficient times area of the drogue at hand, m², not negative; 0 for none
     * @source DERIVED trail of line and load; PRACTICE packs of the same shape: area grows as n^(2/3)
     */
    public static List<Remedy> list(
            Hung hung, Allowed allowed, double wantedMPerS, double drogueAreaM2) {
        Ranges.requirePositive(wantedMPerS, "wantedMPerS");
        Ranges.requireNotNegative(drogueAreaM2, "drogueAreaM2");
        List<Remedy> remedies = new ArrayList<>();
        remedies.add(of(Kind.SLOWER, hung, allowed));
        if (wantedMPerS <= allowed.airspeedMPerS()) {
            findBallast(hung, allowed, wantedMPerS).ifPresent(remedies::add);
            findBundle(hung, allowed, wantedMPerS).ifPresent(remedies::add);
        }
        if (drogueAreaM2 > 0) {
            Hung steadied =
                    new Hung(
                            hung.line(),
                            hung.loadKg(),
                            hung.dragAreaM2() + drogueAreaM2,
                            hung.densityKgPerM3());
            remedies.add(of(Kind.DROGUE, steadied, allowed));
        }
        Hung shorter =
                new Hung(
                        hung.line().withLengthM(hung.line().lengthM() / 2),
                        hung.loadKg(),
                        hung.dragAreaM2(),
                        hung.densityKgPerM3());
        remedies.add(of(Kind.SHORTER_LINE, shorter, allowed));
        return remedies;
    }

    private static Optional<Remedy> findBallast(Hung hung, Allowed allowed, double wantedMPerS) {
        for (int ballast = 1; ballast <= MOST_BALLAST_KG; ballast++) {
            Hung weighted = hung.withMoreKg(ballast);
            if (SpeedLimit.holdsAt(weighted, allowed, wantedMPerS)) {
                Remedy plain = of(Kind.BALLAST, weighted, allowed);
                return Optional.of(
                        new Remedy(Kind.BALLAST, ballast, 1, plain.lineLengthM(), plain.limit()));
            }
        }
        return Optional.empty();
    }

    private static Optional<Remedy> findBundle(Hung hung, Allowed allowed, double wantedMPerS) {
        for (int pieces = 2; pieces <= MOST_PIECES; pieces++) {
            double area = hung.dragAreaM2() * Math.pow(pieces, 2.0 / 3);
            Hung packed =
                    new Hung(hung.line(), pieces * hung.loadKg(), area, hung.densityKgPerM3());
            if (SpeedLimit.holdsAt(packed, allowed, wantedMPerS)) {
                Remedy plain = of(Kind.BUNDLE, packed, allowed);
                return Optional.of(
                        new Remedy(Kind.BUNDLE, 0, pieces, plain.lineLengthM(), plain.limit()));
            }
        }
        return Optional.empty();
    }

    private static Remedy of(Kind kind, Hung hung, Allowed allowed) {
        return new Remedy(kind, 0, 1, hung.line().lengthM(), SpeedLimit.of(hung, allowed));
    }
}
