package underhook.planner.verify;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.function.ToDoubleFunction;
import java.util.stream.Stream;
import underhook.core.finding.Finding;
import underhook.core.finding.FindingCode;
import underhook.core.finding.Severity;
import underhook.core.job.Load;
import underhook.core.job.MapFeature;
import underhook.core.job.MassStatus;
import underhook.core.job.PlaceId;
import underhook.core.job.Wire;
import underhook.core.plan.Leg;
import underhook.core.plan.Limit;
import underhook.core.plan.PoleSetting;
import underhook.core.plan.ReleaseLook;
import underhook.core.plan.Rotation;
import underhook.core.plan.Step;
import underhook.core.unit.Units;

/**
 * The figures that findings state, where the job or the plan's own figures say what they must be: none may look
 * better than that. A finding that states none says nothing false.
 */
final class FiguresCheck {
    /** Figures of findings are written in tenths, or whole where they are large. */
    private static final double TENTHS_FRACTION = 0.1 + 1e-6;

    private static final double WHOLES_FRACTION = 1 + 1e-6;

    /** For so long a load may lack a spot to be let go, s. @source common practice, no source */
    private static final double CLOSED_S = 10;

    /** A descent that training warns of, ft/min. @source FAA-8083-21B chapter 11 */
    private static final int WARNED_FT_PER_MIN = 300;

    private final Day day;
    private final List<Leg> legs;

    FiguresCheck(Day day) {
        this.day = day;
        this.legs =
                day.plan().steps().stream()
                        .filter(step -> !day.isBegun(step))
                        .flatMap(FiguresCheck::legsOf)
                        .toList();
    }

    private static Stream<Leg> legsOf(Step step) {
        return step.rotation().map(Rotation::legs).orElse(step.legs()).stream();
    }

    void run() {
        for (Finding read : day.job().readingFindings()) {
            boolean same = day.plan().findings().stream().anyMatch(one -> isSame(one, read));
            demand(same, read);
        }
        for (Finding one : day.plan().findings()) {
            check(one);
        }
    }

    private static boolean isSame(Finding one, Finding read) {
        return one.code() == read.code()
                && one.subject().equals(read.subject())
                && isNear(one.value(), read.value())
                && isNear(one.limit(), read.limit())
                && one.unit().equals(read.unit());
    }

    /** The same text, or the same number otherwise written. */
    private static boolean isNear(String one, String other) {
        Optional<Double> first = number(one);
        Optional<Double> second = number(other);
        return one.equals(other)
                || (first.isPresent()
                        && second.isPresent()
                        && Math.abs(first.get() - second.get()) < 1e-6);
    }

    private void check(Finding one) {
        switch (one.code()) {
            case RELEASE_CLOSED -> {
                atLeast(
                        one,
                        one.value(),
                        worstS(one, ReleaseLook::longestClosedS) - TENTHS_FRACTION);
                atMost(one, one.limit(), CLOSED_S);
            }
            case RELEASE_UNNAMED ->
                    atLeast(
                            one,
                            one.value(),
                            worstS(one, ReleaseLook::longestUnnamedS) - TENTHS_FRACTION);
            case MASS_ESTIMATED -> load(one).ifPresent(load -> checkMass(one, load));
            case BALLAST_ADDED -> rotation(one).ifPresent(turn -> checkBallast(one, turn));
            case WIND_AT_LIMIT -> rotation(one).ifPresent(turn -> checkWind(one, turn));
            case WIRE_NEAR -> checkWire(one);
            case WIRE_CROSSING -> checkAbove(one);
            case GUY_PULL -> checkPull(one);
            case PLACE_NEAR_TRAIL -> checkTrail(one);
            case HOOK_LIMIT ->
                    atMost(one, one.limit(), day.job().machine().hookLimitKg() + WHOLES_FRACTION);
            case FLIES_BADLY ->
                    atLeast(
                            one,
                            one.limit(),
                            Units.mPerSToKt(day.job().rules().flying().leastSpeedMPerS())
                                    - WHOLES_FRACTION);
            case VORTEX_RING -> atMost(one, one.limit(), WARNED_FT_PER_MIN);
            default -> {}
        }
    }

    private double worstS(Finding one, ToDoubleFunction<ReleaseLook> ofS) {
        return legs.stream()
                .filter(leg -> (leg.from() + "-" + leg.to()).equals(one.subject()))
                .flatMap(leg -> leg.release().stream())
                .mapToDouble(ofS)
                .max()
                .orElse(0);
    }

    private Optional<Load> load(Finding one) {
        return day.job().loads().stream()
                .filter(load -> load.id().value().equals(one.subject()))
                .filter(load -> load.massKg().isPresent())
                .filter(load -> load.massStatus() == MassStatus.ESTIMATED)
                .findFirst();
    }

    /** Limits of what hung already were said before it did. */
    private Optional<Rotation> rotation(Finding one) {
        return day.plan().steps().stream()
                .flatMap(step -> step.rotation().stream())
                .filter(turn -> !day.isHooked(turn))
                .filter(turn -> turn.loads().get(0).value().equals(one.subject()))
                .findFirst();
    }

