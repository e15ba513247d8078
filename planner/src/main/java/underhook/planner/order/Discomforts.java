package underhook.planner.order;

import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import underhook.core.geo.Glare;
import underhook.core.geo.Sun;
import underhook.core.geo.SunPosition;
import underhook.core.job.ComfortRates;
import underhook.core.job.Machine;
import underhook.core.plan.RefusedComfort;
import underhook.core.plan.RefusedComfort.Comfort;
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
        DayModel.Slot hour = model.slots.get(slot);
        List<Long> sunCents = new ArrayList<>();
        for (long timeS = hour.fromS(); timeS < hour.untilS(); timeS = stepS(timeS) + STEP_S) {
            sunCents.add(sum(sun(place, timeS, wayIn)));
        }
        return new SetDownPrice(sum(wind(place, slot, wayIn)), hour.fromS(), sunCents);
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
            int place = trips.get(lift.trip()).to();
            WayIn wayIn = lift.loaded().wayIn();
            long releasedS = lift.releasedS().get(lift.releasedS().size() - 1);
            List<Counted> counted = new ArrayList<>(sun(place, releasedS, wayIn));
            counted.addAll(wind(place, lift.slotTo(), wayIn));
            String first = trips.get(lift.trip()).ids().get(0).value();
            counted.forEach(one -> all.add(refused(one, first, new When(place, releasedS))));
        }
        for (DayState.Stay stay : day.stays()) {
            long minutes = stay.walks() ? (stay.toS() - stay.fromS()) / 60 : 0;
            String crew = people.teams.get(stay.team()).id().value();
            List<Counted> counted = new ArrayList<>();
            add(counted, Comfort.WALK, minutes, rates.walkMinuteCents());
            counted.forEach(
                    one -> all.add(refused(one, crew, new When(stay.place(), stay.fromS()))));
        }
        all.sort(Comparator.comparing(RefusedComfort::at));
        return all;
    }

    private record When(int place, long timeS) {}

    private RefusedComfort refused(Counted one, String subject, When when) {
        return new RefusedComfort(
                one.comfort(),
                subject,
                model.places.get(when.place()).id(),
                model.instant(when.timeS()),
                one.count(),
                one.cents());
    }

    /** The sun as it stands at the last full five minutes. */
    private List<Counted> sun(int place, long timeS, WayIn wayIn) {
        List<Counted> all = new ArrayList<>();
        if (rates.sunAheadCents() + rates.sunBesideCents() == 0) {
            return all;
        }
        double headingTrueRad = wayIn.approachFromGridRad() + Math.PI + model.convergenceRad(place);
        Instant at = model.instant(stepS(timeS));
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
    private List<Counted> wind(int place, int slot, WayIn wayIn) {
        double trackGridRad = wayIn.approachFromGridRad() + Math.PI;
        double tailMPerS = 0;
        double crossMPerS = 0;
        for (PlaceWind wind : model.winds(place, slot)) {
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

    /** In words, as they stand beside a lift. */
    static String words(RefusedComfort one, String currency) {
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
                + TripMaker.text(one.cents() / 100.0, 2)
                + " "
                + currency;
    }
}
