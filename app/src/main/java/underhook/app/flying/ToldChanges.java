package underhook.app.flying;

import java.time.Instant;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.function.Function;
import underhook.app.replan.Change;
import underhook.core.flown.FlownDay;
import underhook.core.flown.FlownLift;
import underhook.core.flown.Report;
import underhook.core.flown.Tap;
import underhook.core.flown.TapKind;
import underhook.core.job.Job;
import underhook.core.job.Load;
import underhook.core.job.LoadId;
import underhook.core.job.MassStatus;
import underhook.core.job.PlaceId;

/**
 * What people told in the day that changes it.
 *
 * @param changes all that count, in the order in which they were told
 * @param before told of the ground, but of other files than those that the plan was made from
 * @param unread reports that change nothing, because they cannot be read or name nothing of the job
 */
record ToldChanges(List<Told> changes, List<Told> before, List<Tap> unread) {
    /** A change with the tap that told it. */
    record Told(Tap tap, Change change) {}

    ToldChanges {
        changes = List.copyOf(changes);
        before = List.copyOf(before);
        unread = List.copyOf(unread);
    }

    /**
     * Everything that was told of a job's day.
     *
     * @param ofTheseFiles taps made under a plan of the same files; where a place was moved to counts from
     *     where they have it
     * @param cameAt when each tap came to be known; nobody is anywhere since later, whatever a device's clock says
     */
    static ToldChanges of(
            Job job, FlownDay flown, Set<String> ofTheseFiles, Map<String, Instant> cameAt) {
        List<Told> changes = new ArrayList<>();
        List<Told> before = new ArrayList<>();
        List<Tap> unread = new ArrayList<>();
        for (Tap tap : flown.taps()) {
            if (tap.kind() != TapKind.REPORTED) {
                continue;
            }
            Optional<Report> report = Report.of(tap);
            Instant came = cameAt.getOrDefault(tap.id(), tap.at());
            Optional<Change> told = report.flatMap(one -> change(tap, one, came));
            if (report.isEmpty() || told.filter(change -> !change.isOf(job)).isPresent()) {
                unread.add(tap);
            } else {
                boolean counts = ground(report.get()).isEmpty() || ofTheseFiles.contains(tap.id());
                told.map(change -> new Told(tap, change))
                        .ifPresent(counts ? changes::add : before::add);
            }
        }
        changes.removeIf(told -> isToldAnew(told, changes));
        return new ToldChanges(changes, before, unread);
    }

    /** Of what was seen of the wind at one place only the newest counts. */
    private static boolean isToldAnew(Told told, List<Told> all) {
        return told.change() instanceof Change.WindSeen wind
                && all.subList(all.indexOf(told) + 1, all.size()).stream()
                        .anyMatch(
                                later ->
                                        later.change() instanceof Change.WindSeen other
                                                && other.place().equals(wind.place()));
    }

    /** What of it is of the ground: what was told once holds, whether an order was made of it or not. */
    List<Told> ofTheGround() {
        return changes.stream().filter(told -> placeOf(told.change()).isPresent()).toList();
    }

    /** Places that were told to be closed. */
    List<Told> closed() {
        return changes.stream()
                .filter(told -> told.change() instanceof Change.PlaceClosed)
                .toList();
    }

    /** The place whose ground a change is about. */
    static Optional<PlaceId> placeOf(Change change) {
        if (change instanceof Change.PlaceMoved moved) {
            return Optional.of(moved.place());
        }
        return change instanceof Change.StandsThere stands
                ? Optional.of(stands.place())
                : Optional.empty();
    }

    /** What a report changes; other words change no order, nor does wind that nobody says where it blows. */
    private static Optional<Change> change(Tap tap, Report report, Instant came) {
        if (report instanceof Report.CrewLate late) {
            return Optional.of(new Change.CrewLate(late.crew(), tap.at().plus(late.by())));
        }
        if (report instanceof Report.CrewHere here) {
            Instant since = came.isBefore(tap.at()) ? came : tap.at();
            return Optional.of(new Change.CrewHere(here.crew(), here.place(), since));
        }
        if (report instanceof Report.Heavy heavy) {
            return Optional.of(new Change.Weighed(heavy.load(), heavy.massKg()));
        }
        if (report instanceof Report.PlaceClosed closed) {
            return Optional.of(new Change.PlaceClosed(closed.place()));
        }
        if (report instanceof Report.LoadMissing missing) {
            return Optional.of(new Change.LoadDropped(missing.load()));
        }
        if (report instanceof Report.WindEarly early) {
            return Optional.of(new Change.WindEarlier(early.by()));
        }
        if (report instanceof Report.WindSeen) {
            return WindThere.seen(tap).map(wind -> wind);
        }
        return ground(report);
    }

    private static Optional<Change> ground(Report report) {
        if (report instanceof Report.PlaceMoved moved) {
            return Optional.of(
                    new Change.PlaceMoved(
                            moved.place(), moved.towardsTrueRad(), moved.byM(), moved.clearM()));
        }
        if (report instanceof Report.StandsThere stands) {
            return Optional.of(
                    new Change.StandsThere(
                            stands.place(),
                            stands.towardsTrueRad(),
                            stands.atM(),
                            stands.heightM()));
        }
        return Optional.empty();
    }

    /** Loads not weighed yet, each as much heavier than listed as those weighed so far. */
    static List<Change> heavier(Job job, FlownDay flown, Bias bias) {
        List<LoadId> hooked =
                flown.lifts().stream().flatMap(lift -> lift.loads().stream()).toList();
        List<Change> all = new ArrayList<>();
        for (Load load : job.loads()) {
            if (!hooked.contains(load.id()) && load.massKg().isPresent()) {
                double massKg = Math.ceil(load.massKg().getAsDouble() * bias.factor());
                all.add(new Change.Weighed(load.id(), massKg));
            }
        }
        return all;
    }

    /**
     * Loads that were given up because the load cell read more than they count: the order that they wait in again
     * takes them as they hung.
     *
     * @param countsKg what a load counts in the job, kg
     */
    static List<Change> readHeavier(FlownDay flown, Function<LoadId, OptionalDouble> countsKg) {
        Map<LoadId, Double> readKg = new LinkedHashMap<>();
        for (FlownLift lift : flown.lifts()) {
            if (lift.aborted() && lift.loads().size() == 1 && lift.massReadKg().isPresent()) {
                double read = Math.ceil(lift.massReadKg().getAsDouble());
                readKg.merge(lift.loads().get(0), read, Math::max);
            } else if (lift.isDone()) {
                lift.loads().forEach(readKg::remove);
            }
        }
        List<Change> all = new ArrayList<>();
        readKg.forEach(
                (load, read) -> {
                    OptionalDouble counts = countsKg.apply(load);
                    if (counts.isPresent() && read > counts.getAsDouble()) {
                        all.add(new Change.Weighed(load, read));
                    }
                });
        return List.copyOf(all);
    }

    /** What a load counts for lift before anybody weighed it on the day, kg. */
    static OptionalDouble countsKg(Job job, LoadId id) {
        return job.findLoad(id).stream()
                .filter(load -> load.massKg().isPresent())
                .mapToDouble(
                        load ->
                                load.massKg().getAsDouble()
                                        * (load.massStatus() == MassStatus.ESTIMATED
                                                ? job.rules().masses().estimatedMassFactor()
                                                : 1))
                .findFirst();
    }
}
