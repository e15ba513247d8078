package underhook.adapter.paper;

import java.io.IOException;
import java.math.BigDecimal;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.apache.pdfbox.pdmodel.common.PDRectangle;
import underhook.app.port.ClosedDay;
import underhook.app.port.ClosedDay.LiftLine;
import underhook.app.port.EveningWriter;
import underhook.app.port.Written;
import underhook.core.finding.Finding;
import underhook.core.flown.MachineSums;
import underhook.core.learn.Credibility;
import underhook.core.learn.Measure;

/** Writes evening.pdf: the day as planned and as flown, what it teaches, and what books and customer want of it. */
public final class EveningPdf implements EveningWriter {
    private static final double LABEL_WIDTH = 62;
    private static final double LATER_WIDTH = 62;
    private static final double ROW_HEIGHT = 12;
    private static final Face AXIS = new Face(false, 9);

    @Override
    public String fileName() {
        return "evening.pdf";
    }

    @Override
    public void write(ClosedDay day, Path file) throws IOException {
        Words words = new Words(day.job(), day.readJob().ground());
        try (Book book = new Book(day.job(), day.plan(), words)) {
            Flow flow = new Flow(book, PDRectangle.A4, "The day, planned and flown");
            sums(flow, day);
            said(flow, day);
            Optional<Chart> chart = Chart.of(day);
            if (chart.isPresent()) {
                chart.get().draw(flow, words);
            }
            teaches(flow, day);
            lifts(flow, day, words);
            EveningBooks.draw(
                    new Flow(book, PDRectangle.A4, "Hours, counts and invoice basis"), day);
            book.write(file);
        }
    }

    private static void sums(Flow flow, ClosedDay day) throws IOException {
        MachineSums sums = day.flown().sums();
        long stand = day.lifts().stream().filter(LiftLine::isDone).count();
        long planned =
                day.lifts().stream().filter(line -> line.plannedHookedAt().isPresent()).count();
        flow.paragraph(
                Face.STRONG,
                Words.count(stand, "load")
                        + (stand == 1 ? " stands, " : " stand, ")
                        + planned
                        + (planned == 1 ? " was planned, " : " were planned, ")
                        + day.lifts().size()
                        + " listed.");
        flow.paragraph(
                Face.TEXT,
                "Tapped: "
                        + minutes(sums.flyingS())
                        + " min flying ("
                        + minutes(day.plan().summary().flightS())
                        + " planned), "
                        + minutes(sums.engineOnS())
                        + " min with the engine on, "
                        + Words.count(sums.lifts(), "lift")
                        + ", "
                        + Words.count(sums.landings(), "landing")
                        + ". What was not tapped is not counted.");
    }

    private static void said(Flow flow, ClosedDay day) throws IOException {
        if (day.findings().isEmpty()) {
            return;
        }
        flow.space(8);
        flow.heading("To be said of the day");
        for (Finding finding : day.findings()) {
            String found = (finding.value() + " " + finding.unit()).strip();
            flow.paragraph(
                    Face.TEXT,
                    finding.subject()
                            + ": "
                            + finding.message()
                            + (found.isEmpty() ? "" : " (" + found + ")"));
        }
        flow.space(4);
    }

    private static String minutes(double s) {
        return Long.toString((long) Math.ceil(s / 60 - 1e-9));
    }

    private static void teaches(Flow flow, ClosedDay day) throws IOException {
        flow.space(8);
        flow.heading("What the day teaches");
        flow.paragraph(
                Face.TEXT,
                "Flown over planned. The factor is held towards the plan as long as few flights speak"
                        + " for it; name learned.csv in the next job to plan with it.");
        flow.space(4);
        flow.table(
                List.of(
                        Flow.Column.of("of what", 80),
                        Flow.Column.of("group", 210),
                        Flow.Column.of("flights", 50),
                        Flow.Column.of("flown / planned", 62),
                        Flow.Column.of("believed", 62),
                        Flow.Column.strong("factor", 62)));
        for (Map.Entry<Measure, Credibility> learned :
                day.learned().entrySet().stream().sorted(Map.Entry.comparingByKey()).toList()) {
            for (Credibility.Estimate estimate : learned.getValue().groups()) {
                flow.row(
                        List.of(
                                Words.words(learned.getKey().name()),
                                estimate.group(),
                                Integer.toString(estimate.samples()),
                                ratio(estimate.ownRatio()),
                                Math.round(100 * estimate.credibilityFactor()) + " %",
                                ratio(estimate.believedRatio())));
            }
        }
        if (day.learned().isEmpty()) {
            flow.paragraph(Face.TEXT, "Nothing: no lift was both planned and timed.");
        }
    }

    private static String ratio(double value) {
        return Written.nearest(value, 2).setScale(2).toPlainString();
    }

    private static void lifts(Flow flow, ClosedDay day, Words words) throws IOException {
        flow.space(8);
        flow.heading("Every load");
        flow.table(
                List.of(
                        Flow.Column.strong("load", 42),
                        Flow.Column.of("kind", 62),
                        Flow.Column.of("to", 54),
                        Flow.Column.of("planned done", 52),
                        Flow.Column.strong("done", 44),
                        Flow.Column.of("later, min", 44),
                        Flow.Column.of("listed, kg", 48),
                        Flow.Column.of("read, kg", 44),
                        Flow.Column.of("", 137)));
        for (LiftLine line : day.lifts()) {
            flow.row(
                    List.of(
                            line.load().value(),
                            line.kind(),
                            line.to().value(),
                            line.plannedDoneAt()
                                    .filter(at -> !line.takenOver())
                                    .map(words::clock)
                                    .orElse(""),
                            line.doneAt().map(words::clock).orElse(""),
                            laterMin(line).map(EveningPdf::signed).orElse(""),
                            kilograms(line.listedKg()),
                            kilograms(line.readKg()),
                            note(line)));
        }
    }

