package underhook.planner.verify;

import java.time.Instant;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import underhook.core.finding.FindingCode;
import underhook.core.job.Load;
import underhook.core.job.LoadId;
import underhook.core.job.Place;
import underhook.core.plan.Drop;
import underhook.core.plan.LeftOut;
import underhook.core.plan.Rotation;
import underhook.core.plan.Step;

/** Every load once, where it belongs, with the right company and in the right order. */
final class LoadCheck {
    private final Day day;

    LoadCheck(Day day) {
        this.day = day;
    }

    void run() {
        checkOnce();
        for (Step step : day.plan().steps()) {
            step.rotation().ifPresent(this::checkTogether);
        }
        for (Load load : day.job().loads()) {
            Drop drop = day.drops().get(load.id());
            Rotation rotation = day.rotations().get(load.id());
            if (drop != null && rotation != null) {
                checkPlaced(load, drop);
                checkAfter(load, rotation, drop);
                checkLast(load, rotation.hookedAt());
                checkGuys(load);
            }
        }
    }

    private void checkOnce() {
        Map<LoadId, Integer> count = new HashMap<>();
        for (Step step : day.plan().steps()) {
            step.rotation()
                    .ifPresent(
                            turn -> turn.loads().forEach(id -> count.merge(id, 1, Integer::sum)));
        }
        for (LeftOut left : day.plan().leftOut()) {
            count.merge(left.load(), 1, Integer::sum);
            demand(
                    !left.message().isBlank(),
                    FindingCode.LOAD_FORGOTTEN,
                    left.load(),
                    "is left out without a reason.");
        }
        for (Load load : day.job().loads()) {
            int times = count.getOrDefault(load.id(), 0);
            demand(
                    times >= 1,
                    FindingCode.LOAD_FORGOTTEN,
                    load.id(),
                    "stands nowhere in the plan.");
            demand(
                    times <= 1,
                    FindingCode.LOAD_TWICE,
                    load.id(),
                    "stands in the plan more than once.");
        }
    }

    private void checkPlaced(Load load, Drop drop) {
        demand(
                drop.place().equals(load.to()),
                FindingCode.LOAD_MISPLACED,
                load.id(),
                "is set down at " + drop.place() + " instead of " + load.to() + ".");
        demand(
                load.massKg().isPresent(),
                FindingCode.LOAD_UNFIT,
                load.id(),
                "is flown without a known mass.");
        demand(
                !load.anotherDay() || day.isDone(load.id()),
                FindingCode.ANOTHER_DAY,
                load.id(),
                "is flown though the load list leaves it for another day.");
    }

    private void checkTogether(Rotation rotation) {
        List<Load> loads = day.loadsOf(rotation.loads());
        if (loads.size() < 2) {
            return;
        }
        Load first = loads.get(0);
        double sum = 0;
        for (Load load : loads) {
            sum += load.massKg().isPresent() ? day.liftMassKg(load) : 0;
            boolean fits =
                    day.kindOf(load).sharesHook()
                            && load.dangerousGoods().isBlank()
                            && !day.kindOf(load).standsUp()
                            && load.from().equals(first.from());
            demand(fits, FindingCode.COMBINATION_BROKEN, load.id(), "may not share the hook.");
            for (Load other : loads) {
                boolean listed =
                        load.equals(other)
                                || load.combineWith().contains(other.id())
                                || other.combineWith().contains(load.id());
                if (load.id().compareTo(other.id()) <= 0) {
                    demand(
                            listed,
                            FindingCode.COMBINATION_BROKEN,
                            load.id(),
                            "is not listed to ride with " + other.id() + ".");
                }
            }
        }
        double mass = sum;
        double limit = day.job().rules().masses().combineMassKg();
        day.ledger()
                .demand(
                        mass <= limit + Tolerance.DUST_KG,
                        FindingCode.COMBINATION_BROKEN,
                        first.id().value(),
                        () ->
                                Told.of(
                                                "rules",
                                                "Loads from "
                                                        + first.id()
                                                        + " on are too heavy together.")
                                        .figures(mass, limit, "kg"));
    }

    private void checkAfter(Load load, Rotation rotation, Drop drop) {
        for (Load.After after : load.after()) {
            Drop before = day.drops().get(after.load());
            if (before == null) {
                demand(
                        false,
                        FindingCode.ORDER_BROKEN,
                        load.id(),
                        "is set down although " + after.load() + " is not, which must come first.");
                continue;
            }
            Instant waitedFor = drop.releasedAt();
            if (after.waitS() > 0) {
                boolean hookedThere = load.from().equals(before.place());
                waitedFor = hookedThere ? day.hookedFrom(rotation) : day.neededFrom(drop);
            }
            double waited = Day.betweenS(before.releasedAt(), waitedFor);
            day.ledger()
                    .demand(
                            waited >= after.waitS() - Tolerance.TIME_S
                                    && (after.waitS() > 0 || waited > 0),
                            FindingCode.ORDER_BROKEN,
                            load.id().value(),
                            () ->
                                    Told.of(
                                                    "loads",
                                                    load.id()
                                                            + " comes too soon after "
                                                            + after.load()
                                                            + ".")
                                            .figures(waited, after.waitS(), "s"));
        }
    }

    private void checkLast(Load load, Instant hookedAt) {
        if (!day.kindOf(load).lastAtPlace()) {
            return;
        }
        for (Load other : day.job().loads()) {
            Drop drop = day.drops().get(other.id());
            if (drop != null && other.to().equals(load.from())) {
                demand(
                        !drop.releasedAt().isAfter(hookedAt),
                        FindingCode.ORDER_BROKEN,
                        load.id(),
                        "leaves " + load.from() + " before " + other.id() + " has come.");
            }
        }
    }

    /** A pole holds only if no half of the compass is without a guy. */
    private void checkGuys(Load load) {
        Place place = day.job().getPlace(load.to());
        if (!day.kindOf(load).standsUp() || place.guyAzimuthsTrueRad().isEmpty()) {
            return;
        }
        double widest = Math.toDegrees(GuyCheck.gapRad(place));
        day.ledger()
                .demand(
                        widest < 180 - 1e-6
                                || day.isAnswered(FindingCode.GUY_GAP, load.id().value()),
                        FindingCode.GUY_GAP,
                        load.id().value(),
                        () ->
                                Told.of(
                                                "places",
                                                "The guys at "
                                                        + load.to()
                                                        + " leave half the compass open.")
                                        .figures(widest, 180, "deg"));
    }

    private void demand(boolean holds, FindingCode code, LoadId id, String what) {
        day.ledger().demand(holds, code, id.value(), () -> Told.of("loads", id + " " + what));
    }
}
