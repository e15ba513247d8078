package underhook.adapter.paper;

import static underhook.adapter.paper.RichRow.big;

import java.io.IOException;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Collectors;
import org.apache.pdfbox.pdmodel.common.PDRectangle;
import underhook.app.port.OutputWriter.Output;
import underhook.core.job.Job;
import underhook.core.job.Load;
import underhook.core.job.PlaceId;
import underhook.core.plan.Drop;
import underhook.core.plan.Leg;
import underhook.core.plan.Limit;
import underhook.core.plan.PathPoint;
import underhook.core.plan.Plan;
import underhook.core.plan.Rotation;
import underhook.core.plan.Step;
import underhook.core.plan.StepKind;
import underhook.core.unit.Units;

/** The day in the order it is flown, for the pilot's knee. */
final class PilotCards {
    private static final double TICK_COLUMN = 24;
    private static final double NOTE_LINE = 13.5;
    private static final double BAR = 22;

    private final Job job;
    private final Plan plan;
    private final Words words;

    /** One step as it stands on the card. */
    private record Block(Optional<String> bar, List<RichRow> rows, List<String> notes) {
        double height() {
            return (bar.isPresent() ? BAR : 0)
                    + rows.stream().mapToDouble(RichRow::height).sum()
                    + notes.size() * NOTE_LINE
                    + 8;
        }
    }

    PilotCards(Output output, Words words) {
        this.job = output.readJob().job();
        this.plan = output.plan();
        this.words = words;
    }

    void draw(Book book) throws IOException {
        Flow flow = new Flow(book, PDRectangle.A5, "Pilot card");
        flow.paragraph(Face.TEXT, summary());
        if (plan.odds().isPresent()) {
            flow.paragraph(Face.TEXT, new OddsWords(plan.odds().get(), words).text());
        }
        flow.space(4);
        boolean heavyRule = true;
        for (Step step : plan.steps()) {
            Block block = block(step, flow.sheet());
            flow.need(block.height());
            draw(block, flow);
            // Heavy and light rules in turn keep the eye on its row.
            flow.sheet().stroke(heavyRule ? 1.6 : 0.5);
            flow.sheet().line(flow.sheet().left(), flow.y(), flow.sheet().right(), flow.y());
            heavyRule = !heavyRule;
        }
        if (plan.steps().isEmpty()) {
            flow.paragraph(Face.STRONG, "No step is planned. The findings say why.");
        }
    }

    private String summary() {
        return Words.count(plan.summary().rotations(), "rotation")
                + ", "
                + Words.count(plan.summary().refuels(), "refuelling")
                + ", "
                + Words.count(plan.summary().lineChanges(), "line change")
                + ", end about "
                + words.clock(plan.summary().finishAt())
                + others()
                + ". Variation "
                + variation()
                + ". Hook heights AMSL. Fuel is the reading at hook-up. Look every place over before its"
                + " first use.";
    }

    /** What else could be flown: flying minutes and end of each day that was not chosen. */
    private String others() {
        String all =
                plan.summary().front().stream()
                        .filter(trade -> !trade.chosen())
                        .map(
                                trade ->
                                        Math.round(Math.ceil(Units.sToMinutes(trade.flightS())))
                                                + " min, end "
                                                + words.clock(trade.finishAt()))
                        .collect(Collectors.joining("; "));
        return all.isEmpty()
                ? ""
                : ". Flying "
                        + Math.round(Math.ceil(Units.sToMinutes(plan.summary().flightS())))
                        + " min; other orders: "
                        + all;
    }

    private String variation() {
        double degrees = Units.radToDeg(job.magneticVariationRad());
        return String.format(Locale.ROOT, "%.1f° %s", Math.abs(degrees), degrees < 0 ? "W" : "E");
    }

    private void draw(Block block, Flow flow) throws IOException {
        Sheet sheet = flow.sheet();
        double y = flow.y();
        if (block.bar().isPresent()) {
            sheet.fillBox(sheet.left(), y + 1, sheet.right() - sheet.left(), BAR - 1);
            sheet.white();
            sheet.fillBox(sheet.left() + 3, y + 5, 14, 14);
            sheet.textWithin(
                    new Sheet.Dot(sheet.left() + TICK_COLUMN, y + 17),
                    room(sheet) - 4,
                    Face.FLOWN,
                    block.bar().get());
            sheet.black();
            y += BAR;
        } else {
            sheet.stroke(1);
            sheet.box(sheet.left() + 3, y + 5, 14, 14);
        }
        y += 2;
        for (RichRow row : block.rows()) {
            row.draw(sheet, sheet.left() + TICK_COLUMN, y);
            y += row.height();
        }
        flow.space(y - flow.y());
        for (String note : block.notes()) {
            if (flow.need(NOTE_LINE)) {
                note(flow, Face.STRONG, "The step before, continued:");
            }
            note(flow, Face.TEXT, note);
        }
        flow.space(6);
    }

