package underhook.app.flying;

import java.io.IOException;
import java.time.Duration;
import java.time.Instant;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import underhook.app.port.EmergencyPlan;
import underhook.app.port.ReferenceSystem;
import underhook.app.port.RescuePoint;
import underhook.core.flown.FlownDay;
import underhook.core.flown.Tap;
import underhook.core.flown.TapKind;
import underhook.core.job.Crew;
import underhook.core.job.Job;
import underhook.core.job.Place;
import underhook.core.job.PlaceId;
import underhook.core.plan.CrewStay;
import underhook.core.plan.Plan;

/**
 * What whoever must call for help at a place needs, without network and without asking anybody.
 *
 * @param point the place, what runs near it and where to land
 * @param plan what the job states; what it does not state is missing and said to be
 * @param people who is to be here now
 * @param coming who is on the way here, and so neither here nor where they set out
 * @param counted who was counted here last
 * @param quietS how long nobody has tapped anything, s
 * @param overdue whether that is longer than the job allows while the machine is in the air
 */
public record EmergencySheet(
        RescuePoint point,
        EmergencyPlan plan,
        List<Present> people,
        List<Coming> coming,
        Optional<Tap> counted,
        Optional<Long> quietS,
        boolean overdue) {
    /** A crew that is to be here. */
    public record Present(Crew crew, Instant untilAt) {}

    /** A crew that walks or is flown here, from where it was last and by when it is to be here. */
    public record Coming(Crew crew, PlaceId from, Instant expectedAt) {}

    /** What is asked about. */
    public record Asked(Job job, Optional<Plan> plan, FlownDay flown, EmergencyPlan emergency) {}

    public EmergencySheet {
        people = List.copyOf(people);
        coming = List.copyOf(coming);
    }

    /**
     * The sheet of a place.
     *
     * @param system of the job's places, where it is known
     */
    public static EmergencySheet of(
            Asked asked, Place place, Optional<ReferenceSystem> system, Instant now)
            throws IOException {
        FlownDay flown = asked.flown();
        List<Crew> crews = asked.job().crews();
        List<CrewStay> stays =
                CrewsThere.lines(asked.plan().map(Plan::crews).orElse(List.of()), flown, now);
        Optional<Long> quietS =
                flown.lastAt().map(at -> Math.max(0, Duration.between(at, now).toSeconds()));
        boolean overdue =
                flown.now().inTheAir()
                        && quietS.isPresent()
                        && asked.emergency().overdueS().isPresent()
                        && quietS.get() > asked.emergency().overdueS().getAsDouble();
        return new EmergencySheet(
                RescuePoint.of(
                        new RescuePoint.Asked(asked.job(), asked.plan(), asked.emergency(), system),
                        place),
                asked.emergency(),
                people(crews, stays, place.id(), now),
                coming(crews, stays, place.id(), now),
                counted(flown, place),
                quietS,
                overdue);
    }

    static List<Present> people(
            List<Crew> crews, List<CrewStay> stays, PlaceId place, Instant now) {
        return during(stays, place, now)
                .filter(stay -> !stay.isOnTheWay())
                .flatMap(stay -> of(stay, crews).map(crew -> new Present(crew, stay.toAt())))
                .toList();
    }

    static List<Coming> coming(List<Crew> crews, List<CrewStay> stays, PlaceId place, Instant now) {
        return during(stays, place, now)
                .filter(CrewStay::isOnTheWay)
                .flatMap(
                        stay ->
                                of(stay, crews)
                                        .map(
                                                crew ->
                                                        new Coming(
                                                                crew,
                                                                before(stay, stays, crew),
                                                                stay.toAt())))
                .toList();
    }

    /** Who leaves at this moment has left. */
    private static Stream<CrewStay> during(List<CrewStay> stays, PlaceId place, Instant now) {
        return stays.stream()
                .filter(stay -> stay.place().equals(place))
                .filter(stay -> !stay.fromAt().isAfter(now) && stay.toAt().isAfter(now));
    }

    private static Stream<Crew> of(CrewStay stay, List<Crew> crews) {
        return crews.stream().filter(crew -> crew.id().equals(stay.crew()));
    }

    private static PlaceId before(CrewStay way, List<CrewStay> stays, Crew crew) {
        return stays.stream()
                .filter(stay -> stay.crew().equals(crew.id()))
                .filter(stay -> !stay.toAt().isAfter(way.fromAt()))
                .max(Comparator.comparing(CrewStay::toAt))
                .map(CrewStay::place)
                .orElse(crew.start());
    }

    private static Optional<Tap> counted(FlownDay flown, Place place) {
        return flown.taps().stream()
                .filter(tap -> tap.kind() == TapKind.COUNTED)
                .filter(tap -> tap.place().filter(at -> at.equals(place.id())).isPresent())
                .reduce((earlier, later) -> later);
    }
}
