package underhook.adapter.paper;

import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import underhook.core.finding.Finding;
import underhook.core.finding.FindingCode;
import underhook.core.finding.Severity;
import underhook.core.plan.Drop;
import underhook.core.plan.Leg;
import underhook.core.plan.Plan;
import underhook.core.plan.Rotation;

/** What was found about the loads, places and ways of a lift, in the few words of the card. */
final class PilotWarnings {
    static final String MARK = "▲";

    /** The card says these with their place and time, or beside the load's kind. */
    private static final Set<FindingCode> SAID =
            EnumSet.of(
                    FindingCode.ROAD_CROSSING,
                    FindingCode.TRAIL_CROSSING,
                    FindingCode.WIRE_CROSSING,
                    FindingCode.RELEASE_CLOSED,
                    FindingCode.RELEASE_UNNAMED,
                    FindingCode.MASS_ESTIMATED);

    private final Plan plan;

    PilotWarnings(Plan plan) {
        this.plan = plan;
    }

    /**
     * Those of one lift. What is about a place or a way stands with the first lift there.
     *
     * @param seen subjects that stand on the card already; grows
     */
    List<String> list(Rotation rotation, Set<String> seen) {
        List<String> subjects =
                Stream.of(
                                rotation.loads().stream().map(Object::toString),
                                rotation.drops().stream().map(Drop::place).map(Object::toString),
                                rotation.legs().stream().map(PilotWarnings::way))
                        .flatMap(each -> each)
                        .distinct()
                        .filter(seen::add)
                        .toList();
        String words =
                of(subjects).map(PilotWarnings::word).distinct().collect(Collectors.joining(", "));
        List<String> all = new ArrayList<>();
        if (!words.isEmpty()) {
            all.add(MARK + " " + words);
        }
        all.addAll(openEnds(rotation, seen));
        return all;
    }

    /** Where the file of a wire ends and the wire does not, a way round its end crosses it. */
    private List<String> openEnds(Rotation rotation, Set<String> seen) {
        return rotation.legs().stream()
                .flatMap(leg -> leg.wires().stream())
                .map(Leg.WirePass::wire)
                .distinct()
                .filter(
                        wire ->
                                plan.findings().stream()
                                        .filter(one -> one.code() == FindingCode.WIRE_END)
                                        .anyMatch(one -> one.subject().equals(wire)))
                .filter(wire -> seen.add(FindingCode.WIRE_END + wire))
                .map(wire -> MARK + " past an END of " + wire + ": does it go on there")
                .toList();
    }

    /** As findings name a way. */
    static String way(Leg leg) {
        return leg.from() + "-" + leg.to();
    }

    private Stream<Finding> of(List<String> subjects) {
        return plan.findings().stream()
                .filter(finding -> finding.severity() != Severity.NOTE)
                .filter(finding -> !SAID.contains(finding.code()))
                .filter(finding -> subjects.contains(finding.subject()));
    }

    private static String word(Finding finding) {
        String words = Words.words(finding.code().name());
        boolean hasBallast = finding.code() == FindingCode.BALLAST_ADDED;
        return hasBallast ? words + " " + finding.value() + " " + finding.unit() : words;
    }
}
