package underhook.planner.order;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import underhook.core.job.Crew;
import underhook.core.job.PlaceId;

/**
 * Tells who is not flown, and where nobody gets in or out of the machine, and why: too many or too heavy for it, the
 * ground too steep, or trees too near.
 */
record Boarding(DayModel model, People people) {
    private static final int LINE_OFF = -1;

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
        List<Crew> able = able(to, role);
        List<String> said = new ArrayList<>();
        if (!able.isEmpty()) {
            able.forEach(crew -> said.addAll(listClosedNear(model.place(crew.start()), "in")));
            said.addAll(listClosedNear(model.place(to), "out"));
        }
        return said.stream().distinct().toList();
    }

    private List<Crew> able(PlaceId to, Crew.Role role) {
        return people.teams.stream()
                .filter(crew -> !crew.stays() && crew.roles().contains(role))
                .filter(crew -> crew.serves().isEmpty() || crew.serves().contains(to))
                .toList();
    }

    /**
     * Of every crew with a role that serves a place, from where to where it would have to be flown though no way leads
     * there at any hour, as "A to H"; empty where one may walk or be flown.
     */
    List<String> listNoWays(PlaceId to, Crew.Role role) {
        int place = model.place(to);
        List<Integer> outs = landings(place);
        List<String> none = new ArrayList<>();
        for (Crew crew : able(to, role)) {
            int start = model.place(crew.start());
            if (isOnFoot(start, place)) {
                return List.of();
            }
            if (outs.stream().anyMatch(out -> isFlownTo(crew, out))) {
                return List.of();
            }
            for (int in : landings(start)) {
                outs.forEach(
                        out ->
                                none.add(
                                        model.places.get(in).id()
                                                + " to "
                                                + model.places.get(out).id()));
            }
        }
        return none.stream().distinct().toList();
    }

    /** Whether a way leads at some hour from where a crew may get in to where it would get out. */
    boolean isFlownTo(Crew crew, int out) {
        return landings(model.place(crew.start())).stream()
                .anyMatch(in -> in == out || flies(in, out));
    }

    /** Whether the machine may fly from a place to any other at some hour with the line off. */
    boolean fliesAnywhere(int from) {
        return IntStream.range(0, model.places.size())
                .anyMatch(to -> to != from && flies(from, to));
    }

    /** Whether the machine may fly from place to place at some hour with the line off. */
    private boolean flies(int from, int to) {
        return IntStream.range(0, model.air().slots.size())
                .anyMatch(slot -> model.legs().emptyLeg(from, to, LINE_OFF, slot).isPresent());
    }

    /** Places on foot from here where people may get in or out. */
    private List<Integer> landings(int place) {
        return IntStream.range(0, model.places.size())
                .filter(i -> people.canLand(i) && isOnFoot(place, i))
                .boxed()
                .toList();
    }

    /** Why each crew with a role that serves a place is never flown, as sentences; empty where one may be. */
    List<String> listUnflown(PlaceId to, Crew.Role role) {
        List<Optional<String>> why = able(to, role).stream().map(this::findUnflown).toList();
        return why.stream().allMatch(Optional::isPresent)
                ? why.stream().flatMap(Optional::stream).toList()
                : List.of();
    }

    /** Why a crew is never flown, as a sentence; empty where it may be. */
    Optional<String> findUnflown(Crew crew) {
        double leastKg =
                model.machine.burnKgPerS()
                                * (model.machine.reserveS()
                                        + model.rules.refuelling().contingencyS())
                        + model.machine.fuelGaugeSpreadKg();
        if (crew.people() > model.machine.seats()) {
            return Optional.of(crew.id() + " has more people than there are seats.");
        }
        if (massFuelKg(crew) < leastKg) {
            return Optional.of(
                    "With " + crew.id() + " and the reserve aboard the machine is too heavy.");
        }
        return mostFuelKg(crew) < leastKg
                ? Optional.of(
                        "With "
                                + crew.id()
                                + " aboard the centre of gravity leaves its limits at some fuel"
                                + " between the reserve and the least it is flown with.")
                : Optional.empty();
    }

    /** Most fuel to read with a crew aboard, kg; below 0 where it is too heavy. */
    double mostFuelKg(Crew crew) {
        BalancedFuel fuel = model.balancedFuel();
        double balancedKg = fuel.readKg(fuel.withPeopleKg(crew.people() * crew.massEachKg()));
        return Math.min(massFuelKg(crew), balancedKg);
    }

    private double massFuelKg(Crew crew) {
        return model.machine.maxInternalMassKg()
                - model.operatingMassKg()
                - crew.people() * crew.massEachKg()
                - model.machine.fuelGaugeSpreadKg();
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
