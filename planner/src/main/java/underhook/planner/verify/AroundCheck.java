package underhook.planner.verify;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.DoubleStream;
import java.util.stream.Stream;
import underhook.core.finding.FindingCode;
import underhook.core.finding.Severity;
import underhook.core.geo.PlanePoint;
import underhook.core.job.Load;
import underhook.core.job.MapFeature;
import underhook.core.job.Place;
import underhook.core.job.PlaceId;
import underhook.core.job.WeatherHour;
import underhook.core.job.WindLimit;
import underhook.core.plan.Drop;
import underhook.core.plan.Rotation;
import underhook.core.plan.Step;
import underhook.core.unit.Units;

/**
 * What lies round the places is told: that one is not agreed, a trail, lee and windward, the sun ahead, trees near to a
 * hover. Only what surely holds, by more than two right ways to compute it differ, is asked for.
 */
final class AroundCheck {
    /** From this wind on up- and downdraught are told, m/s: 10 kt. @source FAA-8083-21B */
    private static final double DRAUGHT_M_PER_S = Units.ktToMPerS(10);

    /** Ground that stands up more than this makes lee. @source PRACTICE as in docs/findings.md */
    private static final double STANDS_RAD = Math.toRadians(10);

    /** @source PRACTICE as in docs/findings.md */
    private static final double STANDS_WITHIN_M = 1000;

    /** Two walks over the terrain from a bearing in whole degrees. */
    private static final double ASIDE_RAD = Math.toRadians(0.5);

    private static final long MINUTE_S = 60;

    /** Surely dazzling for so many minutes on end, whenever within them somebody looks. */
    private static final int MINUTES = 3;

    private final Day day;
    private final Said said;
    private final Air air;
    private final LineCheck lines;

    AroundCheck(Day day) {
        this.day = day;
        this.said = new Said(day);
        this.air = new Air(day.job().weather());
        this.lines = new LineCheck(day);
    }

    void run() {
        day.job().places().forEach(this::checkPlace);
        Map<String, List<Rotation>> ahead = new TreeMap<>();
        for (Step step : day.plan().steps()) {
            if (!day.isBegun(step)) {
                step.rotation()
                        .ifPresent(
                                turn ->
                                        ahead.computeIfAbsent(to(turn), k -> new ArrayList<>())
                                                .add(turn));
                step.rotation().ifPresent(turn -> checkNear(step, turn));
            }
        }
        boolean windward = false;
        for (Map.Entry<String, List<Rotation>> there : ahead.entrySet()) {
            Place place = day.job().getPlace(new PlaceId(there.getKey()));
            if (day.isKnown(day.planeOf(place.id()))) {
                windward |= checkDraught(place, there.getValue());
                checkGlare(place, there.getValue());
            }
        }
        if (windward) {
            said.demand(FindingCode.WINDWARD, day.job().name(), Severity.NOTE);
        }
    }

    private static String to(Rotation turn) {
        return turn.drops().get(0).place().value();
    }

    private void checkPlace(Place place) {
        if (!place.agreed()) {
            said.demand(FindingCode.PLACE_UNUSED, place.id().value(), Severity.NOTE);
        }
        PlanePoint at = day.planeOf(place.id());
        double withinM = day.job().rules().distances().trailNearM() - Tolerance.PLAN_M;
        if (place.isSite() && day.isKnown(at)) {
            long trails =
                    day.job().features().stream()
                            .filter(one -> one.kind() == MapFeature.Kind.TRAIL)
                            .filter(one -> apartM(one, at) <= withinM)
                            .count();
            if (trails > 0) {
                Said.Least least = new Said.Least(Severity.CAUTION, trails);
                said.demand(FindingCode.PLACE_NEAR_TRAIL, place.id().value(), least);
            }
        }
    }

    private double apartM(MapFeature trail, PlanePoint at) {
        List<PlanePoint> line = trail.outline().stream().map(p -> day.planeOf(p)).toList();
        double least = Plane.apartM(at, line.get(0));
        for (int i = 1; i < line.size(); i++) {
            least = Math.min(least, Plane.toSegmentM(at, line.get(i - 1), line.get(i)));
        }
        return least;
    }

    /** Hours whose wind lets one of these lifts be set down: rows that count, the windier one first. */
    private Stream<List<WeatherHour>> hours(Place place, List<Rotation> turns) {
        return day.job().weather().hours().stream()
                .map(hour -> air.listRows(hour.from().plusSeconds(1)))
                .filter(rows -> !rows.isEmpty())
                .filter(rows -> turns.stream().anyMatch(turn -> isCalm(rows, place, turn)));
    }

    private boolean isCalm(List<WeatherHour> rows, Place place, Rotation turn) {
        double exposureFactor = place.exposureFactor();
        for (Load load : day.loadsOf(turn.loads())) {
            WindLimit limit = day.kindOf(load).windLimit();
            for (WeatherHour row : rows) {
                if (row.windMPerS() * exposureFactor > limit.meanMPerS()
                        || row.gustMPerS() * exposureFactor > limit.gustMPerS()
                        || (row.gustMPerS() - row.windMPerS()) * exposureFactor
                                > limit.spreadMPerS()) {
                    return false;
                }
            }
        }
        return true;
    }

