package underhook.planner.order;

import java.util.Collections;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.function.IntPredicate;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import underhook.core.finding.Finding;
import underhook.core.finding.FindingCode;
import underhook.core.finding.Severity;
import underhook.core.job.WindLimit;
import underhook.core.unit.Units;

/** Says at which end of a trip, and by how much, no hour's air lets it be flown. */
final class NoAir {
    private final DayModel model;

    NoAir(DayModel model) {
        this.model = model;
    }

    /** Every hour is over a limit of the wind; told is the one that is least over. */
    Finding sayWind(Trip trip, String load) {
        Over least =
                slots().mapToObj(slot -> over(trip, slot))
                        .flatMap(Optional::stream)
                        .min(Comparator.comparingDouble(Over::overRatio))
                        .orElseThrow();
        return new Finding(
                FindingCode.WIND_LIMIT,
                Severity.STOP,
                load,
                // Told apart from its limit however little it is over.
                Figures.text(Math.ceil(10 * Units.mPerSToKt(least.valueMPerS())) / 10, 1),
                Figures.text(Units.mPerSToKt(least.limitMPerS()), 1),
                "kt",
                "rules",
                "The wind at " + name(least.place()) + " is over its limit all day.");
    }

    /** In each hour that wind and ways leave, one end or the other is outside the table; told is the one least so. */
    Finding sayChart(Trip trip, String load, IntPredicate isCalm) {
        DayAir air = model.air();
        List<Integer> ends = List.of(trip.from(), trip.to());
        List<Integer> beyond =
                slots().filter(isCalm)
                        .boxed()
                        .filter(at -> ends.stream().anyMatch(end -> !air.isInChart(end, at)))
                        .toList();
        int slot =
                Collections.min(
                        beyond,
                        Comparator.comparingDouble(
                                at ->
                                        Math.max(
                                                air.beyondChartFraction(trip.from(), at),
                                                air.beyondChartFraction(trip.to(), at))));
        int place =
                Collections.max(
                        ends,
                        Comparator.comparingDouble(end -> air.beyondChartFraction(end, slot)));
        String names =
                ends.stream()
                        .distinct()
                        .filter(end -> beyond.stream().anyMatch(at -> !air.isInChart(end, at)))
                        .map(this::name)
                        .collect(Collectors.joining(", "));
        Finding found = air.rangeFinding(load, place, slot);
        return new Finding(
                FindingCode.CHART_RANGE,
                Severity.STOP,
                load,
                found.value(),
                found.limit(),
                found.unit(),
                found.source(),
                "The air at "
                        + names
                        + " lies outside the hover table in every hour that wind and ways leave: at best, at "
                        + name(place)
                        + ", "
                        + air.sayBeyondChart(place, slot)
                        + ".");
    }

    private String name(int place) {
        return model.places.get(place).id().value();
    }

    private IntStream slots() {
        return IntStream.range(0, model.air().slots.size());
    }

    /** What is farthest over in an hour, at either end, for any of the loads. */
    private Optional<Over> over(Trip trip, int slot) {
        return trip.kinds().stream()
                .flatMap(
                        kind ->
                                Stream.of(trip.from(), trip.to())
                                        .flatMap(place -> at(place, slot, kind.windLimit())))
                .max(Comparator.comparingDouble(Over::overRatio));
    }

    private Stream<Over> at(int place, int slot, WindLimit limit) {
        DayAir.Slot air = model.air().slots.get(slot);
        double exposureFactor = model.places.get(place).exposureFactor();
        return Stream.of(
                new Over(place, air.windMPerS() * exposureFactor, limit.meanMPerS()),
                new Over(place, air.gustMPerS() * exposureFactor, limit.gustMPerS()),
                new Over(place, air.spreadMPerS() * exposureFactor, limit.spreadMPerS()));
    }

    private record Over(int place, double valueMPerS, double limitMPerS) {
        double overRatio() {
            return valueMPerS / limitMPerS;
        }
    }
}
