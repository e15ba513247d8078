package underhook.planner.order;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import underhook.core.finding.Finding;
import underhook.core.finding.FindingCode;
import underhook.core.finding.Severity;
import underhook.core.job.CrossingRule;
import underhook.core.job.MapFeature;
import underhook.core.job.Wire;
import underhook.planner.route.FlownLeg;

/**
 * What loads pass over: once for each leg, and what leg after leg of one laydown passes over in a town once
 * for that laydown.
 */
final class Crossings {
    /** More roads on one leg than these are told together. */
    private static final int EACH_TOLD = 3;

    private final DayModel model;

    /** By the place of the load and the thing: the places it goes to. */
    private final Map<String, TreeMap<String, TreeSet<String>>> byStart = new TreeMap<>();

    Crossings(DayModel model) {
        this.model = model;
    }

    void add(Trip trip, FlownLeg leg) {
        String from = model.places.get(trip.from()).id().value();
        String to = model.places.get(trip.to()).id().value();
        for (FlownLeg.Crossed crossed : leg.crossings()) {
            byStart.computeIfAbsent(from, unused -> new TreeMap<>())
                    .computeIfAbsent(crossed.feature(), unused -> new TreeSet<>())
                    .add(to);
        }
    }

    List<Finding> list() {
        List<Finding> all = new ArrayList<>();
        byStart.forEach(
                (from, things) -> {
                    boolean together = things.size() > EACH_TOLD;
                    things.forEach(
                            (id, ends) -> {
                                if (together) {
                                    String first = from + "-" + ends.first();
                                    tell(first, id, ways(from, ends)).ifPresent(all::add);
                                } else {
                                    ends.forEach(
                                            to ->
                                                    tell(from + "-" + to, id, "")
                                                            .ifPresent(all::add));
                                }
                            });
                });
        return all;
    }

    private static String ways(String from, Set<String> ends) {
        return ends.size() == 1
                ? ""
                : " on the ways from " + from + " to " + String.join(", ", ends);
    }

    private Optional<Finding> tell(String leg, String id, String ways) {
        for (MapFeature feature : model.job.features()) {
            if (feature.id().equals(id)) {
                return Optional.of(feature(leg, feature, ways));
            }
        }
        for (Wire wire : model.job.wires()) {
            if (wire.id().equals(id)) {
                return Optional.of(wire(leg, wire, ways));
            }
        }
        return Optional.empty();
    }

    private static Finding feature(String leg, MapFeature feature, String ways) {
        boolean guarded = feature.crossing() == CrossingRule.GUARDED;
        return Finding.of(
                feature.kind() == MapFeature.Kind.TRAIL
                        ? FindingCode.TRAIL_CROSSING
                        : FindingCode.ROAD_CROSSING,
                guarded ? Severity.CAUTION : Severity.NOTE,
                leg,
                feature.source(),
                "Loads pass over "
                        + feature.id()
                        + ways
                        + (guarded
                                ? ": only while it is guarded. Perhaps another laydown avoids it."
                                : "."));
    }

    private static Finding wire(String leg, Wire wire, String ways) {
        return new Finding(
                FindingCode.WIRE_CROSSING,
                Severity.CAUTION,
                leg,
                "",
                Figures.text(Math.ceil(wire.crossingAboveM() - 1e-6), 0),
                "m",
                wire.source(),
                "Loads pass over "
                        + wire.id()
                        + ways
                        + " by agreement"
                        + (wire.crossing() == CrossingRule.GUARDED
                                ? ", only while it is guarded"
                                : "")
                        + ", near a right angle and high above it; letting go is no option there. The"
                        + " line owner decides.");
    }
}
