package underhook.adapter.paper;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import org.apache.pdfbox.pdmodel.common.PDRectangle;
import underhook.app.port.OutputWriter.Output;
import underhook.core.ahead.Alternates.Alternate;
import underhook.core.job.Job;
import underhook.core.job.PlaceId;
import underhook.core.plan.Drop;
import underhook.core.plan.Plan;
import underhook.core.plan.Rotation;
import underhook.core.plan.Step;
import underhook.core.unit.Units;

/** What the pilot card leaves out, for reading before the flight: rules in full, limits, true bearings, reasons. */
final class PilotAnnex {
    private static final Face CELL = new Face(false, 9.5);
    private static final Face BOLD = new Face(true, 9.5);

    private final Job job;
    private final Plan plan;
    private final Map<PlaceId, List<Alternate>> alternates;
    private final Words words;

    PilotAnnex(Output output, Words words, Map<PlaceId, List<Alternate>> alternates) {
        this.alternates = alternates;
        this.job = output.readJob().job();
        this.plan = output.plan();
        this.words = words;
    }

    void draw(Book book) throws IOException {
        if (plan.steps().isEmpty()) {
            return;
        }
        Flow flow = new Flow(book, PDRectangle.A4, "Annex to the pilot card");
        if (!plan.poles().isEmpty()) {
            flow.paragraph(
                    Face.STRONG,
                    "Poles: two people say that the sling is off, and the reading is what hangs there"
                            + " without the pole, before you leave. Falling with the sling on it, a"
                            + " pole takes you along.");
        }
        if (plan.odds().isPresent()) {
            flow.heading("How safe the end of the day is");
            flow.paragraph(Face.TEXT, new OddsWords(plan.odds().get(), words).text());
        }
        String others = others();
        if (!others.isEmpty()) {
            flow.heading("What else could be flown");
            flow.paragraph(Face.TEXT, others);
        }
        String refused = refused();
        if (!refused.isEmpty()) {
            flow.heading("Comforts this day refuses");
            flow.paragraph(Face.TEXT, refused);
        }
        List<String> shut = shut();
        if (!shut.isEmpty()) {
            flow.heading("Where to when a place is shut");
            flow.paragraph(
                    Face.TEXT,
                    "From the place, TRUE, with the load on, straight, against the whole gust: minutes"
                            + " until down and what the gauge must read; behind it the least fuel with"
                            + " which the plan leaves the place. Estimates along lines that nobody"
                            + " surveyed.");
            for (String place : shut) {
                flow.paragraph(CELL, place);
            }
        }
        flow.heading("Each lift");
        flow.table(
                List.of(
                        new Flow.Column("lift", 70, BOLD),
                        new Flow.Column("TRUE bearings, hook, limits", 165, CELL),
                        new Flow.Column("passes over, letting go", 172, CELL),
                        new Flow.Column("why so", 120, CELL)));
        for (Step step : plan.steps()) {
            flow.row(step.rotation().map(one -> lift(step, one)).orElseGet(() -> other(step)));
        }
    }

    private List<String> lift(Step step, Rotation rotation) {
        PlaceId before = Words.hookPlace(step);
        List<String> figures = new ArrayList<>();
        for (Drop drop : rotation.drops()) {
            figures.add(drop(rotation, before, drop));
            before = drop.place();
        }
        rotation.legs().stream()
                .filter(leg -> !leg.carrying().isEmpty())
                .flatMap(leg -> leg.slowing().stream())
                .findFirst()
                .ifPresent(one -> figures.add("Slow from " + Words.up(one.beginM()) + " m."));
        figures.add("Line " + words.line(step.lineLengthM()) + ".");
        rotation.limits().stream()
                .filter(limit -> limit.governing())
                .forEach(limit -> figures.add("Stops first: " + Words.limit(limit) + "."));
        List<String> over = new ArrayList<>();
        rotation.legs().forEach(leg -> words.courses(leg, false).ifPresent(over::add));
        Crossings.list(job, words, step).forEach(one -> over.add(one.full()));
        rotation.legs().forEach(leg -> LetGo.line(leg).ifPresent(over::add));
        return List.of(
                words.clock(rotation.hookedAt()) + " " + Words.joined(rotation.loads()),
                String.join(" ", figures),
                String.join(" ", over),
                reasons(step, rotation));
    }

