package underhook.web;

import java.math.BigDecimal;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import tools.jackson.databind.node.ArrayNode;
import tools.jackson.databind.node.ObjectNode;
import underhook.app.desk.DayLooks.Look;
import underhook.app.desk.Lifts;
import underhook.app.desk.Lifts.Lift;
import underhook.app.desk.LimitHow;
import underhook.app.port.Written;
import underhook.core.finding.Finding;
import underhook.core.job.Job;
import underhook.core.job.Load;
import underhook.core.job.LoadId;
import underhook.core.job.PlaceId;
import underhook.core.job.Waiver;
import underhook.core.plan.Drop;
import underhook.core.plan.Leg;
import underhook.core.plan.Limit;
import underhook.core.plan.PlaceRoom;
import underhook.core.plan.Step;
import underhook.core.site.Rig;
import underhook.core.unit.Units;
import underhook.planner.order.DayLook;
import underhook.planner.route.LegSection;

/** Section, rose and limits of one lift. What somebody flies by is rounded to the safe side. */
final class LookJson {
    private static final int CENTIMETRES = 2;

    private LookJson() {}

    static ObjectNode section(Look look, Lift lift, Leg leg) {
        Job job = look.job().job();
        Step step = look.plan().plan().steps().get(lift.step());
        List<Load> loads = leg.carrying().stream().map(job::getLoad).toList();
        double underHookM =
                loads.isEmpty()
                        ? step.lineLengthM()
                        : Rig.of(
                                        step.lineLengthM(),
                                        loads,
                                        loads.stream()
                                                .map(load -> job.getKind(load.kind()))
                                                .toList())
                                .reachM();
        LegSection.Seen seen = look.section().look(leg, underHookM);
        ObjectNode node = Json.object();
        double wholeM = seen.points().get(seen.points().size() - 1).alongM();
        double minutes = Units.sToMinutes(leg.durationS());
        node.set("points", Json.array(seen.points(), point -> point(point, wholeM, minutes)));
        node.set("wires", Json.array(seen.wires(), LookJson::across));
        node.set("near", Json.array(leg.wires(), LookJson::pass));
        if (seen.leastAtM().isPresent() && Double.isFinite(leg.leastClearanceM())) {
            ObjectNode least = node.putObject("least");
            least.put("s", Written.nearest(seen.leastAtM().getAsDouble(), 0));
            least.put("gapM", Written.down(leg.leastClearanceM(), 1));
            least.put("to", "ground or trees");
            least.put("neededM", Written.nearest(job.rules().distances().clearanceM(), 1));
        } else {
            node.putNull("least");
        }
        node.put("underHookM", Written.up(underHookM, 1));
        node.put("minutes", Written.up(minutes, 1));
        return node;
    }

    private static ObjectNode point(LegSection.Point point, double wholeM, double minutes) {
        ObjectNode node = Json.object();
        node.put("s", Written.nearest(point.alongM(), 1));
        Json.putTenths(node, "ground", point.groundAmslM());
        Json.putTenths(node, "canopy", point.treesAmslM());
        node.put("aircraft", Written.down(point.hookAmslM(), 1));
        node.put("load", Written.down(point.lowestAmslM(), 1));
        double share = wholeM > 0 ? point.alongM() / wholeM : 1;
        node.put("minute", Written.nearest(minutes * share, CENTIMETRES));
        return node;
    }

    private static ObjectNode across(LegSection.Across across) {
        ObjectNode node = Json.object();
        node.put("id", across.wire());
        node.put("s", Written.nearest(across.alongM(), 1));
        Json.putTenths(node, "low", across.groundAmslM());
        Json.putTenths(node, "high", OptionalDouble.of(across.topAmslM()));
        node.put("assumed", across.assumed());
        return node;
    }

    private static ObjectNode pass(Leg.WirePass pass) {
        ObjectNode node = Json.object();
        node.put("id", pass.wire());
        node.put("leastM", Written.down(pass.leastM(), 1));
        node.put("needM", Written.up(pass.needM(), 1));
        Json.putTenths(node, "aboveM", pass.aboveM());
        node.put("assumed", pass.assumed());
        node.set("at", Json.position(pass.at()));
        return node;
    }

    static ObjectNode rose(Look look, Lift lift) {
        Job job = look.job().job();
        Step step = look.plan().plan().steps().get(lift.step());
        List<Drop> drops = lift.rotation().drops();
        PlaceId place = drops.isEmpty() ? step.to() : drops.get(0).place();
        List<Load> loads = lift.rotation().loads().stream().map(job::getLoad).toList();
        ObjectNode node = Json.object();
        node.put("place", place.value());
        node.set(
                "lines",
                Json.array(look.day().rose(place, loads), line -> line(line, step.lineLengthM())));
        if (!drops.isEmpty()) {
            Drop drop = drops.get(0);
            node.put("chosenApproach", degrees(drop.approachFromTrueRad()));
            node.put("chosenDeparture", degrees(drop.departureTrackTrueRad()));
            node.put("hour", Json.time(drop.releasedAt(), job.zone()));
            look.day()
                    .findAir(place, drop.releasedAt())
                    .ifPresent(
                            air -> {
                                node.put("windFromDeg", degrees(air.windFromTrueRad()));
                                node.put("windKt", knots(air.windMPerS()));
                                node.put("gustKt", knots(air.gustMPerS()));
                            });
            var sun = look.day().sun(place, drop.releasedAt());
            if (sun.elevationApparentRad() > 0) {
                node.put("sunAzimuthDeg", degrees(sun.azimuthTrueRad()));
                node.put("sunElevationDeg", degrees(sun.elevationApparentRad()));
            }
        }
        return node;
    }

