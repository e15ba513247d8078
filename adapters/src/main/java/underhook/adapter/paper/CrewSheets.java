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
import underhook.core.aircraft.Downwash;
import underhook.core.finding.FindingCode;
import underhook.core.geo.Ground;
import underhook.core.job.Crew;
import underhook.core.job.Job;
import underhook.core.job.Load;
import underhook.core.job.Place;
import underhook.core.job.PlaceId;
import underhook.core.job.PlaceKind;
import underhook.core.plan.CrewStay;
import underhook.core.plan.Drop;
import underhook.core.plan.Leg;
import underhook.core.plan.PlaceRoom;
import underhook.core.plan.Plan;
import underhook.core.plan.PoleSetting;
import underhook.core.plan.Rotation;
import underhook.core.plan.Step;
import underhook.core.plan.StepKind;
import underhook.core.unit.Units;

/** For each crew its own day: where, when, what comes, which guys, where not to stand. */
final class CrewSheets {
    private static final double SKETCH_HEIGHT = 92;

    /** Flat plate across the flow. @source NASA-GLENN-SHAPE 1.28 */
    private static final double PLATE_COEFFICIENT = 1.28;

    /** Dense air pushes harder. @source ICAO-7488 at sea level */
    private static final double AIR_KG_PER_M3 = 1.225;

    private static final String KEEP_CLEAR =
            "You handle none of these: they come to the place. Keep clear and leave hooking, receiving"
                    + " and refuelling to those named for it.";

    /** A load that comes to where the crew is. */
    private record Arrival(Step step, Rotation rotation, Drop drop) {}

    private final Job job;
    private final Plan plan;
    private final Words words;
    private final Ground ground;
    private final LoaderLists lists;

    CrewSheets(Output output, Words words) {
        this.ground = output.readJob().ground();
        this.lists = new LoaderLists(output, words);
        this.job = output.readJob().job();
        this.plan = output.plan();
        this.words = words;
    }

    void draw(Book book) throws IOException {
        for (Crew crew : job.crews()) {
            List<CrewStay> stays =
                    plan.crews().stream().filter(stay -> stay.crew().equals(crew.id())).toList();
            if (!stays.isEmpty()) {
                Tongue tongue = Tongue.of(crew.language());
                drawCrew(new Flow(book, PDRectangle.A4, "Crew " + crew.id(), tongue), crew, stays);
            }
        }
    }

