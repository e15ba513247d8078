package underhook.core.site;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import underhook.core.job.Machine;
import underhook.core.site.Surroundings.Layer;

/** One line with its load over a place: where each part is, and how near it comes. Not safe for threads. */
final class Hover {
    private final Surroundings around;
    private final Craft craft;
    private final Needs needs;
    private final Rig rig;
    private final List<Pair> pairs = new ArrayList<>();

    /** A part and what it may come near to. */
    private static final class Pair {
        final Part part;
        final Cause cause;
        final Columns columns;

        /** The nearest column found last: likely the nearest again. */
        int guess = -1;

        Pair(Part part, Cause cause, Columns columns) {
            this.part = part;
            this.cause = cause;
            this.columns = columns;
        }

        boolean isRound() {
            return part == Part.ROTOR || part.hangs();
        }
    }

    Hover(Surroundings around, Craft craft, Needs needs, Rig rig) {
        this.around = around;
        this.craft = craft;
        this.needs = needs;
        this.rig = rig;
        for (Part part : Part.values()) {
            for (Cause cause : Cause.values()) {
                Layer layer = part.hangs() ? Layer.HANGING : Layer.MACHINE;
                Pair pair = new Pair(part, cause, around.sorted(layer, cause));
                if (!pair.columns.isEmpty() && around.isKnown()) {
                    pairs.add(pair);
                    pair.guess = nearest(pair, bar(part, 0));
                }
            }
        }
    }

    /**
     * Room on a heading.
     *
     * @param riseBehindM rise of the ground behind the tail, m
     */
    HeadingRoom on(double headingGridRad, double riseBehindM) {
        if (!around.isKnown()) {
            return new HeadingRoom(headingGridRad, List.of(reach(headingGridRad, riseBehindM)));
        }
        Map<Part, Margin> margins = new EnumMap<>(Part.class);
        margins.put(Part.TAIL, reach(headingGridRad, riseBehindM));
        for (Pair pair : pairs) {
            Bar bar = bar(pair.part, headingGridRad);
            // What is round looks alike on every heading: it was found once.
            pair.guess = pair.isRound() ? pair.guess : nearest(pair, bar);
            if (pair.guess >= 0) {
                margins.merge(pair.part, margin(pair, bar, headingGridRad), Hover::tighter);
            }
        }
        List<Margin> all = new ArrayList<>(margins.values());
        way(headingGridRad, headingGridRad + Math.PI).ifPresent(all::add);
        return new HeadingRoom(headingGridRad, all);
    }

    private static Margin tighter(Margin one, Margin other) {
        return other.isTighterThan(one) ? other : one;
    }

    private int nearest(Pair pair, Bar bar) {
        return pair.columns.nearest(bar, beyondM(pair), pair.guess);
    }

    /** The line must reach over the trees and the rise behind the tail by the operator's margin. */
    private Margin reach(double headingGridRad, double riseBehindM) {
        Cause cause = around.canopyM() > 0 ? Cause.TREES : Cause.GROUND;
        double marginM = rig.hookAglM() - around.canopyM() - riseBehindM;
        return new Margin(
                Part.TAIL,
                cause,
                "",
                headingGridRad,
                marginM,
                needs.rotorClearanceM(),
                unknownM(cause, 0));
    }

    private Margin margin(Pair pair, Bar bar, double headingGridRad) {
        double marginM = pair.columns.marginM(bar, pair.guess);
        double levelM = pair.columns.levelM(bar, pair.guess);
        // A place that is off by so much is off by all of it aside, by the slope of it in height.
        double asideRatio = marginM > 0 && levelM < marginM ? Math.max(0, levelM) / marginM : 1;
        return new Margin(
                pair.part,
                pair.cause,
                pair.columns.id(pair.guess),
                headingGridRad,
                marginM,
                neededM(pair),
                unknownM(pair.cause, asideRatio));
    }

