package underhook.adapter.paper;

import static underhook.adapter.paper.RichRow.big;

import java.io.IOException;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import org.apache.pdfbox.pdmodel.common.PDRectangle;
import underhook.app.port.OutputWriter.Output;
import underhook.core.job.Job;
import underhook.core.job.PlaceId;
import underhook.core.plan.Drop;
import underhook.core.plan.Plan;
import underhook.core.plan.Rotation;
import underhook.core.plan.Step;

/**
 * The day in the order it is flown, for the pilot's knee: what is flown by and what warns. What explains it
 * stands in {@link PilotAnnex}, once.
 */
final class PilotCards {
    /** One word: alone at the head of a line OFF is overlooked, or read of something else. */
    static final String ENGINE_OFF = ", engine\u00a0OFF";

    private static final double TICK_COLUMN = 19;
    private static final double NOTE_LINE = 12.5;
    private static final double BAR = 18;
    private static final double BELOW = 3;
    private static final Face BAR_FACE = Face.FLOWN.withSize(14);

    private final Job job;
    private final Plan plan;
    private final Words words;
    private final PilotWarnings warnings;
    private final Set<String> placesSeen = new HashSet<>();

    /** One step as it stands on the card. */
    private record Block(List<String> bar, List<RichRow> rows, List<String> notes) {
        double height() {
            return bar.size() * BAR
                    + rows.stream().mapToDouble(RichRow::height).sum()
                    + notes.size() * NOTE_LINE
                    + BELOW;
        }
    }

    PilotCards(Output output, Words words) {
        this.job = output.readJob().job();
        this.plan = output.plan();
        this.words = words;
        this.warnings = new PilotWarnings(plan);
    }