    private void checkMass(Finding one, Load load) {
        atLeast(one, one.value(), load.massKg().orElseThrow() - TENTHS_FRACTION);
        atLeast(one, one.limit(), day.liftMassKg(load) - WHOLES_FRACTION);
    }

    /** Of several loads on one hook each has its own. */
    private void checkBallast(Finding one, Rotation turn) {
        if (turn.loads().size() == 1) {
            atLeast(one, one.value(), turn.ballastKg() - WHOLES_FRACTION);
            atMost(one, one.value(), turn.ballastKg() + WHOLES_FRACTION);
        }
    }

    private void checkWind(Finding one, Rotation turn) {
        turn.limits().stream()
                .filter(limit -> limit.code().startsWith("WIND_") && limit.isNear())
                .min(Comparator.comparingDouble(Limit::marginPercent))
                .ifPresent(
                        limit -> {
                            double left = limit.limit() - limit.value();
                            atMost(one, one.limit(), limit.limit() + TENTHS_FRACTION);
                            number(one.limit())
                                    .ifPresent(
                                            most ->
                                                    atLeast(
                                                            one,
                                                            one.value(),
                                                            most.doubleValue()
                                                                    - left
                                                                    - TENTHS_FRACTION));
                        });
    }

    /** No pass to come has less to spare than is told. */
    private void checkWire(Finding one) {
        double spareM =
                legs.stream()
                        .flatMap(leg -> leg.wires().stream())
                        .filter(pass -> pass.wire().equals(one.subject()))
                        .mapToDouble(pass -> pass.leastM() - pass.needM())
                        .min()
                        .orElse(Double.POSITIVE_INFINITY);
        Optional<Double> value = number(one.value());
        Optional<Double> limit = number(one.limit());
        if (value.isPresent() && limit.isPresent()) {
            demand(value.get() - limit.get() <= spareM + TENTHS_FRACTION, one);
        }
    }

    private void checkAbove(Finding one) {
        List<String> over = new ArrayList<>();
        legs.stream()
                .filter(leg -> (leg.from() + "-" + leg.to()).equals(one.subject()))
                .flatMap(leg -> leg.crossings().stream())
                .forEach(crossing -> over.add(crossing.feature()));
        day.job().wires().stream()
                .filter(wire -> over.contains(wire.id()))
                .mapToDouble(Wire::crossingAboveM)
                .min()
                .ifPresent(leastM -> atLeast(one, one.limit(), leastM - WHOLES_FRACTION));
    }

    /** Which of a caution is of people's hands; a stop is of the anchor. */
    private void checkPull(Finding one) {
        Optional<PoleSetting> pole =
                day.plan().poles().stream()
                        .filter(each -> each.load().value().equals(one.subject()))
                        .findFirst();
        if (one.severity() == Severity.CAUTION && pole.isPresent()) {
            double worstN =
                    pole.get().guys().stream()
                            .mapToDouble(PoleSetting.GuyPull::worstN)
                            .max()
                            .orElse(0);
            double handN = day.job().rules().handling().guying().handPullN();
            atLeast(one, one.value(), worstN - WHOLES_FRACTION);
            atMost(one, one.limit(), handN + WHOLES_FRACTION);
        }
    }

    private void checkTrail(Finding one) {
        day.job()
                .findPlace(new PlaceId(one.subject()))
                .map(place -> day.planeOf(place.id()))
                .ifPresent(
                        at -> {
                            double farthestM =
                                    day.job().features().stream()
                                            .filter(it -> it.kind() == MapFeature.Kind.TRAIL)
                                            .map(day::shapeOf)
                                            .mapToDouble(
                                                    it -> it.distanceM(new Plane.Stretch(at, at)))
                                            .filter(this::isNearTrail)
                                            .max()
                                            .orElse(Double.POSITIVE_INFINITY);
                            atMost(one, one.value(), farthestM + WHOLES_FRACTION);
                        });
    }

    private boolean isNearTrail(double apartM) {
        return apartM <= day.job().rules().distances().trailNearM() + WHOLES_FRACTION;
    }

    private void atLeast(Finding one, String text, Number least) {
        number(text).ifPresent(figure -> demand(figure >= least.doubleValue(), one));
    }

    private void atMost(Finding one, String text, Number most) {
        number(text).ifPresent(figure -> demand(figure <= most.doubleValue(), one));
    }

    private static Optional<Double> number(String text) {
        try {
            return text.isBlank() ? Optional.empty() : Optional.of(Double.valueOf(text));
        } catch (NumberFormatException notOne) {
            return Optional.empty();
        }
    }

    private void demand(boolean holds, Finding one) {
        day.ledger()
                .demand(
                        holds,
                        FindingCode.STATED_WRONG,
                        one.subject(),
                        () ->
                                Told.of(
                                        "plan",
                                        "The figures of "
                                                + one.code()
                                                + " look better than they are."));
    }
}
