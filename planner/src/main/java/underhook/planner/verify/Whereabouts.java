package underhook.planner.verify;

import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import underhook.core.job.Crew;
import underhook.core.job.CrewId;
import underhook.core.job.PlaceId;
import underhook.core.plan.CrewStay;

/**
 * Where each crew is by the plan's own lines.
 *
 * <p>A line whose doing starts with "walks" or "flown" is a move: it says where nobody is counted
 * present.
 */
final class Whereabouts {
    private final Day day;
    private final Map<CrewId, List<CrewStay>> stays = new HashMap<>();
    private final Map<CrewId, List<CrewStay>> moves = new HashMap<>();

    Whereabouts(Day day) {
        this.day = day;
        day.job().crews().forEach(crew -> stays.put(crew.id(), new ArrayList<>()));
        for (CrewStay stay : day.plan().crews()) {
            (isMove(stay) ? moves : stays)
                    .computeIfAbsent(stay.crew(), id -> new ArrayList<>())
                    .add(stay);
        }
        stays.values().forEach(list -> list.sort(Comparator.comparing(CrewStay::fromAt)));
    }

    private static boolean isMove(CrewStay stay) {
        String doing = stay.doing().toLowerCase(Locale.ROOT);
        return doing.startsWith("walk") || doing.startsWith("flown");
    }

    List<CrewStay> staysOf(Crew crew) {
        return stays.getOrDefault(crew.id(), List.of());
    }

    List<CrewStay> movesOf(Crew crew) {
        return moves.getOrDefault(crew.id(), List.of());
    }

    /** Whether a crew may work at a place; which sites it serves binds at sites only. */
    boolean mayWork(Crew crew, PlaceId place) {
        return crew.serves().isEmpty()
                || crew.serves().contains(place)
                || !day.job().getPlace(place).isSite();
    }

    /** Crews of a role that are at a place, and may work there, for the whole of a time. */
    List<Crew> listPresent(Crew.Role role, PlaceId place, Instant from, Instant to) {
        return day.job().crews().stream()
                .filter(crew -> crew.roles().contains(role) && mayWork(crew, place))
                .filter(
                        crew ->
                                presentS(List.of(crew), place, from, to)
                                                >= Day.betweenS(from, to) - Tolerance.TIME_S
                                        && isAt(crew, place, from, to))
                .toList();
    }

    private boolean isAt(Crew crew, PlaceId place, Instant from, Instant to) {
        return staysOf(crew).stream()
                .anyMatch(
                        stay ->
                                stay.place().equals(place)
                                        && !stay.fromAt().isAfter(to.plusSeconds(1))
                                        && !stay.toAt().isBefore(from.minusSeconds(1)));
    }

    /** Longest time that any of the crews was at a place within a span, s. */
    double presentS(List<Crew> crews, PlaceId place, Instant from, Instant to) {
        double most = 0;
        for (Crew crew : crews) {
            double sum = 0;
            for (CrewStay stay : staysOf(crew)) {
                if (stay.place().equals(place)) {
                    Instant begin = stay.fromAt().isAfter(from) ? stay.fromAt() : from;
                    Instant end = stay.toAt().isBefore(to) ? stay.toAt() : to;
                    sum += Math.max(0, Day.betweenS(begin, end));
                }
            }
            most = Math.max(most, sum);
        }
        return most;
    }
}
