package underhook.core.flown;

import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import underhook.core.job.Crew;
import underhook.core.job.LoadId;
import underhook.core.job.PlaceId;

/**
 * Who was trained to hook loads, where the loads wait for them, and on which line.
 *
 * @param names as they are called on the day; empty when the job names nobody, and then nobody is refused
 * @param waitsAt where each load is hooked; a hook-up tapped at another place is refused
 * @param lineM the line that each load was planned on, m; a hook-up on another one is refused
 */
public record TrainedHands(
        Set<String> names, Map<LoadId, PlaceId> waitsAt, Map<LoadId, Double> lineM) {
    /** A line is told to the tenth of a metre. */
    private static final double SAME_LINE_M = 0.05;

    /** Nobody is named. */
    public static final TrainedHands UNNAMED = new TrainedHands(Set.of());

    public TrainedHands {
        names = Set.copyOf(names);
        waitsAt = Map.copyOf(waitsAt);
        lineM = Map.copyOf(lineM);
    }

    /** Where the loads wait, and on which line they were planned, is not known. */
    public TrainedHands(Set<String> names) {
        this(names, Map.of(), Map.of());
    }

    /** With everybody of each crew that is named. */
    public TrainedHands withPeopleOf(List<Crew> crews) {
        Set<String> all = new HashSet<>(names);
        crews.stream()
                .filter(crew -> names.contains(crew.id().value()))
                .forEach(crew -> all.addAll(crew.names()));
        return new TrainedHands(all, waitsAt, lineM);
    }

    boolean mayHook(String person) {
        return names.isEmpty() || names.contains(person);
    }

    /** The line that a load of the tap was planned on, m, when another one hangs there. */
    OptionalDouble findOtherLineM(Tap tap, double hangsM) {
        return tap.loads().stream()
                .flatMap(load -> Optional.ofNullable(lineM.get(load)).stream())
                .filter(planned -> Math.abs(planned - hangsM) > SAME_LINE_M)
                .mapToDouble(planned -> planned)
                .findFirst();
    }

    /** Where a load of the tap waits, when the tap states another place. */
    Optional<PlaceId> findElsewhere(Tap tap) {
        return tap.loads().stream()
                .flatMap(load -> Optional.ofNullable(waitsAt.get(load)).stream())
                .filter(place -> tap.place().filter(at -> !at.equals(place)).isPresent())
                .findFirst();
    }
}
