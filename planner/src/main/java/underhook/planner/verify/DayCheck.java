package underhook.planner.verify;

import java.util.ArrayList;
import java.util.List;
import java.util.TreeSet;
import underhook.core.finding.FindingCode;
import underhook.core.finding.Severity;
import underhook.core.geo.PlanePoint;
import underhook.core.job.Crew;
import underhook.core.job.LineItem;
import underhook.core.job.PlaceId;
import underhook.core.job.Weather;
import underhook.core.plan.Rotation;
import underhook.core.plan.Step;
import underhook.core.plan.StepKind;
import underhook.core.unit.Units;

/**
 * What holds of the day as a whole is told: how the weather is read between its rows, how fast to come down, lines that
 * are light at their end, people who do not count, and hook-ups that wait for who refuels.
 */
final class DayCheck {
    /** From this descent on training warns where there is no airspeed, m/s. @source FAA-8083-21B chapter 11 */
    private static final double WARNED_M_PER_S = Units.ftPerMinuteToMPerS(300);

    /** So much of a descent on the spot is more than rounding, m. */
    private static final double DESCENT_M = 1;

    /** Two points of a path so near in plan are one. */
    private static final double SPOT_M = 0.3;

    /** Dust of a speed that is stated in whole knots. */
    private static final double DUST_M_PER_S = 1e-6;

    /** Lines with less at their end than this in all have gone into a tail rotor, kg. @source TSB-A05P0103 */
    private static final double LIGHT_KG = 40;

    /** Lines up to so long are short slings, m, which need so much, kg. @source SERVICE-LETTER-1727 */
    private static final double SLING_M = 10;

    private static final double SLING_KG = 15;

    private final Day day;
    private final Said said;
    private final List<Step> ahead;

    DayCheck(Day day) {
        this.day = day;
        this.said = new Said(day);
        this.ahead = day.plan().steps().stream().filter(one -> !day.isBegun(one)).toList();
    }

    void run() {
        String name = day.job().name();
        if (day.job().weather().between() == Weather.Between.HOLD) {
            said.demand(FindingCode.WEATHER_HELD, name, Severity.NOTE);
        }
        said.demand(FindingCode.WEATHER_LAPSE_ASSUMED, name, Severity.NOTE);
        if (day.job().rules().landing().hoverExit()) {
            said.demand(FindingCode.HOVER_EXIT_UNPLANNED, name, Severity.NOTE);
        }
        if (ahead.stream().anyMatch(step -> step.rotation().isPresent())) {
            boolean fast =
                    day.job().machine().descentMPerS() > WARNED_M_PER_S + Tolerance.SPEED_M_PER_S
                            && day.listFlights().stream()
                                    .filter(one -> !day.isBegun(one.step()))
                                    .anyMatch(one -> onSpotM(one) > DESCENT_M);
            said.demand(FindingCode.VORTEX_RING, name, fast ? Severity.CAUTION : Severity.NOTE);
        }
        ahead.forEach(step -> step.rotation().ifPresent(this::checkSlower));
        checkLines();
        checkUntrained();
        for (int i = 0; i < ahead.size(); i++) {
            if (ahead.get(i).kind() == StepKind.REFUEL) {
                checkRefuelled(i);
            }
        }
    }

    /** Height that a leg comes down at its end without moving over the ground, m. */
    private static double onSpotM(Flight flight) {
        List<PlanePoint> track = flight.track();
        double sum = 0;
        for (int i = track.size() - 1; i > 0; i--) {
            if (Plane.apartM(track.get(i), track.get(i - 1)) > SPOT_M) {
                break;
            }
            double down =
                    flight.leg().path().get(i - 1).hookAltitudeAmslM()
                            - flight.leg().path().get(i).hookAltitudeAmslM();
            sum += Math.max(0, down);
        }
        return sum;
    }

