package underhook.planner.verify;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import underhook.core.finding.FindingCode;
import underhook.core.finding.Severity;
import underhook.core.job.Handling.Guying;
import underhook.core.job.Load;
import underhook.core.job.LoadKind;
import underhook.core.job.Place;
import underhook.core.plan.Drop;
import underhook.core.plan.PoleSetting;
import underhook.core.unit.Units;

/**
 * What is stated of each guy, by level forces at the attachment.
 *
 * <p>The tilting moment of weight and wind over the height of the attachment is a level push there; two guys
 * undo it like two strings in plan, each pulling its level part over the cosine of its angle. The guys' angles
 * are those of the upright pole.
 *
 * @source DERIVED parallelogram of forces; RUS-1724E-150 wind pressure 0.613 V²
 */
final class GuyCheck {
    /** A pull by two ways of counting: at 3° of lean the upright angles read some 6 percent off. */
    static final double PULL_FACTOR = 0.85;

    static final double PULL_N = 2;

    /** From here on a gap loads the guys beside it heavily. @source PRACTICE */
    private static final double WIDE_RAD = Math.toRadians(150);

    /** Gaps are told in tenths of a degree. */
    private static final double GAP_RAD = Math.toRadians(0.1);

    private static final double PLACE_M = 1;

    private final Day day;
    private final Guying guying;

    GuyCheck(Day day) {
        this.day = day;
        this.guying = day.job().rules().handling().guying();
    }

    void run() {
        for (Load load : day.job().loads()) {
            Drop drop = day.drops().get(load.id());
            // Guys that do not hold have no pulls to state; somebody answers for them by name.
            if (drop != null
                    && day.kindOf(load).standsUp()
                    && !day.isAnswered(FindingCode.GUY_GAP, load.id().value())
                    && !day.job().getPlace(drop.place()).guyAzimuthsTrueRad().isEmpty()) {
                check(load, drop);
            }
        }
        day.plan().steps().stream()
                .flatMap(step -> step.rotation().stream())
                .filter(turn -> !day.isHooked(turn))
                .flatMap(turn -> turn.drops().stream())
                .filter(drop -> day.kindOf(day.job().getLoad(drop.load())).standsUp())
                .forEach(drop -> checkGap(day.job().getPlace(drop.place())));
    }

    /** That guys hold, but far apart, is told. */
    private void checkGap(Place place) {
        double gap = gapRad(place);
        if (gap > WIDE_RAD + GAP_RAD && gap < Math.PI) {
            new Said(day).demand(FindingCode.GUY_GAP_WIDE, place.id().value(), Severity.CAUTION);
        }
    }

    private void check(Load load, Drop drop) {
        Optional<PoleSetting> stated =
                day.plan().poles().stream()
                        .filter(pole -> pole.load().equals(load.id()))
                        .findFirst();
        boolean isTold =
                day.ledger()
                        .demand(
                                stated.isPresent(),
                                FindingCode.GUY_PULL,
                                load.id().value(),
                                () -> Told.of("plan", "Nothing is said of its guys."));
        if (isTold) {
            checkHover(load, stated.get());
            checkPulls(load, drop, stated.get());
            new PoleCheck(day, this).run(load, drop, stated.get());
        }
    }

    /** Hardest pull of a guy at a place with lean and wind as the rules say, N. */
    double hardestN(Load load, Place place) {
        double hardest = 0;
        for (double pull : worstN(load, place, guying.leanRad(), gustMPerS(load))) {
            hardest = Math.max(hardest, pull);
        }
        return hardest;
    }

    double gustMPerS(Load load) {
        return day.kindOf(load).windLimit().gustMPerS();
    }

    /** Widest gap between neighbouring guys of a place, rad; none where it has none. */
    static double gapRad(Place place) {
        List<Double> sorted = new ArrayList<>(place.guyAzimuthsTrueRad());
        sorted.sort(null);
        double gap =
                sorted.isEmpty() ? 0 : sorted.get(0) + 2 * Math.PI - sorted.get(sorted.size() - 1);
        for (int i = 1; i < sorted.size(); i++) {
            gap = Math.max(gap, sorted.get(i) - sorted.get(i - 1));
        }
        return gap;
    }

    private List<Strand> strands(Load load, Place place) {
        double attach = guying.attachFraction() * load.lengthM();
        return place.guyAzimuthsTrueRad().stream()
                .map(azimuth -> strand(place, azimuth, attach))
                .toList();
    }

    private void checkHover(Load load, PoleSetting stated) {
        double burn = day.job().machine().hoverBurnKgPerS() * stated.hoverS();
        double setDown = day.kindOf(load).setDownS();
        day.ledger()
                .demand(
                        stated.hoverS() >= setDown - Tolerance.TIME_S
                                && stated.hoverFuelKg() >= burn - Tolerance.FUEL_KG,
                        FindingCode.POLE_HOVER,
                        load.id().value(),
                        () ->
                                Told.of("rules", "The hover over the pole is stated too short.")
                                        .figures(stated.hoverS(), setDown, "s"));
    }

