package underhook.planner.order;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.LongStream;
import underhook.core.finding.Finding;
import underhook.core.finding.FindingCode;
import underhook.core.finding.Severity;
import underhook.core.geo.Glare;
import underhook.core.geo.Sun;
import underhook.core.geo.SunPosition;
import underhook.core.job.Machine;
import underhook.core.unit.Units;
import underhook.planner.route.SunSeen;
import underhook.planner.route.WayIn;

/** Hours in which the way in straight into the wind faces the sun, flown then or not. */
final class Glares {
    private static final long STEP_S = 60;

    private final Flights flights;
    private final DayModel model;
    private final boolean leansRight;

    Glares(Flights flights) {
        this.flights = flights;
        this.model = flights.model();
        this.leansRight = model.machine.pilotSide() == Machine.PilotSide.RIGHT;
    }

    /**
     * Glare within one hour.
     *
     * @param highest the sun when it stands highest in that time
     * @param leastAheadRad the least angle between sun and nose in that time
     */
    private record Spell(
            int slot, long fromS, long untilS, SunSeen highest, double leastAheadRad) {}

    List<Finding> list() {
        List<Finding> all = new ArrayList<>();
        flights.byPlace().forEach((place, lifts) -> find(place, lifts).ifPresent(all::add));
        return all;
    }

    private Optional<Finding> find(int place, List<DayState.Flown> lifts) {
        List<String> told = new ArrayList<>();
        double leastDeg = 180;
        boolean isFlown = false;
        for (int slot : flights.hours(lifts)) {
            Optional<Spell> spell = find(place, slot);
            if (spell.isPresent()) {
                isFlown |= isFlown(lifts, spell.get());
                told.add(words(place, spell.get(), lifts.get(0)));
                leastDeg = Math.min(leastDeg, Math.toDegrees(spell.get().leastAheadRad()));
            }
        }
        if (told.isEmpty()) {
            return Optional.empty();
        }
        return Optional.of(
                new Finding(
                        FindingCode.GLARE,
                        isFlown ? Severity.CAUTION : Severity.NOTE,
                        model.places.get(place).id().value(),
                        Figures.text(Math.floor(leastDeg), 0),
                        Figures.text(Math.toDegrees(Glare.DAZZLE_RAD), 0),
                        "°",
                        "PRACTICE",
                        "Straight into the wind the way in faces the sun: "
                                + String.join("; ", told)
                                + (isFlown ? "" : ". Nobody flies there then")
                                + ". Clouds may hide it."));
    }

    /** Whether a load is set down in that time. */
    private static boolean isFlown(List<DayState.Flown> lifts, Spell spell) {
        return lifts.stream()
                .flatMap(lift -> lift.releasedS().stream())
                .anyMatch(timeS -> timeS >= spell.fromS() && timeS <= spell.untilS());
    }

    /** Told by whole minutes: from the last without glare to the first without it. */
    private Optional<Spell> find(int place, int slot) {
        DayAir.Slot hour = model.air().slots.get(slot);
        long fromS = -1;
        long untilS = -1;
        SunSeen highest = null;
        double leastAheadRad = Math.PI;
        for (long timeS : moments(hour.fromS(), hour.untilS())) {
            Instant when = model.instant(timeS);
            SunPosition sun = Sun.position(model.places.get(place).position(), when);
            if (!Glare.of(sun, hour.windFromTrueRad(), 0, leansRight).isAhead()) {
                continue;
            }
            SunSeen seen = model.sky().seen(place, when);
            Glare glare = seen.glare(hour.windFromTrueRad(), leansRight);
            if (!glare.isAhead()) {
                continue;
            }
            leastAheadRad = Math.min(leastAheadRad, glare.aheadRad());
            fromS = fromS < 0 ? Math.max(hour.fromS(), timeS - STEP_S) : fromS;
            untilS = timeS;
            if (highest == null || elevationRad(seen) > elevationRad(highest)) {
                highest = seen;
            }
        }
        return highest == null
                ? Optional.empty()
                : Optional.of(
                        new Spell(
                                slot,
                                fromS,
                                Math.min(untilS + STEP_S, hour.untilS()),
                                highest,
                                leastAheadRad));
    }

    /** When it is looked at within an hour; its end is the beginning of the next, with a wind of its own. */
    static long[] moments(long fromS, long untilS) {
        return LongStream.iterate(fromS, timeS -> timeS < untilS, timeS -> timeS + STEP_S)
                .toArray();
    }

    private static double elevationRad(SunSeen seen) {
        return seen.sun().elevationApparentRad();
    }

    private String words(int place, Spell spell, DayState.Flown lift) {
        double windTrueRad = model.air().slots.get(spell.slot()).windFromTrueRad();
        return flights.clock(spell.fromS())
                + " to "
                + flights.clock(spell.untilS())
                + " on track "
                + bearing(windTrueRad)
                + " TRUE, the sun up to "
                + Math.round(Math.toDegrees(elevationRad(spell.highest())))
                + "° high, "
                + instead(place, spell.slot(), lift);
    }

    private String instead(int place, int slot, DayState.Flown lift) {
        Trip trip = flights.trip(lift);
        double lineM = model.machine.lines().get(lift.line()).lengthM();
        Optional<WayIn> way = model.ways().wayIn(place, slot, trip.kindNames(), trip.rig(lineM));
        if (way.isEmpty()) {
            return "no way in then";
        }
        double trackTrueRad =
                way.get().approachFromGridRad() + Math.PI + model.air().convergenceRad(place);
        double offRad = trackTrueRad - model.air().slots.get(slot).windFromTrueRad();
        return Math.abs(Units.wrapPiRad(offRad)) < 1e-6
                ? "flown all the same"
                : "track " + bearing(trackTrueRad) + " is taken instead";
    }

    private static String bearing(double trueRad) {
        long degrees = Math.round(Math.toDegrees(trueRad));
        return String.format(Locale.ROOT, "%03d°", Math.floorMod(degrees, 360L));
    }
}