    /** Flown by a whole knot slower than its kind; with ballast the speed is told with that. */
    private void checkSlower(Rotation turn) {
        double askedMPerS =
                day.loadsOf(turn.loads()).stream()
                        .mapToDouble(load -> day.kindOf(load).speedMPerS())
                        .min()
                        .orElseThrow();
        double askedKt = Math.floor(Units.mPerSToKt(askedMPerS + DUST_M_PER_S));
        boolean slower =
                turn.legs().stream()
                        .filter(leg -> !leg.carrying().isEmpty())
                        .map(leg -> leg.speedMPerS() + Tolerance.SPEED_M_PER_S)
                        .anyMatch(speed -> Units.mPerSToKt(speed) < askedKt);
        if (slower && turn.ballastKg() <= 0) {
            String first = turn.loads().get(0).value();
            said.demand(FindingCode.SPEED_LIMITED, first, Severity.NOTE);
        }
    }

    /** A plan states how long a line is: of several so long one is told of, where all of them are light. */
    private void checkLines() {
        TreeSet<Double> flownM = new TreeSet<>();
        ahead.stream()
                .filter(step -> step.rotation().isPresent())
                .forEach(step -> flownM.add(step.lineLengthM()));
        for (double lengthM : flownM) {
            List<LineItem> so =
                    day.job().machine().lines().stream()
                            .filter(line -> Math.abs(line.lengthM() - lengthM) < Tolerance.LENGTH_M)
                            .toList();
            if (!so.isEmpty() && so.stream().allMatch(DayCheck::isLight)) {
                boolean told =
                        so.stream()
                                .anyMatch(
                                        line ->
                                                said.isTold(
                                                        FindingCode.EMPTY_LINE_LIGHT,
                                                        name(line),
                                                        least(line)));
                said.told(told, name(so.get(0)), FindingCode.EMPTY_LINE_LIGHT);
            }
        }
    }

    private static String name(LineItem line) {
        return String.join(" ", "line", line.name());
    }

    private static boolean isLight(LineItem line) {
        return line.make().endMassKg() < LIGHT_KG - Tolerance.DUST_KG;
    }

    private static Severity least(LineItem line) {
        boolean sling = line.lengthM() <= SLING_M - Tolerance.LENGTH_M;
        return sling && line.make().endMassKg() < SLING_KG - Tolerance.DUST_KG
                ? Severity.STOP
                : Severity.CAUTION;
    }

    /** Who stays where loads are hooked up and may not. */
    private void checkUntrained() {
        List<PlaceId> hookedAt = new ArrayList<>();
        ahead.stream()
                .flatMap(step -> step.rotation().stream())
                .forEach(turn -> hookedAt.add(from(turn)));
        for (Crew crew : day.job().crews()) {
            boolean counted = crew.roles().contains(Crew.Role.HOOK);
            if (crew.stays() && !counted && hookedAt.contains(crew.start())) {
                said.demand(FindingCode.HANDLER_UNTRAINED, crew.id().value(), Severity.NOTE);
            }
        }
    }

    private PlaceId from(Rotation turn) {
        return day.job().getLoad(turn.loads().get(0)).from();
    }

    /** The first load hooked up at a place soon after refuelling, where all who stay to hook refuel too. */
    private void checkRefuelled(int index) {
        PlaceId place = ahead.get(index).from();
        double soonS = 2 * Math.floor(day.job().rules().refuelling().refuelHandlerBusyS());
        for (int i = index + 1; i < ahead.size(); i++) {
            if (ahead.get(i).kind() == StepKind.REFUEL) {
                return;
            }
            if (ahead.get(i).rotation().filter(turn -> from(turn).equals(place)).isEmpty()) {
                continue;
            }
            Rotation turn = ahead.get(i).rotation().orElseThrow();
            double afterS = Day.betweenS(ahead.get(index).endAt(), day.hookedFrom(turn));
            if (afterS <= soonS - 2 * Tolerance.TIME_S && isAlone(place)) {
                said.demand(
                        FindingCode.REFUELLING_CONFLICT,
                        turn.loads().get(0).value(),
                        Severity.NOTE);
            }
            return;
        }
    }

    private boolean isAlone(PlaceId place) {
        List<Crew> hooks =
                day.job().crews().stream()
                        .filter(crew -> crew.stays() && !day.job().isGuyingWhereItStays(crew))
                        .filter(crew -> crew.start().equals(place))
                        .filter(crew -> crew.roles().contains(Crew.Role.HOOK))
                        .toList();
        return !hooks.isEmpty()
                && hooks.stream().allMatch(crew -> crew.roles().contains(Crew.Role.REFUEL));
    }
}