    private void checkPulls(Load load, Drop drop, PoleSetting stated) {
        Place place = day.job().getPlace(drop.place());
        List<Strand> strands = strands(load, place);
        double[] own = worstN(load, place, guying.leanRad(), gustMPerS(load));
        boolean sameGuys = stated.guys().size() == own.length;
        for (int i = 0; sameGuys && i < own.length; i++) {
            PoleSetting.GuyPull guy = stated.guys().get(i);
            double needs = own[i];
            boolean holds =
                    guy.worstN() >= PULL_FACTOR * needs - PULL_N
                            && guy.worstN() <= guying.anchorHoldN() + PULL_N
                            && (!guy.byHand() || guy.worstN() <= guying.handPullN() + PULL_N)
                            && Math.abs(
                                            Units.wrapPiRad(
                                                    guy.azimuthTrueRad()
                                                            - strands.get(i).azimuthRad))
                                    < Tolerance.BEARING_RAD
                            && Math.abs(guy.anchorAboveButtM() - strands.get(i).aboveM) < PLACE_M;
            String name = String.format(Locale.ROOT, "guy %d", i + 1);
            day.ledger()
                    .demand(
                            holds,
                            FindingCode.GUY_PULL,
                            load.id().value(),
                            () ->
                                    Told.of(
                                                    "rules",
                                                    "What is stated of " + name + " is too little.")
                                            .figures(guy.worstN(), needs, "N"));
        }
        day.ledger()
                .demand(
                        sameGuys,
                        FindingCode.GUY_PULL,
                        load.id().value(),
                        () -> Told.of("places", "The stated guys are not those of the place."));
    }

    /** A guy: where it goes, its anchor's height over the butt, and pull over its level part. */
    private record Strand(double azimuthRad, double aboveM, double stretchRatio) {}

    private Strand strand(Place place, double azimuthRad, double attachM) {
        var butt = day.planeOf(place.position());
        double grid = azimuthRad - Plane.convergenceRad(day.ground().frame(), place.position());
        var anchor =
                new underhook.core.geo.PlanePoint(
                        butt.eastM() + attachM * Math.sin(grid),
                        butt.northM() + attachM * Math.cos(grid));
        double above = day.isKnown(anchor) ? day.groundAmslM(anchor) - day.groundAmslM(butt) : 0;
        return new Strand(azimuthRad, above, Math.hypot(attachM, attachM - above) / attachM);
    }

    /** Centre of gravity from the butt or front, m. */
    static double centreM(Day day, Load load) {
        Guying guying = day.job().rules().handling().guying();
        return load.lengthM()
                * (Wood.isNamed(load) ? guying.woodCentreFraction() : guying.otherCentreFraction());
    }

    /** Hardest pull of each guy, N, with weight, a lean and wind from each of 72 sides. */
    double[] worstN(Load load, Place place, double leanRad, double gustMPerS) {
        List<Strand> strands = strands(load, place);
        double attachM = guying.attachFraction() * load.lengthM();
        LoadKind kind = day.kindOf(load);
        double centre = centreM(day, load);
        double gust = gustMPerS;
        double area =
                kind.dragCoefficient() * load.lengthM() * Math.max(load.widthM(), load.heightM());
        double moment =
                day.liftMassKg(load) * Units.STANDARD_GRAVITY_M_PER_S2 * centre * Math.sin(leanRad)
                        + 0.613 * gust * gust * area * load.lengthM() / 2;
        double[] worst = new double[strands.size()];
        for (int side = 0; side < 72; side++) {
            double[] pulls = pullsN(strands, moment / attachM, Math.toRadians(side * 5.0));
            for (int i = 0; i < worst.length; i++) {
                worst[i] = Math.max(worst[i], pulls[i]);
            }
        }
        return worst;
    }

    /** Pulls against a level push towards a side, by the pair that pulls least. */
    private static double[] pullsN(List<Strand> strands, double pushN, double towardsRad) {
        double[] best = new double[strands.size()];
        double least = Double.POSITIVE_INFINITY;
        for (int i = 0; i < strands.size(); i++) {
            for (int j = 0; j < strands.size(); j++) {
                double gap =
                        Units.wrapTwoPiRad(strands.get(j).azimuthRad - strands.get(i).azimuthRad);
                double off = Units.wrapTwoPiRad(towardsRad + Math.PI - strands.get(i).azimuthRad);
                boolean between = i != j && gap < Math.PI - 1e-9 && off <= gap + 1e-9;
                if (!between) {
                    continue;
                }
                double first =
                        pushN * Math.sin(gap - off) / Math.sin(gap) * strands.get(i).stretchRatio;
                double second = pushN * Math.sin(off) / Math.sin(gap) * strands.get(j).stretchRatio;
                if (Math.max(first, second) < least) {
                    least = Math.max(first, second);
                    best = new double[strands.size()];
                    best[i] = Math.max(0, first);
                    best[j] = Math.max(0, second);
                }
            }
        }
        return best;
    }
}
