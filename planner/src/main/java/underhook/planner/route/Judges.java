package underhook.planner.route;

import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.function.DoublePredicate;
import underhook.core.geo.Glare;
import underhook.core.site.Fit;
import underhook.core.site.Margin;
import underhook.core.unit.Units;
import underhook.planner.route.Directions.Judge;
import underhook.planner.route.Directions.Said;

/**
 * Who judges a way in or out.
 *
 * <p>One unit of price is worth ten degrees off the wind. The prices are judgement, not measurement.
 *
 * @source PRACTICE prices; each is reasoned in docs/calculations/ways-in.md
 */
final class Judges {
    /** The sun in the eyes: worth turning 40° away from the wind. */
    private static final double SUN_AHEAD_PRICE_RATIO = 4;

    /** The sun in the sight down the line. */
    private static final double SUN_BESIDE_PRICE_RATIO = 2;

    /** Room by less than is not known. */
    private static final double NEAR_PRICE_RATIO = 2;

    /** Each road or trail that a load passes over low: it takes guards, and time. */
    private static final double GUARDED_PRICE_RATIO = 3;

    private static final double NO_ESCAPE_PRICE_RATIO = 3;

    /** Each knot of tailwind. */
    private static final double TAILWIND_KNOT_PRICE_RATIO = 1;

    /** Floating-point dust of limits written in knots, m/s. */
    private static final double DUST_M_PER_S = 1e-9;

    /** Straight ahead first, then to both sides, up to square. */
    private static final int ESCAPE_STEPS = 90 / Directions.STEP_DEG;

    private Judges() {}

    /**
     * What the rules allow.
     *
     * @param tailwindMPerS most tailwind, m/s
     * @param crosswindMPerS most crosswind on the last part, m/s
     */
    record Limits(double tailwindMPerS, double crosswindMPerS) {}

    /** Cross and tail wind on the last part, in every wind that may hold. */
    static Judge wind(List<PlaceWind> winds, Limits limits) {
        Judge tail = tailwind(winds, limits);
        return track -> {
            for (PlaceWind wind : winds) {
                double sideFraction = Math.abs(Math.sin(track - wind.fromGridRad()));
                if (wind.speedMPerS() * sideFraction > limits.crosswindMPerS() + DUST_M_PER_S) {
                    return Said.refused(over("crosswind", limits.crosswindMPerS(), wind));
                }
            }
            return tail.judge(track);
        };
    }

    /** Tailwind alone, as on the way out. */
    static Judge tailwind(List<PlaceWind> winds, Limits limits) {
        return track -> {
            double mostKt = 0;
            for (PlaceWind wind : winds) {
                double tailMPerS = -wind.speedMPerS() * Math.cos(track - wind.fromGridRad());
                if (tailMPerS > limits.tailwindMPerS() + DUST_M_PER_S) {
                    return Said.refused(over("tailwind", limits.tailwindMPerS(), wind));
                }
                mostKt = Math.max(mostKt, Units.mPerSToKt(tailMPerS));
            }
            return mostKt < 0.5
                    ? Said.NOTHING
                    : Said.priced(
                            TAILWIND_KNOT_PRICE_RATIO * mostKt,
                            "tailwind " + (long) Math.ceil(mostKt - 1e-6) + " kt");
        };
    }

    private static String over(String what, double limitMPerS, PlaceWind wind) {
        return what
                + " over "
                + knots(limitMPerS)
                + " kt in "
                + knots(wind.speedMPerS())
                + " kt of wind";
    }

    /** What lies under the last part, which comes from behind the track flown. */
    static Judge underWayIn(Lies.Below below) {
        return track -> under(below.lies(track + Math.PI));
    }

    static Judge underWayOut(Lies.Below below) {
        return track -> under(below.lies(track));
    }

    private static Said under(Lies lies) {
        if (!lies.isOpen()) {
            return Said.refused(
                    lies.blockers().isEmpty()
                            ? "passes closed ground"
                            : (lies.inReach() ? "let go there it could come down on " : "passes ")
                                    + String.join(", ", lies.blockers()));
        }
        return lies.guarded().isEmpty()
                ? Said.NOTHING
                : Said.priced(
                        GUARDED_PRICE_RATIO * lies.guarded().size(),
                        "passes over " + String.join(", ", lies.guarded()) + " (guards)");
    }

    /** Rotor, tail, line and load on the heading, slope behind the tail included. */
    static Judge room(RoomView room) {
        return track -> {
            Optional<Margin> margin = room.in(track);
            if (margin.isEmpty() || margin.get().fit() == Fit.FREE) {
                return Said.NOTHING;
            }
            Margin worst = margin.get();
            String what =
                    worst.part().word()
                            + " to "
                            + (worst.id().isEmpty() ? worst.cause().word() : worst.id());
            return worst.fit() == Fit.REFUSED
                    ? Said.refused("no room, " + what)
                    : Said.priced(NEAR_PRICE_RATIO, "little room, " + what);
        };
    }

    static Judge roomOut(RoomView room) {
        return track ->
                switch (room.out(track)) {
                    case FREE -> Said.NOTHING;
                    case NEAR -> Said.priced(NEAR_PRICE_RATIO, "little room");
                    case REFUSED -> Said.refused("no room");
                };
    }

    /** The sun ahead, or beside where the pilot looks down; clouds may hide it, which earns nothing. */
    static Judge sun(PlaceHour at, boolean leansRight) {
        return track -> {
            double headingTrueRad = track + at.convergenceRad();
            double price = 0;
            String words = "";
            for (SunSeen seen : at.suns()) {
                Glare glare = seen.glare(headingTrueRad, leansRight);
                double now =
                        glare.isAhead()
                                ? SUN_AHEAD_PRICE_RATIO
                                : glare.isBeside() ? SUN_BESIDE_PRICE_RATIO : 0;
                if (now > price) {
                    price = now;
                    words = sunWords(seen, headingTrueRad);
                }
            }
            return Said.priced(price, words);
        };
    }

    private static String sunWords(SunSeen seen, double headingTrueRad) {
        long upDeg = Math.round(Math.toDegrees(seen.sun().elevationApparentRad()));
        double offRad = Units.wrapPiRad(seen.sun().azimuthTrueRad() - headingTrueRad);
        long offDeg = Math.round(Math.abs(Math.toDegrees(offRad)));
        String where =
                offDeg == 0
                        ? "over the nose"
                        : offDeg + "° " + (offRad < 0 ? "left" : "right") + " of the nose";
        return "the sun stands " + upDeg + "° up, " + where;
    }

    /** Somewhere to fly out to when it goes wrong: straight ahead or up to square to either side. */
    static Judge escape(DoublePredicate clear) {
        return track -> {
            for (int k = 0; k <= ESCAPE_STEPS; k++) {
                double turn = Math.toRadians((double) k * Directions.STEP_DEG);
                if (clear.test(track + turn) || clear.test(track - turn)) {
                    return Said.NOTHING;
                }
            }
            return Said.priced(NO_ESCAPE_PRICE_RATIO, "no way out ahead if it goes wrong");
        };
    }

    private static String knots(double speedMPerS) {
        return String.format(Locale.ROOT, "%.0f", Units.mPerSToKt(speedMPerS));
    }
}