    private String drop(Rotation rotation, PlaceId before, Drop drop) {
        String way = "";
        if (!before.equals(drop.place())) {
            Words.Way straight = words.way(before, drop.place());
            way =
                    " "
                            + Words.bearing(straight.bearingTrueRad())
                            + " TRUE "
                            + Words.km(straight.distanceM())
                            + " km";
        }
        return drop.place()
                + way
                + ", in from "
                + Words.bearing(drop.approachFromTrueRad())
                + " TRUE, out "
                + Words.bearing(drop.departureTrackTrueRad())
                + " TRUE"
                + HookHeights.find(rotation, drop)
                        .map(
                                height ->
                                        ", hook "
                                                + Words.hookM(height)
                                                + " m "
                                                + Words.hookFt(height)
                                                + " ft")
                        .orElse("")
                + ".";
    }

    private static String reasons(Step step, Rotation rotation) {
        return (step.because()
                        + (step.because().isEmpty() ? "" : "; way in: ")
                        + rotation.drops().stream()
                                .map(drop -> drop.reasons().stream().limit(1).toList())
                                .flatMap(List::stream)
                                .distinct()
                                .collect(Collectors.joining("; ")))
                .strip();
    }

    private List<String> other(Step step) {
        String what =
                Words.words(step.kind().name())
                        + " "
                        + step.from()
                        + (step.from().equals(step.to()) ? "" : " → " + step.to());
        List<String> over = new ArrayList<>();
        step.crew().ifPresent(crew -> over.add(Crossings.people(job, crew)));
        step.legs().forEach(leg -> words.courses(leg, false).ifPresent(over::add));
        Crossings.list(job, words, step).forEach(one -> over.add(one.full()));
        return List.of(
                words.clock(step.startAt()) + "–" + words.clock(step.endAt()),
                what + (step.engineRunning() ? ", engine runs." : ", engine off."),
                String.join(" ", over),
                step.because());
    }

    /** The three landings that take least fuel, for each place that loads come to. */
    private List<String> shut() {
        return alternates.entrySet().stream()
                .map(entry -> entry.getKey() + ": " + landings(entry.getValue()))
                .toList();
    }

    private static String landings(List<Alternate> all) {
        return all.isEmpty()
                ? "none."
                : all.stream()
                                .limit(3)
                                .map(
                                        one ->
                                                one.landing()
                                                        + " "
                                                        + Words.bearing(one.bearingTrueRad())
                                                        + " "
                                                        + Words.km(one.distanceM())
                                                        + " km, "
                                                        + Words.up(
                                                                Units.sToMinutes(one.durationS()))
                                                        + " min, "
                                                        + Words.up(one.fuelKg())
                                                        + " kg")
                                .collect(Collectors.joining("; "))
                        + "; planned "
                        + Words.down(Math.max(0, all.get(0).plannedKg()))
                        + " kg.";
    }

    /** Who goes without what, and when; empty where nothing with a rate is refused. */
    private String refused() {
        return plan.summary().price().stream()
                .flatMap(price -> price.comforts().stream())
                .map(
                        one ->
                                words.clock(one.at())
                                        + " "
                                        + one.subject()
                                        + " "
                                        + one.place()
                                        + ": "
                                        + Words.words(one.comfort().word())
                                        + (one.comfort().unit().equals("set-down")
                                                ? ""
                                                : " " + one.count() + " " + one.comfort().unit()))
                .collect(Collectors.joining("; "));
    }

    /** Flying minutes and end of each day that was not chosen; empty when there is none. */
    private String others() {
        String all =
                plan.summary().front().stream()
                        .filter(trade -> !trade.chosen())
                        .map(
                                trade ->
                                        Words.up(Units.sToMinutes(trade.flightS()))
                                                + " min of flying, end "
                                                + words.clock(trade.finishAt()))
                        .collect(Collectors.joining("; "));
        return all.isEmpty()
                ? ""
                : "This day: "
                        + Words.up(Units.sToMinutes(plan.summary().flightS()))
                        + " min of flying, end "
                        + words.clock(plan.summary().finishAt())
                        + ". Other orders of the same loads: "
                        + all
                        + ". The rates under costs choose between them.";
    }
}
