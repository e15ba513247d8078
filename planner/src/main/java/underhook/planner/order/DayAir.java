package underhook.planner.order;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.TreeSet;
import java.util.stream.Stream;
import underhook.core.air.Atmosphere;
import underhook.core.aircraft.HoverChart;
import underhook.core.finding.Finding;
import underhook.core.job.Job;
import underhook.core.job.Weather;
import underhook.core.job.WeatherHour;
import underhook.core.job.WindLimit;
import underhook.planner.route.LegWind;
import underhook.planner.route.PlaceWind;
import underhook.planner.route.WayMap;

/**
 * The air at the places of a day, hour by hour: of all that may hold, the worse. Not safe for threads: what was once
 * computed is kept.
 */
final class DayAir {
    /**
     * A weather row as used: for each quantity the worse of what may hold.
     *
     * @param fromS start, s
     * @param untilS end, s
     * @param otherFromTrueRad the less windy of two rows that may hold; the same where only one may
     * @param closed what is closed in it
     */
    record Slot(
            long fromS,
            long untilS,
            double qnhPa,
            double temperatureK,
            double windFromTrueRad,
            double windMPerS,
            double otherFromTrueRad,
            double otherMPerS,
            double gustMPerS,
            double spreadMPerS,
            ZoneHours.Then closed) {
        /** Whether but the times are the same. */
        boolean hasAirOf(Slot other) {
            return equals(
                    new Slot(
                            fromS,
                            untilS,
                            other.qnhPa,
                            other.temperatureK,
                            other.windFromTrueRad,
                            other.windMPerS,
                            other.otherFromTrueRad,
                            other.otherMPerS,
                            other.gustMPerS,
                            other.spreadMPerS,
                            other.closed));
        }

        /** A part of it. */
        private Slot during(long partFromS, long partUntilS, ZoneHours.Then closedThen) {
            return new Slot(
                    partFromS,
                    partUntilS,
                    qnhPa,
                    temperatureK,
                    windFromTrueRad,
                    windMPerS,
                    otherFromTrueRad,
                    otherMPerS,
                    gustMPerS,
                    spreadMPerS,
                    closedThen);
        }
    }

    private final DayModel day;
    final List<Slot> slots;
    private final HoverChart chart;
    private final double[] hoverMassKg;

    /**
     * @param day of which job, ground and places are known
     */
    DayAir(DayModel day) {
        this.day = day;
        this.slots = slots(day.job.weather());
        this.chart = HoverChart.of(day.machine.hover(), day.machine.maxExternalMassKg());
        this.hoverMassKg = noHoverMassKg();
    }

    private List<Slot> slots(Weather weather) {
        List<Slot> all = new ArrayList<>();
        List<WeatherHour> hours = weather.hours();
        for (int i = 0; i < hours.size(); i++) {
            WeatherHour now = hours.get(i);
            boolean last = i + 1 == hours.size();
            WeatherHour next =
                    weather.between() == Weather.Between.HOLD || last ? now : hours.get(i + 1);
            // Direction and speed stay together: a head wind of two rows mixed is nobody's
            // forecast.
            WeatherHour windier = next.windMPerS() > now.windMPerS() ? next : now;
            WeatherHour calmer = next.windMPerS() > now.windMPerS() ? now : next;
            long untilS = day.seconds(last ? weather.until() : hours.get(i + 1).from());
            all.add(
                    new Slot(
                            day.seconds(now.from()),
                            untilS,
                            Math.min(now.qnhPa(), next.qnhPa()),
                            Math.max(now.temperatureK(), next.temperatureK()),
                            windier.windFromTrueRad(),
                            windier.windMPerS(),
                            calmer.windFromTrueRad(),
                            calmer.windMPerS(),
                            Math.max(now.gustMPerS(), next.gustMPerS()),
                            Math.max(
                                    now.gustMPerS() - now.windMPerS(),
                                    next.gustMPerS() - next.windMPerS()),
                            day.zoneHours().wholeDay()));
        }
        return all.stream().flatMap(this::parts).toList();
    }