    private static long degrees(double valueRad) {
        return Math.floorMod(Math.round(Units.radToDeg(valueRad)), 360L);
    }

    /** Rounded up, for a wind that is feared. */
    private static long knots(double speedMPerS) {
        return (long) Math.ceil(Units.mPerSToKt(speedMPerS) - 1e-6);
    }

    private static ObjectNode line(DayLook.LineRose line, double fittedM) {
        ObjectNode node = Json.object();
        node.put("name", line.line());
        node.put("lengthM", Written.nearest(line.lineLengthM(), CENTIMETRES));
        node.put("standsM", Written.nearest(line.standsM(), CENTIMETRES));
        node.put("chosen", Math.abs(line.lineLengthM() - fittedM) < 0.05);
        node.set("headings", Json.array(line.headings(), LookJson::heading));
        return node;
    }

    private static ObjectNode heading(DayLook.Heading heading) {
        ObjectNode node = Json.object();
        node.put("fromTrueDeg", Written.nearest(Units.radToDeg(heading.headingTrueRad()), 1));
        Json.putTenths(node, "marginM", safely(heading.marginM() - heading.neededM()));
        node.put("neededM", Written.up(heading.neededM(), 1));
        node.put("unknownM", Written.up(heading.unknownM(), 1));
        node.put("state", PlanJson.word(heading.fit()));
        node.put("reason", heading.fit() == PlaceRoom.Fit.FREE ? "" : reason(heading));
        return node;
    }

    private static OptionalDouble safely(double marginM) {
        return Double.isFinite(marginM)
                ? OptionalDouble.of(Math.floor(marginM * 10) / 10)
                : OptionalDouble.empty();
    }

    private static String reason(DayLook.Heading heading) {
        return heading.part()
                + " to "
                + heading.cause()
                + (Double.isFinite(heading.marginM()) ? "" : ": not known");
    }

    static ArrayNode limits(Look look, Lift lift) {
        return Json.array(lift.rotation().limits(), limit -> limit(look, lift, limit));
    }

    private static ObjectNode limit(Look look, Lift lift, Limit limit) {
        LimitHow.How how = LimitHow.of(look, lift, limit);
        ObjectNode node = Json.object();
        node.put("code", limit.code());
        node.put("value", Written.up(limit.value(), 1));
        node.put("limit", allowed(limit.limit(), limit.unit()));
        node.put("unit", limit.unit());
        node.put("marginPercent", Written.down(limit.marginPercent(), 1));
        node.put("margin", Written.down(limit.limit() - limit.value(), 1));
        node.put("state", PlanJson.word(Lifts.status(limit)));
        node.put("source", limit.source());
        node.put("governing", limit.governing());
        Optional<Finding> answered = finding(look, lift, limit);
        node.put("mayOverride", answered.isPresent());
        answered.ifPresent(one -> node.put("subject", one.subject()));
        ObjectNode shown = node.putObject("how");
        shown.set("inputs", Json.array(how.inputs(), LookJson::input));
        shown.put("formula", how.formula());
        shown.put("tablePoint", how.tablePoint());
        shown.put("source", limit.source());
        shown.set("eats", Json.array(how.eats(), LookJson::input));
        return node;
    }

    /** What the plan found about this limit, where somebody may answer for it. */
    private static Optional<Finding> finding(Look look, Lift lift, Limit limit) {
        String code = limit.code().split(" ", 2)[0];
        List<String> subjects = lift.rotation().loads().stream().map(LoadId::value).toList();
        return look.plan().plan().findings().stream()
                .filter(one -> one.code().name().equals(code) && Waiver.canAnswer(one))
                .filter(one -> subjects.contains(one.subject()))
                .findFirst();
    }

    private static ObjectNode input(LimitHow.Input input) {
        return Json.object()
                .put("name", input.name())
                .put("value", Written.nearest(input.value(), CENTIMETRES))
                .put("unit", input.unit())
                .put("source", input.source());
    }

    /**
     * What is allowed. A mass or a length as finely as the plan has it: in tenths a hook of 2400 lb would be one of
     * 2399 lb; all else rounded down.
     */
    static BigDecimal allowed(double limit, String unit) {
        boolean isTurned = unit.equals("kg") || unit.equals("m");
        return isTurned ? Written.nearest(limit, 6) : Written.down(limit, 1);
    }
}
