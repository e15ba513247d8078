package underhook.planner.odds;

import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import underhook.core.geo.GeoPoint;
import underhook.core.job.Crew;
import underhook.core.job.CrewId;
import underhook.core.job.Handling;
import underhook.core.job.HoverTable;
import underhook.core.job.Job;
import underhook.core.job.Language;
import underhook.core.job.Load;
import underhook.core.job.LoadId;
import underhook.core.job.LoadKind;
import underhook.core.job.LoadShape;
import underhook.core.job.Machine;
import underhook.core.job.MassStatus;
import underhook.core.job.Place;
import underhook.core.job.PlaceId;
import underhook.core.job.PlaceKind;
import underhook.core.job.Rules;
import underhook.core.job.Spreads;
import underhook.core.job.Weather;
import underhook.core.job.WeatherHour;
import underhook.core.job.WindLimit;
import underhook.core.plan.CrewStay;
import underhook.core.plan.Drop;
import underhook.core.plan.Plan;
import underhook.core.plan.Rotation;
import underhook.core.plan.Step;
import underhook.core.plan.StepKind;
import underhook.core.plan.Summary;

/**
 * An invented day put together step by step: laydown A, sites S1 to S9, poles and bags. Duty begins at 06:00
 * and the day's steps at 08:00, times are seconds after that; every pole is held for 400 s.
 */
final class OddsDay {
    static final Instant EIGHT = Instant.parse("2026-06-10T08:00:00Z");
    static final double POLE_S = 400;
    static final double BAG_S = 60;
    static final double READY_S = 1200;
    static final double BUSY_S = 600;
    static final double HANDLER_S = 180;

    /** Every time as planned but what a test lets vary. */
    static final Spreads STEADY = Spreads.NONE;

    private final List<Load> loads = new ArrayList<>();
    private final List<Crew> crews = new ArrayList<>();
    private final List<Step> steps = new ArrayList<>();
    private final List<CrewStay> stays = new ArrayList<>();
    private double timeS;
    private double dutyS = 12 * 3600;
    private Optional<Double> windFromS = Optional.empty();

    OddsDay() {
        crews.add(crew("L", "A", -3600, true));
    }

    static Instant at(double afterEightS) {
        return EIGHT.plusMillis(Math.round(afterEightS * 1000));
    }

    static Crew crew(String id, String place, double fromS, boolean stays) {
        return new Crew(
                new CrewId(id),
                2,
                100,
                new PlaceId(place),
                at(fromS),
                Set.of(Crew.Role.HOOK, Crew.Role.RECEIVE, Crew.Role.GUY, Crew.Role.REFUEL),
                stays,
                List.of(),
                Language.EN);
    }

    /** A rotation that goes off without a wait: 100 s to hook-up, 200 s out, the hover, 150 s back. */
    OddsDay lift(String id, String kind, String site, String... after) {
        double hoverS = kind.equals("pole") ? POLE_S : BAG_S;
        loads.add(load(id, kind, site, after));
        double hookedS = timeS + 100;
        double doneS = hookedS + 200 + hoverS;
        Rotation rotation =
                new Rotation(
                        List.of(new LoadId(id)),
                        at(hookedS),
                        200,
                        400,
                        2000,
                        250,
                        0,
                        List.of(
                                new Drop(
                                        new LoadId(id),
                                        new PlaceId(site),
                                        at(doneS),
                                        0,
                                        0,
                                        0,
                                        0,
                                        List.of())),
                        List.of(),
                        List.of());
        return step(StepKind.ROTATION, doneS + 150 - timeS, Optional.of(rotation));
    }

    OddsDay step(StepKind kind, double lastsS) {
        return step(kind, lastsS, Optional.empty());
    }

    private OddsDay step(StepKind kind, double lastsS, Optional<Rotation> rotation) {
        boolean on = kind == StepKind.ROTATION || kind == StepKind.POSITION;
        steps.add(
                new Step(
                        kind,
                        new PlaceId("A"),
                        new PlaceId("A"),
                        at(timeS),
                        at(timeS + lastsS),
                        200,
                        190,
                        20,
                        on,
                        rotation,
                        Optional.empty(),
                        List.of(),
                        ""));
        timeS += lastsS;
        return this;
    }

    /** A team that is at a site for a while; it comes on foot from where it was. */
    OddsDay team(Crew crew, CrewStay... where) {
        crews.add(crew);
        stays.addAll(List.of(where));
        return this;
    }

    static CrewStay stay(String crew, String place, double fromS, double toS, String doing) {
        return new CrewStay(new CrewId(crew), new PlaceId(place), at(fromS), at(toS), doing);
    }

    /** Too much wind for poles from then on. */
    OddsDay windFrom(double afterEightS) {
        windFromS = Optional.of(afterEightS);
        return this;
    }

