package underhook.planner.verify;

import java.time.LocalDate;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Stream;
import underhook.core.finding.Finding;
import underhook.core.finding.FindingCode;
import underhook.core.finding.Severity;
import underhook.core.job.CrossingRule;
import underhook.core.job.MapFeature;
import underhook.core.job.MassStatus;
import underhook.core.job.Wire;
import underhook.core.plan.KitItem;
import underhook.core.plan.Leg;
import underhook.core.plan.PoleSetting;
import underhook.core.plan.ReleaseLook;
import underhook.core.plan.Rotation;
import underhook.core.plan.Step;

/** What the job and the plan's own figures demand to be told, and the plan may not keep to itself. */
final class FindingsCheck {
    /** Up to so many things under the ways from a place each is told of each way. */
    private static final int EACH_TOLD = 3;

    /** For so long a load may lack a spot to be let go, s. @source common practice, no source */
    private static final double CLOSED_S = 10;

    /** So long ahead what falls due is told, days. @source common practice, no source */
    private static final int SOON_DAYS = 30;

    private final Day day;
    private final Said said;

    FindingsCheck(Day day) {
        this.day = day;
        this.said = new Said(day);
    }

    void run() {
        for (Finding one : day.plan().findings()) {
            said.wrong(!one.message().isBlank(), one.subject(), one.code() + " says nothing.");
        }
        List<Finding> read = day.job().readingFindings();
        for (Finding one : read) {
            // Of one file several things may be said under one code.
            long count = read.stream().filter(also -> isAlike(one, also)).count();
            said.demand(one.code(), one.subject(), new Said.Least(one.severity(), count));
        }
        for (Step step : day.plan().steps()) {
            step.rotation().ifPresent(this::check);
        }
        List<Leg> ahead =
                day.plan().steps().stream()
                        .filter(step -> !day.isBegun(step))
                        .flatMap(FindingsCheck::legsOf)
                        .toList();
        checkOver(ahead.stream().filter(leg -> !leg.carrying().isEmpty()).toList());
        new LetGoCheck(day).run();
        new AroundCheck(day).run();
        new HazardCheck(day).run();
        new GroundCheck(day).run();
        new DayCheck(day).run();
        new StraightCheck(day).run();
        checkWires(ahead);
        checkPoles();
        for (KitItem item : day.plan().kit()) {
            if (item.count() < item.forDay()) {
                demand(FindingCode.KIT_SHORT, item.name());
            }
            if (item.dueOn().filter(this::isSoon).isPresent()) {
                said.demand(FindingCode.RIGGING_DUE, item.name(), Severity.NOTE);
            }
            if (item.dueOn().isEmpty()) {
                demand(FindingCode.RIGGING_UNDATED, item.name());
            }
        }
    }

    /** Not past, and no more than a month away. */
    private boolean isSoon(LocalDate due) {
        long days = due.toEpochDay() - day.job().date().toEpochDay();
        return days >= 0 && days <= SOON_DAYS;
    }

    private static Stream<Leg> legsOf(Step step) {
        return step.rotation().map(Rotation::legs).orElse(step.legs()).stream();
    }

    private static boolean isAlike(Finding one, Finding other) {
        return one.code() == other.code() && one.subject().equals(other.subject());
    }

    /** What loads pass over is guarded by people who read it here; so is where none may be let go. */
    private void checkOver(List<Leg> loaded) {
        Map<Over, Set<String>> ways = new LinkedHashMap<>();
        for (Leg leg : loaded) {
            leg.crossings()
                    .forEach(
                            crossing ->
                                    over(leg, crossing.feature())
                                            .ifPresent(
                                                    over ->
                                                            ways.computeIfAbsent(
                                                                            over,
                                                                            unused ->
                                                                                    new TreeSet<>())
                                                                    .add(name(leg))));
            double closedS = leg.release().map(ReleaseLook::longestClosedS).orElse(0.0);
            if (closedS > CLOSED_S + Tolerance.TIME_S) {
                demand(FindingCode.RELEASE_CLOSED, name(leg));
            }
        }
        ways.forEach((over, names) -> checkTold(over, names, ways.keySet()));
    }

    /** Something with a rule, passed over from a place. */
    private record Over(FindingCode code, Severity severity, String thing, String from) {}

    private Optional<Over> over(Leg leg, String id) {
        String from = leg.from().value();
        if (day.job().wires().stream().anyMatch(wire -> wire.id().equals(id))) {
            return Optional.of(new Over(FindingCode.WIRE_CROSSING, Severity.CAUTION, id, from));
        }
        return day.job().features().stream()
                .filter(feature -> feature.id().equals(id))
                .findFirst()
                .map(
                        feature ->
                                new Over(
                                        feature.kind() == MapFeature.Kind.TRAIL
                                                ? FindingCode.TRAIL_CROSSING
                                                : FindingCode.ROAD_CROSSING,
                                        feature.crossing() == CrossingRule.GUARDED
                                                ? Severity.CAUTION
                                                : Severity.NOTE,
                                        id,
                                        from));
    }