    void draw(Book book) throws IOException {
        Flow flow = new Flow(book, PDRectangle.A5, "Pilot card");
        flow.paragraph(Face.TEXT, summary());
        flow.space(3);
        boolean heavyRule = true;
        for (Step step : plan.steps()) {
            if (isMoment(step)) {
                continue;
            }
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
                + ". Bearings MAG, variation "
                + words.variation()
                + ". Hook: all that hangs on it, load, ballast and line; the loader's list has the"
                + " load alone. Hook heights AMSL, wind in kt, fuel in kg as read at hook-up. Per cent: what is left of what"
                + " stops first. NOT STRAIGHT: courses MAG and km of a way that bends, each turn about there; see"
                + " Map. Areas: where a load may be let go. "
                + PilotWarnings.MARK
                + " see Findings. Look every place over before its first use.";
    }

    /** A wait that is over within the minute is none that anybody could keep. */
    private boolean isMoment(Step step) {
        return switch (step.kind()) {
            case WAIT -> words.clock(step.startAt()).equals(words.clock(step.endAt()));
            case ROTATION, POSITION, CREW_MOVE, REFUEL, LINE_CHANGE, BREAK -> false;
        };
    }

    private void draw(Block block, Flow flow) throws IOException {
        Sheet sheet = flow.sheet();
        double y = flow.y();
        if (!block.bar().isEmpty()) {
            double high = block.bar().size() * BAR;
            sheet.fillBox(sheet.left(), y + 1, sheet.right() - sheet.left(), high - 1);
            sheet.white();
            sheet.fillBox(sheet.left() + 2, y + 4, 13, 13);
            for (String line : block.bar()) {
                sheet.text(sheet.left() + TICK_COLUMN, y + 15, BAR_FACE, line);
                y += BAR;
            }
            sheet.black();
        } else {
            sheet.stroke(1);
            sheet.box(sheet.left() + 2, y + 3, 13, 13);
        }
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
        flow.space(BELOW);
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

    /** All notes as one paragraph: a line of its own for each would double the card. */
    private List<String> wrap(Sheet sheet, List<String> notes) {
        String all =
                notes.stream()
                        .filter(note -> !note.isBlank())
                        .map(note -> note.endsWith(".") ? note : note + ".")
                        .collect(Collectors.joining(" "));
        return all.isEmpty() ? List.of() : sheet.fonts().wrap(Face.TEXT, all, room(sheet));
    }

    private Block rotationBlock(Step step, Rotation rotation, Sheet sheet) {
        PlaceId before = Words.hookPlace(step);
        List<RichRow> rows = new ArrayList<>();
        rows.add(
                row(
                        sheet,
                        List.of(0.0, 46.0),
                        List.of(
                                big(words.clock(rotation.hookedAt())),
                                big(before + " → " + destinations(rotation)),
                                loads(rotation),
                                "hook " + big(Words.up(rotation.massOnHookKg())) + " kg",
                                "fuel "
                                        + big(Words.down(rotation.fuelAtHookKg()))
                                        + " max "
                                        + big(
                                                Words.down(
                                                        job.machine()
                                                                .mostReadKg(
                                                                        rotation.fuelMaxKg()))))));
        Optional<Drop> last = Optional.empty();
        for (Drop drop : rotation.drops()) {
            // Two loads for one place hang one above the other: the same numbers count.
            if (last.filter(one -> isSameWay(rotation, one, drop)).isEmpty()) {
                rows.add(row(sheet, List.of(0.0), dropCells(rotation, before, drop)));
            }
            last = Optional.of(drop);
            before = drop.place();
        }
        return new Block(List.of(), rows, wrap(sheet, notes(step, rotation, before)));
    }

    private static boolean isSameWay(Rotation rotation, Drop one, Drop other) {
        return one.place().equals(other.place())
                && HookHeights.find(rotation, one).equals(HookHeights.find(rotation, other));
    }

    private List<String> dropCells(Rotation rotation, PlaceId before, Drop drop) {
        List<String> cells = new ArrayList<>();
        if (rotation.drops().stream().map(Drop::place).distinct().count() > 1) {
            cells.add(big(drop.place()) + " " + drop.load());
        }
        cells.addAll(direction(before, drop.place()));
        cells.add(HookHeights.words(rotation, drop));
        cells.add("in from " + big(magnetic(drop.approachFromTrueRad())));
        cells.add("out " + big(magnetic(drop.departureTrackTrueRad())) + " MAG");
        cells.add(head(drop));
        return cells;
    }

    private String magnetic(double trueRad) {
        return Words.bearing(words.magneticRad(trueRad));
    }

    private List<String> notes(Step step, Rotation rotation, PlaceId end) {
        List<String> notes = new ArrayList<>();
        PlaceId hook = Words.hookPlace(step);
        if (!hook.equals(step.from())) {
            notes.add("FIRST empty to " + hook + ": " + way(step.from(), hook));
        }
        rotation.legs().forEach(leg -> words.courses(leg, true).ifPresent(notes::add));
        if (words.isPounds()) {
            notes.add(pounds(rotation));
        }
        rotation.limits().stream()
                .filter(limit -> limit.governing())
                .map(Words::brief)
                .forEach(notes::add);
        if (rotation.loads().stream().map(job::getLoad).anyMatch(Words::isEstimated)) {
            notes.add("MASS ESTIMATED");
        }
        notes.add(cross(rotation));
        rotation.drops().stream().flatMap(drop -> pole(drop).stream()).forEach(notes::add);
        notes.addAll(warnings.list(rotation, placesSeen));
        Crossings.list(job, words, step).forEach(one -> notes.add(one.brief()));
        rotation.legs().forEach(leg -> LetGo.brief(leg).ifPresent(notes::add));
        if (step.to().equals(end)) {
            // No way is flown: the next lift begins where this one ends.
            notes.add("THEN stay at " + end);
        } else if (!step.to().equals(step.from())) {
            notes.add("THEN to " + step.to() + ": " + way(end, step.to()));
        }
        return notes;
    }

    /** Each from the kilograms behind the card's, to its own safe side. */
    private String pounds(Rotation rotation) {
        return "POUNDS: hook "
                + Words.upLb(rotation.massOnHookKg())
                + ", fuel "
                + Words.downLb(rotation.fuelAtHookKg())
                + " max "
                + Words.downLb(job.machine().mostReadKg(rotation.fuelMaxKg()));
    }

    private static String cross(Rotation rotation) {
        return rotation.drops().stream()
                .map(PilotCards::cross)
                .distinct()
                .collect(Collectors.joining("; "));
    }

    /** What a pole's release needs; the annex says why. */
    private Optional<String> pole(Drop drop) {
        return plan.poles().stream()
                .filter(pole -> pole.load().equals(drop.load()))
                .findFirst()
                .map(
                        pole ->
                                "POLE: leave after TWO confirmations and "
                                        + Words.up(pole.readingKg())
                                        + " kg"
                                        + (words.isPounds()
                                                ? ", " + Words.upLb(pole.readingKg()) + " lb"
                                                : ""));
    }

    private static String destinations(Rotation rotation) {
        return Words.joined(rotation.drops().stream().map(Drop::place).distinct().toList());
    }

    private String loads(Rotation rotation) {
        String ids = big(Words.joined(rotation.loads()).replace(" ", ""));
        return rotation.loads().size() > 1
                ? ids
                : ids + " " + job.getLoad(rotation.loads().get(0)).kind();
    }

    private static String head(Drop drop) {
        long kt = Words.headKt(drop.headMPerS());
        return (kt < 0 ? "TAIL " : "head ") + Math.abs(kt);
    }

    private static String cross(Drop drop) {
        long kt = Words.crossKt(drop.crossMPerS());
        return kt == 0 ? "" : "Cross " + kt + (drop.crossMPerS() > 0 ? " right" : " left");
    }

    /** To the tenth, as everywhere: the line is known by it. */
    static String lineLength(double lengthM) {
        return lengthM > 0 ? LoaderLists.rounded(lengthM, 1) : "OFF";
    }

    private Block otherBlock(Step step, Sheet sheet) {
        String at = words.clock(step.startAt()) + " ";
        String engine = step.engineRunning() ? "" : ENGINE_OFF;
        return switch (step.kind()) {
            case ROTATION, POSITION ->
                    new Block(
                            List.of(),
                            List.of(row(sheet, List.of(0.0, 48.0), empty(step))),
                            wrap(sheet, over(step)));
            case CREW_MOVE ->
                    new Block(
                            wrapBar(
                                    sheet,
                                    at
                                            + "CREW "
                                            + step.from()
                                            + " → "
                                            + step.to()
                                            + "  "
                                            + way(step.from(), step.to())
                                            + ", line "
                                            + fitted(step)),
                            List.of(),
                            wrap(sheet, over(step)));
            case REFUEL -> bar(sheet, at + "REFUEL " + step.from() + "  " + fuel(step) + engine);
            case LINE_CHANGE ->
                    bar(
                            sheet,
                            at
                                    + "LINE at "
                                    + step.from()
                                    + (step.lineLengthM() > 0 ? ": fit " : ": ")
                                    + fitted(step)
                                    + engine);
            case BREAK -> bar(sheet, between(step) + "BREAK at " + step.from() + engine);
            case WAIT ->
                    new Block(
                            List.of(),
                            List.of(),
                            List.of(between(step) + "WAIT at " + step.from() + engine + "."));
        };
    }

    private Block bar(Sheet sheet, String text) {
        return new Block(wrapBar(sheet, text), List.of(), List.of());
    }

    /** Long names take a second line: nothing on the knee is printed smaller for them. */
    private List<String> wrapBar(Sheet sheet, String text) {
        return sheet.fonts().wrap(BAR_FACE, text, room(sheet) - 4);
    }

    private String between(Step step) {
        return words.clock(step.startAt()) + "–" + words.clock(step.endAt()) + " ";
    }

    private String fitted(Step step) {
        return words.line(step.lineLengthM());
    }

    private List<String> empty(Step step) {
        List<String> cells = new ArrayList<>();
        cells.add(big(words.clock(step.startAt())));
        cells.add("EMPTY " + big(step.from() + " → " + step.to()));
        cells.addAll(direction(step.from(), step.to()));
        cells.add("MAG");
        cells.add("line " + big(fitted(step)));
        return cells;
    }

    private List<String> over(Step step) {
        List<String> notes = new ArrayList<>();
        step.crew().ifPresent(crew -> notes.add(Crossings.people(job, crew)));
        step.legs().forEach(leg -> words.courses(leg, true).ifPresent(notes::add));
        Crossings.list(job, words, step).forEach(one -> notes.add(one.brief()));
        return notes;
    }

    private List<String> direction(PlaceId from, PlaceId to) {
        if (from.equals(to)) {
            return List.of();
        }
        Words.Way way = words.way(from, to);
        return List.of(big(magnetic(way.bearingTrueRad())), big(Words.km(way.distanceM())) + " km");
    }

    private String way(PlaceId from, PlaceId to) {
        Words.Way way = words.way(from, to);
        return magnetic(way.bearingTrueRad()) + " MAG " + Words.km(way.distanceM()) + " km";
    }

    private String fuel(Step step) {
        long from = Words.down(step.fuelStartKg());
        long to = Words.down(step.fuelEndKg());
        return from
                + " → "
                + to
                + " kg, take "
                + (to - from)
                + (words.isPounds() ? ", to " + Words.downLb(step.fuelEndKg()) + " lb" : "");
    }
}