    /** Duty ends then. */
    OddsDay dutyUntil(double afterEightS) {
        dutyS = afterEightS + 2 * 3600;
        return this;
    }

    double timeS() {
        return timeS;
    }

    Plan plan() {
        return new Plan(
                "p",
                "odds",
                new Plan.Made(EIGHT, 1, 10, "test"),
                new Summary(
                        timeS,
                        at(timeS),
                        new Summary.Counts(loads.size(), 0, 0),
                        Summary.Bounds.NONE,
                        false,
                        Optional.empty(),
                        List.of(),
                        Optional.empty()),
                steps,
                stays,
                List.of(),
                List.of(),
                List.of(),
                List.of(),
                List.of(),
                Optional.empty());
    }

    Job job(Spreads spreads) {
        List<Place> places = new ArrayList<>();
        places.add(place("A", PlaceKind.LAYDOWN));
        for (int i = 1; i < 10; i++) {
            places.add(place("S" + i, PlaceKind.SITE));
        }
        return new Job(
                "odds",
                LocalDate.of(2026, 6, 10),
                ZoneOffset.UTC,
                new GeoPoint(46.8, 0),
                0,
                new PlaceId("A"),
                places,
                loads,
                machine(),
                weather(),
                crews,
                List.of(),
                rules().withHandling(Handling.USUAL.withSpreads(spreads)),
                List.of(),
                List.of(),
                List.of(),
                List.of(),
                List.of(),
                List.of(),
                List.of(),
                List.of());
    }

    private Weather weather() {
        List<WeatherHour> rows = new ArrayList<>();
        rows.add(hour(-7200, 3));
        windFromS.ifPresent(fromS -> rows.add(hour(fromS, 9)));
        return new Weather(rows, at(14 * 3600), Weather.Between.HOLD, 0, 0, "invented");
    }

    private static WeatherHour hour(double fromS, double windMPerS) {
        return new WeatherHour(at(fromS), 101325, 283.15, 0, windMPerS, windMPerS + 2, "");
    }

    private static Place place(String id, PlaceKind kind) {
        boolean laydown = kind == PlaceKind.LAYDOWN;
        return new Place(
                new PlaceId(id),
                kind,
                id,
                new GeoPoint(46.8, 0),
                OptionalDouble.empty(),
                OptionalDouble.empty(),
                0,
                50,
                1,
                true,
                laydown,
                laydown,
                false,
                List.of(),
                "");
    }

    private static Load load(String id, String kind, String site, String... after) {
        return new Load(
                new LoadId(id),
                kind,
                new PlaceId("A"),
                new PlaceId(site),
                MassStatus.WEIGHED,
                OptionalDouble.of(300),
                "",
                10,
                1,
                1,
                OptionalDouble.empty(),
                "",
                "",
                List.of(after).stream()
                        .map(first -> new Load.After(new LoadId(first), 300))
                        .toList(),
                List.of(),
                false,
                "");
    }

    private static Machine machine() {
        HoverTable table =
                new HoverTable(
                        List.of(0.0, 500.0),
                        List.of(273.15, 293.15),
                        List.of(List.of(2000.0, 1900.0), List.of(1900.0, 1800.0)),
                        5,
                        "invented");
        return new Machine(
                "T",
                5,
                7.5,
                1100,
                100,
                1850,
                2000,
                700,
                300,
                5,
                0.04,
                0.05,
                8,
                1200,
                4,
                25,
                35,
                4,
                3,
                table,
                List.of(),
                Optional.empty(),
                Machine.Body.assumed(5),
                Machine.PilotSide.RIGHT);
    }

    private Rules rules() {
        return new Rules(
                new Rules.Masses(0.1, 1.15, 15, 300),
                new Rules.Distances(5, 5, 30, 30, 0, 10, 60),
                new Rules.Flying(100, 6, 10, 8),
                new Rules.Landing(0.1, false),
                new Rules.Times(30, 20, 180, 360),
                new Rules.Refuelling(240, 0.5, HANDLER_S, 600),
                new Rules.Duty(at(-7200), dutyS, 6 * 3600, 1800, 10 * 3600, 1800),
                new Rules.Costs(0, 0, 0, "EUR"),
                Rules.Margins.USUAL,
                List.of(kind("bag", false), kind("pole", true)),
                Handling.USUAL);
    }

    private static LoadKind kind(String name, boolean pole) {
        return new LoadKind(
                name,
                20,
                60,
                pole ? POLE_S : BAG_S,
                pole,
                false,
                false,
                false,
                0.5,
                1,
                pole ? BUSY_S : 0,
                pole ? 0 : READY_S,
                pole ? new WindLimit(8, 12, 6) : new WindLimit(20, 25, 10),
                LoadShape.BOX,
                1);
    }
}
