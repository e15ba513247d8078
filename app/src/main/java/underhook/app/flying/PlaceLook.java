package underhook.app.flying;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import underhook.core.aircraft.Downwash;
import underhook.core.flown.FlownDay;
import underhook.core.flown.Tap;
import underhook.core.flown.TapKind;
import underhook.core.job.Crew;
import underhook.core.job.Job;
import underhook.core.job.Place;
import underhook.core.job.PlaceId;
import underhook.core.plan.CrewStay;
import underhook.core.plan.Drop;
import underhook.core.plan.Plan;
import underhook.core.plan.PoleSetting;

/**
 * What the people at one place must know.
 *
 * @param stays who is to be here, with every stay of the day
 * @param comes what is still to be set down here, next first
 * @param goes what is still to be hooked here, next first
 * @param poles how each pole that is set here is held
 * @param keepOffM how far loose things and people without a task keep off, m, rounded up
 * @param downwashMPerS wind under the machine by estimate, m/s; empty where nothing comes or goes and none was
 *     worked out
 * @param briefed who had the briefing, by name on the day
 */
public record PlaceLook(
        Place place,
        List<Stay> stays,
        List<Arrival> comes,
        List<LiftState> goes,
        List<Pole> poles,
        double keepOffM,
        OptionalDouble downwashMPerS,
        List<String> briefed) {
    /** A crew's stay here. */
    public record Stay(Crew crew, CrewStay stay) {}

    /** A load that comes here. */
    public record Arrival(LiftState lift, Drop drop) {}

    /**
     * A pole with who holds which guy.
     *
     * @param hands for each guy a person of the crew, as a proposal; fewer than guys when people lack
     * @param signals who is left to lead and signal; empty when nobody is
     */
    public record Pole(PoleSetting setting, List<String> hands, Optional<String> signals) {
        public Pole {
            hands = List.copyOf(hands);
        }
    }

    public PlaceLook {
        stays = List.copyOf(stays);
        comes = List.copyOf(comes);
        goes = List.copyOf(goes);
        poles = List.copyOf(poles);
        briefed = List.copyOf(briefed);
    }

    /** A place of the day's plan. */
    public static PlaceLook of(Job job, Plan plan, PlaceId id, FlownDay flown) {
        List<Stay> stays =
                plan.crews().stream()
                        .filter(stay -> stay.place().equals(id))
                        .flatMap(
                                stay ->
                                        job.crews().stream()
                                                .filter(crew -> crew.id().equals(stay.crew()))
                                                .map(crew -> new Stay(crew, stay)))
                        .toList();
        List<Arrival> comes = new ArrayList<>();
        List<LiftState> goes = new ArrayList<>();
        for (LiftState lift : LiftState.of(job, plan, flown)) {
            if (lift.state() == LiftState.State.DONE) {
                continue;
            }
            lift.lift().rotation().drops().stream()
                    .filter(drop -> drop.place().equals(id))
                    .forEach(drop -> comes.add(new Arrival(lift, drop)));
            // What hangs there already is no longer to be hooked.
            if (lift.isAhead() && lift.step().hookedUpAt().equals(id)) {
                goes.add(lift);
            }
        }
        OptionalDouble downMPerS =
                plan.rooms().stream()
                        .filter(room -> room.place().equals(id))
                        .flatMap(room -> room.lines().stream())
                        .mapToDouble(line -> line.cost().downwashMPerS())
                        .max();
        return new PlaceLook(
                job.getPlace(id),
                stays,
                comes,
                goes,
                plan.poles().stream()
                        .filter(pole -> pole.place().equals(id))
                        .map(pole -> pole(pole, stays, plan))
                        .toList(),
                Math.ceil(Downwash.keepOffM(job.machine().rotorRadiusM())),
                downMPerS,
                briefed(flown));
    }

    /** Guys go to the crew's people in turn, the last of them leads and signals. */
    private static Pole pole(PoleSetting setting, List<Stay> stays, Plan plan) {
        Optional<Instant> releasedAt =
                plan.steps().stream()
                        .flatMap(step -> step.rotation().stream())
                        .flatMap(rotation -> rotation.drops().stream())
                        .filter(drop -> drop.load().equals(setting.load()))
                        .map(Drop::releasedAt)
                        .findFirst();
        List<String> people =
                stays.stream()
                        .filter(stay -> stay.crew().roles().contains(Crew.Role.GUY))
                        .filter(stay -> releasedAt.filter(at -> isDuring(stay, at)).isPresent())
                        .flatMap(stay -> stay.crew().names().stream())
                        .distinct()
                        .toList();
        int guys = setting.guys().size();
        return new Pole(
                setting,
                people.subList(0, Math.min(guys, people.size())),
                people.size() > guys
                        ? Optional.of(people.get(people.size() - 1))
                        : Optional.empty());
    }

    private static boolean isDuring(Stay stay, Instant at) {
        return stay.stay().isAt(stay.stay().place(), at);
    }

    private static List<String> briefed(FlownDay flown) {
        return flown.taps().stream()
                .filter(tap -> tap.kind() == TapKind.BRIEFED)
                .map(Tap::by)
                .distinct()
                .sorted()
                .toList();
    }
}