    /**
     * Told of each of its ways; where much lies under the ways from a place, of one of them at least, and of as many
     * things from there as there are of its code.
     */
    private void checkTold(Over over, Set<String> names, Set<Over> all) {
        List<Finding> told =
                day.plan().findings().stream()
                        .filter(one -> one.code() == over.code())
                        .filter(one -> one.severity().compareTo(over.severity()) >= 0)
                        .filter(one -> one.subject().startsWith(over.from() + "-"))
                        .toList();
        long things =
                all.stream()
                        .filter(
                                one ->
                                        one.code() == over.code()
                                                && one.from().equals(over.from())
                                                && one.severity().compareTo(over.severity()) >= 0)
                        .count();
        List<String> silent =
                names.stream()
                        .filter(name -> told.stream().noneMatch(one -> one.subject().equals(name)))
                        .filter(unused -> thingsFrom(over.from()) <= EACH_TOLD)
                        .toList();
        silent.forEach(name -> said.told(false, name, over.code()));
        if (silent.isEmpty()) {
            said.told(told.size() >= things, names.iterator().next(), over.code());
        }
    }

    /** How many things loads pass over on all ways from a place, those flown before a new order too. */
    private long thingsFrom(String from) {
        return day.plan().steps().stream()
                .flatMap(FindingsCheck::legsOf)
                .filter(leg -> !leg.carrying().isEmpty() && leg.from().value().equals(from))
                .flatMap(leg -> leg.crossings().stream())
                .map(Leg.Crossing::feature)
                .distinct()
                .count();
    }

    /** Of each wire the way counts on which the least is left. */
    private void checkWires(List<Leg> legs) {
        for (Wire wire : day.job().wires()) {
            if (!wire.registered()) {
                demand(FindingCode.WIRE_UNREGISTERED, wire.id());
            }
            List<Leg.WirePass> passes =
                    legs.stream()
                            .flatMap(leg -> leg.wires().stream())
                            .filter(pass -> pass.wire().equals(wire.id()))
                            .toList();
            boolean close =
                    passes.stream()
                            .anyMatch(
                                    pass ->
                                            pass.leastM() - pass.needM()
                                                    < wire.lateralM() - Tolerance.PLAN_M);
            if (!passes.isEmpty()) {
                Severity severity = close ? Severity.CAUTION : Severity.NOTE;
                said.demand(FindingCode.WIRE_NEAR, wire.id(), severity);
            }
            if (passes.stream().anyMatch(Leg.WirePass::assumed)) {
                demand(FindingCode.WIRE_ASSUMED, wire.id());
            }
        }
    }

    /** That a guy is held by no hand is told of one pole for all; that a hover over one ends short, of each. */
    private void checkPoles() {
        double handN = day.job().rules().handling().guying().handPullN() + GuyCheck.PULL_N;
        List<PoleSetting> ahead =
                day.plan().poles().stream().filter(pole -> !day.isDone(pole.load())).toList();
        boolean hard =
                ahead.stream()
                        .flatMap(pole -> pole.guys().stream())
                        .anyMatch(guy -> guy.worstN() > handN);
        boolean told =
                day.plan().findings().stream()
                        .filter(one -> one.code() == FindingCode.GUY_PULL)
                        .anyMatch(one -> one.severity().compareTo(Severity.CAUTION) >= 0);
        said.told(!hard || told, "poles", FindingCode.GUY_PULL);
        ahead.stream()
                .filter(pole -> pole.spareKg() < pole.hoverFuelKg() - Tolerance.MASS_KG)
                .forEach(pole -> demand(FindingCode.POLE_HOVER, pole.load().value()));
    }

    private static String name(Leg leg) {
        return leg.from() + "-" + leg.to();
    }

    private void check(Rotation rotation) {
        rotation.loads().stream()
                .map(id -> day.job().getLoad(id))
                .filter(load -> load.massStatus() == MassStatus.ESTIMATED)
                .forEach(load -> demand(FindingCode.MASS_ESTIMATED, load.id().value()));
        rotation.loads().stream()
                .map(id -> day.job().getLoad(id))
                .filter(load -> day.kindOf(load).standsUp() && Wood.isImplausible(load))
                .forEach(load -> demand(FindingCode.MASS_IMPLAUSIBLE, load.id().value()));
        rotation.loads().stream()
                .filter(id -> !day.job().getLoad(id).dangerousGoods().isBlank())
                .forEach(id -> demand(FindingCode.DANGEROUS_GOODS, id.value()));
        if (rotation.limits().stream()
                .anyMatch(limit -> limit.code().startsWith("WIND_") && limit.isNear())) {
            demand(FindingCode.WIND_AT_LIMIT, rotation.loads().get(0).value());
        }
        if (rotation.ballastKg() > 0) {
            demand(FindingCode.BALLAST_ADDED, rotation.loads().get(0).value());
        }
    }

    private void demand(FindingCode code, String subject) {
        said.demand(code, subject, Severity.CAUTION);
    }
}