    /** Direction and speed are of one row. */
    private static WeatherHour windier(List<WeatherHour> rows) {
        WeatherHour most = rows.get(0);
        for (WeatherHour row : rows) {
            most = row.windMPerS() > most.windMPerS() ? row : most;
        }
        return most;
    }

    /** Lee is told of the place; whether it surely lies to windward. */
    private boolean checkDraught(Place place, List<Rotation> turns) {
        PlanePoint at = day.planeOf(place.id());
        double convergence = Plane.convergenceRad(day.ground().frame(), place.position());
        boolean lee = false;
        boolean windward = false;
        for (List<WeatherHour> rows : hours(place, turns).toList()) {
            WeatherHour wind = windier(rows);
            if (wind.windMPerS() >= DRAUGHT_M_PER_S) {
                double from = wind.windFromTrueRad() - convergence;
                lee |= leastStandsRad(at, from) > STANDS_RAD + ASIDE_RAD;
                windward |=
                        mostStandsRad(at, from) < -ASIDE_RAD
                                && leastStandsRad(at, from + Math.PI) > STANDS_RAD + ASIDE_RAD;
            }
        }
        if (lee) {
            said.demand(FindingCode.LEE, place.id().value(), Severity.CAUTION);
        }
        return windward;
    }

    private double leastStandsRad(PlanePoint at, double bearingGridRad) {
        return aboutRad(at, bearingGridRad).min().orElseThrow();
    }

    private double mostStandsRad(PlanePoint at, double bearingGridRad) {
        return aboutRad(at, bearingGridRad).max().orElseThrow();
    }

    /** In this direction and a little to both sides. */
    private DoubleStream aboutRad(PlanePoint at, double bearingGridRad) {
        return DoubleStream.of(-ASIDE_RAD, 0, ASIDE_RAD)
                .map(
                        asideRad ->
                                day.around()
                                        .standsRad(at, bearingGridRad + asideRad, STANDS_WITHIN_M));
    }

    /** The way in straight into the wind faces the sun: a note, and graver where something is set down then. */
    private void checkGlare(Place place, List<Rotation> turns) {
        boolean isFlown =
                turns.stream()
                        .flatMap(turn -> turn.drops().stream())
                        .map(Drop::releasedAt)
                        .anyMatch(at -> isDazzledAbout(place, at));
        if (isFlown || hours(place, turns).anyMatch(rows -> isDazzledWithin(place, rows))) {
            said.demand(
                    FindingCode.GLARE,
                    place.id().value(),
                    isFlown ? Severity.CAUTION : Severity.NOTE);
        }
    }

    private boolean isDazzledAbout(Place place, Instant at) {
        List<WeatherHour> rows = air.listRows(at.minusSeconds(MINUTE_S));
        // An hour has a wind of its own.
        if (rows.isEmpty() || !rows.equals(air.listRows(at.plusSeconds(MINUTE_S)))) {
            return false;
        }
        double intoTrueRad = windier(rows).windFromTrueRad();
        return Stream.of(at, at.minusSeconds(MINUTE_S), at.plusSeconds(MINUTE_S))
                .allMatch(when -> day.around().isDazzled(place.id(), intoTrueRad, when));
    }

    private boolean isDazzledWithin(Place place, List<WeatherHour> rows) {
        Instant fromAt = rows.get(0).from();
        double intoTrueRad = windier(rows).windFromTrueRad();
        Surroundings.Glare glare =
                new Surroundings.Glare(place.id(), intoTrueRad, fromAt, air.rowEnds(fromAt));
        return day.around().dazzledMinutes(glare) >= MINUTES;
    }

    /** Where trees are surveyed, a line that reaches over them by less than they are known is told of, or the room. */
    private void checkNear(Step step, Rotation turn) {
        Drop drop = turn.drops().get(0);
        Place place = day.job().getPlace(drop.place());
        Load load = day.job().getLoad(drop.load());
        boolean trees = place.canopyM().isPresent() && place.canopyM().getAsDouble() > 0;
        if (!trees || !day.isKnown(day.planeOf(place.id()))) {
            return;
        }
        double reachM = step.lineLengthM() + (day.kindOf(load).standsUp() ? load.lengthM() : 0);
        double spareM = reachM - lines.needM(drop);
        // With none to spare the line is too short, which is refused for itself.
        boolean surely = spareM >= 0 && spareM < unknownM(place) - Tolerance.CLEARANCE_M;
        boolean told =
                said.isTold(FindingCode.ROOM_NEAR, place.id().value(), Severity.CAUTION)
                        || said.isTold(
                                FindingCode.LINE_NEAR,
                                turn.loads().get(0).value(),
                                Severity.CAUTION)
                        || said.isTold(
                                FindingCode.LINE_SHORT, turn.loads().get(0).value(), Severity.NOTE);
        said.told(!surely || told, place.id().value(), FindingCode.ROOM_NEAR);
    }

    /** Of the trees' height, and of the place on its slope. */
    private double unknownM(Place place) {
        PlanePoint at = day.planeOf(place.id());
        double cellM = Math.max(1, day.ground().terrain().cellSizeM());
        double slope =
                Math.hypot(day.riseFactor(at, Math.PI / 2, cellM), day.riseFactor(at, 0, cellM));
        return place.canopySpreadM()
                + day.job().rules().margins().placeSpreadM() * Math.min(1, slope);
    }
}
