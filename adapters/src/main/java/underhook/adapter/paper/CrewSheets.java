package underhook.adapter.paper;

import java.io.IOException;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import org.apache.pdfbox.pdmodel.common.PDRectangle;
import underhook.app.port.OutputWriter.Output;
import underhook.core.finding.FindingCode;
import underhook.core.job.Crew;
import underhook.core.job.Job;
import underhook.core.job.Load;
import underhook.core.job.Place;
import underhook.core.job.PlaceId;
import underhook.core.plan.CrewStay;
import underhook.core.plan.Drop;
import underhook.core.plan.PlaceRoom;
import underhook.core.plan.Plan;
import underhook.core.plan.Rotation;
import underhook.core.plan.Step;
import underhook.core.plan.StepKind;

/** For each crew its own day: where, when, what comes, which guys, where not to stand. */
final class CrewSheets {
    private static final double SKETCH_HEIGHT = 92;

    /** A load that comes to where the crew is. */
    private record Arrival(Step step, Rotation rotation, Drop drop) {}

    private final Job job;
    private final Plan plan;
    private final Words words;

    CrewSheets(Output output, Words words) {
        this.job = output.readJob().job();
        this.plan = output.plan();
        this.words = words;
    }

    void draw(Book book) throws IOException {
        for (Crew crew : job.crews()) {
            List<CrewStay> stays =
                    plan.crews().stream().filter(stay -> stay.crew().equals(crew.id())).toList();
            if (!stays.isEmpty()) {
                drawCrew(new Flow(book, PDRectangle.A4, "Crew " + crew.id()), crew, stays);
            }
        }
    }

    private void drawCrew(Flow flow, Crew crew, List<CrewStay> stays) throws IOException {
        flow.paragraph(
                Face.STRONG,
                Crossings.people(job, crew.id())
                        + " May "
                        + crew.roles().stream()
                                .sorted()
                                .map(role -> role.name().toLowerCase(Locale.ROOT))
                                .collect(Collectors.joining(", "))
                        + ".");
        flow.heading("Your day");
        flow.table(
                List.of(
                        Flow.Column.strong("from", 48),
                        Flow.Column.strong("to", 48),
                        Flow.Column.strong("place", 150),
                        Flow.Column.of("doing", 281)));
        for (CrewStay stay : stays) {
            flow.row(
                    List.of(
                            words.clock(stay.fromAt()),
                            words.clock(stay.toAt()),
                            placeWithName(stay),
                            stay.doing()));
        }
        List<Arrival> arrivals = arrivals(stays);
        if (!arrivals.isEmpty()) {
            drawArrivals(flow, arrivals);
        }
        if (crew.roles().contains(Crew.Role.HOOK)) {
            flow.space(4);
            flow.paragraph(Face.TEXT, "What you hook up stands on the loader's list of the place.");
        }
        drawFlights(flow, crew);
        drawRules(flow);
        drawGuys(flow, arrivals);
        drawRooms(flow, arrivals);
    }

    private String placeWithName(CrewStay stay) {
        return stay.place()
                + job.findPlace(stay.place())
                        .map(Place::name)
                        .filter(name -> !name.isBlank())
                        .map(name -> " " + name)
                        .orElse("");
    }

    private List<Arrival> arrivals(List<CrewStay> stays) {
        List<Arrival> arrivals = new ArrayList<>();
        for (Step step : plan.steps()) {
            step.rotation()
                    .ifPresent(
                            rotation ->
                                    rotation.drops().stream()
                                            .filter(drop -> receives(stays, drop))
                                            .forEach(
                                                    drop ->
                                                            arrivals.add(
                                                                    new Arrival(
                                                                            step, rotation,
                                                                            drop))));
        }
        return arrivals;
    }

    private static boolean receives(List<CrewStay> stays, Drop drop) {
        return stays.stream()
                .anyMatch(
                        stay ->
                                stay.place().equals(drop.place())
                                        && !stay.fromAt().isAfter(drop.releasedAt())
                                        && !stay.toAt().isBefore(drop.releasedAt()));
    }

    private void drawArrivals(Flow flow, List<Arrival> arrivals) throws IOException {
        flow.heading("What comes to you");
        flow.table(
                List.of(
                        Flow.Column.of("tick", 27),
                        Flow.Column.strong("hook-up", 48),
                        Flow.Column.strong("set down by", 48),
                        Flow.Column.strong("place", 64),
                        Flow.Column.strong("load", 74),
                        Flow.Column.of("kind", 74),
                        Flow.Column.strong("kg", 56),
                        Flow.Column.of("line m", 40),
                        Flow.Column.of("machine comes from, leaves to", 96)));
        for (Arrival arrival : arrivals) {
            Load load = job.getLoad(arrival.drop().load());
            flow.row(
                    List.of(
                            "[]",
                            words.clock(arrival.rotation().hookedAt()),
                            words.clock(arrival.drop().releasedAt()),
                            arrival.drop().place().value(),
                            load.id().value(),
                            load.kind(),
                            words.plannedKg(load) + (Words.isEstimated(load) ? " EST" : ""),
                            PilotCards.lineLength(arrival.step().lineLengthM()),
                            Words.bearing(arrival.drop().approachFromTrueRad())
                                    + ", "
                                    + Words.bearing(arrival.drop().departureTrackTrueRad())
                                    + " TRUE"));
        }
    }

