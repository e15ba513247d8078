package underhook.core.job;

import java.time.Instant;
import java.util.EnumSet;
import java.util.List;
import java.util.Set;
import java.util.stream.IntStream;

/**
 * People who work together: a guy team, a loader, a driller. No names.
 *
 * @param people how many
 * @param massEachKg one person with kit, kg
 * @param start where they are at first
 * @param availableFrom from when they can work or be moved
 * @param roles what they may do
 * @param stays whether they stay where they are all day
 * @param serves sites that they may work at; empty means every site
 * @param language of what is printed for them
 */
public record Crew(
        CrewId id,
        int people,
        double massEachKg,
        PlaceId start,
        Instant availableFrom,
        Set<Role> roles,
        boolean stays,
        List<PlaceId> serves,
        Language language) {
    /** What a crew may do. */
    public enum Role {
        /** Trained to hook loads up. */
        HOOK,
        /** Receives loads and signals. */
        RECEIVE,
        /** Guys poles. */
        GUY,
        /** Refuels the machine. */
        REFUEL
    }

    public Crew {
        roles = roles.isEmpty() ? Set.of() : Set.copyOf(EnumSet.copyOf(roles));
        serves = List.copyOf(serves);
        if (!(people > 0 && massEachKg > 0)) {
            throw new IllegalArgumentException("crew " + id + " needs people and their mass.");
        }
    }

    /** What its people are called on the day: by number, never by name. */
    public List<String> names() {
        return people == 1
                ? List.of(id.value())
                : IntStream.rangeClosed(1, people).mapToObj(number -> id + " " + number).toList();
    }

    /** The same with one place instead of another, to stand at and to work at. */
    public Crew withInstead(PlaceId place, PlaceId other) {
        return new Crew(
                id,
                people,
                massEachKg,
                start.equals(place) ? other : start,
                availableFrom,
                roles,
                stays,
                serves.stream().map(one -> one.equals(place) ? other : one).toList(),
                language);
    }
}
