package underhook.adapter.paper;

import java.io.IOException;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import org.apache.pdfbox.pdmodel.common.PDRectangle;
import underhook.app.port.OutputWriter.Output;
import underhook.core.job.Crew;
import underhook.core.job.Job;
import underhook.core.job.Language;
import underhook.core.job.LineItem;
import underhook.core.job.Load;
import underhook.core.job.LoadId;
import underhook.core.job.Place;
import underhook.core.job.PlaceId;
import underhook.core.plan.CrewStay;
import underhook.core.plan.Drop;
import underhook.core.plan.Plan;
import underhook.core.plan.Rotation;
import underhook.core.plan.Step;
import underhook.core.unit.Units;

/** For each place where loads are hooked up: what goes when, how heavy, on which line. */
final class LoaderLists {
    /** Jet fuel as it is usually reckoned, kg per litre. @source PRACTICE common figure */
    private static final double FUEL_KG_PER_LITRE = 0.80;

    private final Job job;
    private final Plan plan;
    private final Words words;

    LoaderLists(Output output, Words words) {
        this.job = output.readJob().job();
        this.plan = output.plan();
        this.words = words;
    }

    void draw(Book book) throws IOException {
        for (Place place : job.places()) {
            List<Step> hooked =
                    plan.steps().stream().filter(step -> hooksAt(step, place.id())).toList();
            // What only crews hook stands on their own sheets.
            boolean ofCrews = hooked.stream().allMatch(step -> isOfCrew(step, place));
            if (!hooked.isEmpty() && !ofCrews) {
                drawPlace(book, place);
            }
        }
    }

    private boolean isOfCrew(Step step, Place place) {
        return place.isSite() && plan.crews().stream().anyMatch(stay -> hooks(stay, step));
    }

    /** Whether people who may hook are there when a step's load is hooked up. */
    private boolean hooks(CrewStay stay, Step step) {
        Instant hookedAt = step.rotation().orElseThrow().hookedAt();
        return stay.isAt(Words.hookPlace(step), hookedAt) && mayHook(stay);
    }

    /** What people hook up away from the laydowns, for their own sheet. */
    void drawHookUps(Flow flow, List<CrewStay> stays) throws IOException {
        List<Step> theirs =
                plan.steps().stream()
                        .filter(step -> step.rotation().isPresent())
                        .filter(step -> isSite(step))
                        .filter(step -> stays.stream().anyMatch(stay -> hooks(stay, step)))
                        .toList();
        if (theirs.isEmpty()) {
            return;
        }
        flow.heading("What you hook up");
        flow.paragraph(Face.TEXT, estimates());
        table(flow);
        for (Step step : theirs) {
            drawTrip(flow, step, step.rotation().orElseThrow());
        }
    }

    private static boolean hooksAt(Step step, PlaceId place) {
        return step.rotation().isPresent() && Words.hookPlace(step).equals(place);
    }

    private void drawPlace(Book book, Place place) throws IOException {
        Flow flow = new Flow(book, PDRectangle.A4, "Loader's list " + place.id(), tongue(place));
        String called = (place.id() + " " + place.name()).strip();
        flow.paragraph(Face.STRONG, called + ". " + linesInStock());
        flow.paragraph(Face.TEXT, estimates());
        flow.space(4);
        table(flow);
        for (Step step : plan.steps()) {
            if (hooksAt(step, place.id())) {
                drawTrip(flow, step, step.rotation().orElseThrow());
            } else if (step.rotation().isEmpty() && step.from().equals(place.id())) {
                drawOther(flow, step);
            }
        }
    }

    /** Of those who hook there, where they share one. */
    private Tongue tongue(Place place) {
        Set<Language> languages = new TreeSet<>();
        for (CrewStay stay : plan.crews()) {
            if (stay.place().equals(place.id()) && mayHook(stay)) {
                job.crews().stream()
                        .filter(crew -> crew.id().equals(stay.crew()))
                        .forEach(crew -> languages.add(crew.language()));
            }
        }
        return Tongue.of(languages.size() == 1 ? languages.iterator().next() : Language.EN);
    }

    private String estimates() {
        return "EST: the mass is estimated and planned at "
                + percent(job.rules().masses().estimatedMassFactor())
                + " % of what was typed. Heavier on the load cell, without the line, than planned and added: do not lift."
                + " Nobody under the load, nobody between load and drop-off.";
    }

    private void table(Flow flow) throws IOException {
        double poundsWidth = words.isPounds() ? 14 : 0;
        flow.table(
                List.of(
                        Flow.Column.of("tick", 27),
                        Flow.Column.strong("hook-up", 44),
                        Flow.Column.strong("load", 52),
                        Flow.Column.of("kind, size m", 82),
                        Flow.Column.of("as typed", 60),
                        Flow.Column.strong("planned kg", 56 + poundsWidth),
                        Flow.Column.strong("to", 52),
                        Flow.Column.strong("line m", 34),
                        Flow.Column.of("who hooks, ballast, trip", 120 - poundsWidth)));
    }

    private static long percent(double factor) {
        return Math.round(factor * 100);
    }

    private String linesInStock() {
        return "Lines: "
                + job.machine().lines().stream()
                        .map(LineItem::name)
                        .collect(Collectors.joining(", "))
                + ".";
    }

