package underhook.planner.order;

import static underhook.planner.order.DoneSteps.later;

import java.time.Instant;
import java.util.Comparator;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import underhook.core.job.Crew;
import underhook.core.job.CrewId;
import underhook.core.job.Job;
import underhook.core.job.PlaceId;
import underhook.core.plan.Anew;
import underhook.core.plan.CrewStay;
import underhook.core.plan.Plan;
import underhook.core.plan.ToldPlace;

/** Where crews are planned to be and were said to be. */
final class ToldCrews {
    private final Job job;
    private final Plan record;
    private final Standing now;

    ToldCrews(Job job, Plan record, Standing now) {
        this.job = job;
        this.record = record;
        this.now = now;
    }

    /** Lines of the plan of record, in time order. */
    List<CrewStay> planned(CrewId crew) {
        return record.crews().stream()
                .filter(stay -> stay.crew().equals(crew))
                .sorted(Comparator.comparing(CrewStay::fromAt))
                .toList();
    }

    /**
     * Where a crew was said to be, the newest of it, once it is in its hours; who was said to be somewhere and that was
     * taken back is where it was before. Of who stays at its place all day the files alone say where it works.
     */
    Optional<ToldPlace> find(Crew crew) {
        if (crew.stays()) {
            return Optional.empty();
        }
        Optional<ToldPlace> said = said(crew);
        Optional<ToldPlace> back =
                takenBack(crew)
                        .filter(gone -> said.filter(one -> one.at().isAfter(gone.at())).isEmpty());
        return back.map(gone -> new ToldPlace(crew.id(), before(crew, gone.at()), gone.at()))
                .or(() -> said)
                .map(
                        one ->
                                new ToldPlace(
                                        one.crew(),
                                        one.place(),
                                        later(one.at(), crew.availableFrom())));
    }

    /** The newest that was said of a crew, counted or not. */
    Optional<ToldPlace> said(Crew crew) {
        return now.told().stream()
                .filter(one -> one.crew().equals(crew.id()))
                .reduce((one, other) -> other.at().isBefore(one.at()) ? one : other);
    }

    /** What the plan of record was told and is told no more; of a day that nobody tells all of it still counts. */
    Optional<ToldPlace> takenBack(Crew crew) {
        List<ToldPlace> known =
                now.log() == Standing.Log.AS_PLANNED
                        ? List.of()
                        : record.summary().anew().map(Anew::told).orElse(List.of());
        return known.stream()
                .filter(one -> one.crew().equals(crew.id()))
                .filter(one -> now.told().stream().noneMatch(said -> isOne(crew, said, one)))
                .findFirst();
    }

    /** Who was said to be there before its hours counts from their begin. */
    private static boolean isOne(Crew crew, ToldPlace said, ToldPlace known) {
        return said.crew().equals(known.crew())
                && said.place().equals(known.place())
                && later(said.at(), crew.availableFrom()).equals(known.at());
    }

    /** Where a crew was planned to be last before a time. */
    PlaceId before(Crew crew, Instant at) {
        return planned(crew.id()).stream()
                .filter(stay -> !stay.isOnTheWay() && stay.fromAt().isBefore(at))
                .reduce((one, other) -> other)
                .map(CrewStay::place)
                .orElse(crew.start());
    }

    /** Where those who are moved are said to be, as it counts, and what the plan of record was told before. */
    List<ToldPlace> all() {
        Set<ToldPlace> all = new LinkedHashSet<>();
        record.summary().anew().ifPresent(anew -> all.addAll(anew.told()));
        for (Crew crew : job.crews()) {
            if (takenBack(crew).isEmpty() && said(crew).isPresent()) {
                find(crew).ifPresent(all::add);
            }
        }
        return List.copyOf(all);
    }

    /** Whether somebody who stays at one place by the files was said to be at another. */
    boolean isElsewhere(Crew crew) {
        return crew.stays()
                && said(crew).filter(one -> !one.place().equals(crew.start())).isPresent();
    }
}
