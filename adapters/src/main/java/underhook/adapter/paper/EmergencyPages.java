package underhook.adapter.paper;

import java.io.IOException;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import org.apache.pdfbox.pdmodel.common.PDRectangle;
import underhook.app.port.EmergencyPlan;
import underhook.app.port.OutputWriter.Output;
import underhook.app.port.RescuePoint;
import underhook.app.port.RescuePoint.Landing;
import underhook.app.port.RescuePoint.NearWire;
import underhook.app.port.RescuePoint.Positions;
import underhook.core.job.Place;
import underhook.core.job.PlaceId;
import underhook.core.job.Wire;
import underhook.core.plan.CrewStay;
import underhook.core.plan.Drop;
import underhook.core.plan.Leg;
import underhook.core.plan.Step;

/**
 * For the worst case, when no device works: whom to call, who makes which line dead, and for each place of the day where
 * it is, where a machine may land, which wires are near and who should be there. What the job does not state has a
 * line to write on.
 */
final class EmergencyPages {
    private static final String BY_HAND = "_".repeat(26);
    private static final int LINES_BY_HAND = 4;

    private final Output output;
    private final Words words;
    private final EmergencyPlan stated;

    EmergencyPages(Output output, Words words) {
        this.output = output;
        this.words = words;
        this.stated = output.readJob().emergency().plan();
    }

    void draw(Book book, Tongue tongue) throws IOException {
        Flow flow = new Flow(book, PDRectangle.A4, "Emergency", tongue);
        flow.paragraph(
                Face.STRONG,
                "Keep others away until the lines are known to be dead and the rotor stands. Say who you are,"
                        + " the place and its position, how many are hurt, which wires and what fuel are near, and"
                        + " where to land. Count heads. The operator's emergency plan decides.");
        List<RescuePoint> points = points();
        calls(flow);
        isolations(flow, points);
        overdue(flow);
        places(flow, points);
        byHand(flow);
    }

    private void calls(Flow flow) throws IOException {
        flow.heading("Call, in this order");
        if (stated.calls().isEmpty()) {
            flow.paragraph(
                    Face.STRONG,
                    "MISSING: the job names nobody to call. Write the numbers here before the first lift.");
        }
        flow.table(
                List.of(
                        Flow.Column.strong("who", 180),
                        Flow.Column.strong("number", 160),
                        Flow.Column.of("say", 187)));
        for (EmergencyPlan.Call call : stated.calls()) {
            flow.row(List.of(call.who(), call.number(), call.say()));
        }
        for (int i = stated.calls().size(); i < LINES_BY_HAND; i++) {
            flow.row(List.of(BY_HAND, BY_HAND.substring(4), ""));
        }
        flow.space(6);
    }

    /** What is stated, and each live wire near a place or under a way for which nothing is. */
    private void isolations(Flow flow, List<RescuePoint> points) throws IOException {
        flow.heading("Make a line dead");
        flow.table(
                List.of(
                        Flow.Column.strong("wire", 70),
                        Flow.Column.strong("who", 160),
                        Flow.Column.strong("number", 150),
                        Flow.Column.of("how", 147)));
        Set<String> missing = liveWires(points);
        for (EmergencyPlan.Isolation one : stated.isolations()) {
            missing.remove(one.line());
            flow.row(List.of(one.line(), one.who(), one.number(), one.how()));
        }
        for (String wire : missing) {
            flow.row(
                    List.of(
                            wire,
                            "MISSING " + BY_HAND.substring(10),
                            BY_HAND.substring(6),
                            "Stay away and keep others away."));
        }
        if (missing.isEmpty() && stated.isolations().isEmpty()) {
            flow.paragraph(
                    Face.TEXT,
                    "No live wire of the job is near a place or under a way. Others may be.");
        }
        flow.space(6);
    }

    private Set<String> liveWires(List<RescuePoint> points) {
        Set<String> near = new TreeSet<>();
        for (RescuePoint point : points) {
            point.wires().forEach(one -> near.add(one.wire().id()));
        }
        for (Step step : output.plan().steps()) {
            for (Leg leg : legs(step)) {
                leg.wires().forEach(pass -> near.add(pass.wire()));
                leg.crossings().forEach(crossing -> near.add(crossing.feature()));
            }
        }
        Set<String> live = new TreeSet<>();
        for (Wire wire : output.readJob().job().wires()) {
            if (wire.live() && near.contains(wire.id())) {
                live.add(wire.id());
            }
        }
        return live;
    }

    private static List<Leg> legs(Step step) {
        List<Leg> all = new ArrayList<>(step.legs());
        step.rotation().ifPresent(rotation -> all.addAll(rotation.legs()));
        return all;
    }

