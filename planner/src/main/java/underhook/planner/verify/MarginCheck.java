package underhook.planner.verify;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.function.Supplier;
import java.util.function.ToDoubleFunction;
import underhook.core.finding.FindingCode;
import underhook.core.job.LineItem;
import underhook.core.job.Load;
import underhook.core.job.Machine;
import underhook.core.job.PlaceId;
import underhook.core.job.WeatherHour;
import underhook.core.job.WindLimit;
import underhook.core.plan.Drop;
import underhook.core.plan.Limit;
import underhook.core.plan.Rotation;
import underhook.core.plan.Step;
import underhook.core.unit.Units;

/**
 * The limits that a rotation states with what each leaves, which people read on a card: none may look better
 * than it is, or govern in the place of another, and no mass may be left out. A plan written by hand may
 * state none at all.
 */
final class MarginCheck {
    /** Margins are written in tenths of a percent. */
    private static final double MARGIN_FRACTION = 0.001;

    /** Winds are written in tenths of a knot. */
    private static final double WIND_M_PER_S = 0.06;

    /** Lengths are written up to the next tenth of a metre. */
    private static final double WHOLE_TENTH_M = 0.1 + 1e-6;

    private static final Map<String, String> UNITS =
            Map.ofEntries(
                    Map.entry("HOVER_MASS", "kg"),
                    Map.entry("EXTERNAL_MASS_LIMIT", "kg"),
                    Map.entry("HOOK_LIMIT", "kg"),
                    Map.entry("LINE_LIMIT", "kg"),
                    Map.entry("RIGGING_LIMIT", "kg"),
                    Map.entry("BALANCE_FUEL", "kg"),
                    Map.entry("LINE_LENGTH", "m"),
                    Map.entry("TAIL_DISTANCE", "m"),
                    Map.entry("TRAIL", "deg"),
                    Map.entry("WIND_MEAN", "kt"),
                    Map.entry("WIND_GUST", "kt"),
                    Map.entry("WIND_SPREAD", "kt"));

    private final Day day;
    private final Machine machine;
    private final LineCheck lines;

    /** Plans of earlier programs state the line for the set-down alone, without a place, in every rotation. */
    private final boolean isEarlier;

    /** What a limit must at least state as used and at most as allowed, kg. */
    private record Masses(double usedKg, double allowedKg) {}

    /** What a place asks of the line, and what hangs there, m. */
    private record Reach(double needsM, double hangsM) {}

    MarginCheck(Day day) {
        this.day = day;
        this.machine = day.job().machine();
        this.lines = new LineCheck(day);
        this.isEarlier =
                day.plan().steps().stream()
                        .flatMap(step -> step.rotation().stream())
                        .flatMap(rotation -> rotation.limits().stream())
                        .map(Limit::code)
                        .filter(code -> code.startsWith("LINE_LENGTH"))
                        .allMatch(code -> code.equals("LINE_LENGTH"));
    }

    void run() {
        boolean tells =
                day.plan().steps().stream()
                        .flatMap(step -> step.rotation().stream())
                        .anyMatch(rotation -> !rotation.limits().isEmpty());
        for (Step step : day.plan().steps()) {
            // What was left of a limit was said before hook-up; who hangs is flown by it, whenever.
            step.rotation()
                    .filter(rotation -> tells && !day.isHooked(rotation))
                    .ifPresent(rotation -> check(step, rotation));
        }
    }

