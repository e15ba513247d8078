package underhook.adapter.paper;

import java.io.IOException;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Collectors;
import org.apache.pdfbox.pdmodel.common.PDRectangle;
import underhook.app.port.Courses;
import underhook.app.port.OutputWriter.Output;
import underhook.core.ahead.Alternates;
import underhook.core.ahead.Alternates.Alternate;
import underhook.core.geo.Ground;
import underhook.core.geo.PlanePoint;
import underhook.core.job.Job;
import underhook.core.job.Place;
import underhook.core.job.PlaceId;
import underhook.core.job.ReleaseArea;
import underhook.core.job.Wire;
import underhook.core.job.Zone;
import underhook.core.plan.Drop;
import underhook.core.plan.Plan;
import underhook.core.plan.Rotation;
import underhook.core.plan.Step;
import underhook.core.unit.Units;

/**
 * The day's places on one page, in the order in which they are first come to: where, how high, from where,
 * and where to put the machine down when one of them is shut. What is flown lift by lift stands on
 * {@link PilotCards}.
 */
final class PilotPage {
    private static final Face FLOWN = Face.FLOWN.withSize(14);
    private static final Face LEGEND = new Face(false, 8.5);
    private static final Face HEAD = new Face(true, 8.5);
    private static final int MOST_NAMED = 8;
    private static final double ROW = 15;
    private static final double GAP = 4;

    /** Below its figures a place's lifts; smaller where the page would not hold all. */
    private static final List<Face> LIFTS =
            List.of(Face.TEXT, Face.TEXT.withSize(10), Face.TEXT.withSize(9));

    /** Where the columns begin, from the left end of the page's body. */
    private enum Column {
        PLACE("place", 0, 37),
        FROM("from MAG km", 37, 83),
        GROUND("gnd ft", 120, 32),
        HOOK("hook ft", 152, 38),
        IN("in from", 190, 38),
        ALTERNATE("ALT MAG km", 228, 82),
        OVER("over ft", 310, 40),
        FUEL("fuel", 350, 36);

        private final String head;
        private final double x;
        private final double width;

        Column(String head, double x, double width) {
            this.head = head;
            this.x = x;
            this.width = width;
        }

        double room() {
            return width - GAP;
        }
    }

    /** One lift to a place; the drop is its first there. */
    private record Lift(Rotation rotation, Drop drop, PlaceId from) {
        /** What is let go at the place. */
        String loads() {
            return rotation.drops().stream()
                    .filter(one -> one.place().equals(drop.place()))
                    .map(one -> one.load().value())
                    .collect(Collectors.joining("+"));
        }
    }

    private final Job job;
    private final Plan plan;
    private final Ground ground;
    private final Words words;
    private final Map<PlaceId, List<Alternate>> alternates;
    private final Map<PlaceId, List<Lift>> lifts = new LinkedHashMap<>();

    PilotPage(Output output, Words words, Map<PlaceId, List<Alternate>> alternates) {
        this.job = output.readJob().job();
        this.plan = output.plan();
        this.ground = output.readJob().ground();
        this.words = words;
        this.alternates = alternates;
        for (Step step : plan.steps()) {
            step.rotation().ifPresent(rotation -> add(step, rotation));
        }
    }

    private void add(Step step, Rotation rotation) {
        PlaceId before = Words.hookPlace(step);
        for (Drop drop : rotation.drops()) {
            boolean isFirst = !drop.place().equals(before);
            if (isFirst && job.getPlace(drop.place()).isSite()) {
                lifts.computeIfAbsent(drop.place(), unused -> new ArrayList<>())
                        .add(new Lift(rotation, drop, before));
            }
            before = drop.place();
        }
    }

    /** The alternate that the day has the fuel for, else the one that takes least. */
    static Optional<Alternate> best(List<Alternate> all) {
        return all.stream()
                .filter(Alternate::isEnough)
                .findFirst()
                .or(() -> all.stream().findFirst());
    }

    void draw(Book book) throws IOException {
        if (lifts.isEmpty()) {
            return;
        }
        Flow flow = new Flow(book, PDRectangle.A5, "Pilot page");
        double room = flow.sheet().bottom() - flow.y();
        Face face = LIFTS.get(LIFTS.size() - 1);
        for (int i = LIFTS.size() - 1; i >= 0; i--) {
            face = height(flow.sheet(), LIFTS.get(i)) <= room ? LIFTS.get(i) : face;
        }
        flow.paragraph(LEGEND, legend());
        head(flow);
        for (Map.Entry<PlaceId, List<Lift>> place : lifts.entrySet()) {
            row(flow, place.getKey(), place.getValue(), face);
        }
        flow.space(2);
        for (String line : foot()) {
            flow.paragraph(face, line);
        }
    }