    private double unknownM(Cause cause, double asideRatio) {
        double placeM =
                needs.margins().placeSpreadM() * Math.min(1, asideRatio + around.slopeFactor());
        if (cause == Cause.THING || cause == Cause.WIRE) {
            return placeM;
        }
        double cellM = around.slopeFactor() * Surroundings.CELL_M / 2;
        return placeM + cellM + (cause == Cause.TREES ? around.canopySpreadM() : 0);
    }

    private double neededM(Pair pair) {
        if (pair.cause == Cause.WIRE) {
            return needs.wireClearanceM();
        }
        return pair.part.hangs() ? needs.margins().underClearanceM() : needs.rotorClearanceM();
    }

    /** Ground that the load is set down on is not measured against what hangs there. */
    private double beyondM(Pair pair) {
        return pair.part.hangs() && pair.cause == Cause.GROUND
                ? rig.loadRadiusM() + needs.margins().placeSpreadM()
                : 0;
    }

    private Bar bar(Part part, double headingGridRad) {
        double placeM = around.elevationAmslM();
        double hookM = placeM + rig.hookAglM();
        Machine.Body body = craft.body();
        double rotorsM = hookM + body.rotorAboveHookM();
        return switch (part) {
            case ROTOR -> Bar.disc(craft.rotorRadiusM(), rotorsM);
            case TAIL ->
                    Bar.along(
                            headingGridRad,
                            craft.tailReachM(),
                            0,
                            Bar.disc(body.tailHalfWidthM(), rotorsM));
            case FUSELAGE -> fuselage(headingGridRad, hookM);
            case LINE -> Bar.disc(0, placeM + rig.standsM());
            case LOAD -> Bar.disc(rig.loadRadiusM(), placeM);
        };
    }

    /** As far behind the mast as the nose is before it; further back it is the tail. */
    private Bar fuselage(double headingGridRad, double hookAmslM) {
        double halfM = craft.body().halfWidthM();
        double noseM = Math.max(0, craft.body().noseReachM() - halfM);
        return Bar.along(
                headingGridRad,
                Math.min(noseM, craft.tailReachM()),
                noseM,
                Bar.disc(halfM, hookAmslM));
    }

    /**
     * The tightest margin on a straight way at the rule's steepness; empty when that is straight down and
     * up, where nothing comes nearer than in the hover.
     */
    Optional<Margin> way(double headingGridRad, double awayGridRad) {
        double angleRad = needs.margins().finalAngleRad();
        if (angleRad > Math.PI / 2 - 1e-6 || !around.isKnown()) {
            return Optional.empty();
        }
        Steps steps = Steps.of(awayGridRad, 0, 0);
        Hover low = new Hover(around, craft, needs, rig);
        Margin worst = null;
        for (int k = 0; k < Steps.COUNT; k++) {
            double alongM = k * Steps.STEP_M;
            double upM = alongM * Math.tan(angleRad);
            for (Pair pair : low.pairs) {
                Bar bar =
                        bar(pair.part, headingGridRad).moved(steps, alongM + Steps.STEP_M / 2, upM);
                pair.guess = nearest(pair, bar);
                if (pair.guess >= 0) {
                    Margin margin = margin(pair, bar, headingGridRad);
                    worst = worst == null ? margin : tighter(worst, margin);
                }
            }
        }
        return Optional.ofNullable(worst);
    }

    /** The least steepness of a straight way that keeps every margin. */
    Straight straight(double headingGridRad, double awayGridRad) {
        if (!around.isKnown()) {
            return new Straight(Math.PI / 2, Optional.empty(), Optional.of(Cause.GROUND));
        }
        double factor = 0;
        Optional<Pair> decides = Optional.empty();
        for (Pair pair : pairs) {
            Bar bar = bar(pair.part, headingGridRad);
            Steps steps = Steps.of(awayGridRad, neededM(pair), beyondM(pair));
            double next = pair.columns.steepnessFactor(bar, steps, factor);
            if (next > factor) {
                factor = next;
                decides = Optional.of(pair);
            }
        }
        return new Straight(
                Math.atan(factor), decides.map(pair -> pair.part), decides.map(pair -> pair.cause));
    }
}
