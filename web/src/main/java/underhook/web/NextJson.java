package underhook.web;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.TreeMap;
import java.util.stream.Collectors;
import tools.jackson.databind.node.ArrayNode;
import tools.jackson.databind.node.ObjectNode;
import underhook.app.desk.Lifts;
import underhook.app.flying.FuelNow;
import underhook.app.flying.NextLook;
import underhook.app.flying.NextLook.DropLook;
import underhook.app.flying.NextLook.WayNow;
import underhook.app.port.Courses;
import underhook.app.port.Written;
import underhook.core.job.Job;
import underhook.core.job.PlaceId;
import underhook.core.job.Wire;
import underhook.core.plan.Leg;
import underhook.core.plan.ReleaseLook;
import underhook.core.plan.Rotation;
import underhook.core.unit.Units;

/** The next lift as the pilot sees it, each number rounded to the safe side. */
final class NextJson {
    private NextJson() {}

    /**
     * The next lift.
     *
     * @param told for each place what was told of its ground and the plan does not know
     */
    static ObjectNode of(NextLook next, Job job, Map<PlaceId, List<String>> told) {
        Rotation rotation = next.lift().lift().rotation();
        ObjectNode node = Json.object();
        node.put("lift", next.lift().lift().number());
        node.put("massOnHookKg", Written.up(rotation.massOnHookKg(), 0));
        node.put("ballastKg", Written.up(rotation.ballastKg(), 0));
        putDown(node, "mostFuelKg", next.mostFuelKg());
        node.put("airKnown", next.airKnown());
        putDown(node, "mostFuelHeavierKg", next.mostFuelHeavierKg());
        node.put("leastFuelKg", Written.up(next.leastFuelKg(), 0));
        node.put(
                "plannedMostFuelKg",
                Written.down(job.machine().mostReadKg(rotation.fuelMaxKg()), 0));
        node.put("plannedFuelKg", Written.nearest(rotation.fuelAtHookKg(), 0));
        node.put("plannedAt", Json.time(rotation.hookedAt(), job.zone()));
        node.put("fuelState", PlanJson.word(next.fuelStatus()));
        node.set("fuel", next.fuel().map(fuel -> fuel(fuel, job)).orElse(null));
        ArrayNode legs = Json.array(rotation.legs(), leg -> leg(leg, job));
        node.set("legs", legs);
        for (NextLook.RoundEnd end : next.roundEnds()) {
            legs.get(end.leg())
                    .withArray("roundEnds")
                    .addObject()
                    .put("wire", end.wire())
                    .put("beyondM", Written.down(end.beyondM(), 0));
        }
        node.set(
                "drops",
                Json.array(
                        next.drops(),
                        drop -> {
                            List<String> words = told.getOrDefault(drop.place().id(), List.of());
                            return drop(drop, words, job);
                        }));
        return node;
    }

    /** Where what hangs now is flown to, and the ways from its hook-up on; what was set down is left out. */
    static ObjectNode hanging(
            NextLook look, Set<String> onHook, Job job, Map<PlaceId, List<String>> told) {
        ObjectNode all = of(look, job, told);
        ObjectNode node = Json.object();
        node.set("lift", all.get("lift"));
        // The way back with the empty line is still to be flown; the way to where the load waited
        // is not.
        node.set(
                "legs",
                Json.array(
                        all.get("legs")
                                .valueStream()
                                .dropWhile(leg -> !leg.path("loaded").asBoolean(false))
                                .toList(),
                        leg -> leg));
        node.set(
                "drops",
                Json.array(
                        all.get("drops")
                                .valueStream()
                                .filter(drop -> onHook.contains(drop.path("load").asString("")))
                                .toList(),
                        drop -> drop));
        return node;
    }

    /** What a leg passes, and where what hangs there may not be let go; each stretch outward. */
    private static ObjectNode leg(Leg leg, Job job) {
        ObjectNode node = Json.object();
        node.put("from", leg.from().value());
        node.put("to", leg.to().value());
        node.put("loaded", !leg.carrying().isEmpty());
        node.putArray("roundEnds");
        node.set(
                "courses",
                Json.array(
                        Courses.of(job, leg),
                        one ->
                                Json.object()
                                        .put("bearingTrueDeg", degrees(one.bearingTrueRad()))
                                        .put("distanceM", Written.nearest(one.distanceM(), 0))));
        Set<String> live =
                job.wires().stream().filter(Wire::live).map(Wire::id).collect(Collectors.toSet());
        node.set(
                "passes",
                Json.array(
                        leg.crossings().stream()
                                .map(one -> new Passed(one.feature(), one.rule()))
                                .distinct()
                                .toList(),
                        one ->
                                Json.object()
                                        .put("id", one.id())
                                        .put("live", live.contains(one.id()))
                                        .put("rule", one.rule())));
        node.set("closed", leg.release().map(NextJson::closed).orElseGet(Json::array));
        node.put(
                "closedS",
                Written.up(leg.release().map(ReleaseLook::longestClosedS).orElse(0.0), 0));
        return node;
    }

