package underhook.planner.order;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import underhook.core.geo.Glare;
import underhook.core.geo.Sun;
import underhook.core.geo.SunPosition;
import underhook.core.job.ComfortRates;
import underhook.core.job.LoadId;
import underhook.core.job.Machine;
import underhook.core.job.PlaceId;
import underhook.core.plan.CrewStay;
import underhook.core.plan.Drop;
import underhook.core.plan.RefusedComfort;
import underhook.core.plan.RefusedComfort.Comfort;
import underhook.core.plan.Rotation;
import underhook.core.plan.Step;
import underhook.core.unit.Units;
import underhook.planner.route.PlaceWind;
import underhook.planner.route.WayIn;
import underhook.planner.search.SetDownPrice;

/**
 * Comforts that a day refuses, each with its count and price; those without a rate are not looked at.
 *
 * <p>They follow from the ways in as chosen by place and hour and change none of these choices.
 */
final class Discomforts {
    /** Knots written as m/s: so little below a full one still is one. */
    private static final double DUST_M_PER_S = 1e-6;

    /** Times as they were tapped are not whole seconds. */
    private static final long HALF_S_MS = 500;

    private final DayModel model;
    private final ComfortRates rates;
    private final boolean leansRight;

    Discomforts(DayModel model) {
        this.model = model;
        this.rates = model.rules.costs().comforts();
        this.leansRight = model.machine.pilotSide() == Machine.PilotSide.RIGHT;
    }

    private record Counted(Comfort comfort, long count, long cents) {}

    /** What a way in costs in an hour, as time goes on. */
    SetDownPrice price(int place, int slot, WayIn wayIn) {
        if (!rates.countsWaysIn()) {
            return SetDownPrice.NONE;
        }
        DayAir.Slot hour = model.air().slots.get(slot);
        double trackGridRad = wayIn.approachFromGridRad() + Math.PI;
        List<Long> sunCents = new ArrayList<>();
        for (long timeS = hour.fromS(); timeS < hour.untilS(); timeS = stepS(timeS) + STEP_S) {
            sunCents.add(sum(sun(place, model.instant(timeS), trackGridRad)));
        }
        return new SetDownPrice(sum(wind(place, slot, trackGridRad)), hour.fromS(), sunCents);
    }

    private static final long STEP_S = SetDownPrice.STEP_S;

    private static long stepS(long timeS) {
        return Math.floorDiv(timeS, STEP_S) * STEP_S;
    }

    private static long sum(List<Counted> counted) {
        return counted.stream().mapToLong(Counted::cents).sum();
    }

    /** All that a day refuses, in the order of the day. */
    List<RefusedComfort> list(List<Trip> trips, People people, DayState day) {
        List<RefusedComfort> all = new ArrayList<>();
        for (DayState.Flown lift : Flights.of(model, trips, day).flown()) {
            Trip trip = trips.get(lift.trip());
            double trackGridRad = lift.loaded().wayIn().approachFromGridRad() + Math.PI;
            Instant at = model.instant(lift.releasedS().get(lift.releasedS().size() - 1));
            all.addAll(
                    lift(
                            trip.ids().get(0),
                            new Arrival(trip.to(), at, lift.slotTo(), trackGridRad)));
        }
        for (DayState.Stay stay : day.stays()) {
            if (stay.walks()) {
                all.addAll(
                        walk(
                                new CrewStay(
                                        people.teams.get(stay.team()).id(),
                                        model.places.get(stay.place()).id(),
                                        model.instant(stay.fromS()),
                                        model.instant(stay.toS()),
                                        stay.doing())));
            }
        }
        all.sort(Comparator.comparing(RefusedComfort::at));
        return all;
    }

    /** What lifts and walks refused that are done or begun, with the times as they were. */
    List<RefusedComfort> ofDone(List<Step> steps, List<CrewStay> stays) {
        List<RefusedComfort> all = new ArrayList<>();
        for (Step step : steps) {
            step.rotation().ifPresent(lift -> all.addAll(ofDone(lift)));
        }
        stays.stream()
                .filter(stay -> stay.doing().startsWith("walks"))
                .forEach(stay -> all.addAll(walk(stay)));
        return all;
    }

    private List<RefusedComfort> ofDone(Rotation lift) {
        Drop last = lift.drops().get(lift.drops().size() - 1);
        int place = model.place(last.place());
        int slot = model.air().slot(model.seconds(last.releasedAt()));
        double trackGridRad =
                last.approachFromTrueRad() + Math.PI - model.air().convergenceRad(place);
        return lift(lift.loads().get(0), new Arrival(place, last.releasedAt(), slot, trackGridRad));
    }

    /** Over a place at the end of a lift, in an hour of the forecast; negative where none is known. */
    private record Arrival(int place, Instant at, int slot, double trackGridRad) {}

