package underhook.planner.order;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.IntStream;
import underhook.core.job.Crew;
import underhook.core.job.PlaceId;

/** Tells where nobody gets in or out of the machine, and why: the ground is too steep, or trees stand too near. */
record Boarding(DayModel model, People people) {
    /** "A slopes 12°, 5° more than landing-slope-deg allows", both up. */
    String steepness(int place) {
        double slopeDeg = Math.toDegrees(people.slopeRad(place));
        double overDeg = slopeDeg - Math.toDegrees(model.rules.landing().landingSlopeRad());
        return model.places.get(place).id()
                + " slopes "
                + Figures.text(Math.ceil(slopeDeg), 0)
                + "°, "
                + Figures.text(Math.ceil(overDeg), 0)
                + "° more than landing-slope-deg allows";
    }

    /**
     * Of each place where a crew with a role would get in, or out for one that it serves, why it may not, as
     * sentences; empty where that is not what keeps every crew away.
     */
    List<String> listClosed(PlaceId to, Crew.Role role) {
        List<Crew> able =
                people.teams.stream()
                        .filter(crew -> !crew.stays() && crew.roles().contains(role))
                        .filter(crew -> crew.serves().isEmpty() || crew.serves().contains(to))
                        .toList();
        List<String> said = new ArrayList<>();
        if (!able.isEmpty()) {
            able.forEach(crew -> said.addAll(listClosedNear(model.place(crew.start()), "in")));
            said.addAll(listClosedNear(model.place(to), "out"));
        }
        return said.stream().distinct().toList();
    }

    /** Nothing where anybody can get in or out on level ground in the open. */
    private List<String> listClosedNear(int place, String way) {
        List<Integer> near =
                IntStream.range(0, model.places.size())
                        .filter(i -> people.mayStand(i) && isOnFoot(place, i))
                        .boxed()
                        .toList();
        return near.stream().anyMatch(people::canLand)
                ? List.of()
                : near.stream().map(i -> closed(i, way)).toList();
    }

    private boolean isOnFoot(int from, int to) {
        return people.walkS(from, to) < People.NO_WALK_S;
    }

    private String closed(int place, String way) {
        return people.isSteep(place)
                ? steepness(place) + ": nobody gets " + way + " there."
                : "At "
                        + model.places.get(place).id()
                        + " trees stand too near to get "
                        + way
                        + ".";
    }
}
