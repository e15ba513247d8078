package underhook.app.flying;

import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.BiFunction;
import java.util.regex.MatchResult;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import underhook.app.replan.Change;
import underhook.core.flown.FlownDay;
import underhook.core.flown.Tap;
import underhook.core.flown.TapKind;
import underhook.core.job.CrewId;
import underhook.core.job.Job;
import underhook.core.job.Load;
import underhook.core.job.LoadId;
import underhook.core.job.PlaceId;

/** What people told in the day that changes it: the notes of their reports, read. */
final class ToldChanges {
    /** How a report begins its sentence, and what it means. */
    private record Way(Pattern said, BiFunction<MatchResult, Tap, Change> means) {}

    private static final List<Way> WAYS =
            List.of(
                    new Way(
                            Pattern.compile("late (\\S+) ([0-9]{1,3})"),
                            (said, tap) ->
                                    new Change.CrewLate(
                                            new CrewId(said.group(1)),
                                            tap.at().plus(minutes(said.group(2))))),
                    new Way(
                            Pattern.compile("heavy (\\S+) ([0-9]{1,5})"),
                            (said, tap) ->
                                    new Change.Weighed(
                                            new LoadId(said.group(1)),
                                            Double.parseDouble(said.group(2)))),
                    new Way(
                            Pattern.compile("closed (\\S+)"),
                            (said, tap) -> new Change.PlaceClosed(new PlaceId(said.group(1)))),
                    new Way(
                            Pattern.compile("missing (\\S+)"),
                            (said, tap) -> new Change.LoadDropped(new LoadId(said.group(1)))),
                    new Way(
                            Pattern.compile("early ([0-9]{1,3})"),
                            (said, tap) -> new Change.WindEarlier(minutes(said.group(1)))));

    private ToldChanges() {}

    private static Duration minutes(String text) {
        return Duration.ofMinutes(Long.parseLong(text));
    }

    /** A change with the tap that told it. */
    record Told(Tap tap, Change change) {}

    /** All that count, in the order in which they were told; what names nothing of the job is left out. */
    static List<Told> of(Job job, FlownDay flown) {
        List<Told> all = new ArrayList<>();
        for (Tap tap : flown.taps()) {
            if (tap.kind() == TapKind.REPORTED) {
                find(tap)
                        .filter(change -> isOf(job, change))
                        .ifPresent(change -> all.add(new Told(tap, change)));
            }
        }
        return all;
    }

    private static Optional<Change> find(Tap tap) {
        for (Way way : WAYS) {
            Matcher said = way.said().matcher(tap.note());
            if (said.matches()) {
                return Optional.of(way.means().apply(said, tap));
            }
        }
        return Optional.empty();
    }

    private static boolean isOf(Job job, Change change) {
        if (change instanceof Change.CrewLate late) {
            return job.crews().stream().anyMatch(crew -> crew.id().equals(late.crew()));
        }
        if (change instanceof Change.Weighed weighed) {
            return job.findLoad(weighed.load()).isPresent() && weighed.massKg() > 0;
        }
        if (change instanceof Change.PlaceClosed closed) {
            return job.findPlace(closed.place()).isPresent();
        }
        if (change instanceof Change.LoadDropped dropped) {
            return job.findLoad(dropped.load()).isPresent();
        }
        return true;
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
}