    private double height(Sheet sheet, Face face) {
        double width = sheet.right() - sheet.left();
        double height = 14 + 2;
        height += sheet.fonts().wrap(LEGEND, legend(), width).size() * LEGEND.size() * 1.2;
        for (Map.Entry<PlaceId, List<Lift>> place : lifts.entrySet()) {
            height += rowHeight(below(sheet, place.getKey(), place.getValue(), face), face);
        }
        for (String line : foot()) {
            height += sheet.fonts().wrap(face, line, width).size() * face.size() * 1.2;
        }
        return height;
    }

    private static double rowHeight(List<String> below, Face face) {
        return ROW + below.size() * face.size() * 1.12 + 1.5;
    }

    private String legend() {
        return "Bearings MAG, variation "
                + words.variation()
                + "; altitudes AMSL; hook: belly hook at the first set-down. ALT: where to when the place"
                + " is shut, load on, straight: over clears ground, trees, wires; fuel is what the gauge"
                + " must read at the shut place, reserve kept. An estimate: look. BENT: way not straight,"
                + " see card.";
    }

    private void head(Flow flow) throws IOException {
        Sheet sheet = flow.sheet();
        for (Column column : Column.values()) {
            Sheet.Dot at = new Sheet.Dot(sheet.left() + column.x, flow.y() + 10);
            String unit = column == Column.FUEL ? (words.isPounds() ? " lb" : " kg") : "";
            sheet.textWithin(at, column.room() + GAP - 1, HEAD, column.head + unit);
        }
        flow.space(13);
        sheet.stroke(1.2);
        sheet.line(sheet.left(), flow.y(), sheet.right(), flow.y());
    }

    private void row(Flow flow, PlaceId place, List<Lift> all, Face face) throws IOException {
        List<String> below = below(flow.sheet(), place, all, face);
        if (flow.need(rowHeight(below, face))) {
            head(flow);
        }
        Sheet sheet = flow.sheet();
        double baseline = flow.y() + 13;
        for (Map.Entry<Column, String> cell : figures(place, all.get(0)).entrySet()) {
            Sheet.Dot at = new Sheet.Dot(sheet.left() + cell.getKey().x, baseline);
            Face cellFace = cell.getKey() == Column.GROUND ? Face.TEXT : FLOWN;
            sheet.textWithin(at, cell.getKey().room(), cellFace, cell.getValue());
        }
        flow.space(ROW);
        for (String line : below) {
            flow.space(face.size() * 1.12);
            sheet.text(sheet.left(), flow.y() - face.size() * 0.15, face, line);
        }
        flow.space(1.5);
        sheet.stroke(0.5);
        sheet.line(sheet.left(), flow.y(), sheet.right(), flow.y());
    }

    private Map<Column, String> figures(PlaceId place, Lift first) {
        Map<Column, String> cells = new EnumMap<>(Column.class);
        cells.put(Column.PLACE, place.value());
        cells.put(Column.FROM, from(first.from(), place));
        cells.put(Column.GROUND, groundFt(place));
        cells.put(Column.HOOK, hookFt(first));
        cells.put(Column.IN, magnetic(first.drop().approachFromTrueRad()));
        best(alternates(place))
                .ifPresentOrElse(
                        one -> {
                            cells.put(Column.ALTERNATE, direction(one));
                            cells.put(Column.OVER, Long.toString(Words.hookFt(one.hookAmslM())));
                            cells.put(
                                    Column.FUEL,
                                    Long.toString(fuel(one.fuelKg(), words.isPounds())));
                        },
                        () -> cells.put(Column.ALTERNATE, "NONE"));
        return cells;
    }

    private String direction(Alternate one) {
        return one.landing()
                + " "
                + magnetic(one.bearingTrueRad())
                + " "
                + Words.km(one.distanceM());
    }

    private List<Alternate> alternates(PlaceId place) {
        return alternates.getOrDefault(place, List.of());
    }

    private String from(PlaceId from, PlaceId place) {
        Words.Way way = words.way(from, place);
        return from + " " + magnetic(way.bearingTrueRad()) + " " + Words.km(way.distanceM());
    }

    private String magnetic(double trueRad) {
        return Words.bearing(words.magneticRad(trueRad));
    }

    private static String hookFt(Lift lift) {
        return HookHeights.find(lift.rotation(), lift.drop())
                .map(altitude -> Long.toString(Words.hookFt(altitude)))
                .orElse("?");
    }

    /** To the nearest foot: it is what the altimeter is held against. */
    private String groundFt(PlaceId place) {
        PlanePoint at = words.plane(job.getPlace(place).position());
        OptionalDouble height = ground.terrain().findHeightM(at.eastM(), at.northM());
        return height.isPresent()
                ? Long.toString(Math.round(Units.mToFt(height.getAsDouble())))
                : "?";
    }