    private record Passed(String id, String rule) {}

    /** Where nothing may be let go, in the order flown: things that decide for the same part together. */
    static ArrayNode closed(ReleaseLook look) {
        Map<ReleaseLook.Part, List<String>> things =
                new TreeMap<>(
                        Comparator.comparingLong(ReleaseLook.Part::fromM)
                                .thenComparingLong(ReleaseLook.Part::toM));
        look.partsByThing(ReleaseLook.Use.CLOSED)
                .forEach(
                        (thing, parts) ->
                                parts.forEach(
                                        part ->
                                                things.computeIfAbsent(
                                                                part, unused -> new ArrayList<>())
                                                        .add(thing)));
        return Json.array(
                things.entrySet(),
                one ->
                        Json.object()
                                .put("what", String.join(", ", one.getValue()))
                                .put("fromM", one.getKey().fromM())
                                .put("toM", one.getKey().toM()));
    }

    private static void putDown(ObjectNode node, String name, OptionalDouble value) {
        if (value.isPresent()) {
            node.put(name, Written.down(value.getAsDouble(), 0));
        } else {
            node.putNull(name);
        }
    }

    private static ObjectNode fuel(FuelNow fuel, Job job) {
        return Json.object()
                .put("readKg", Written.nearest(fuel.readKg(), 0))
                .put("readAt", Json.time(fuel.readAt(), job.zone()))
                .put("leastKg", Written.down(fuel.leastKg(), 0))
                .put("mostKg", Written.up(fuel.mostKg(), 0));
    }

    private static ObjectNode drop(DropLook look, List<String> told, Job job) {
        ObjectNode node = Json.object();
        node.put("load", look.drop().load().value());
        node.put("place", look.place().id().value());
        node.put("name", look.place().name());
        node.set("told", Json.texts(told));
        node.put("bearingTrueDeg", degrees(look.bearingTrueRad()));
        node.put("distanceM", Written.nearest(look.distanceM(), 0));
        if (look.hookAltitudeAmslM().isPresent()) {
            double altitudeM = look.hookAltitudeAmslM().getAsDouble();
            node.put("hookAltitudeAmslM", Written.up(altitudeM, 0));
            node.put("hookAltitudeAmslFt", Written.up(Units.mToFt(altitudeM), 0));
        }
        node.put("approachFromTrueDeg", degrees(look.drop().approachFromTrueRad()));
        node.put("departureTrackTrueDeg", degrees(look.drop().departureTrackTrueRad()));
        node.set("way", look.way().map(way -> way(way, told.isEmpty(), job)).orElse(null));
        return node;
    }

    private static ObjectNode way(WayNow way, boolean groundIsKnown, Job job) {
        ObjectNode node = Json.object();
        // No wind makes a way good that leads over ground of which something else was told.
        node.put("state", PlanJson.word(groundIsKnown ? way.status() : Lifts.Status.OUTSIDE));
        node.put("windFromTrueDeg", degrees(way.wind().fromTrueRad()));
        node.put("windKt", knots(way.wind().meanMPerS()));
        node.put("gustKt", knots(way.wind().gustMPerS()));
        node.put(
                "reportedAt",
                way.wind().reportedAt().map(at -> Json.time(at, job.zone())).orElse(null));
        // Head wind is worth less than it is, tailwind more: both are rounded down.
        node.put("headKt", (long) Math.floor(Units.mPerSToKt(way.headMPerS()) + 1e-6));
        node.put(
                "crossKt",
                (long) (Math.signum(way.crossMPerS()) * knots(Math.abs(way.crossMPerS()))));
        node.put("tailOutKt", knots(way.tailOutMPerS()));
        node.put(
                "tailLimitKt",
                (long) Math.floor(Units.mPerSToKt(job.rules().flying().tailwindMPerS()) + 1e-6));
        node.put(
                "crossLimitKt",
                (long) Math.floor(Units.mPerSToKt(job.rules().flying().crosswindMPerS()) + 1e-6));
        return node;
    }

    /** Not yet rounded: who reads magnetic ones takes the variation off first, as the card does. */
    static double degrees(double valueRad) {
        return Units.radToDeg(Units.wrapTwoPiRad(valueRad));
    }

    private static long knots(double speedMPerS) {
        return (long) Math.ceil(Units.mPerSToKt(speedMPerS) - 1e-6);
    }
}
