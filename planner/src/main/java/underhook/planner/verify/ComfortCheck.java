package underhook.planner.verify;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import underhook.core.finding.FindingCode;
import underhook.core.job.ComfortRates;
import underhook.core.job.Machine;
import underhook.core.job.Place;
import underhook.core.job.PlaceId;
import underhook.core.job.WeatherHour;
import underhook.core.plan.CrewStay;
import underhook.core.plan.DayPrice;
import underhook.core.plan.Drop;
import underhook.core.plan.RefusedComfort;
import underhook.core.plan.RefusedComfort.Comfort;
import underhook.core.plan.Rotation;
import underhook.core.unit.Units;

/** Each comfort that the plan refuses is told with its count and its price, and none besides. */
final class ComfortCheck {
    /** The sun counts as it stands at the last full five minutes, s. */
    private static final long SUN_STEP_S = 300;

    /** Bearings and winds as a file rounds them. */
    private static final double DUST_M_PER_S = 0.005;

    private final Day day;
    private final ComfortRates rates;
    private final Air air;
    private final List<Own> all = new ArrayList<>();

    ComfortCheck(Day day) {
        this.day = day;
        this.rates = day.job().rules().costs().comforts();
        this.air = new Air(day.job().weather());
    }

    /** What we count ourselves, at least and at most. */
    private record Own(Comfort comfort, About about, long least, long most, long rateCents) {
        boolean isTold(RefusedComfort one) {
            return one.comfort() == comfort
                    && one.subject().equals(about.subject)
                    && one.place().equals(about.place)
                    && one.at().equals(about.at);
        }
    }

    private record About(String subject, PlaceId place, Instant at) {}

    void run() {
        day.plan().summary().price().ifPresent(this::check);
    }

    private void check(DayPrice price) {
        day.plan().steps().forEach(step -> step.rotation().ifPresent(this::addLift));
        day.plan().crews().forEach(this::addWalk);
        int told = 0;
        for (Own own : all) {
            List<RefusedComfort> stated = price.comforts().stream().filter(own::isTold).toList();
            told += stated.size();
            long count = stated.stream().mapToLong(RefusedComfort::count).sum();
            boolean counted = count >= own.least && count <= own.most && stated.size() <= 1;
            demand(
                    counted,
                    own.about.subject,
                    own.comfort.word() + " is not refused so often",
                    new long[] {count, own.most});
            for (RefusedComfort one : stated) {
                demand(
                        one.cents() == one.count() * own.rateCents,
                        own.about.subject,
                        own.comfort.word() + " has not the price of its rate",
                        new long[] {one.cents(), one.count() * own.rateCents});
            }
        }
        demand(
                told == price.comforts().size(),
                "comforts",
                "a comfort is told that has no rate or is not refused",
                new long[] {price.comforts().size(), told});
    }

    private void demand(boolean holds, String subject, String what, long[] figures) {
        day.ledger()
                .demand(
                        holds,
                        FindingCode.SUMMARY_WRONG,
                        "comforts",
                        () ->
                                Told.of("rules", "Refused comforts, " + subject + ": " + what + ".")
                                        .figures(figures[0], figures[1], ""));
    }

    private void add(Comfort comfort, About about, long[] leastAndMost, long rateCents) {
        if (rateCents > 0) {
            all.add(new Own(comfort, about, leastAndMost[0], leastAndMost[1], rateCents));
        }
    }

    private void addLift(Rotation rotation) {
        Drop last = rotation.drops().get(rotation.drops().size() - 1);
        About about = new About(rotation.loads().get(0).value(), last.place(), last.releasedAt());
        if (rates.countsWaysIn()) {
            addSun(about, last.approachFromTrueRad() + Math.PI);
            addWind(about, last.approachFromTrueRad() + Math.PI);
        }
    }

    private void addSun(About about, double trackTrueRad) {
        Machine machine = day.job().machine();
        Instant midnight = day.job().date().atStartOfDay(day.job().zone()).toInstant();
        long sinceS = Duration.between(midnight, about.at).toSeconds();
        Instant at = midnight.plusSeconds(Math.floorDiv(sinceS, SUN_STEP_S) * SUN_STEP_S);
        Place place = day.job().getPlace(about.place);
        double right = machine.pilotSide() == Machine.PilotSide.RIGHT ? 1 : -1;
        double sideRad = trackTrueRad + right * Math.PI / 2;
        SunSight sun = SunSight.overSea(place.position(), at);
        if (sun.dazzles(trackTrueRad, false) || sun.dazzles(sideRad, false)) {
            // Terrain only ever hides it.
            sun = day.around().sight(place.id(), at);
        }
        boolean ahead = sun.dazzles(trackTrueRad, true);
        boolean perhapsAhead = sun.dazzles(trackTrueRad, false);
        long[] inEyes = {ahead ? 1 : 0, perhapsAhead ? 1 : 0};
        long[] inSight = {
            !perhapsAhead && sun.dazzles(sideRad, true) ? 1 : 0,
            !ahead && sun.dazzles(sideRad, false) ? 1 : 0
        };
        add(Comfort.SUN_AHEAD, about, inEyes, rates.sunAheadCents());
        add(Comfort.SUN_BESIDE, about, inSight, rates.sunBesideCents());
    }

    private void addWind(About about, double trackTrueRad) {
        double exposureFactor = day.job().getPlace(about.place).exposureFactor();
        // Where one row follows another, a moment belongs to the one or to both.
        List<WeatherHour> now = air.listRows(about.at);
        List<WeatherHour> also = new ArrayList<>(now);
        also.addAll(air.listRows(about.at.plusSeconds(1)));
        Felt least = felt(now, trackTrueRad, exposureFactor);
        Felt most = felt(also, trackTrueRad, exposureFactor);
        add(
                Comfort.TAILWIND,
                about,
                knots(least.tailMPerS, most.tailMPerS),
                rates.tailwindKnotCents());
        add(
                Comfort.CROSSWIND,
                about,
                knots(least.overMPerS, most.overMPerS),
                rates.crosswindKnotCents());
    }

    /** Wind from behind, and from the side above what bothers nobody. */
    private record Felt(double tailMPerS, double overMPerS) {}

    private Felt felt(List<WeatherHour> rows, double trackTrueRad, double exposureFactor) {
        double tail = 0;
        double over = 0;
        for (WeatherHour row : rows) {
            double speed = row.windMPerS() * exposureFactor;
            double off = row.windFromTrueRad() - trackTrueRad;
            tail = Math.max(tail, -speed * Math.cos(off));
            over = Math.max(over, Math.abs(speed * Math.sin(off)) - rates.crosswindFromMPerS());
        }
        return new Felt(tail, over);
    }

    private static long[] knots(double leastMPerS, double mostMPerS) {
        return new long[] {
            (long) Math.floor(Units.mPerSToKt(Math.max(0, leastMPerS - DUST_M_PER_S))),
            (long) Math.floor(Units.mPerSToKt(mostMPerS + DUST_M_PER_S))
        };
    }

    private void addWalk(CrewStay stay) {
        if (stay.doing().startsWith("walks")) {
            double lastsS = Day.betweenS(stay.fromAt(), stay.toAt());
            long minutes = (long) Math.floor((lastsS + 0.5) / 60);
            add(
                    Comfort.WALK,
                    new About(stay.crew().value(), stay.place(), stay.fromAt()),
                    new long[] {minutes, minutes},
                    rates.walkMinuteCents());
        }
    }
}