    /** The lifts, with what differs from the first; then what the alternate asks for besides. */
    private List<String> below(Sheet sheet, PlaceId place, List<Lift> all, Face face) {
        Lift first = all.get(0);
        List<String> parts = new ArrayList<>();
        for (Lift lift : all) {
            String hook = hookFt(lift);
            String in = magnetic(lift.drop().approachFromTrueRad());
            parts.add(
                    words.clock(lift.rotation().hookedAt())
                            + " "
                            + lift.loads()
                            + (lift.from().equals(first.from()) ? "" : " from " + lift.from())
                            + (hook.equals(hookFt(first)) ? "" : " hook " + hook)
                            + (in.equals(magnetic(first.drop().approachFromTrueRad()))
                                    ? ""
                                    : " in " + in));
        }
        String lifted = String.join(", ", parts) + "." + bent(place, all);
        String asks = best(alternates(place)).map(this::asks).orElse("No landing that is known.");
        return sheet.fonts()
                .wrap(face, (lifted + " " + asks).strip(), sheet.right() - sheet.left());
    }

    /** The figures above are of the straight line. */
    private String bent(PlaceId place, List<Lift> all) {
        boolean isBent =
                all.stream()
                        .flatMap(lift -> lift.rotation().legs().stream())
                        .filter(leg -> leg.from().equals(place) || leg.to().equals(place))
                        .anyMatch(leg -> !Courses.of(job, leg).isEmpty());
        return isBent ? " BENT." : "";
    }

    private static long fuel(double massKg, boolean inPounds) {
        return inPounds ? Words.upLb(massKg) : Words.up(massKg);
    }

    /** Its fuel stands in the row above, in the job's unit and in no other. */
    private String asks(Alternate one) {
        String said = warnings(one);
        return said.isEmpty() ? "" : "ALT" + said.substring(1) + ".";
    }

    private String warnings(Alternate one) {
        return (one.passes().isEmpty() ? "" : ", past " + few(one.passes()))
                + (one.seen() ? "" : ", LOOK FOR TREES")
                + (one.isEnough()
                        ? ""
                        : ", " + PilotWarnings.MARK + " PLANNED ONLY " + planned(one.plannedKg()));
    }

    private String planned(double massKg) {
        return words.isPounds()
                ? Words.downLb(Math.max(0, massKg)) + " lb"
                : Words.down(Math.max(0, massKg)) + " kg";
    }

    private List<String> foot() {
        List<String> lines = new ArrayList<>();
        lines.add(
                "LAND "
                        + job.places().stream()
                                .filter(place -> place.agreed() && !place.isSite())
                                .map(this::landing)
                                .collect(Collectors.joining(", "))
                        + ".");
        List<String> zones =
                job.zones().stream()
                        .filter(zone -> zone.isActiveOn(job.date()))
                        .map(PilotPage::zone)
                        .toList();
        lines.add("NO FLY " + (zones.isEmpty() ? "no zone stated" : few(zones)) + ".");
        List<String> wires = job.wires().stream().map(PilotPage::wire).toList();
        lines.add("WIRES " + (wires.isEmpty() ? "no wire stated" : few(wires)) + ".");
        List<String> areas =
                job.releaseAreas().stream()
                        .filter(ReleaseArea::agreed)
                        .map(ReleaseArea::id)
                        .toList();
        lines.add("LET GO " + (areas.isEmpty() ? "no area agreed" : few(areas)) + ".");
        return lines;
    }

    /** As many as one page holds; the map has them all. */
    private static String few(List<String> all) {
        String first = all.stream().limit(MOST_NAMED).collect(Collectors.joining(", "));
        return all.size() > MOST_NAMED
                ? first + " AND " + (all.size() - MOST_NAMED) + " MORE: see the map"
                : first;
    }

    private String landing(Place place) {
        return place.id()
                + " "
                + groundFt(place.id())
                + " ft"
                + (place.fuel() ? " FUEL" : "")
                + (Alternates.isRefused(plan, place.id()) ? " NOT: steep or trees" : "")
                + best(alternates(place.id()))
                        .map(
                                one ->
                                        " (shut: "
                                                + direction(one)
                                                + " over "
                                                + Words.hookFt(one.hookAmslM())
                                                + " ft "
                                                + fuel(one.fuelKg(), words.isPounds())
                                                + (words.isPounds() ? " lb" : " kg")
                                                + warnings(one)
                                                + ")")
                        .orElse("");
    }

    private static String zone(Zone zone) {
        String rule =
                switch (zone.rule()) {
                    case NO_OVERFLIGHT -> "not over";
                    case MIN_HEIGHT -> "not below " + feet(zone);
                    case NO_HOVER_BELOW -> "no hover below " + feet(zone);
                    case NO_FUEL -> "no fuel";
                };
        return zone.id()
                + " "
                + rule
                + (zone.kinds().isEmpty() ? "" : " with " + String.join("/", zone.kinds()))
                + (zone.hours().isAllDay() ? "" : " " + zone.hours().say());
    }

    private static String feet(Zone zone) {
        return Words.up(Units.mToFt(zone.minAglM())) + " ft above ground";
    }

    private static String wire(Wire wire) {
        return wire.id()
                + (wire.live() ? " LIVE" : "")
                + (wire.registered() ? "" : " unregistered");
    }
}
