package underhook.core.plan;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import underhook.core.job.CrewId;
import underhook.core.job.PlaceId;

/** Where a crew was said to be. It holds whatever was planned, until more is said or a new order takes them on. */
public record ToldPlace(CrewId crew, PlaceId place, Instant at) {
    public ToldPlace {
        Objects.requireNonNull(crew, "crew");
        Objects.requireNonNull(place, "place");
        Objects.requireNonNull(at, "at");
    }

    /** How it stands to what was planned. */
    public enum Beside {
        /** They are there by the plan too. */
        AS_PLANNED,
        /** They were there, and were to be gone: what was to take them on was not done with them. */
        BEHIND,
        /** They are there sooner; from there they go on as planned. */
        AHEAD,
        /** They were to be there at no time. */
        ELSEWHERE
    }

    /**
     * What is meant of a crew's lines.
     *
     * @param line the stay there, by number; of no meaning where they were to be there at no time
     */
    public record Found(Beside beside, int line) {}

    /**
     * Finds the place in a crew's lines: their stay there then, else the last one before, else the first one after.
     *
     * @param lines of this crew, in time order
     */
    public Found findIn(List<CrewStay> lines) {
        int before = -1;
        int after = -1;
        for (int i = 0; i < lines.size(); i++) {
            CrewStay line = lines.get(i);
            if (line.isAt(place, at)) {
                return new Found(Beside.AS_PLANNED, i);
            }
            if (!line.isOnTheWay() && line.place().equals(place)) {
                before = line.fromAt().isAfter(at) ? before : i;
                after = after < 0 && line.fromAt().isAfter(at) ? i : after;
            }
        }
        if (before >= 0) {
            return new Found(Beside.BEHIND, before);
        }
        return after >= 0
                ? new Found(Beside.AHEAD, after)
                : new Found(Beside.ELSEWHERE, lines.size());
    }

    /** A crew's lines up to then as planned; what it was about to come to is not known any more. */
    public List<CrewStay> before(List<CrewStay> lines) {
        List<CrewStay> all = new ArrayList<>();
        for (CrewStay line : lines) {
            if (!line.toAt().isAfter(at)) {
                all.add(line);
            } else if (line.fromAt().isBefore(at) && !line.isOnTheWay()) {
                all.add(new CrewStay(line.crew(), line.place(), line.fromAt(), at, line.doing()));
            }
        }
        return all;
    }

    /**
     * A crew's lines as they are then: there from that time on.
     *
     * @param lines as planned
     * @param before what holds of them from before
     * @param until how long it is there, where nothing planned holds from there on
     */
    public List<CrewStay> in(List<CrewStay> lines, List<CrewStay> before, Instant until) {
        Found found = findIn(lines);
        if (found.beside() == Beside.AS_PLANNED) {
            return lines;
        }
        List<CrewStay> all = new ArrayList<>(before);
        Instant there = at;
        if (!all.isEmpty() && all.get(all.size() - 1).toAt().isAfter(there)) {
            there = all.get(all.size() - 1).toAt();
        }
        boolean goesOn = found.beside() == Beside.AHEAD;
        Instant end = goesOn ? lines.get(found.line()).toAt() : until;
        String doing = goesOn ? lines.get(found.line()).doing() : "works and waits";
        all.add(new CrewStay(crew, place, there, end.isAfter(there) ? end : there, doing));
        if (goesOn) {
            all.addAll(lines.subList(found.line() + 1, lines.size()));
        }
        return all;
    }
}
