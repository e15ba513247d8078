package underhook.adapter.paper;

import java.io.IOException;
import java.time.Duration;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import underhook.app.port.ClosedDay;
import underhook.app.port.ClosedDay.LiftLine;
import underhook.app.port.DayCounts;
import underhook.core.billing.Invoice;
import underhook.core.job.Job;
import underhook.core.job.PlaceId;

/** A page for the books and the customer: what is counted of the day, what is charged and how it was rounded. */
final class EveningBooks {
    private EveningBooks() {}

    static void draw(Flow flow, ClosedDay day) throws IOException {
        counts(flow, day);
        invoice(flow, day.invoice());
        places(flow, day);
        flow.space(16);
        flow.paragraph(
                Face.TEXT,
                "Seen by the pilot: ______________________     by the customer: ______________________");
    }

    private static void counts(Flow flow, ClosedDay day) throws IOException {
        flow.heading("Hours and counts");
        flow.table(
                List.of(
                        Flow.Column.of("what", 200),
                        Flow.Column.strong("amount", 60),
                        Flow.Column.of("", 40),
                        Flow.Column.of("counted how", 227)));
        for (DayCounts.Row row : DayCounts.of(day)) {
            flow.row(List.of(row.what(), row.amount(), row.unit(), row.how()));
        }
    }

    private static void invoice(Flow flow, Optional<Invoice> charged) throws IOException {
        flow.space(8);
        flow.heading("Basis of the invoice");
        if (charged.isEmpty()) {
            flow.paragraph(Face.TEXT, "No tariff was given, so nothing is charged here.");
            return;
        }
        Invoice invoice = charged.get();
        String currency = invoice.total().currency();
        flow.paragraph(
                Face.TEXT,
                "Charged is what was measured, in units of the tariff, a time rounded as its unit says;"
                        + " the amount is units times rate. A basis, no invoice: taxes and what else the"
                        + " contract names are not in it.");
        flow.space(4);
        flow.table(
                List.of(
                        Flow.Column.of("item", 117),
                        Flow.Column.of("measured", 100),
                        Flow.Column.strong("charged", 50),
                        Flow.Column.of("unit", 120),
                        Flow.Column.of("rate, " + currency, 66),
                        Flow.Column.strong("amount, " + currency, 74)));
        for (Invoice.Line line : invoice.lines()) {
            flow.row(
                    List.of(
                            line.name(),
                            line.measured(),
                            Long.toString(line.units()),
                            line.unit(),
                            money(line.centsPerUnit()),
                            money(line.cents())));
        }
        flow.row(List.of("total", "", "", "", "", money(invoice.total().cents())));
    }

    private static String money(long cents) {
        return String.format(Locale.ROOT, "%d.%02d", cents / 100, cents % 100);
    }

    private static void places(Flow flow, ClosedDay day) throws IOException {
        flow.space(8);
        flow.heading("Place by place");
        boolean isGuessed =
                day.lifts().stream().anyMatch(line -> line.told() == ClosedDay.Told.TRACK);
        flow.paragraph(
                Face.TEXT,
                "From hook-up until called free, each load for itself, a started minute counts."
                        + (isGuessed ? " Times by the track are guesses." : ""));
        flow.space(4);
        flow.table(
                List.of(
                        Flow.Column.strong("place", 60),
                        Flow.Column.of("name", 150),
                        Flow.Column.of("loads standing", 90),
                        Flow.Column.of("poles standing", 90),
                        Flow.Column.of("on the hook, min", 137)));
        Map<PlaceId, List<LiftLine>> all =
                day.lifts().stream()
                        .collect(
                                Collectors.groupingBy(
                                        LiftLine::to, LinkedHashMap::new, Collectors.toList()));
        for (Map.Entry<PlaceId, List<LiftLine>> place : all.entrySet()) {
            flow.row(row(day.job(), place.getKey(), place.getValue()));
        }
    }

    private static List<String> row(Job job, PlaceId place, List<LiftLine> lines) {
        List<LiftLine> poles =
                lines.stream().filter(line -> job.getKind(line.kind()).standsUp()).toList();
        Duration hung =
                lines.stream()
                        .flatMap(
                                line ->
                                        line
                                                .hookedAt()
                                                .flatMap(
                                                        from ->
                                                                line.doneAt()
                                                                        .map(
                                                                                to ->
                                                                                        Duration
                                                                                                .between(
                                                                                                        from,
                                                                                                        to)))
                                                .stream())
                        .reduce(Duration.ZERO, Duration::plus);
        return List.of(
                place.value(),
                job.getPlace(place).name(),
                standing(lines),
                poles.isEmpty() ? "" : standing(poles),
                Long.toString(hung.plusMillis(59_999).toMinutes()));
    }

    private static String standing(List<LiftLine> lines) {
        return lines.stream().filter(LiftLine::isDone).count() + " of " + lines.size();
    }
}
