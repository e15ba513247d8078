package underhook.adapter.paper;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import org.apache.pdfbox.pdmodel.common.PDRectangle;
import underhook.app.port.OutputWriter.Output;
import underhook.core.finding.FindingCode;
import underhook.core.job.Crew;
import underhook.core.job.Wire;
import underhook.core.plan.Leg;
import underhook.core.plan.Step;

/** What is said to everybody before the first lift, to tick, and who heard it, to sign. */
final class BriefingPages {
    private static final String BY_HAND = "_".repeat(30);

    /** Rows for people whom the job does not know. */
    private static final int OTHERS = 4;

    private final Output output;
    private final Words words;

    BriefingPages(Output output) {
        this.output = output;
        this.words = new Words(output.readJob().job(), output.readJob().ground());
    }

    /** Nothing for a day on which nothing is flown. */
    void draw(Book book, Tongue tongue) throws IOException {
        if (output.plan().steps().isEmpty()) {
            return;
        }
        Flow flow = new Flow(book, PDRectangle.A4, "Briefing", tongue);
        flow.paragraph(
                Face.STRONG,
                "Before the first lift, everybody together. Who comes later is briefed before going near. Who has"
                        + " not signed stays away.");
        flow.space(4);
        flow.table(
                List.of(
                        Flow.Column.of("tick", 27),
                        Flow.Column.strong("say", 200),
                        Flow.Column.of("this day", 300)));
        point(flow, "Who signals at each place", BY_HAND);
        point(flow, "Channel and hand signals", BY_HAND);
        point(flow, "Order of loads and line length", lines() + "; times on each crew's sheet");
        point(flow, "Every wire near a way", wires());
        point(flow, "Where not to stand, way out", "on each crew's sheet");
        point(flow, "Touch only after discharge", BY_HAND);
        point(flow, "What free means: two people", "two people see the sling clear and say so");
        point(flow, "Snag, lost radio, end of fuel", BY_HAND);
        point(flow, "The word that stops everything", BY_HAND);
        point(flow, "First aid and whom to call", "sheet Emergency");
        flow.space(6);
        signatures(flow);
    }

    private static void point(Flow flow, String say, String today) throws IOException {
        flow.row(List.of("[]", say, today));
    }

    private String lines() {
        Set<Double> lengthsM = new TreeSet<>();
        for (Step step : output.plan().steps()) {
            if (step.rotation().isPresent()) {
                lengthsM.add(step.lineLengthM());
            }
        }
        List<String> told = new ArrayList<>();
        lengthsM.forEach(lengthM -> told.add(words.line(lengthM)));
        return told.isEmpty() ? "no load" : "line " + String.join(", ", told);
    }

    /** In a briefing that leaves out one wire nobody looks for it. */
    private String wires() {
        Set<String> near = new TreeSet<>();
        for (Step step : output.plan().steps()) {
            List<Leg> legs = new ArrayList<>(step.legs());
            step.rotation().ifPresent(rotation -> legs.addAll(rotation.legs()));
            for (Leg leg : legs) {
                leg.wires().forEach(pass -> near.add(pass.wire()));
                leg.crossings().forEach(crossing -> near.add(crossing.feature()));
            }
        }
        // Which no pilot finds in a file of obstacles is shown to everybody.
        output.plan().findings().stream()
                .filter(one -> one.code() == FindingCode.WIRE_UNREGISTERED)
                .forEach(one -> near.add(one.subject()));
        List<String> told = new ArrayList<>();
        for (Wire wire : output.readJob().job().wires()) {
            if (near.contains(wire.id())) {
                told.add(
                        wire.id()
                                + (wire.live() ? " LIVE" : "")
                                + (wire.registered() ? "" : ", in no obstacle file"));
            }
        }
        return (told.isEmpty() ? "none of the job" : String.join("; ", told))
                + "; others seen: ________";
    }

    private void signatures(Flow flow) throws IOException {
        flow.heading("Heard and understood");
        flow.table(
                List.of(
                        Flow.Column.strong("who", 110),
                        Flow.Column.of("name", 180),
                        Flow.Column.of("time", 57),
                        Flow.Column.of("signature", 180)));
        signature(flow, "pilot");
        for (Crew crew : output.readJob().job().crews()) {
            for (int i = 1; i <= crew.people(); i++) {
                signature(flow, crew.id() + (crew.people() > 1 ? " " + i : ""));
            }
        }
        for (int i = 0; i < OTHERS; i++) {
            signature(flow, "");
        }
    }

    private static void signature(Flow flow, String who) throws IOException {
        flow.row(List.of(who, "", "", ""));
    }
}
