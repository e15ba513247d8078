package underhook.web;

import java.time.ZoneId;
import tools.jackson.databind.node.ArrayNode;
import tools.jackson.databind.node.ObjectNode;
import underhook.app.desk.DayLooks.Look;
import underhook.app.flying.PlaceLook;
import underhook.app.port.Caution;
import underhook.app.port.Written;
import underhook.core.job.Job;
import underhook.core.plan.Drop;
import underhook.core.plan.PoleSetting;
import underhook.core.unit.Units;

/** A place as its crew sees it. */
final class PlaceJson {
    private PlaceJson() {}

    static ObjectNode of(PlaceLook seen, Look look, long lateS) {
        Job job = look.job().job();
        ZoneId zone = job.zone();
        ObjectNode node = Json.object();
        node.put("place", seen.place().id().value());
        node.put("name", seen.place().name());
        node.put("remarks", seen.place().remarks());
        node.put("caution", Caution.TEXT);
        node.put("planId", look.plan().kept().id());
        node.put("plannedAt", Json.time(look.plan().kept().at(), zone));
        node.put("keepOffM", Written.up(seen.keepOffM(), 0));
        seen.downwashMPerS()
                .ifPresentOrElse(
                        mPerS -> node.put("downwashKt", Written.up(Units.mPerSToKt(mPerS), 0)),
                        () -> node.putNull("downwashKt"));
        node.set("briefed", Json.texts(seen.briefed()));
        node.set("stays", Json.array(seen.stays(), stay -> stay(stay, zone)));
        node.set(
                "comes",
                Json.array(
                        seen.comes(),
                        one -> {
                            ObjectNode lift = DayJson.lift(one.lift(), job, lateS);
                            putWay(lift, one.drop(), zone, lateS);
                            return lift;
                        }));
        node.set("goes", Json.array(seen.goes(), one -> DayJson.lift(one, job, lateS)));
        node.set("poles", Json.array(seen.poles(), PlaceJson::pole));
        return node;
    }

    private static void putWay(ObjectNode node, Drop drop, ZoneId zone, long lateS) {
        node.put("load", drop.load().value());
        node.put("downAt", Json.time(drop.releasedAt().plusSeconds(lateS), zone));
        node.put("approachFromTrueDeg", NextJson.degrees(drop.approachFromTrueRad()));
        node.put("departureTrackTrueDeg", NextJson.degrees(drop.departureTrackTrueRad()));
    }

    private static ObjectNode stay(PlaceLook.Stay stay, ZoneId zone) {
        ObjectNode node = Json.object();
        node.put("crew", stay.crew().id().value());
        node.put("people", stay.crew().people());
        node.put("fromAt", Json.time(stay.stay().fromAt(), zone));
        node.put("toAt", Json.time(stay.stay().toAt(), zone));
        node.put("doing", stay.stay().doing());
        return node;
    }

    private static ObjectNode pole(PlaceLook.Pole pole) {
        PoleSetting setting = pole.setting();
        ObjectNode node = Json.object();
        node.put("load", setting.load().value());
        node.put("massKg", Written.up(setting.massKg(), 0));
        node.put("attachM", Written.nearest(setting.attachM(), 1));
        node.put("gustKt", Written.up(Units.mPerSToKt(setting.gustMPerS()), 0));
        node.put("leanDeg", Written.nearest(Units.radToDeg(setting.leanRad()), 1));
        node.put("readingKg", Written.up(setting.readingKg(), 0));
        node.put("signals", pole.signals().orElse(null));
        ArrayNode guys = node.putArray("guys");
        for (int i = 0; i < setting.guys().size(); i++) {
            PoleSetting.GuyPull guy = setting.guys().get(i);
            ObjectNode one = guys.addObject();
            one.put("azimuthTrueDeg", NextJson.degrees(guy.azimuthTrueRad()));
            one.put("anchorM", Written.nearest(guy.anchorDistanceM(), 1));
            one.put("worstN", Written.up(guy.worstN(), 0));
            one.put("byHand", guy.byHand());
            one.put("who", i < pole.hands().size() ? pole.hands().get(i) : null);
        }
        return node;
    }
}