    /** A row where no zone's rule begins or ends within it, else its parts. */
    private Stream<Slot> parts(Slot row) {
        TreeSet<Long> begins = new TreeSet<>(List.of(row.fromS()));
        day.zoneHours().listCuts().stream()
                .map(day::seconds)
                .filter(cutS -> cutS > row.fromS() && cutS < row.untilS())
                .forEach(begins::add);
        return begins.stream()
                .map(
                        fromS -> {
                            Long next = begins.higher(fromS);
                            long untilS = next == null ? row.untilS() : next;
                            return row.during(fromS, untilS, closed(fromS, untilS));
                        });
    }

    /** What is closed at some time from one to another. */
    ZoneHours.Then closed(long fromS, long untilS) {
        return day.zoneHours().during(day.instant(fromS), day.instant(untilS));
    }

    /** What is closed at some time of the hours from one to another. */
    ZoneHours.Then closedFrom(int slotFrom, int slotTo) {
        return slotFrom == slotTo
                ? slots.get(slotFrom).closed()
                : closed(slots.get(slotFrom).fromS(), slots.get(slotTo).untilS());
    }

    /** Index of the slot at a time; -1 when no weather is known then. */
    int slot(long timeS) {
        for (int i = 0; i < slots.size(); i++) {
            if (timeS >= slots.get(i).fromS() && timeS < slots.get(i).untilS()) {
                return i;
            }
        }
        return -1;
    }

    /** The first hour in which what is let go in another may come over its place, so long before, hooked up in a third. */
    int slotComes(long setDownS, int slotFrom, int slotTo) {
        int comes = slotTo;
        while (comes > slotFrom
                && slots.get(comes - 1).untilS() > slots.get(slotTo).fromS() - setDownS) {
            comes--;
        }
        return comes;
    }

    /** Whether wind, gust and spread at a place keep a limit. */
    boolean isWindWithin(WindLimit limit, int place, int slot) {
        Slot air = slots.get(slot);
        double exposure = day.places.get(place).exposureFactor();
        double tiny = 1e-9;
        return air.windMPerS() * exposure <= limit.meanMPerS() + tiny
                && air.gustMPerS() * exposure <= limit.gustMPerS() + tiny
                && air.spreadMPerS() * exposure <= limit.spreadMPerS() + tiny;
    }

    /** Whether wind at both ends keeps the limits of every load of a trip. */
    boolean isWindWithin(Trip trip, int slot) {
        return isWindWithin(trip, trip.from(), slot) && isWindWithin(trip, trip.to(), slot);
    }

    /** The same at one place. */
    boolean isWindWithin(Trip trip, int place, int slot) {
        return trip.kinds().stream().allMatch(kind -> isWindWithin(kind.windLimit(), place, slot));
    }

    double pressureAltitudeM(int place, int slot) {
        // Rounded up to whole metres: less lift, never more.
        return Math.ceil(
                Atmosphere.pressureAltitudeM(slots.get(slot).qnhPa(), day.elevationAmslM[place]));
    }

    double temperatureK(int place, int slot) {
        Weather weather = day.job.weather();
        return slots.get(slot).temperatureK()
                - weather.lapseKPerM()
                        * (day.elevationAmslM[place] - weather.referenceElevationAmslM());
    }

    boolean isInChart(int place, int slot) {
        return chart.covers(pressureAltitudeM(place, slot), temperatureK(place, slot));
    }

    /** The air of an hour at a place beside the table that does not cover it. */
    Finding rangeFinding(String subject, int place, int slot) {
        return chart.rangeFinding(
                subject, pressureAltitudeM(place, slot), temperatureK(place, slot));
    }

    /** What of that air the table does not cover, as part of a sentence. */
    String sayBeyondChart(int place, int slot) {
        return chart.sayBeyond(pressureAltitudeM(place, slot), temperatureK(place, slot));
    }

    /** How far that air is outside the table; 0 within. */
    double beyondChartFraction(int place, int slot) {
        return chart.beyondFraction(pressureAltitudeM(place, slot), temperatureK(place, slot));
    }

    /** Hover mass out of ground effect, kg, whole and rounded down; 0 outside the chart. */
    double hoverMassKg(int place, int slot) {
        int at = place * slots.size() + slot;
        if (hoverMassKg[at] < 0) {
            hoverMassKg[at] =
                    isInChart(place, slot)
                            ? chart.tableMassKg(
                                    pressureAltitudeM(place, slot), temperatureK(place, slot))
                            : 0;
        }
        return hoverMassKg[at];
    }

