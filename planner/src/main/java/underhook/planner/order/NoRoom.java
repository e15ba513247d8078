package underhook.planner.order;

import java.util.Comparator;
import java.util.List;
import java.util.stream.IntStream;
import underhook.core.finding.Finding;
import underhook.core.finding.FindingCode;
import underhook.core.finding.Severity;
import underhook.core.job.LineItem;
import underhook.core.site.Cause;
import underhook.core.site.HeadingRoom;
import underhook.core.site.Margin;
import underhook.core.site.Part;
import underhook.core.site.Rig;
import underhook.core.site.Room;
import underhook.core.site.Surroundings;
import underhook.core.unit.Units;

/** Says what is in the way where no line in stock leaves room, and how many metres it asks for. */
final class NoRoom {
    /** Half of what open bearings are apart, and a hair. */
    private static final double BESIDE_RAD = Math.toRadians(5.1);

    private final DayModel model;
    private final Trip trip;

    NoRoom(DayModel model, Trip trip) {
        this.model = model;
        this.trip = trip;
    }

    /** What the longest line that may carry the trip lacks, where it is set down or else hooked up. */
    Finding say() {
        Rig rig = trip.rig(longest().lengthM());
        boolean hasWayIn =
                IntStream.range(0, model.air().slots.size())
                        .filter(slot -> model.air().isWindWithin(trip, slot))
                        .mapToObj(
                                slot -> model.ways().wayIn(trip.to(), slot, trip.kindNames(), rig))
                        .anyMatch(way -> way.isPresent());
        return hasWayIn ? say(trip.from(), rig.withoutCredit()) : say(trip.to(), rig);
    }

    private LineItem longest() {
        double hookKg = model.machine.hookLimitKg();
        return model.machine.lines().stream()
                .filter(line -> trip.liftMassKg() <= line.limitKg())
                .filter(line -> trip.liftMassKg() + line.massKg() <= hookKg)
                .max(Comparator.comparingDouble(LineItem::lengthM))
                .orElseThrow();
    }

    private Finding say(int place, Rig rig) {
        Room room = model.room(place);
        List<HeadingRoom> headings = headings(place, rig);
        double nearestGridRad =
                headings.stream()
                        .map(HeadingRoom::headingGridRad)
                        .min(Comparator.comparingDouble(room::lineNeedM))
                        .orElseThrow();
        if (room.lineNeedM(nearestGridRad) > rig.hookAglM()) {
            return reach(place, rig, nearestGridRad);
        }
        Margin lacks =
                headings.stream()
                        .map(HeadingRoom::tightest)
                        .reduce((best, next) -> best.isTighterThan(next) ? next : best)
                        .orElseThrow();
        return lacks.spareM() < 0 ? near(place, lacks) : beside(place, rig);
    }

    /** Those that the ground leaves and some hour's wind, or all where nothing leaves any. */
    private List<HeadingRoom> headings(int place, Rig rig) {
        List<HeadingRoom> all = model.room(place).table(List.of(rig)).get(0);
        List<Double> open = new NoWay(model).openGridRad(place, trip);
        List<HeadingRoom> left =
                all.stream().filter(one -> isLeft(place, open, one.headingGridRad())).toList();
        return left.isEmpty() ? all : left;
    }

    private boolean isLeft(int place, List<Double> open, double headingGridRad) {
        double fromGridRad = headingGridRad + Math.PI;
        return open.stream().anyMatch(at -> Math.cos(at - fromGridRad) > Math.cos(BESIDE_RAD))
                && IntStream.range(0, model.air().slots.size())
                        .anyMatch(
                                slot -> model.placeRooms().windAllows(place, slot, headingGridRad));
    }

    /** The line does not reach over trees and slope. */
    private Finding reach(int place, Rig rig, double headingGridRad) {
        Room room = model.room(place);
        double needM = room.lineNeedM(headingGridRad);
        if (!Double.isFinite(needM)) {
            return stop(
                    "",
                    "",
                    "No line in stock leaves a way in to "
                            + name(place)
                            + " with room for rotor and tail: the terrain file has no heights behind the tail. Perhaps one"
                            + " that has them.");
        }
        double treesM = room.around().canopyM();
        double riseM = room.riseBehindM(headingGridRad);
        double keepM = needM - treesM - riseM;
        return stop(
                downM(rig.hookAglM()),
                upM(needM),
                "No line in stock leaves a way in to "
                        + name(place)
                        + " with room for rotor and tail: on the best heading, "
                        + heading(place, headingGridRad)
                        + ", trees of "
                        + upM(treesM)
                        + " m, a rise behind the tail of "
                        + upM(riseM)
                        + " m and a clearance of "
                        + upM(keepM)
                        + " m ask for at least "
                        + upM(needM)
                        + " m; the longest line that may carry it gives at most "
                        + downM(rig.hookAglM())
                        + " m"
                        + (rig.standsM() > 0 ? " with the load standing under it" : "")
                        + ". Perhaps a longer line.");
    }

    /** Something comes too near. */
    private Finding near(int place, Margin lacks) {
        // Line and load hang as near to it on a line of any length.
        boolean hangs = lacks.part() == Part.LINE || lacks.part() == Part.LOAD;
        String what = lacks.id().isEmpty() ? lacks.cause().word() : lacks.id();
        return stop(
                downM(Math.max(0, lacks.marginM())),
                upM(lacks.neededM()),
                "No line in stock leaves a way in to "
                        + name(place)
                        + " with room: on "
                        + (hangs
                                ? "any heading"
                                : "the best heading, " + heading(place, lacks.headingGridRad()))
                        + ", with the longest line that may carry it the "
                        + lacks.part().word()
                        + " has at most "
                        + downM(Math.max(0, lacks.marginM()))
                        + " m to "
                        + what
                        + " and needs "
                        + upM(lacks.neededM())
                        + " m. Perhaps "
                        + remedy(lacks, hangs));
    }

    private static String remedy(Margin lacks, boolean hangs) {
        if (lacks.id().equals(Surroundings.UNKNOWN_GROUND)) {
            return "a terrain file that has heights there.";
        }
        return (hangs ? "" : "a longer line or ")
                + (hangs && lacks.cause() == Cause.TREES
                        ? "a wider clearing or another place."
                        : "another place.");
    }

    /** The hover has room; what comes before or after it has none. */
    private Finding beside(int place, Rig rig) {
        return stop(
                downM(rig.hookAglM()),
                "",
                "No line in stock leaves a way in to "
                        + name(place)
                        + " with room for rotor and tail: there is room over the place, not on the way there and out."
                        + " Perhaps a longer line.");
    }

    private String heading(int place, double headingGridRad) {
        double convergenceRad = model.ground.frame().convergenceRad(model.points.get(place));
        double trueRad = Units.wrapTwoPiRad(headingGridRad + convergenceRad);
        return Figures.text(Math.rint(Math.toDegrees(trueRad)) % 360, 0) + "° TRUE";
    }

    private static String upM(double valueM) {
        return Figures.text(Math.ceil(valueM * 10 - 1e-6) / 10, 1);
    }

    private static String downM(double valueM) {
        return Figures.text(Math.floor(valueM * 10 + 1e-6) / 10, 1);
    }

    private String name(int place) {
        return model.places.get(place).id().value();
    }

    private Finding stop(String has, String needs, String words) {
        return new Finding(
                FindingCode.NO_LINE_LONG_ENOUGH,
                Severity.STOP,
                trip.loads().get(0).id().value(),
                has,
                needs,
                "m",
                "rules",
                words);
    }
}