    private static void note(Flow flow, Face face, String text) throws IOException {
        flow.space(NOTE_LINE);
        Sheet sheet = flow.sheet();
        sheet.text(sheet.left() + TICK_COLUMN, flow.y() - 2, face, text);
    }

    private Block block(Step step, Sheet sheet) {
        return step.rotation()
                .map(rotation -> rotationBlock(step, rotation, sheet))
                .orElseGet(() -> otherBlock(step, sheet));
    }

    private double room(Sheet sheet) {
        return sheet.right() - sheet.left() - TICK_COLUMN;
    }

    private RichRow row(Sheet sheet, List<Double> tabs, List<String> cells) {
        return new RichRow(sheet.fonts(), room(sheet), tabs, cells);
    }

    private List<String> wrap(Sheet sheet, List<String> notes) {
        List<String> lines = new ArrayList<>();
        for (String note : notes) {
            if (!note.isBlank()) {
                lines.addAll(sheet.fonts().wrap(Face.TEXT, note, room(sheet)));
            }
        }
        return lines;
    }

    private Block rotationBlock(Step step, Rotation rotation, Sheet sheet) {
        List<RichRow> rows = new ArrayList<>();
        List<String> notes = new ArrayList<>();
        rows.add(
                row(
                        sheet,
                        List.of(0.0, 52.0, 190.0),
                        List.of(
                                big(words.clock(rotation.hookedAt())),
                                big(Words.hookPlace(step) + " → " + destinations(rotation)),
                                loads(rotation))));
        List<String> masses = new ArrayList<>();
        masses.add(big(Words.up(rotation.massOnHookKg())) + " kg hook");
        masses.add(big(lineLength(step.lineLengthM())) + " m line");
        masses.add("fuel max " + big(Words.down(rotation.fuelMaxKg())));
        masses.add("plan " + big(Words.down(rotation.fuelAtHookKg())) + " kg");
        rows.add(row(sheet, List.of(0.0, 94.0, 166.0, 268.0), masses));
        PlaceId before = Words.hookPlace(step);
        if (!before.equals(step.from())) {
            Words.Way first = words.way(step.from(), before);
            notes.add(
                    "First to "
                            + before
                            + " with the empty line: "
                            + Words.bearing(first.bearingTrueRad())
                            + " TRUE, "
                            + Words.km(first.distanceM())
                            + " km.");
        }
        for (Drop drop : rotation.drops()) {
            List<String> first = new ArrayList<>();
            if (rotation.drops().size() > 1) {
                rows.add(
                        row(
                                sheet,
                                List.of(0.0),
                                List.of(big(drop.place()) + " set down " + big(drop.load()))));
            }
            if (!before.equals(drop.place())) {
                first.addAll(direction(before, drop.place()));
            }
            first.add(hook(rotation, drop));
            rows.add(row(sheet, List.of(0.0, 77.0, 152.0, 206.0), first));
            rows.add(
                    row(
                            sheet,
                            List.of(0.0, 112.0, 206.0, 277.0),
                            List.of(
                                    "in from "
                                            + big(Words.bearing(drop.approachFromTrueRad()))
                                            + " TRUE",
                                    "out "
                                            + big(Words.bearing(drop.departureTrackTrueRad()))
                                            + " TRUE",
                                    head(drop),
                                    cross(drop))));
            before = drop.place();
        }
        for (Limit limit : rotation.limits()) {
            if (limit.governing()) {
                notes.add("Stops first: " + Words.limit(limit) + ".");
            }
        }
        rotation.drops().stream().flatMap(drop -> pole(drop).stream()).forEach(notes::add);
        notes.addAll(Crossings.list(job, words, rotation));
        List<String> last =
                rotation.legs().stream().flatMap(leg -> LetGo.line(leg).stream()).toList();
        notes.add((slowing(rotation) + (last.isEmpty() ? "" : last.get(0))).strip());
        last.stream().skip(1).forEach(notes::add);
        if (!step.to().equals(step.from())) {
            Words.Way back = words.way(before, step.to());
            notes.add(
                    "Then to "
                            + step.to()
                            + ": "
                            + Words.bearing(back.bearingTrueRad())
                            + " TRUE, "
                            + Words.km(back.distanceM())
                            + " km.");
        }
        return new Block(Optional.empty(), rows, wrap(sheet, notes));
    }

    /** Where to begin slowing down with the load. */
    private static String slowing(Rotation rotation) {
        return rotation.legs().stream()
                .filter(leg -> !leg.carrying().isEmpty())
                .flatMap(leg -> leg.slowing().stream())
                .findFirst()
                .map(one -> "Slow from " + Words.up(one.beginM()) + " m. ")
                .orElse("");
    }

    /** What holds while a pole is guyed, and why its release needs two confirmations. */
    private Optional<String> pole(Drop drop) {
        return plan.poles().stream()
                .filter(pole -> pole.load().equals(drop.load()))
                .findFirst()
                .map(
                        pole ->
                                "POLE: TWO confirmations and a reading of "
                                        + Words.up(pole.readingKg())
                                        + " kg before you leave: falling with the sling on it takes you"
                                        + " along.");
    }