    private void check(Step step, Rotation rotation) {
        rotation.limits().forEach(limit -> checkMargin(rotation, limit));
        demand(
                rotation.limits().stream().map(Limit::code).distinct().count()
                        == rotation.limits().size(),
                rotation,
                () -> Told.of("plan", "A limit is stated twice."));
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
            checkReach(rotation, loads, line.get());
        }
        rotation.limits().forEach(limit -> checkKnown(rotation, limit));
        Air air = new Air(day.job().weather());
        checkWinds(rotation, loads.get(0).from(), air.listRows(rotation.hookedAt()));
        for (int i = 0; i < rotation.drops().size(); i++) {
            checkWinds(rotation, rotation.drops().get(i).place(), day.rowsOver(rotation, i));
        }
    }

    /** A card says nothing that nobody knows of, and in the unit that it is read in. */
    private void checkKnown(Rotation rotation, Limit limit) {
        String name = limit.code().split(" at ", 2)[0];
        demand(
                isEarlier || !limit.code().equals("LINE_LENGTH"),
                rotation,
                () -> Told.of("plan", "The line is stated without saying for which place."));
        demand(
                UNITS.getOrDefault(name, "").equals(limit.unit()),
                rotation,
                () -> Told.of("plan", limit.code() + " is no limit in " + limit.unit() + "."));
    }

    private void checkReach(Rotation rotation, List<Load> loads, LineItem line) {
        double stands =
                loads.stream()
                        .filter(load -> day.kindOf(load).standsUp())
                        .mapToDouble(Load::lengthM)
                        .max()
                        .orElse(0);
        if (!isEarlier) {
            PlaceId from = loads.get(0).from();
            double needs = lines.leastNeedM(day.job().getPlace(from));
            checkReach(rotation, "LINE_LENGTH at " + from, new Reach(needs, line.lengthM()));
            find(rotation, "LINE_LENGTH at " + from)
                    .ifPresent(stated -> checkEnough(rotation, stated));
        }
        for (Drop drop : rotation.drops()) {
            String code = isEarlier ? "LINE_LENGTH" : "LINE_LENGTH at " + drop.place();
            checkReach(rotation, code, new Reach(lines.needM(drop), line.lengthM() + stands));
        }
    }

    /** By its own words the line must do where it is hooked up; a set-down's heading is looked at by itself. */
    private void checkEnough(Rotation rotation, Limit stated) {
        day.ledger()
                .demand(
                        stated.value() <= stated.limit() + WHOLE_TENTH_M,
                        FindingCode.LINE_LENGTH,
                        rotation.loads().get(0).value(),
                        () ->
                                Told.of(
                                                "places",
                                                "The line is too short on the heading of the way out.")
                                        .figures(stated.limit(), stated.value(), "m"));
    }

    private void checkReach(Rotation rotation, String code, Reach own) {
        Optional<Limit> stated = find(rotation, code);
        demand(
                stated.isPresent() && stated.get().limit() <= own.hangsM() + Tolerance.LENGTH_M,
                rotation,
                () -> Told.of("plan", "The line is not stated, or longer than it is."));
        demand(
                stated.isEmpty() || stated.get().value() >= own.needsM() - Tolerance.CLEARANCE_M,
                rotation,
                () ->
                        Told.of("places", "The line is stated to need less than it does.")
                                .figures(stated.map(Limit::value).orElse(0.0), own.needsM(), "m"));
    }

    /** The wind at an end in the rows that count, against the least limit of all that hangs there. */
    private void checkWinds(Rotation rotation, PlaceId place, List<WeatherHour> rows) {
        double exposure = day.job().getPlace(place).exposureFactor();
        double mean = 0;
        double gust = 0;
        double spread = 0;
        for (WeatherHour row : rows) {
            mean = Math.max(mean, row.windMPerS() * exposure);
            gust = Math.max(gust, row.gustMPerS() * exposure);
            spread = Math.max(spread, (row.gustMPerS() - row.windMPerS()) * exposure);
        }
        List<WindLimit> limits =
                day.loadsOf(rotation.loads()).stream()
                        .map(load -> day.kindOf(load).windLimit())
                        .toList();
        String where = " at " + place;
        checkWind(rotation, "WIND_MEAN" + where, mean, leastMPerS(limits, WindLimit::meanMPerS));
        checkWind(rotation, "WIND_GUST" + where, gust, leastMPerS(limits, WindLimit::gustMPerS));
        checkWind(
                rotation,
                "WIND_SPREAD" + where,
                spread,
                leastMPerS(limits, WindLimit::spreadMPerS));
    }

    private static double leastMPerS(List<WindLimit> limits, ToDoubleFunction<WindLimit> ofMPerS) {
        return limits.stream().mapToDouble(ofMPerS).min().orElse(0);
    }

    private void checkWind(Rotation rotation, String code, double windMPerS, double limitMPerS) {
        Optional<Limit> stated = find(rotation, code);
        boolean holds =
                stated.isPresent()
                        && stated.get().value() >= Units.mPerSToKt(windMPerS - WIND_M_PER_S)
                        && stated.get().limit() <= Units.mPerSToKt(limitMPerS + WIND_M_PER_S);
        demand(
                holds,
                rotation,
                () -> Told.of("rules", code + " is not stated, or better than it is."));
    }

    private static Optional<Limit> find(Rotation rotation, String code) {
        return rotation.limits().stream().filter(limit -> limit.code().equals(code)).findFirst();
    }

    private void checkMargin(Rotation rotation, Limit limit) {
        double left = (limit.limit() - limit.value()) / limit.limit() * 100;
        demand(
                limit.limit() > 0 && limit.value() >= 0 && !limit.source().isBlank(),
                rotation,
                () -> Told.of("plan", limit.code() + " is stated with what is no limit."));
        demand(
                limit.marginPercent() <= left + 100 * MARGIN_FRACTION,
                rotation,
                () ->
                        Told.of(limit.source(), limit.code() + " leaves less than is stated.")
                                .figures(limit.marginPercent(), left, "%"));
    }

    private void checkGoverning(Rotation rotation) {
        List<Limit> governing = rotation.limits().stream().filter(Limit::governing).toList();
        double leastPercent =
                rotation.limits().stream().mapToDouble(Limit::marginPercent).min().orElse(0);
        demand(
                governing.size() == 1 && governing.get(0).marginPercent() <= leastPercent,
                rotation,
                () -> Told.of("plan", "Not the limit that leaves least is said to govern."));
    }

    private Map<String, Masses> masses(Rotation rotation, List<Load> loads, LineItem line) {
        double below = loads.stream().mapToDouble(day::liftMassKg).sum() + rotation.ballastKg();
        double read = rotation.fuelAtHookKg() + machine.fuelGaugeSpreadKg();
        double bare = machine.emptyMassKg() + machine.crewMassKg() + line.massKg() + read;
        boolean construction =
                loads.stream().anyMatch(load -> day.kindOf(load).constructionMargin());
        double needs =
                construction
                        ? below / (1 - day.job().rules().masses().constructionFraction())
                        : below;
        Map<String, Masses> all = new TreeMap<>();
        all.put("HOVER_MASS", new Masses(bare + needs, rotation.hogeMassKg()));
        all.put("EXTERNAL_MASS_LIMIT", new Masses(bare + below, machine.maxExternalMassKg()));
        all.put("HOOK_LIMIT", new Masses(below + line.massKg(), machine.hookLimitKg()));
        all.put("LINE_LIMIT", new Masses(below, line.limitKg()));
        return all;
    }

    private void checkMass(Rotation rotation, String code, Masses own) {
        Optional<Limit> stated = find(rotation, code);
        demand(
                stated.isPresent(),
                rotation,
                () -> Told.of("plan", "Nothing is said of what " + code + " leaves."));
        stated.ifPresent(
                limit -> {
                    demand(
                            limit.value() >= own.usedKg() - Tolerance.MASS_KG,
                            rotation,
                            () ->
                                    Told.of(limit.source(), code + " states too little as used.")
                                            .figures(limit.value(), own.usedKg(), "kg"));
                    demand(
                            limit.limit() <= own.allowedKg() + Tolerance.MASS_KG,
                            rotation,
                            () ->
                                    Told.of(limit.source(), code + " states too much as allowed.")
                                            .figures(limit.limit(), own.allowedKg(), "kg"));
                });
    }

    private void demand(boolean holds, Rotation rotation, Supplier<Told> told) {
        day.ledger().demand(holds, FindingCode.MARGIN_WRONG, rotation.loads().get(0).value(), told);
    }
}