    private double[] noHoverMassKg() {
        double[] none = new double[day.places.size() * slots.size()];
        Arrays.fill(none, -1);
        return none;
    }

    /** Wind at a place as the legs see it: from grid north. */
    PlaceWind wind(int place, int slot) {
        double fromGridRad = slots.get(slot).windFromTrueRad() - convergenceRad(place);
        return new PlaceWind(
                fromGridRad, slots.get(slot).windMPerS() * day.places.get(place).exposureFactor());
    }

    /** Every wind that may hold then, the one that is flown by first. */
    List<PlaceWind> winds(int place, int slot) {
        Slot air = slots.get(slot);
        PlaceWind other =
                new PlaceWind(
                        air.otherFromTrueRad() - convergenceRad(place),
                        air.otherMPerS() * day.places.get(place).exposureFactor());
        PlaceWind flownBy = wind(place, slot);
        return other.equals(flownBy) ? List.of(flownBy) : List.of(flownBy, other);
    }

    /**
     * The wind that may drift a load on a leg: from the mean at the calmer end less the gusts' spread to
     * the gusts at the windier one, in the windier of the hours.
     */
    LegWind driftWind(int from, int to, int slotFrom, int slotTo) {
        Slot one = slots.get(slotFrom);
        Slot other = slots.get(slotTo);
        Slot air = other.windMPerS() > one.windMPerS() ? other : one;
        double atFrom = day.places.get(from).exposureFactor();
        double atTo = day.places.get(to).exposureFactor();
        double mostFactor = Math.max(atFrom, atTo);
        double leastFactor = Math.min(atFrom, atTo);
        double spreadMPerS = Math.max(one.spreadMPerS(), other.spreadMPerS());
        return new LegWind(
                air.windFromTrueRad() - day.ground.frame().convergenceRad(day.points.get(from)),
                air.windMPerS() * (mostFactor + leastFactor) / 2,
                air.windMPerS() * (mostFactor - leastFactor) / 2 + spreadMPerS * mostFactor);
    }

    /** The wind on a leg: a headwind is counted in full, a tailwind not at all. */
    WayMap.Wind wind(DayLegs.Way way) {
        Slot air = slots.get(way.slotFrom());
        double fromGridRad =
                air.windFromTrueRad()
                        - day.ground.frame().convergenceRad(day.points.get(way.from()));
        double exposure =
                Math.max(
                        day.places.get(way.from()).exposureFactor(),
                        day.places.get(way.to()).exposureFactor());
        double windMPerS = air.windMPerS() * exposure;
        return new WayMap.Wind(
                -windMPerS * Math.sin(fromGridRad),
                -windMPerS * Math.cos(fromGridRad),
                way.speedMPerS(),
                false);
    }

    static double mostGustMPerS(Job of) {
        return of.weather().hours().stream().mapToDouble(WeatherHour::gustMPerS).max().orElse(0);
    }

    static double mostWindMPerS(Job of) {
        return of.weather().hours().stream().mapToDouble(WeatherHour::windMPerS).max().orElse(0);
    }

    /** What is added to a grid bearing at a place to make it TRUE, rad. */
    double convergenceRad(int place) {
        return day.ground.frame().convergenceRad(day.points.get(place));
    }

    /** Densest air of the day at the lowest place: most drag. */
    static double densestKgPerM3(DayModel model, Weather weather) {
        double lowest = Double.POSITIVE_INFINITY;
        for (double elevation : model.elevationAmslM) {
            if (elevation > Double.NEGATIVE_INFINITY) {
                lowest = Math.min(lowest, elevation);
            }
        }
        double densest = 0;
        for (WeatherHour hour : weather.hours()) {
            double temperatureK =
                    hour.temperatureK()
                            - weather.lapseKPerM() * (lowest - weather.referenceElevationAmslM());
            double pressurePa = Atmosphere.stationPressurePa(hour.qnhPa(), lowest);
            densest = Math.max(densest, Atmosphere.dry(pressurePa, temperatureK).densityKgPerM3());
        }
        return densest;
    }
}
