package underhook.planner.order;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import underhook.core.air.Atmosphere;
import underhook.core.aircraft.MomentumHover;
import underhook.core.geo.Ground;
import underhook.core.job.Job;
import underhook.core.job.LineItem;
import underhook.core.job.Load;
import underhook.core.job.LoadId;
import underhook.core.job.LoadKind;
import underhook.core.job.PlaceId;
import underhook.core.line.Pendulum;
import underhook.core.plan.PlaceRoom;
import underhook.core.plan.PlaceRoom.LineRoom;
import underhook.core.plan.PlaceRoom.Sector;
import underhook.core.site.Fit;
import underhook.core.site.HeadingRoom;
import underhook.core.site.Margin;
import underhook.core.site.Rig;
import underhook.core.unit.Units;

/**
 * Room at places for each line in stock, with the line to take and what each costs. Not safe for threads: what
 * was once looked at is kept.
 */
public final class PlaceRooms {
    /** A swing of this size dies down in so many periods. @source PRACTICE estimate, no measurement */
    private static final int SETTLING_PERIODS = 3;

    private static final double SETTLING_SWING_RAD = Math.toRadians(10);

    private final DayModel model;
    private final Map<Wanted, Optional<PlaceRoom>> known = new HashMap<>();

    /** A place and the loads that ask for room there. */
    private record Wanted(PlaceId place, List<LoadId> loads) {}

    PlaceRooms(DayModel model) {
        this.model = model;
    }

    /**
     * Room at the places of a job that its loads use.
     *
     * @param wanted only these; all when it is empty
     */
    public static List<PlaceRoom> of(Job job, Ground ground, List<PlaceId> wanted) {
        PlaceRooms rooms = new PlaceRooms(new DayModel(job, ground));
        return job.places().stream()
                .map(place -> place.id())
                .filter(id -> wanted.isEmpty() || wanted.contains(id))
                .flatMap(id -> rooms.find(id, job.loads()).stream())
                .toList();
    }

    /**
     * Room at one place for loads.
     *
     * @return empty when none of them is set down or hooked up there, or its ground is not known
     */
    Optional<PlaceRoom> find(PlaceId id, List<Load> loads) {
        List<Load> there =
                loads.stream()
                        .filter(load -> load.to().equals(id) || load.from().equals(id))
                        .toList();
        Wanted wanted = new Wanted(id, there.stream().map(Load::id).toList());
        Optional<PlaceRoom> found = known.get(wanted);
        if (found == null) {
            found = look(id, there);
            known.put(wanted, found);
        }
        return found;
    }

    private Optional<PlaceRoom> look(PlaceId id, List<Load> loads) {
        int place = model.place(id);
        List<Asked> asked = asked(id, loads);
        if (asked.isEmpty() || !model.isKnown(place)) {
            return Optional.empty();
        }
        List<List<HeadingRoom>> table =
                model.room(place).table(asked.stream().map(Asked::rig).toList());
        List<LineRoom> lines = new ArrayList<>();
        for (int i = 0; i < asked.size(); i++) {
            lines.add(lineRoom(place, asked.get(i), table.get(i)));
        }
        return Optional.of(advise(place, asked, table, lines));
    }

    /** A line with its room on every heading, from grid north. */
    record LineHeadings(LineItem line, double standsM, List<HeadingRoom> headings) {}

    /** The same, heading by heading. */
    List<LineHeadings> headings(PlaceId id, List<Load> loads) {
        int place = model.place(id);
        List<Asked> asked = model.isKnown(place) ? asked(id, loads) : List.of();
        if (asked.isEmpty()) {
            return List.of();
        }
        List<List<HeadingRoom>> table =
                model.room(place).table(asked.stream().map(Asked::rig).toList());
        List<LineHeadings> all = new ArrayList<>();
        for (int i = 0; i < asked.size(); i++) {
            Asked one = asked.get(i);
            all.add(new LineHeadings(one.line(), one.rig().standsM(), table.get(i)));
        }
        return all;
    }

    /** A line with the loads it is asked for. */
    private record Asked(LineItem line, Rig rig) {}

    /** For each line the loads that hang at once, then those that stand, each at their widest. */
    private List<Asked> asked(PlaceId id, List<Load> loads) {
        List<Asked> all = new ArrayList<>();
        for (int index : model.linesByLength()) {
            LineItem line = model.machine.lines().get(index);
            TreeMap<Boolean, Rig> widest = new TreeMap<>();
            for (Load load : loads) {
                LoadKind kind = model.job.getKind(load.kind());
                Rig rig = Rig.of(line.lengthM(), List.of(load), List.of(kind));
                if (load.to().equals(id)) {
                    widest.merge(rig.standsM() > 0, rig, PlaceRooms::wider);
                }
                if (load.from().equals(id)) {
                    widest.merge(false, rig.withoutCredit(), PlaceRooms::wider);
                }
            }
            widest.values().forEach(rig -> all.add(new Asked(line, rig)));
        }
        return all;
    }

    /** What needs at least as much room as either. */
    private static Rig wider(Rig one, Rig other) {
        return new Rig(
                one.lineLengthM(),
                Math.min(one.standsM(), other.standsM()),
                Math.max(one.loadRadiusM(), other.loadRadiusM()),
                Math.max(one.loadHeightM(), other.loadHeightM()));
    }