    private static String destinations(Rotation rotation) {
        return Words.joined(rotation.drops().stream().map(Drop::place).distinct().toList());
    }

    private String loads(Rotation rotation) {
        StringBuilder text = new StringBuilder(big(Words.joined(rotation.loads())));
        boolean estimated = false;
        List<String> kinds = new ArrayList<>();
        for (Load load : rotation.loads().stream().map(job::getLoad).toList()) {
            estimated |= Words.isEstimated(load);
            if (!kinds.contains(load.kind())) {
                kinds.add(load.kind());
            }
        }
        text.append(' ').append(String.join(", ", kinds));
        return estimated ? text.append(" EST").toString() : text.toString();
    }

    private static String hook(Rotation rotation, Drop drop) {
        return hookAltitudeAmslM(rotation, drop)
                .map(
                        altitude ->
                                "hook "
                                        + big(Words.hookM(altitude))
                                        + " m "
                                        + big(Words.hookFt(altitude))
                                        + " ft")
                .orElse("hook altitude not planned");
    }

    /** Where the leg that brings the load ends. */
    private static Optional<Double> hookAltitudeAmslM(Rotation rotation, Drop drop) {
        for (Leg leg : rotation.legs()) {
            if (leg.to().equals(drop.place())
                    && leg.carrying().contains(drop.load())
                    && !leg.path().isEmpty()) {
                PathPoint end = leg.path().get(leg.path().size() - 1);
                return Optional.of(end.hookAltitudeAmslM());
            }
        }
        return Optional.empty();
    }

    private static String head(Drop drop) {
        long kt = Words.headKt(drop.headMPerS());
        return (kt < 0 ? "TAIL " : "head ") + big(Math.abs(kt)) + " kt";
    }

    private static String cross(Drop drop) {
        long kt = Words.crossKt(drop.crossMPerS());
        String side = kt == 0 ? "" : drop.crossMPerS() > 0 ? " right" : " left";
        return "cross " + big(kt) + side;
    }

    static String lineLength(double lengthM) {
        return lengthM > 0
                ? BigDecimal.valueOf(lengthM).stripTrailingZeros().toPlainString()
                : "OFF";
    }

    private Block otherBlock(Step step, Sheet sheet) {
        String times = words.clock(step.startAt()) + "–" + words.clock(step.endAt()) + "  ";
        List<RichRow> rows = new ArrayList<>();
        List<String> notes = new ArrayList<>();
        String what =
                switch (step.kind()) {
                    case ROTATION -> "ROTATION " + step.from() + " → " + step.to();
                    case POSITION -> "POSITION " + step.from() + " → " + step.to();
                    case CREW_MOVE -> "CREW MOVE " + step.from() + " → " + step.to();
                    case REFUEL -> "REFUEL at " + step.from();
                    case LINE_CHANGE ->
                            step.lineLengthM() > 0
                                    ? "LINE CHANGE at "
                                            + step.from()
                                            + ": fit "
                                            + lineLength(step.lineLengthM())
                                            + " m"
                                    : "LINE CHANGE at " + step.from() + ": line OFF";
                    case BREAK -> "BREAK at " + step.from();
                    case WAIT -> "WAIT at " + step.from();
                };
        switch (step.kind()) {
            case ROTATION -> {}
            case POSITION, CREW_MOVE -> {
                List<String> cells = new ArrayList<>(direction(step.from(), step.to()));
                cells.add(
                        step.lineLengthM() > 0
                                ? big(lineLength(step.lineLengthM())) + " m line"
                                : big("line OFF"));
                rows.add(row(sheet, List.of(0.0, 77.0, 152.0, 206.0), cells));
                step.crew().ifPresent(crew -> notes.add(Crossings.people(job, crew)));
                notes.addAll(Crossings.list(job, words, step));
            }
            case REFUEL -> rows.add(row(sheet, List.of(0.0, 130.0), fuel(step)));
            case LINE_CHANGE, BREAK, WAIT -> {}
        }
        if (step.kind() != StepKind.ROTATION) {
            String engine = step.engineRunning() ? "Engine runs." : "Engine off.";
            notes.add((engine + " " + step.because()).strip());
        }
        return new Block(Optional.of(times + what), rows, wrap(sheet, notes));
    }

    private List<String> direction(PlaceId from, PlaceId to) {
        if (from.equals(to)) {
            return List.of();
        }
        Words.Way way = words.way(from, to);
        return List.of(
                big(Words.bearing(way.bearingTrueRad())) + " TRUE",
                big(Words.bearing(words.magneticRad(way.bearingTrueRad()))) + " MAG",
                big(Words.km(way.distanceM())) + " km");
    }

    private static List<String> fuel(Step step) {
        return List.of(
                "from " + big(Words.down(step.fuelStartKg())) + " kg",
                "to "
                        + big(Words.down(step.fuelEndKg()))
                        + " kg, take "
                        + big(Words.down(step.fuelEndKg()) - Words.down(step.fuelStartKg()))
                        + " kg");
    }
}
