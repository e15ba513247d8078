package underhook.adapter.paper;

import java.io.IOException;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;
import org.apache.pdfbox.pdmodel.common.PDRectangle;
import underhook.app.port.OutputWriter.Output;
import underhook.core.job.MapFeature;
import underhook.core.plan.Leg;
import underhook.core.plan.Step;

/** For whoever stops a road or a trail: every minute of the day in which something passes over it. */
final class GuardLists {
    private final Output output;
    private final Words words;

    GuardLists(Output output, Words words) {
        this.output = output;
        this.words = words;
    }

    /** Nothing for a day that passes over no road, trail or the like with the line on. */
    void draw(Book book) throws IOException {
        Map<String, Passes> passed = passed();
        if (output.readJob().job().features().stream()
                .noneMatch(feature -> passed.containsKey(feature.id()))) {
            return;
        }
        Flow flow = new Flow(book, PDRectangle.A4, "Guards");
        flow.paragraph(
                Face.STRONG,
                "No guard, no load. Keep everybody away from before the minute until the load is past and the"
                        + " radio says so. Each minute is the soonest by the plan: the radio tells when it is later"
                        + " or sooner. A load let go may come down well beside its way.");
        for (MapFeature feature : output.readJob().job().features()) {
            Passes passes = passed.get(feature.id());
            if (passes == null) {
                continue;
            }
            flow.space(6);
            flow.heading(feature.kind().name().toLowerCase(Locale.ROOT) + " " + feature.id());
            flow.paragraph(Face.TEXT, sentence(passes.rules()));
            flow.paragraph(
                    Face.TEXT,
                    "Guard: ______________________   radio: ______________   confirmed at: ______");
            flow.table(
                    List.of(
                            Flow.Column.of("tick", 27),
                            Flow.Column.strong("over it from", 130),
                            Flow.Column.strong("what", 170),
                            Flow.Column.of("way", 200)));
            for (List<String> pass : passes.rows()) {
                flow.row(pass);
            }
        }
    }

    /** Rows of a list, and the rules that hold for them. */
    private record Passes(List<List<String>> rows, Set<String> rules) {}

    private Map<String, Passes> passed() {
        Map<String, Passes> passed = new HashMap<>();
        for (Step step : output.plan().steps()) {
            if (step.lineLengthM() <= 0) {
                continue;
            }
            for (Crossings.Over over : Crossings.over(output.readJob().job(), words, step)) {
                Passes passes =
                        passed.computeIfAbsent(
                                over.feature(),
                                unused -> new Passes(new ArrayList<>(), new LinkedHashSet<>()));
                passes.rules().add(over.rule());
                passes.rows()
                        .add(
                                List.of(
                                        "[]",
                                        String.join(", ", over.clocks()),
                                        what(step),
                                        way(step)));
            }
        }
        return passed;
    }

    private static String sentence(Set<String> rules) {
        String text = String.join("; ", rules);
        return text.isBlank()
                ? "No rule is stated."
                : text.substring(0, 1).toUpperCase(Locale.ROOT) + text.substring(1) + ".";
    }

    /** All of its ways in their order, for what passes may be the empty line on the way to another laydown. */
    private static String way(Step step) {
        List<Leg> legs = new ArrayList<>(step.legs());
        step.rotation().ifPresent(rotation -> legs.addAll(rotation.legs()));
        List<String> places = new ArrayList<>();
        for (Leg leg : legs) {
            if (places.isEmpty()) {
                places.add(leg.from().value());
            }
            places.add(leg.to().value());
        }
        return String.join(" → ", places);
    }

    private static String what(Step step) {
        return step.rotation()
                .map(
                        rotation ->
                                rotation.loads().stream()
                                        .map(load -> load.value())
                                        .collect(Collectors.joining(" + ")))
                .orElse("empty line");
    }
}