    private void overdue(Flow flow) throws IOException {
        flow.heading("Overdue");
        flow.paragraph(
                Face.TEXT,
                stated.overdueS().isPresent()
                        ? "Nothing heard for "
                                + Words.down(stated.overdueS().getAsDouble() / 60)
                                + " min while the machine is in the air: the search begins."
                        : "MISSING: the job states no time after which a search begins. "
                                + BY_HAND.substring(14)
                                + " min");
        flow.space(6);
    }

    private void places(Flow flow, List<RescuePoint> points) throws IOException {
        if (points.isEmpty()) {
            return;
        }
        flow.heading("Where");
        flow.paragraph(
                Face.TEXT,
                "Positions on WGS 84"
                        + points.get(0)
                                .positions()
                                .grid()
                                .map(grid -> ", below them " + points.get(0).positions().system())
                                .orElse("; the job's own grid is not known")
                        + ". Rescue landing: \"not named\" is the nearest place of the job where a machine may"
                        + " stand or land; nobody has said that it is for a rescue machine. People are where the"
                        + " plan has them.");
        flow.table(
                List.of(
                        Flow.Column.strong("place", 84),
                        Flow.Column.strong("position", 163),
                        Flow.Column.of("rescue landing", 90),
                        Flow.Column.of("wires in 300 m", 90),
                        Flow.Column.of("people", 100)));
        for (RescuePoint point : points) {
            Place place = point.place();
            flow.row(
                    List.of(
                            (place.id().value() + " " + place.name()).strip(),
                            position(point.positions()),
                            point.landing().map(EmergencyPages::landing).orElse("MISSING"),
                            wires(point.wires()),
                            people(place.id())));
        }
        flow.space(6);
    }

    private static String position(Positions positions) {
        return positions.minutes() + positions.grid().map(grid -> "  " + grid).orElse("");
    }

    private static String landing(Landing landing) {
        return landing.place().id()
                + (landing.distanceM() > 0
                        ? ", " + Words.up(landing.distanceM()) + " m off"
                        : ", here")
                + (landing.stated() ? "" : ", not named");
    }

    private static String wires(List<NearWire> wires) {
        List<String> told = new ArrayList<>();
        for (NearWire near : wires) {
            told.add(
                    near.wire().id()
                            + (near.wire().live() ? " LIVE " : " ")
                            + Words.down(near.distanceM())
                            + " m");
        }
        return told.isEmpty() ? "none of the job" : String.join(", ", told);
    }

    /** "P 06:53–07:58": stays of a crew that follow each other are one. */
    private String people(PlaceId place) {
        List<CrewStay> merged = new ArrayList<>();
        for (CrewStay stay : output.plan().crews()) {
            if (!stay.place().equals(place) || stay.isOnTheWay()) {
                continue;
            }
            Optional<CrewStay> before =
                    merged.stream()
                            .filter(one -> one.crew().equals(stay.crew()))
                            .filter(one -> one.toAt().equals(stay.fromAt()))
                            .findFirst();
            before.ifPresent(merged::remove);
            merged.add(
                    new CrewStay(
                            stay.crew(),
                            place,
                            before.map(CrewStay::fromAt).orElse(stay.fromAt()),
                            stay.toAt(),
                            stay.doing()));
        }
        List<String> told = new ArrayList<>();
        for (CrewStay stay : merged) {
            told.add(
                    stay.crew()
                            + " "
                            + words.clock(stay.fromAt())
                            + "–"
                            + words.clock(stay.toAt()));
        }
        return told.isEmpty() ? "none planned" : String.join(", ", told);
    }

    private static void byHand(Flow flow) throws IOException {
        flow.heading("Write down on the day");
        for (String what :
                List.of(
                        "Hospital",
                        "First aid and extinguishers",
                        "Where the radio does not reach",
                        "Who holds the names of the next of kin")) {
            flow.paragraph(Face.TEXT, String.format(Locale.ROOT, "%s: %s", what, BY_HAND));
        }
    }

    /** Places that the day uses, where people are, and where one may land, in the order of the job. */
    private List<RescuePoint> points() {
        Set<PlaceId> used = new LinkedHashSet<>();
        for (Step step : output.plan().steps()) {
            used.add(step.from());
            used.add(step.to());
            step.rotation()
                    .ifPresent(
                            rotation ->
                                    rotation.drops().stream().map(Drop::place).forEach(used::add));
        }
        output.plan().crews().forEach(stay -> used.add(stay.place()));
        stated.landings().forEach(one -> used.add(one.place()));
        RescuePoint.Asked asked =
                new RescuePoint.Asked(
                        output.readJob().job(),
                        Optional.of(output.plan()),
                        stated,
                        output.readJob().emergency().system());
        List<Place> places = output.readJob().job().places();
        places.stream()
                .filter(place -> used.contains(place.id()))
                .flatMap(place -> RescuePoint.of(asked, place).landing().stream())
                .map(landing -> landing.place().id())
                .toList()
                .forEach(used::add);
        return places.stream()
                .filter(place -> used.contains(place.id()))
                .map(place -> RescuePoint.of(asked, place))
                .toList();
    }
}