    private List<RefusedComfort> lift(LoadId first, Arrival arrival) {
        List<Counted> counted =
                new ArrayList<>(sun(arrival.place(), arrival.at(), arrival.trackGridRad()));
        if (arrival.slot() >= 0) {
            counted.addAll(wind(arrival.place(), arrival.slot(), arrival.trackGridRad()));
        }
        PlaceId place = model.places.get(arrival.place()).id();
        return counted.stream()
                .map(
                        one ->
                                new RefusedComfort(
                                        one.comfort(),
                                        first.value(),
                                        place,
                                        arrival.at(),
                                        one.count(),
                                        one.cents()))
                .toList();
    }

    private List<RefusedComfort> walk(CrewStay stay) {
        long minutes =
                Duration.between(stay.fromAt(), stay.toAt()).plusMillis(HALF_S_MS).toMinutes();
        long cents = Math.multiplyExact(minutes, rates.walkMinuteCents());
        return cents <= 0
                ? List.of()
                : List.of(
                        new RefusedComfort(
                                Comfort.WALK,
                                stay.crew().value(),
                                stay.place(),
                                stay.fromAt(),
                                minutes,
                                cents));
    }

    /** The sun as it stands at the last full five minutes. */
    private List<Counted> sun(int place, Instant when, double trackGridRad) {
        List<Counted> all = new ArrayList<>();
        if (rates.sunAheadCents() + rates.sunBesideCents() == 0) {
            return all;
        }
        double headingTrueRad = trackGridRad + model.air().convergenceRad(place);
        Instant at = model.instant(stepS(model.seconds(when)));
        if (!mayDazzle(place, at, headingTrueRad)) {
            return all;
        }
        Glare glare = model.sky().seen(place, at).glare(headingTrueRad, leansRight);
        if (glare.isAhead()) {
            add(all, Comfort.SUN_AHEAD, 1, rates.sunAheadCents());
        } else if (glare.isBeside()) {
            add(all, Comfort.SUN_BESIDE, 1, rates.sunBesideCents());
        }
        return all;
    }

    /** Over a level horizon; to look at the terrain takes far longer. */
    private boolean mayDazzle(int place, Instant at, double headingTrueRad) {
        SunPosition sun = Sun.position(model.places.get(place).position(), at);
        Glare level = Glare.of(sun, headingTrueRad, 0, leansRight);
        return level.isAhead() || level.isBeside();
    }

    /** The most of any wind that may hold, in full knots. */
    private List<Counted> wind(int place, int slot, double trackGridRad) {
        double tailMPerS = 0;
        double crossMPerS = 0;
        for (PlaceWind wind : model.air().winds(place, slot)) {
            double offRad = wind.fromGridRad() - trackGridRad;
            tailMPerS = Math.max(tailMPerS, -wind.speedMPerS() * Math.cos(offRad));
            crossMPerS = Math.max(crossMPerS, Math.abs(wind.speedMPerS() * Math.sin(offRad)));
        }
        List<Counted> all = new ArrayList<>();
        add(all, Comfort.TAILWIND, fullKnots(tailMPerS), rates.tailwindKnotCents());
        add(
                all,
                Comfort.CROSSWIND,
                fullKnots(crossMPerS - rates.crosswindFromMPerS()),
                rates.crosswindKnotCents());
        return all;
    }

    private static long fullKnots(double speedMPerS) {
        return (long) Math.floor(Units.mPerSToKt(Math.max(0, speedMPerS) + DUST_M_PER_S));
    }

    private static void add(List<Counted> all, Comfort comfort, long count, long rateCents) {
        if (count > 0 && rateCents > 0) {
            all.add(new Counted(comfort, count, Math.multiplyExact(count, rateCents)));
        }
    }

    /** What of these a lift refuses, in words. */
    static List<String> words(List<RefusedComfort> comforts, LoadId first, String currency) {
        return comforts.stream()
                .filter(one -> one.comfort() != Comfort.WALK)
                .filter(one -> one.subject().equals(first.value()))
                .map(one -> words(one, currency))
                .toList();
    }

    /** In words, as they stand beside a lift. */
    private static String words(RefusedComfort one, String currency) {
        String what =
                switch (one.comfort()) {
                    case SUN_AHEAD -> "no sun in the eyes";
                    case SUN_BESIDE -> "no sun in the sight down the line";
                    case TAILWIND -> "no tailwind, " + one.count() + " kt";
                    case CROSSWIND -> "less crosswind, " + one.count() + " kt";
                    case WALK -> "no walk, " + one.count() + " min";
                };
        return "refused comfort: "
                + what
                + ", "
                + Figures.text(one.cents() / 100.0, 2)
                + " "
                + currency;
    }
}