    private static String note(LiftLine line) {
        String told = line.told() == ClosedDay.Told.TRACK ? "by the track; " : "";
        String givenUp =
                line.givenUp().stream()
                        .map(one -> "given up" + read(one.readKg()) + "; ")
                        .collect(Collectors.joining());
        String before = line.takenOver() && line.isDone() ? "before the new order; " : "";
        String all = told + before + givenUp + line.whatIsLeft();
        return all.endsWith("; ") ? all.substring(0, all.length() - 2) : all;
    }

    private static String read(OptionalDouble kg) {
        return kg.isPresent() ? ", read " + kilograms(kg) + " kg" : "";
    }

    private static String kilograms(OptionalDouble kg) {
        return kg.isPresent() ? Long.toString(Words.up(kg.getAsDouble())) : "";
    }

    private static Optional<BigDecimal> laterMin(LiftLine line) {
        return line.later().map(later -> Written.nearest(later.toSeconds() / 60.0, 0));
    }

    private static String signed(BigDecimal minutes) {
        return (minutes.signum() > 0 ? "+" : "") + minutes.toPlainString();
    }

    /** Bars over the hours of the day: hollow as planned, full as flown. */
    private record Chart(List<LiftLine> lines, Instant from, Instant until) {
        static Optional<Chart> of(ClosedDay day) {
            List<LiftLine> lines =
                    day.lifts().stream()
                            .filter(line -> begins(line).findFirst().isPresent())
                            .sorted(
                                    Comparator.comparing(
                                            line ->
                                                    begins(line)
                                                            .min(Comparator.naturalOrder())
                                                            .orElseThrow()))
                            .toList();
            Optional<Instant> first =
                    lines.stream().flatMap(Chart::begins).min(Comparator.naturalOrder());
            Optional<Instant> last =
                    lines.stream()
                            .flatMap(
                                    line ->
                                            Stream.of(
                                                            line.plannedDoneAt(),
                                                            line.doneAt(),
                                                            line.hookedAt())
                                                    .flatMap(Optional::stream))
                            .max(Comparator.naturalOrder());
            return first.flatMap(
                    from ->
                            last.map(
                                    until ->
                                            new Chart(
                                                    lines,
                                                    from.truncatedTo(ChronoUnit.HOURS),
                                                    until.truncatedTo(ChronoUnit.HOURS)
                                                            .plus(1, ChronoUnit.HOURS))));
        }

        private static Stream<Instant> begins(LiftLine line) {
            return Stream.of(line.plannedHookedAt(), line.hookedAt()).flatMap(Optional::stream);
        }

        void draw(Flow flow, Words words) throws IOException {
            flow.space(4);
            flow.paragraph(AXIS, "Hollow: planned. Full: flown. From hook-up until called free.");
            axis(flow, words);
            for (LiftLine line : lines) {
                if (flow.need(ROW_HEIGHT)) {
                    axis(flow, words);
                }
                row(flow, line);
                flow.space(ROW_HEIGHT);
            }
        }

        private void axis(Flow flow, Words words) throws IOException {
            flow.space(12);
            Sheet sheet = flow.sheet();
            for (Instant hour = from; !hour.isAfter(until); hour = hour.plus(1, ChronoUnit.HOURS)) {
                sheet.textCentred(x(sheet, hour), flow.y(), AXIS, words.clock(hour));
            }
            sheet.textRight(sheet.right(), flow.y(), AXIS, "later, min");
            flow.space(3);
        }

        private void row(Flow flow, LiftLine line) throws IOException {
            Sheet sheet = flow.sheet();
            double y = flow.y();
            sheet.stroke(0.3);
            for (Instant hour = from; !hour.isAfter(until); hour = hour.plus(1, ChronoUnit.HOURS)) {
                sheet.line(x(sheet, hour), y, x(sheet, hour), y + ROW_HEIGHT);
            }
            sheet.text(sheet.left(), y + 9, AXIS, line.load() + " " + line.to());
            sheet.stroke(0.8);
            if (line.plannedHookedAt().isPresent()
                    && line.plannedDoneAt().isPresent()
                    && !line.takenOver()) {
                double begin = x(sheet, line.plannedHookedAt().get());
                double width = Math.max(2, x(sheet, line.plannedDoneAt().get()) - begin);
                sheet.box(begin, y + 1.5, width, 4);
            }
            if (line.hookedAt().isPresent() && line.doneAt().isPresent()) {
                double begin = x(sheet, line.hookedAt().get());
                double width = Math.max(2, x(sheet, line.doneAt().get()) - begin);
                sheet.fillBox(begin, y + 6.5, width, 4);
            }
            String later =
                    laterMin(line).map(EveningPdf::signed).orElse(line.isDone() ? "" : "not flown");
            sheet.textRight(sheet.right(), y + 9, AXIS, later);
        }

        private double x(Sheet sheet, Instant at) {
            double begin = sheet.left() + LABEL_WIDTH;
            double width = sheet.right() - LATER_WIDTH - begin;
            return begin
                    + width
                            * Duration.between(from, at).toMillis()
                            / Duration.between(from, until).toMillis();
        }
    }
}
