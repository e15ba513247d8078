package underhook.app.calc;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import underhook.app.port.NearestWord;
import underhook.app.port.ReferenceSystem;
import underhook.app.port.ReferenceSystems;
import underhook.core.finding.Finding;
import underhook.core.finding.FindingCode;
import underhook.core.finding.Outcome;
import underhook.core.finding.Severity;
import underhook.core.geo.GeoPoint;

/**
 * Answers one calculation by hand.
 *
 * <p>Flags come without their dashes and as typed. The answer holds numbers as {@link Double}, truth values,
 * text, ISO times with offset, lists of such answers, and under {@code how} the formulas with the keys of their sources; a null
 * value says that there is none (no sunrise on that day). Findings beside an answer are remarks.
 */
public final class Calc {
    private final List<Topic> topics;

    /**
     * @param systems turns coordinates
     * @param reports decodes METAR and TAF
     */
    public Calc(ReferenceSystems systems, ReportDecoder reports) {
        List<Topic> all = new ArrayList<>();
        all.addAll(AirTopics.ALL);
        all.addAll(LineTopics.ALL);
        all.addAll(HangTopics.ALL);
        all.addAll(PoleTopics.ALL);
        all.add(
                new Topic(
                        "point",
                        List.of(
                                Flag.of("from", Flag.Kind.TEXT),
                                Flag.of("x", Flag.Kind.NUMBER),
                                Flag.of("y", Flag.Kind.NUMBER),
                                Flag.of("to", Flag.Kind.TEXT)),
                        flags -> point(systems, flags)));
        all.add(
                new Topic(
                        "report",
                        List.of(Flag.of("text", Flag.Kind.TEXT)),
                        flags -> reports.decode(flags.text("text"))));
        topics = List.copyOf(all);
    }

    /** Names of all topics, in the order of the help. */
    public List<String> listTopics() {
        return topics.stream().map(Topic::name).toList();
    }

    /**
     * The flags of a topic for the help, optional ones in brackets.
     *
     * @throws IllegalArgumentException if there is no such topic
     */
    public List<String> listFlags(String topic) {
        return topics.stream()
                .filter(each -> each.name().equals(topic))
                .findFirst()
                .orElseThrow(() -> new IllegalArgumentException("no topic " + topic))
                .flags()
                .stream()
                .map(flag -> flag.required() ? flag.name() : "[" + flag.name() + "]")
                .toList();
    }

    /**
     * Runs one topic.
     *
     * @param topic one of {@link #listTopics}
     * @param flags name without dashes, and text as typed
     * @return the answer; refused with FIELD_UNKNOWN, FIELD_MISSING, FIELD_UNREADABLE or
     *     VALUE_OUT_OF_RANGE for what was typed (all at once), or with the calculation's own finding
     */
    public Outcome<Map<String, Object>> run(String topic, Map<String, String> flags) {
        for (Topic known : topics) {
            if (known.name().equals(topic)) {
                return Flags.read(topic, known.flags(), flags)
                        .fold((read, remarks) -> calculate(known, read), Outcome::refused);
            }
        }
        String perhaps =
                NearestWord.find(topic, listTopics())
                        .map(word -> " Perhaps " + word + ".")
                        .orElse("");
        return Outcome.refused(
                new Finding(
                        FindingCode.FIELD_UNKNOWN,
                        Severity.STOP,
                        "topic",
                        topic,
                        String.join(" ", listTopics()),
                        "",
                        "calc",
                        "There is no topic " + topic + "." + perhaps));
    }

    /**
     * Each flag is within its range here; what is left are values that do not go together, which the
     * formula itself refuses with the name, the value and the rule.
     */
    private static Outcome<Map<String, Object>> calculate(Topic topic, Flags flags) {
        try {
            return topic.work().apply(flags);
        } catch (IllegalArgumentException e) {
            return Outcome.refused(
                    Finding.of(
                            FindingCode.VALUE_OUT_OF_RANGE,
                            Severity.STOP,
                            topic.name(),
                            "calc " + topic.name(),
                            String.valueOf(e.getMessage())));
        }
    }

    private static Outcome<Map<String, Object>> point(ReferenceSystems systems, Flags flags) {
        Outcome<ReferenceSystem> from = systems.find(flags.text("from"));
        Outcome<ReferenceSystem> to = systems.find(flags.text("to"));
        List<Finding> faults = new ArrayList<>();
        if (!from.isDone()) {
            faults.addAll(from.findings());
        }
        if (!to.isDone()) {
            faults.addAll(to.findings());
        }
        if (!faults.isEmpty()) {
            return Outcome.refused(faults);
        }
        GeoPoint place = from.getValue().toGeo(flags.number("x"), flags.number("y"));
        ReferenceSystem.Xy result = to.getValue().fromGeo(place);
        return new Answer()
                .with("x", result.x())
                .with("y", result.y())
                .with("latDeg", place.latDeg())
                .with("lonDeg", place.lonDeg())
                .from(from.getValue().name() + " to " + to.getValue().name(), "EPSG")
                .done();
    }
}
