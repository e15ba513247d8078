package underhook.app.compare;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import underhook.app.port.ReadJob;
import underhook.core.job.Crew;
import underhook.core.job.Job;
import underhook.core.job.LineItem;
import underhook.core.job.Load;
import underhook.core.job.Machine;
import underhook.core.job.Place;
import underhook.core.job.PlaceId;
import underhook.core.job.PlaceKind;

/**
 * Another way to do the whole job.
 *
 * @param words what is done otherwise
 * @param assumed what has to be so for it and is not, as the files stand
 * @param job the job done so
 */
public record Alternative(Kind kind, String words, List<String> assumed, ReadJob job) {
    /** What is done otherwise. */
    public enum Kind {
        /** Nothing: the job as its files state it. */
        AS_STATED,
        /** All that lies at one laydown lies at another. */
        LAYDOWN,
        /** One line is on the machine all day. */
        LINE,
        /** Another machine flies. */
        MACHINE
    }

    public Alternative {
        assumed = List.copyOf(assumed);
    }

    /**
     * Everything that a job offers, itself first: each laydown with loads against each other one, each line
     * alone where there are two or more, each other machine.
     */
    public static List<Alternative> of(ReadJob read) {
        List<Alternative> all = new ArrayList<>();
        all.add(new Alternative(Kind.AS_STATED, "as the files state it", List.of(), read));
        Set<PlaceId> used = new LinkedHashSet<>();
        read.job().loads().stream()
                .map(Load::from)
                .filter(from -> isLaydown(read.job(), from))
                .sorted(Comparator.comparing(PlaceId::value))
                .forEach(used::add);
        for (PlaceId from : used) {
            read.job().places().stream()
                    .filter(place -> isLaydown(read.job(), place.id()) && !place.id().equals(from))
                    .forEach(place -> all.add(atOther(read, from, place)));
        }
        List<LineItem> lines = read.job().machine().lines();
        if (lines.size() > 1) {
            lines.forEach(line -> all.add(withLine(read, line)));
        }
        read.otherMachines().forEach(machine -> all.add(withMachine(read, machine)));
        return all;
    }

    private static boolean isLaydown(Job job, PlaceId id) {
        return job.findPlace(id).filter(place -> place.kind() == PlaceKind.LAYDOWN).isPresent();
    }

    /**
     * As if the owner had agreed, with what comes back too. Whoever hooks at the one all day stands at the other,
     * unless somebody there may hook.
     */
    private static Alternative atOther(ReadJob read, PlaceId from, Place other) {
        Job job = read.job();
        List<String> assumed = new ArrayList<>();
        if (!other.agreed()) {
            assumed.add("the owner of " + other.id() + " agrees to its use");
        }
        boolean isStaffed = job.crews().stream().anyMatch(crew -> hooksAllDayAt(crew, other.id()));
        List<Crew> crews = new ArrayList<>();
        for (Crew crew : job.crews()) {
            boolean isMoved = !isStaffed && hooksAllDayAt(crew, from);
            crews.add(isMoved ? crew.withInstead(from, other.id()) : crew);
            if (isMoved) {
                assumed.add(crew.id() + " stands at " + other.id());
            }
        }
        if (job.getPlace(from).fuel() && !other.fuel()) {
            assumed.add("fuel stays at " + from);
        }
        Job changed =
                job.withLoads(
                                job.loads().stream()
                                        .map(load -> load.withInstead(from, other.id()))
                                        .toList())
                        .withPlaces(
                                job.places().stream()
                                        .map(
                                                place ->
                                                        place.id().equals(other.id())
                                                                ? place.asIfAgreed()
                                                                : place)
                                        .toList())
                        .withCrews(crews);
        return new Alternative(
                Kind.LAYDOWN,
                "all that lies at " + from + " lies at " + other.id(),
                assumed,
                new ReadJob(changed, read.ground()));
    }

    private static boolean hooksAllDayAt(Crew crew, PlaceId place) {
        return crew.stays() && crew.start().equals(place) && crew.roles().contains(Crew.Role.HOOK);
    }

    private static Alternative withLine(ReadJob read, LineItem line) {
        Job job = read.job();
        return new Alternative(
                Kind.LINE,
                "line " + line.name() + " alone",
                List.of(),
                new ReadJob(
                        job.withMachine(job.machine().withLines(List.of(line))), read.ground()));
    }

    private static Alternative withMachine(ReadJob read, Machine machine) {
        return new Alternative(
                Kind.MACHINE,
                "flown by " + machine.name(),
                List.of("a minute costs what one of " + read.job().machine().name() + " costs"),
                new ReadJob(read.job().withMachine(machine), read.ground()));
    }
}
