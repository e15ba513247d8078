package underhook.core.pole;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import underhook.core.unit.Ranges;
import underhook.core.unit.Units;

/**
 * A pole on its butt, held upright by guys at their true anchors.
 *
 * <p>The butt is a hinge that holds no moment; each guy only pulls. Against a push from any side two
 * neighbouring guys are enough: the pair is taken that pulls least. Axes: east, north, up from the butt.
 *
 * @param massKg pole with fittings, kg, above 0
 * @param lengthM from butt to top, m, above 0
 * @param centreOfGravityM from the butt, m, in (0, length]
 * @param windAreaM2 area that the wind pushes on times its drag coefficient, m², not negative; the push
 *     acts at half the length
 * @param guys at least one
 */
public record StandingPole(
        double massKg, double lengthM, double centreOfGravityM, double windAreaM2, List<Guy> guys) {
    /**
     * A guy.
     *
     * @param azimuthTrueRad direction from the pole to the anchor, rad from true north
     * @param attachM attachment from the butt along the pole, m, above 0
     * @param anchorDistanceM level distance from butt to anchor, m, above 0
     * @param anchorAboveButtM height of the anchor over the butt, m; negative below
     */
    public record Guy(
            double azimuthTrueRad,
            double attachM,
            double anchorDistanceM,
            double anchorAboveButtM) {
        public Guy {
            Ranges.requirePositive(attachM, "attachM");
            Ranges.requirePositive(anchorDistanceM, "anchorDistanceM");
            if (!Double.isFinite(azimuthTrueRad) || !Double.isFinite(anchorAboveButtM)) {
                throw new IllegalArgumentException("azimuth and anchor of a guy must be finite.");
            }
        }

        /**
         * Angle of the guy above the horizontal with the pole upright, rad; negative where the anchor is
         * the higher end.
         *
         * @source DERIVED height difference over distance
         */
        public double angleRad() {
            return Math.atan2(attachM - anchorAboveButtM, anchorDistanceM);
        }
    }

    /** A lean: towards an azimuth (rad from true north) by an angle from plumb (rad). */
    public record Lean(double towardsTrueRad, double angleRad) {
        /** Plumb. */
        public static final Lean NONE = new Lean(0, 0);

        public Lean {
            if (!(angleRad >= 0 && angleRad < Math.PI / 3)) {
                throw new IllegalArgumentException(
                        "angleRad (" + angleRad + ") must lie in [0, π/3).");
            }
        }
    }

    /** A wind: towards an azimuth (rad from true north) with a pressure (Pa). */
    public record Push(double towardsTrueRad, double pressurePa) {
        /** Calm. */
        public static final Push NONE = new Push(0, 0);

        public Push {
            Ranges.requireNotNegative(pressurePa, "pressurePa");
        }
    }

    /** Pull of each guy, N, in the order of the guys; those that hang slack pull nothing. */
    public record Pulls(List<Double> tensionsN) {
        public Pulls {
            tensionsN = List.copyOf(tensionsN);
        }

        /** The hardest pull, N. */
        public double hardestN() {
            return tensionsN.stream().mapToDouble(Double::doubleValue).max().orElse(0);
        }
    }

    public StandingPole {
        Ranges.requirePositive(massKg, "massKg");
        Ranges.requirePositive(lengthM, "lengthM");
        Ranges.requireNotNegative(windAreaM2, "windAreaM2");
        guys = List.copyOf(guys);
        if (!(centreOfGravityM > 0 && centreOfGravityM <= lengthM)) {
            throw new IllegalArgumentException(
                    "centreOfGravityM (" + centreOfGravityM + ") must lie on the pole.");
        }
        if (guys.isEmpty() || guys.stream().anyMatch(guy -> guy.attachM() > lengthM)) {
            throw new IllegalArgumentException("a guy must be attached to the pole.");
        }
    }

    /**
     * Wind pressure at a speed, Pa.
     *
     * @param windMPerS wind, m/s, not negative
     * @source RUS-1724E-150 0.613 V², standard air
     */
    public static double pressurePa(double windMPerS) {
        Ranges.requireNotNegative(windMPerS, "windMPerS");
        return 0.613 * windMPerS * windMPerS;
    }

    /**
     * Pulls that keep the pole still; empty when the guys cannot.
     *
     * <p>Moments about the butt: weight, wind and the two guys' pulls sum to nothing. The anchors stay
     * where they are, so a leaning pole changes the guys' angles.
     *
     * @source DERIVED statics of a hinged pole, guys that only pull
     */
    public Optional<Pulls> findPulls(Lean lean, Push push) {
        double weightN = massKg * Units.STANDARD_GRAVITY_M_PER_S2;
        double pushN = push.pressurePa() * windAreaM2;
        Moment load =
                Moment.of(onPole(lean, centreOfGravityM), new Force(0, 0, -weightN))
                        .plus(
                                Moment.of(
                                        onPole(lean, lengthM / 2),
                                        new Force(
                                                pushN * Math.sin(push.towardsTrueRad()),
                                                pushN * Math.cos(push.towardsTrueRad()),
                                                0)));
        List<Moment> moments = guys.stream().map(guy -> momentOfOneNewton(guy, lean)).toList();
        return best(load, moments);
    }

    /**
     * Hardest pull on each guy when the wind blows from any side, N; empty when the guys do not hold it
     * from every side.
     *
     * @param lean the lean it has meanwhile
     * @param pressurePa wind pressure, Pa
     * @source DERIVED every whole degree of the compass
     */
    public Optional<Pulls> findWorstPulls(Lean lean, double pressurePa) {
        List<Double> worst = new ArrayList<>(Collections.nCopies(guys.size(), 0.0));
        for (int degree = 0; degree < 360; degree++) {
            Optional<Pulls> pulls = findPulls(lean, new Push(Math.toRadians(degree), pressurePa));
            if (pulls.isEmpty()) {
                return Optional.empty();
            }
            for (int i = 0; i < worst.size(); i++) {
                worst.set(i, Math.max(worst.get(i), pulls.get().tensionsN().get(i)));
            }
        }
        return Optional.of(new Pulls(worst));
    }

    /** What the person at a guy does to bring a leaning pole up. */
    public enum Hand {
        TAKE_IN,
        HOLD,
        SLACKEN
    }

    /**
     * What each guy does to bring the pole upright, in the order of the guys: those on the far side of the
     * lean take in, those on its near side give slack, those square to it hold.
     *
     * @source PRACTICE within 15° of square to the lean a guy only holds
     */
    public List<Hand> hands(Lean lean) {
        List<Hand> hands = new ArrayList<>();
        for (Guy guy : guys) {
            double towards = Math.cos(guy.azimuthTrueRad() - lean.towardsTrueRad());
            double square = Math.sin(Math.toRadians(15));
            boolean holds = lean.angleRad() <= 0 || Math.abs(towards) < square;
            hands.add(holds ? Hand.HOLD : towards > 0 ? Hand.SLACKEN : Hand.TAKE_IN);
        }
        return hands;
    }

    private record Point(double eastM, double northM, double upM) {}

    private record Force(double eastN, double northN, double upN) {}

    /** Moment about the butt; the part about the pole itself does not matter. */
    private record Moment(double aboutEastNewtonM, double aboutNorthNewtonM) {
        static Moment of(Point at, Force force) {
            return new Moment(
                    at.northM() * force.upN() - at.upM() * force.northN(),
                    at.upM() * force.eastN() - at.eastM() * force.upN());
        }

        Moment plus(Moment other) {
            return new Moment(
                    aboutEastNewtonM + other.aboutEastNewtonM,
                    aboutNorthNewtonM + other.aboutNorthNewtonM);
        }

        double sizeNewtonM() {
            return Math.hypot(aboutEastNewtonM, aboutNorthNewtonM);
        }
    }

    private static Point onPole(Lean lean, double fromButtM) {
        double levelM = fromButtM * Math.sin(lean.angleRad());
        return new Point(
                levelM * Math.sin(lean.towardsTrueRad()),
                levelM * Math.cos(lean.towardsTrueRad()),
                fromButtM * Math.cos(lean.angleRad()));
    }

    private static Moment momentOfOneNewton(Guy guy, Lean lean) {
        Point at = onPole(lean, guy.attachM());
        double east = guy.anchorDistanceM() * Math.sin(guy.azimuthTrueRad()) - at.eastM();
        double north = guy.anchorDistanceM() * Math.cos(guy.azimuthTrueRad()) - at.northM();
        double up = guy.anchorAboveButtM() - at.upM();
        double length = Math.sqrt(east * east + north * north + up * up);
        return Moment.of(at, new Force(east / length, north / length, up / length));
    }

    private Optional<Pulls> best(Moment load, List<Moment> moments) {
        double none = 1e-9 * massKg * Units.STANDARD_GRAVITY_M_PER_S2 * lengthM;
        if (load.sizeNewtonM() <= none) {
            return Optional.of(new Pulls(Collections.nCopies(guys.size(), 0.0)));
        }
        double least = Double.POSITIVE_INFINITY;
        List<Double> chosen = List.of();
        for (int i = 0; i < moments.size(); i++) {
            for (int j = i; j < moments.size(); j++) {
                Optional<Pair> pair = Pair.find(load, moments.get(i), moments.get(j));
                if (pair.isPresent() && pair.get().harderN() < least) {
                    least = pair.get().harderN();
                    chosen = new ArrayList<>(Collections.nCopies(guys.size(), 0.0));
                    chosen.set(j, pair.get().secondN());
                    chosen.set(i, pair.get().firstN());
                }
            }
        }
        return chosen.isEmpty() ? Optional.empty() : Optional.of(new Pulls(chosen));
    }

    /** Pulls of two guys that undo a load about both level axes. */
    private record Pair(double firstN, double secondN) {
        double harderN() {
            return Math.max(firstN, secondN);
        }

        /** Empty when one of them would have to push. */
        static Optional<Pair> find(Moment load, Moment a, Moment b) {
            double det =
                    a.aboutEastNewtonM * b.aboutNorthNewtonM
                            - a.aboutNorthNewtonM * b.aboutEastNewtonM;
            if (!(Math.abs(det) > 1e-9 * a.sizeNewtonM() * b.sizeNewtonM())) {
                return alone(load, a);
            }
            double first =
                    (load.aboutNorthNewtonM * b.aboutEastNewtonM
                                    - load.aboutEastNewtonM * b.aboutNorthNewtonM)
                            / det;
            double second =
                    (load.aboutEastNewtonM * a.aboutNorthNewtonM
                                    - load.aboutNorthNewtonM * a.aboutEastNewtonM)
                            / det;
            double tiny = -1e-9 * (Math.abs(first) + Math.abs(second));
            return first >= tiny && second >= tiny
                    ? Optional.of(new Pair(Math.max(0, first), Math.max(0, second)))
                    : Optional.empty();
        }

        /** One guy straight against the load. */
        private static Optional<Pair> alone(Moment load, Moment a) {
            double size = a.sizeNewtonM();
            double pull =
                    -(load.aboutEastNewtonM * a.aboutEastNewtonM
                                    + load.aboutNorthNewtonM * a.aboutNorthNewtonM)
                            / (size * size);
            double rest =
                    Math.hypot(
                            load.aboutEastNewtonM + pull * a.aboutEastNewtonM,
                            load.aboutNorthNewtonM + pull * a.aboutNorthNewtonM);
            return pull > 0 && rest <= 1e-9 * load.sizeNewtonM()
                    ? Optional.of(new Pair(pull, 0))
                    : Optional.empty();
        }
    }
}
