package underhook.planner.verify;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import underhook.core.finding.FindingCode;
import underhook.core.job.LineItem;
import underhook.core.job.Load;
import underhook.core.job.Machine;
import underhook.core.plan.Limit;
import underhook.core.plan.Rotation;
import underhook.core.plan.Step;

/**
 * The limits that a rotation states with what each leaves, which people read on a card: none may look better
 * than it is, or govern in the place of another, and no mass may be left out. A plan written by hand may
 * state none at all.
 */
final class MarginCheck {
    /** Margins are written in tenths of a percent. */
    private static final double MARGIN_FRACTION = 0.001;

    private final Day day;
    private final Machine machine;

    /** What a limit must at least state as used and at most as allowed, kg. */
    private record Masses(double usedKg, double allowedKg) {}

    MarginCheck(Day day) {
        this.day = day;
        this.machine = day.job().machine();
    }

    void run() {
        boolean tells =
                day.plan().steps().stream()
                        .flatMap(step -> step.rotation().stream())
                        .anyMatch(rotation -> !rotation.limits().isEmpty());
        for (Step step : day.plan().steps()) {
            step.rotation().filter(any -> tells).ifPresent(rotation -> check(step, rotation));
        }
    }

    private void check(Step step, Rotation rotation) {
        rotation.limits().forEach(limit -> checkMargin(rotation, limit));
        checkGoverning(rotation);
        List<Load> loads = day.loadsOf(rotation.loads());
        Optional<LineItem> line =
                machine.lines().stream()
                        .filter(
                                item ->
                                        Math.abs(item.lengthM() - step.lineLengthM())
                                                < Tolerance.LENGTH_M)
                        .findFirst();
        if (line.isPresent() && loads.stream().allMatch(load -> load.massKg().isPresent())) {
            masses(rotation, loads, line.get())
                    .forEach((code, masses) -> checkMass(rotation, code, masses));
        }
    }

    private void checkMargin(Rotation rotation, Limit limit) {
        double left = (limit.limit() - limit.value()) / limit.limit() * 100;
        demand(
                limit.marginPercent() <= left + 100 * MARGIN_FRACTION,
                rotation,
                Told.of(limit.source(), limit.code() + " leaves less than is stated.")
                        .figures(limit.marginPercent(), left, "%"));
    }

    private void checkGoverning(Rotation rotation) {
        List<Limit> governing = rotation.limits().stream().filter(Limit::governing).toList();
        double least = rotation.limits().stream().mapToDouble(Limit::marginPercent).min().orElse(0);
        demand(
                governing.size() == 1 && governing.get(0).marginPercent() <= least,
                rotation,
                Told.of("plan", "Not the limit that leaves least is said to govern."));
    }

    private Map<String, Masses> masses(Rotation rotation, List<Load> loads, LineItem line) {
        double below = loads.stream().mapToDouble(day::liftMassKg).sum() + rotation.ballastKg();
        double read = rotation.fuelAtHookKg() + machine.fuelGaugeSpreadKg();
        double bare = machine.emptyMassKg() + machine.crewMassKg() + line.massKg() + read;
        boolean construction =
                loads.stream().anyMatch(load -> day.kindOf(load).constructionMargin());
        double needs =
                construction ? below / (1 - day.job().rules().constructionFraction()) : below;
        Map<String, Masses> all = new TreeMap<>();
        all.put("HOVER_MASS", new Masses(bare + needs, rotation.hogeMassKg()));
        all.put("EXTERNAL_MASS_LIMIT", new Masses(bare + below, machine.maxExternalMassKg()));
        all.put("HOOK_LIMIT", new Masses(below + line.massKg(), machine.hookLimitKg()));
        all.put("LINE_LIMIT", new Masses(below, line.limitKg()));
        return all;
    }

    private void checkMass(Rotation rotation, String code, Masses own) {
        Optional<Limit> stated =
                rotation.limits().stream().filter(limit -> limit.code().equals(code)).findFirst();
        demand(
                stated.isPresent(),
                rotation,
                Told.of("plan", "Nothing is said of what " + code + " leaves."));
        stated.ifPresent(
                limit -> {
                    demand(
                            limit.value() >= own.usedKg() - Tolerance.MASS_KG,
                            rotation,
                            Told.of(limit.source(), code + " states too little as used.")
                                    .figures(limit.value(), own.usedKg(), "kg"));
                    demand(
                            limit.limit() <= own.allowedKg() + Tolerance.MASS_KG,
                            rotation,
                            Told.of(limit.source(), code + " states too much as allowed.")
                                    .figures(limit.limit(), own.allowedKg(), "kg"));
                });
    }

    private void demand(boolean holds, Rotation rotation, Told told) {
        day.ledger()
                .demand(
                        holds,
                        FindingCode.MARGIN_WRONG,
                        rotation.loads().get(0).value(),
                        () -> told);
    }
}