    private void drawCrew(Flow flow, Crew crew, List<CrewStay> stays) throws IOException {
        flow.paragraph(
                Face.STRONG,
                Crossings.people(job, crew.id())
                        + (crew.roles().isEmpty() ? " You handle no loads" : " May ")
                        + crew.roles().stream()
                                .sorted()
                                .map(role -> role.name().toLowerCase(Locale.ROOT))
                                .collect(Collectors.joining(", "))
                        + ".");
        flow.heading("Your day");
        flow.table(
                List.of(
                        Flow.Column.strong("from", 48),
                        Flow.Column.strong("until", 48),
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
            drawArrivals(flow, arrivals, !crew.roles().isEmpty());
        }
        if (crew.roles().contains(Crew.Role.HOOK)) {
            lists.drawHookUps(flow, stays);
            if (stays.stream().anyMatch(this::isAtLaydown)) {
                flow.space(4);
                flow.paragraph(
                        Face.TEXT,
                        "What you hook up at a laydown stands on the loader's list of the place.");
            }
        }
        drawFlights(flow, crew);
        drawRules(flow, arrivals);
        // Guys are for those who hold them.
        if (crew.roles().contains(Crew.Role.GUY)) {
            drawGuys(flow, arrivals);
        }
        drawPlaces(flow, arrivals);
    }

    private boolean isAtLaydown(CrewStay stay) {
        return job.getPlace(stay.place()).kind() == PlaceKind.LAYDOWN;
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
        return stays.stream().anyMatch(stay -> stay.isAt(drop.place(), drop.releasedAt()));
    }

    private void drawArrivals(Flow flow, List<Arrival> arrivals, boolean handles)
            throws IOException {
        flow.heading(handles ? "What comes to you" : "What comes where you are");
        if (!handles) {
            flow.paragraph(Face.STRONG, KEEP_CLEAR);
        }
        double poundsWidth = words.isPounds() ? 14 : 0;
        flow.table(
                List.of(
                        Flow.Column.of("tick", 27),
                        Flow.Column.strong("hook-up", 48),
                        Flow.Column.strong("set down by", 48),
                        Flow.Column.strong("place", 60),
                        Flow.Column.strong("load", 64),
                        Flow.Column.of("kind", 88 - poundsWidth),
                        Flow.Column.strong("kg", 56 + poundsWidth),
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
                            LoaderLists.dangerous(load) + load.kind(),
                            words.plannedOnCell(load) + (Words.isEstimated(load) ? " EST" : ""),
                            words.lineInMetres(arrival.step().lineLengthM()),
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
        poles = drawPoles(flow, poles);
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

    /** Draws the poles of which the plan says what each guy holds; returns the others. */
    private Map<PlaceId, Arrival> drawPoles(Flow flow, Map<PlaceId, Arrival> poles)
            throws IOException {
        Map<PlaceId, Arrival> others = new LinkedHashMap<>();
        boolean isFirst = true;
        for (Map.Entry<PlaceId, Arrival> pole : poles.entrySet()) {
            Drop drop = pole.getValue().drop();
            Optional<PoleSetting> set =
                    plan.poles().stream().filter(one -> one.load().equals(drop.load())).findFirst();
            if (set.isEmpty()) {
                others.put(pole.getKey(), pole.getValue());
                continue;
            }
            if (isFirst) {
                drawSetting(flow, set.get());
                isFirst = false;
            }
            flow.need(PoleSketch.HEIGHT);
            PoleSketch.draw(
                    flow.sheet(),
                    new Sheet.Dot(flow.sheet().left(), flow.y()),
                    new PoleSketch.Shown(
                            set.get(), job.getLoad(drop.load()), drop, words.isPounds()));
            flow.space(PoleSketch.HEIGHT);
        }
        return others;
    }

    private static void drawSetting(Flow flow, PoleSetting pole) throws IOException {
        flow.heading("Setting a pole");
        flow.paragraph(
                Face.TEXT,
                "1 Butt on its footing, the line keeps light tension. 2 Every guy made fast on its"
                        + " anchor: BELAY means round the anchor, not in the hand. 3 Line slack, hook"
                        + " open, load reading back to the line's own mass. 4 TWO people see the sling"
                        + " free and say so. Why two: a pole that falls with its sling on takes the"
                        + " machine with it; its top comes down at "
                        + Words.up(pole.topMPerS())
                        + " m/s. Pulls are calculated, steady, without jerks.");
    }

    /** What is drawn of one place, line and heading; either may be missing. */
    private record Seen(Optional<RoomRose.Shown> rose, Optional<ApproachCut.Shown> cut) {}

    /** Room by heading and the way in cut through, once for each place, line and heading. */
    private void drawPlaces(Flow flow, List<Arrival> arrivals) throws IOException {
        Map<String, Seen> all = new LinkedHashMap<>();
        for (Arrival arrival : arrivals) {
            Drop drop = arrival.drop();
            boolean stands = job.getKind(job.getLoad(drop.load()).kind()).standsUp();
            double lineM = arrival.step().lineLengthM();
            Seen seen =
                    new Seen(
                            findRoom(drop.place(), lineM, stands)
                                    .map(
                                            room ->
                                                    new RoomRose.Shown(
                                                            drop,
                                                            room,
                                                            words.lineBriefly(room.lineLengthM()))),
                            findLeg(arrival)
                                    .map(
                                            leg ->
                                                    new ApproachCut.Shown(
                                                            drop, leg, lineM, job.machine())));
            String key =
                    drop.place() + " " + lineM + stands + Words.bearing(drop.approachFromTrueRad());
            if (seen.rose().isPresent() || seen.cut().isPresent()) {
                all.putIfAbsent(key, seen);
            }
        }
        if (all.isEmpty()) {
            return;
        }
        flow.need(ApproachCut.HEIGHT + 50);
        flow.heading("Room by heading, degrees TRUE, north up; way in cut through, 150 m wide");
        flow.paragraph(
                Face.SMALL,
                "For rotor, tail, line and load. Open: free. Striped: near. Black: refused. Arrow: nose"
                        + " as planned. Below: what decides on the worst heading. Cut: height and length"
                        + " to one scale, the machine comes from the right.");
        flow.space(2);
        double width = (flow.sheet().right() - flow.sheet().left()) / 2;
        int column = 0;
        for (Seen seen : all.values()) {
            if (column == 0) {
                flow.need(ApproachCut.HEIGHT);
            }
            double x = flow.sheet().left() + column * width;
            if (seen.rose().isPresent()) {
                RoomRose.draw(flow.sheet(), new Sheet.Dot(x, flow.y() + 8), seen.rose().get());
            }
            if (seen.cut().isPresent()) {
                Sheet.Dot corner = new Sheet.Dot(x + width - ApproachCut.WIDTH, flow.y());
                ApproachCut.draw(flow.sheet(), corner, seen.cut().get(), words, ground);
            }
            column = 1 - column;
            if (column == 0) {
                flow.space(ApproachCut.HEIGHT);
            }
        }
        if (column != 0) {
            flow.space(ApproachCut.HEIGHT);
        }
    }

    /** The leg that brings the load. */
    private static Optional<Leg> findLeg(Arrival arrival) {
        return arrival.rotation().legs().stream()
                .filter(leg -> leg.to().equals(arrival.drop().place()))
                .filter(leg -> leg.carrying().contains(arrival.drop().load()))
                .filter(leg -> leg.path().size() > 1)
                .findFirst();
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

    /** What the wind under the machine does, by momentum theory: an estimate. */
    private void drawAir(Flow flow, List<Arrival> arrivals) throws IOException {
        double mostMPerS =
                arrivals.stream()
                        .flatMap(
                                arrival ->
                                        plan.rooms().stream()
                                                .filter(
                                                        room ->
                                                                room.place()
                                                                        .equals(
                                                                                arrival.drop()
                                                                                        .place())))
                        .flatMap(room -> room.lines().stream())
                        .mapToDouble(line -> line.cost().downwashMPerS())
                        .max()
                        .orElse(0);
        if (mostMPerS <= 0) {
            return;
        }
        double pushN = PLATE_COEFFICIENT * 0.5 * AIR_KG_PER_M3 * mostMPerS * mostMPerS;
        flow.heading("The air below (an estimate of the mean; gusts come on top)");
        flow.paragraph(
                Face.TEXT,
                "Under the machine it blows with "
                        + Words.up(Units.mPerSToKt(mostMPerS))
                        + " kt, on every line in stock: a longer line earns nothing for certain. It"
                        + " pushes a sheet of one square metre with "
                        + Words.up(pushN)
                        + " N. Tie down or take away what is loose within "
                        + Words.up(Downwash.keepOffM(job.machine().rotorRadiusM()))
                        + " m; goggles, helmets strapped.");
    }

    private void drawRules(Flow flow, List<Arrival> arrivals) throws IOException {
        drawAir(flow, arrivals);
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