    private LineRoom lineRoom(int place, Asked asked, List<HeadingRoom> headings) {
        Margin worst = headings.get(0).tightest();
        for (HeadingRoom heading : headings) {
            Margin margin = heading.tightest();
            worst = margin.isTighterThan(worst) ? margin : worst;
        }
        double convergenceRad = convergenceRad(place);
        return new LineRoom(
                asked.line().name(),
                asked.line().lengthM(),
                asked.rig().standsM(),
                sectors(headings, convergenceRad),
                new PlaceRoom.Tightest(
                        worst.part().word(),
                        worst.id().isEmpty() ? worst.cause().word() : worst.id(),
                        Units.wrapTwoPiRad(worst.headingGridRad() + convergenceRad),
                        worst.marginM(),
                        worst.neededM(),
                        worst.unknownM()),
                cost(place, asked.rig()));
    }

    private double convergenceRad(int place) {
        return model.ground.frame().convergenceRad(model.points.get(place));
    }

    /** Between two headings with different answers the worse one holds. */
    private static List<Sector> sectors(List<HeadingRoom> headings, double convergenceRad) {
        int count = headings.size();
        int start = 0;
        while (start < count
                && headings.get(start).fit() == headings.get((start + count - 1) % count).fit()) {
            start++;
        }
        if (start == count) {
            return List.of(new Sector(fit(headings.get(0).fit()), 0, 2 * Math.PI));
        }
        List<Sector> sectors = new ArrayList<>();
        for (int from = start; from < start + count; ) {
            Fit fit = headings.get(from % count).fit();
            int to = from;
            while (to + 1 < start + count && headings.get((to + 1) % count).fit() == fit) {
                to++;
            }
            boolean worseBefore = headings.get((from + count - 1) % count).fit().compareTo(fit) > 0;
            boolean worseAfter = headings.get((to + 1) % count).fit().compareTo(fit) > 0;
            double step = 2 * Math.PI / count;
            double first = (worseBefore ? from : from - 1) * step;
            double last = (worseAfter ? to : to + 1) * step;
            sectors.add(
                    new Sector(
                            fit(fit),
                            Units.wrapTwoPiRad(first + convergenceRad),
                            Units.wrapTwoPiRad(last + convergenceRad)));
            from = to + 1;
        }
        sectors.sort(java.util.Comparator.comparingDouble(Sector::fromTrueRad));
        return sectors;
    }

    private static PlaceRoom.Fit fit(Fit fit) {
        return switch (fit) {
            case FREE -> PlaceRoom.Fit.FREE;
            case NEAR -> PlaceRoom.Fit.NEAR;
            case REFUSED -> PlaceRoom.Fit.REFUSED;
        };
    }

    private PlaceRoom.Cost cost(int place, Rig rig) {
        double periodS =
                Pendulum.periodS(rig.lineLengthM() + rig.loadHeightM() / 2, SETTLING_SWING_RAD);
        return new PlaceRoom.Cost(SETTLING_PERIODS * periodS, downwashMPerS(place), rig.reachM());
    }

    /** With the heaviest machine in the day's thinnest air; a longer line earns nothing. */
    private double downwashMPerS(int place) {
        double mostMPerS = 0;
        for (int slot = 0; slot < model.air().slots.size(); slot++) {
            double pressurePa =
                    Atmosphere.stationPressurePa(
                            model.air().slots.get(slot).qnhPa(), model.elevationAmslM[place]);
            double densityKgPerM3 =
                    Atmosphere.dry(pressurePa, model.air().temperatureK(place, slot))
                            .densityKgPerM3();
            mostMPerS =
                    Math.max(
                            mostMPerS,
                            MomentumHover.of(
                                            model.machine.maxExternalMassKg(),
                                            model.machine.rotorRadiusM(),
                                            densityKgPerM3)
                                    .farWakeMPerS());
        }
        return mostMPerS;
    }

    private PlaceRoom advise(
            int place, List<Asked> asked, List<List<HeadingRoom>> table, List<LineRoom> lines) {
        // Loads that hang need the longer line; where only poles come, they decide.
        boolean anyHangs = asked.stream().anyMatch(one -> one.rig().standsM() <= 0);
        PlaceId id = model.places.get(place).id();
        for (Fit atWorst : List.of(Fit.FREE, Fit.NEAR)) {
            for (int i = 0; i < asked.size(); i++) {
                boolean decides = !anyHangs || asked.get(i).rig().standsM() <= 0;
                if (decides && hasHeadingAllDay(place, table.get(i), atWorst)) {
                    String name = asked.get(i).line().name();
                    String reason =
                            atWorst == Fit.FREE
                                    ? "shortest with a free heading in every hour's wind"
                                    : "no line has a free heading in every hour's wind; this is the"
                                            + " shortest with one that is near";
                    return new PlaceRoom(id, lines, Optional.of(name), reason);
                }
            }
        }
        return new PlaceRoom(
                id,
                lines,
                Optional.empty(),
                "no line in stock has room on a heading that every hour's wind allows");
    }

    private boolean hasHeadingAllDay(int place, List<HeadingRoom> headings, Fit atWorst) {
        for (int slot = 0; slot < model.air().slots.size(); slot++) {
            int now = slot;
            if (headings.stream()
                    .noneMatch(
                            one ->
                                    one.fit().compareTo(atWorst) <= 0
                                            && windAllows(place, now, one.headingGridRad()))) {
                return false;
            }
        }
        return true;
    }

    /** Whether an hour's wind lets a place be come to on a heading. */
    boolean windAllows(int place, int slot, double headingGridRad) {
        var wind = model.air().wind(place, slot);
        double off = wind.fromGridRad() - headingGridRad;
        return -wind.speedMPerS() * Math.cos(off) <= model.rules.flying().tailwindMPerS()
                && wind.speedMPerS() * Math.abs(Math.sin(off))
                        <= model.rules.flying().crosswindMPerS();
    }
}