    private void drawTrip(Flow flow, Step step, Rotation rotation) throws IOException {
        for (Drop drop : rotation.drops()) {
            Load load = job.getLoad(drop.load());
            boolean first = drop.equals(rotation.drops().get(0));
            flow.row(
                    List.of(
                            "[]",
                            words.clock(rotation.hookedAt()),
                            load.id().value(),
                            load.kind() + " " + size(load),
                            load.massTyped().isEmpty() ? "none" : load.massTyped(),
                            words.plannedOnCell(load) + (Words.isEstimated(load) ? " EST" : ""),
                            drop.place().value(),
                            words.lineInMetres(step.lineLengthM()),
                            dangerous(load)
                                    + hooker(step)
                                    + ". "
                                    + trip(rotation, load.id(), first)));
        }
    }

    /** What whoever hooks or receives it must know of before they touch it. */
    static String dangerous(Load load) {
        return load.isDangerous() ? "DANGEROUS GOODS: " + load.dangerousGoods() + ". " : "";
    }

    private static String size(Load load) {
        return shortM(load.lengthM()) + "×" + shortM(load.widthM()) + "×" + shortM(load.heightM());
    }

    /** To the centimetre: what was typed in feet is no round number of metres. */
    static String shortM(double lengthM) {
        return rounded(lengthM, 2);
    }

    /** To so many decimals, without those that say nothing. */
    static String rounded(double lengthM, int decimals) {
        return BigDecimal.valueOf(lengthM)
                .setScale(decimals, RoundingMode.HALF_UP)
                .stripTrailingZeros()
                .toPlainString();
    }

    private static String trip(Rotation rotation, LoadId load, boolean first) {
        StringBuilder text = new StringBuilder();
        if (rotation.ballastKg() > 0 && first) {
            text.append("ADD ").append(Words.up(rotation.ballastKg())).append(" kg ballast. ");
        }
        List<LoadId> others = rotation.loads().stream().filter(id -> !id.equals(load)).toList();
        if (!others.isEmpty()) {
            int turn = rotation.loads().indexOf(load) + 1;
            text.append("WITH ")
                    .append(Words.joined(others))
                    .append(", released no. ")
                    .append(turn)
                    .append(". ");
        }
        return text.toString();
    }

    /** Whoever may hook and is at the place at that moment. */
    private String hooker(Step step) {
        List<String> hookers = new ArrayList<>();
        for (CrewStay stay : plan.crews()) {
            if (hooks(stay, step) && !hookers.contains(stay.crew().value())) {
                hookers.add(stay.crew().value());
            }
        }
        for (Crew crew : job.crews()) {
            boolean unplanned =
                    plan.crews().stream().noneMatch(stay -> stay.crew().equals(crew.id()));
            if (unplanned
                    && crew.start().equals(Words.hookPlace(step))
                    && crew.roles().contains(Crew.Role.HOOK)) {
                hookers.add(crew.id().value());
            }
        }
        String who = hookers.isEmpty() ? "NOBODY TO HOOK" : String.join(" or ", hookers) + " hooks";
        // A crew comes to several sites; a laydown has a list of its own.
        return isSite(step) ? who + " at " + Words.hookPlace(step) : who;
    }

    private boolean isSite(Step step) {
        return job.getPlace(Words.hookPlace(step)).isSite();
    }

    private boolean mayHook(CrewStay stay) {
        return job.crews().stream()
                .anyMatch(
                        crew ->
                                crew.id().equals(stay.crew())
                                        && crew.roles().contains(Crew.Role.HOOK));
    }

    private void drawOther(Flow flow, Step step) throws IOException {
        String times = words.clock(step.startAt()) + "–" + words.clock(step.endAt()) + " ";
        switch (step.kind()) {
            case REFUEL -> flow.bar(times + refuelling(step));
            case LINE_CHANGE ->
                    flow.bar(
                            times
                                    + (step.lineLengthM() > 0
                                            ? "LINE CHANGE: fit " + words.line(step.lineLengthM())
                                            : "LINE CHANGE: line OFF"));
            case BREAK -> flow.bar(times + "BREAK");
            case CREW_MOVE ->
                    flow.bar(
                            times
                                    + "CREW "
                                    + step.crew().map(Object::toString).orElse("")
                                    + " flown to "
                                    + step.to()
                                    + ", line OFF");
            case POSITION -> flow.bar(times + "machine moves to " + step.to());
            case WAIT -> {
                if (Duration.between(step.startAt(), step.endAt()).toMinutes() >= 5) {
                    flow.bar(times + "machine waits");
                }
            }
            case ROTATION -> {}
        }
    }

    private String refuelling(Step step) {
        long kg = Words.down(step.fuelEndKg()) - Words.down(step.fuelStartKg());
        return "REFUEL "
                + kg
                + " kg, about "
                + Math.round(kg / FUEL_KG_PER_LITRE)
                + " litres at 0.80 kg/litre, to "
                + Words.down(step.fuelEndKg())
                + " kg"
                + (words.isPounds() ? pounds(step) : "")
                + ". "
                + (step.engineRunning() ? "Engine runs." : "Engine off.");
    }

    /** For a gauge and a pump of pounds and gallons. */
    private static String pounds(Step step) {
        long lb = Words.downLb(step.fuelEndKg()) - Words.downLb(step.fuelStartKg());
        double volumeM3 = Units.litreToM3(Units.lbToKg((double) lb) / FUEL_KG_PER_LITRE);
        return " ("
                + lb
                + " lb, about "
                + Math.round(volumeM3 / Units.usGalToM3(1))
                + " US gal, to "
                + Words.downLb(step.fuelEndKg())
                + " lb)";
    }
}
