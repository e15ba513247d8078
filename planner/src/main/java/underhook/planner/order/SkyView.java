package underhook.planner.order;

import java.time.Instant;
import java.util.List;
import java.util.OptionalDouble;
import java.util.stream.LongStream;
import underhook.core.geo.Horizon;
import underhook.core.geo.RingRise;
import underhook.core.geo.Sun;
import underhook.core.geo.SunPosition;
import underhook.core.geo.WindSide;
import underhook.planner.route.Memo;
import underhook.planner.route.SunSeen;

/** The sun and the terrain against the sky and in the wind, seen from the places of a day. */
final class SkyView {
    /** How far terrain is looked at that may hide the sun, m. @source PRACTICE */
    private static final double HORIZON_REACH_M = 5000;

    private final DayModel model;
    private final double eyeAglM;
    private final Memo<Long, List<SunSeen>> known = Memo.of();
    private final Memo<Moment, SunSeen> moments;
    private final Memo<FromSide, WindSide> windSides;
    private final Memo<Integer, OptionalDouble> fallingAway;

    /** A place at a time. */
    private record Moment(int place, Instant at) {}

    /** A place and where the wind comes from, rad. */
    private record FromSide(int place, double fromGridRad) {}

    SkyView(DayModel model) {
        this.model = model;
        this.moments = Memo.of();
        this.windSides = Memo.of();
        this.fallingAway = Memo.of();
        // The longest line puts the pilot highest, where the sun is seen longest.
        this.eyeAglM =
                model.machine.lines().stream().mapToDouble(line -> line.lengthM()).max().orElse(0);
    }

    /** Of the same places with other hours. */
    SkyView(DayModel model, SkyView before) {
        this.model = model;
        this.moments = before.moments;
        this.windSides = before.windSides;
        this.fallingAway = before.fallingAway;
        this.eyeAglM = before.eyeAglM;
    }

    /** The sun at both ends of an hour and in its middle. */
    List<SunSeen> suns(int place, int slot) {
        return known.get(
                (long) place * model.air().slots.size() + slot,
                unused -> {
                    DayAir.Slot hour = model.air().slots.get(slot);
                    return LongStream.of(
                                    hour.fromS(), (hour.fromS() + hour.untilS()) / 2, hour.untilS())
                            .mapToObj(timeS -> seen(place, model.instant(timeS)))
                            .toList();
                });
    }

    /** On which side of the ground round it a place lies in the wind of an hour. */
    WindSide windSide(int place, int slot) {
        double fromGridRad = model.air().wind(place, slot).fromGridRad();
        return windSides.get(
                new FromSide(place, fromGridRad),
                unused ->
                        WindSide.of(
                                model.ground.terrain(),
                                new Horizon.Eye(
                                        model.points.get(place), model.elevationAmslM[place]),
                                fromGridRad));
    }

    /** How much of the horizon the ground round a place falls away on, rad. */
    OptionalDouble fallsAwayRad(int place) {
        return fallingAway.get(
                place,
                unused -> RingRise.fallsAwayRad(model.ground.terrain(), model.points.get(place)));
    }

    /** The sun at one moment. */
    SunSeen seen(int place, Instant when) {
        return moments.get(new Moment(place, when), moment -> look(moment.place(), moment.at()));
    }

    private SunSeen look(int place, Instant when) {
        SunPosition sun = Sun.position(model.places.get(place).position(), when);
        double gridRad = sun.azimuthTrueRad() - model.air().convergenceRad(place);
        return new SunSeen(sun, horizonRad(place, gridRad, eyeAglM, HORIZON_REACH_M));
    }

    /** Angle up to the highest terrain on a bearing; level where the place's height is not known. */
    double horizonRad(int place, double bearingGridRad, double eyeAglM, double reachM) {
        if (!model.isKnown(place)) {
            return 0;
        }
        return Horizon.elevationRad(
                model.ground.terrain(),
                new Horizon.Eye(model.points.get(place), model.elevationAmslM[place] + eyeAglM),
                bearingGridRad,
                reachM);
    }
}