    private void drawGuys(Flow flow, List<Arrival> arrivals) throws IOException {
        Map<PlaceId, Arrival> poles = new LinkedHashMap<>();
        for (Arrival arrival : arrivals) {
            Place place = job.getPlace(arrival.drop().place());
            boolean pole = job.getKind(job.getLoad(arrival.drop().load()).kind()).standsUp();
            if (pole && !place.guyAzimuthsTrueRad().isEmpty()) {
                poles.putIfAbsent(place.id(), arrival);
            }
        }
        if (poles.isEmpty()) {
            return;
        }
        flow.heading(
                "Guys, degrees TRUE, north up. Dashed: the machine comes in. Gap: the largest.");
        double width = (flow.sheet().right() - flow.sheet().left()) / 5;
        int column = 0;
        for (Map.Entry<PlaceId, Arrival> pole : poles.entrySet()) {
            Place place = job.getPlace(pole.getKey());
            if (column == 0) {
                flow.need(SKETCH_HEIGHT);
            }
            Sheet.Dot corner = new Sheet.Dot(flow.sheet().left() + column * width, flow.y());
            GuySketch.draw(
                    flow.sheet(),
                    corner,
                    place,
                    new GuySketch.Pole(pole.getValue().drop(), gapIsWide(place, pole.getValue())));
            column = (column + 1) % 5;
            if (column == 0) {
                flow.space(SKETCH_HEIGHT);
            }
        }
        if (column != 0) {
            flow.space(SKETCH_HEIGHT);
        }
    }

    /** One rose for each place, line and heading that the crew sees. */
    private void drawRooms(Flow flow, List<Arrival> arrivals) throws IOException {
        Map<String, RoomRose.Shown> roses = new LinkedHashMap<>();
        for (Arrival arrival : arrivals) {
            Load load = job.getLoad(arrival.drop().load());
            double standsM = job.getKind(load.kind()).standsUp() ? load.lengthM() : 0;
            Step step = arrival.step();
            findRoom(arrival.drop().place(), step.lineLengthM(), standsM > 0)
                    .ifPresent(
                            room ->
                                    roses.putIfAbsent(
                                            arrival.drop().place()
                                                    + room.line()
                                                    + room.standsM()
                                                    + Words.bearing(
                                                            arrival.drop().approachFromTrueRad()),
                                            new RoomRose.Shown(arrival.drop(), room)));
        }
        if (roses.isEmpty()) {
            return;
        }
        flow.heading("Room by heading, degrees TRUE, north up");
        flow.paragraph(
                Face.TEXT,
                "For rotor, tail, line and load. Open: free. Striped: near. Black: refused. Arrow:"
                        + " nose as planned. Below: what decides on the worst heading.");
        flow.space(4);
        double width = (flow.sheet().right() - flow.sheet().left()) / 5;
        int column = 0;
        for (RoomRose.Shown rose : roses.values()) {
            if (column == 0) {
                flow.need(SKETCH_HEIGHT);
            }
            RoomRose.draw(
                    flow.sheet(),
                    new Sheet.Dot(flow.sheet().left() + column * width, flow.y()),
                    rose);
            column = (column + 1) % 5;
            if (column == 0) {
                flow.space(SKETCH_HEIGHT);
            }
        }
        if (column != 0) {
            flow.space(SKETCH_HEIGHT);
        }
    }

    private Optional<PlaceRoom.LineRoom> findRoom(PlaceId place, double lineM, boolean stands) {
        return plan.rooms().stream()
                .filter(room -> room.place().equals(place))
                .flatMap(room -> room.lines().stream())
                .filter(
                        line ->
                                Math.abs(line.lineLengthM() - lineM) < 0.01
                                        && line.standsM() > 0 == stands)
                .findFirst();
    }

    private boolean gapIsWide(Place place, Arrival arrival) {
        return plan.findings().stream()
                .filter(finding -> finding.code() == FindingCode.GUY_GAP_WIDE)
                .anyMatch(
                        finding ->
                                finding.subject().equals(place.id().value())
                                        || finding.subject().equals(arrival.drop().load().value()));
    }

    private void drawFlights(Flow flow, Crew crew) throws IOException {
        List<String> flights = new ArrayList<>();
        for (Step step : plan.steps()) {
            if (step.kind() == StepKind.CREW_MOVE
                    && step.crew().map(id -> id.equals(crew.id())).orElse(false)) {
                flights.add(words.clock(step.startAt()) + " " + step.from() + " → " + step.to());
            }
        }
        if (flights.isEmpty()) {
            return;
        }
        flow.space(4);
        flow.bar(
                "YOU FLY: "
                        + String.join("; ", flights)
                        + ". Line OFF the machine before anybody comes near or boards.");
    }

    private static void drawRules(Flow flow) throws IOException {
        flow.heading("Release: two people confirm");
        flow.paragraph(
                Face.TEXT,
                "The load rests and cannot roll or fall. A pole stays on the line until every guy is"
                        + " made fast. Then line slack and hook open. TWO people each see the sling"
                        + " clear of the load and say so: person 1 \"clear\", person 2 \"clear\". Only"
                        + " then the machine climbs.");
        flow.heading("Do not stand");
        flow.paragraph(
                Face.TEXT,
                "Under the load, the line or the machine; on the way in or the way out; downhill of a"
                        + " load or pole; between the load and a tree, wall or drop; inside the"
                        + " bight of a rope or in line with a tight guy; within a pole's length of a"
                        + " pole that is not yet guyed, unless you hold its guy. Touch a load only"
                        + " after it has been discharged to ground. Keep your way out free.");
    }
}
