package underhook.adapter.table;

import java.math.BigDecimal;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.TreeMap;
import java.util.stream.Collectors;
import underhook.app.port.ClosedDay;
import underhook.app.port.ClosedDay.LiftLine;
import underhook.app.port.DayCounts;
import underhook.app.port.EveningWriter;
import underhook.app.port.FlownSample;
import underhook.app.port.Written;
import underhook.core.billing.Invoice;
import underhook.core.finding.Finding;
import underhook.core.flown.TapKind;
import underhook.core.job.PlaceId;
import underhook.core.learn.Credibility;
import underhook.core.learn.Measure;
import underhook.core.track.Visit;

/** The tables of a closed day. */
public final class EveningSheets {
    private EveningSheets() {}

    /** One writer for each table. */
    public static List<EveningWriter> writers() {
        return List.of(
                new Sheet(
                        "lifts.csv",
                        List.of(
                                "load",
                                "kind",
                                "from",
                                "to",
                                "line_m",
                                "planned_hooked_at",
                                "planned_done_at",
                                "told_by",
                                "hooked_at",
                                "done_at",
                                "later_than_planned_min",
                                "listed_kg",
                                "read_kg",
                                "hover_s",
                                "aborted",
                                "given_up_read_kg"),
                        EveningSheets::lifts),
                new Sheet(
                        "machine.csv",
                        List.of("what", "value", "unit", "how"),
                        EveningSheets::machine),
                new Sheet(
                        "invoice.csv",
                        List.of(
                                "item",
                                "measured",
                                "units",
                                "unit",
                                "cents_per_unit",
                                "cents",
                                "currency"),
                        EveningSheets::invoice),
                new Sheet(
                        "handover.csv",
                        List.of("place", "load", "kind", "standing", "done_at", "what_is_left"),
                        EveningSheets::handover),
                new Sheet(
                        "samples.csv",
                        List.of("quantity", "group", "planned", "flown", "unit"),
                        EveningSheets::samples),
                new Sheet(
                        "learned.csv",
                        List.of(
                                "quantity",
                                "group",
                                "samples",
                                "flown_over_planned",
                                "believed",
                                "factor",
                                "spread"),
                        EveningSheets::learned),
                new Sheet(
                        "unmatched.csv",
                        List.of("place", "from", "until", "whole"),
                        EveningSheets::unmatched),
                new Sheet(
                        "permit.csv",
                        List.of("what", "id", "times", "minutes", "how"),
                        EveningSheets::permit),
                new OccurrenceDrafts(),
                new Sheet(
                        "day-findings.csv",
                        List.of("code", "severity", "subject", "value", "message"),
                        EveningSheets::findings));
    }

    private static List<List<String>> lifts(ClosedDay day) {
        List<List<String>> rows = new ArrayList<>();
        for (LiftLine line : day.lifts()) {
            rows.add(
                    List.of(
                            line.load().value(),
                            line.kind(),
                            line.from().value(),
                            line.to().value(),
                            number(line.lineM(), 1),
                            planned(line, line.plannedHookedAt(), day),
                            planned(line, line.plannedDoneAt(), day),
                            line.told().name().toLowerCase(Locale.ROOT),
                            time(line.hookedAt(), day),
                            time(line.doneAt(), day),
                            later(line),
                            number(line.listedKg(), 1),
                            number(line.readKg(), 1),
                            number(line.hoverS(), 0),
                            line.isGivenUp() ? "yes" : "no",
                            line.givenUp().stream()
                                    .map(one -> number(one.readKg(), 1))
                                    .filter(read -> !read.isEmpty())
                                    .collect(Collectors.joining(" "))));
        }
        return rows;
    }

    private static String planned(LiftLine line, Optional<Instant> at, ClosedDay day) {
        return line.takenOver() ? "" : time(at, day);
    }

    private static String later(LiftLine line) {
        return line.later()
                .map(later -> Written.nearest(later.toSeconds() / 60.0, 1).toPlainString())
                .orElse("");
    }

    private static List<List<String>> machine(ClosedDay day) {
        return DayCounts.of(day).stream()
                .map(row -> List.of(row.what(), row.amount(), row.unit(), row.how()))
                .toList();
    }

    private static List<List<String>> invoice(ClosedDay day) {
        if (day.invoice().isEmpty()) {
            return List.of(List.of("no tariff was given", "", "", "", "", "", ""));
        }
        Invoice invoice = day.invoice().get();
        List<List<String>> rows = new ArrayList<>();
        for (Invoice.Line line : invoice.lines()) {
            rows.add(
                    List.of(
                            line.name(),
                            line.measured(),
                            Long.toString(line.units()),
                            line.unit(),
                            Long.toString(line.centsPerUnit()),
                            Long.toString(line.cents()),
                            invoice.total().currency()));
        }
        rows.add(
                List.of(
                        "total",
                        "",
                        "",
                        "",
                        "",
                        Long.toString(invoice.total().cents()),
                        invoice.total().currency()));
        return rows;
    }

    private static List<List<String>> handover(ClosedDay day) {
        List<List<String>> rows = new ArrayList<>();
        for (LiftLine line : day.lifts()) {
            rows.add(
                    List.of(
                            line.to().value(),
                            line.load().value(),
                            line.kind(),
                            line.isDone() ? "yes" : "no",
                            time(line.doneAt(), day),
                            line.whatIsLeft()));
        }
        return rows;
    }

    private static List<List<String>> samples(ClosedDay day) {
        List<List<String>> rows = new ArrayList<>();
        for (FlownSample sample : day.samples()) {
            rows.add(
                    List.of(
                            word(sample.quantity()),
                            sample.group(),
                            Written.nearest(sample.plannedAmount(), 1).toPlainString(),
                            Written.nearest(sample.flownAmount(), 1).toPlainString(),
                            unit(sample.quantity())));
        }
        return rows;
    }

    private static String unit(Measure quantity) {
        return switch (quantity) {
            case LIFT_TIME, HOVER_TIME -> "s";
            case MASS, FUEL -> "kg";
        };
    }

    private static String word(Measure quantity) {
        return quantity.name().toLowerCase(Locale.ROOT).replace('_', '-');
    }

    private static List<List<String>> learned(ClosedDay day) {
        List<List<String>> rows = new ArrayList<>();
        for (Measure quantity : Measure.values()) {
            Optional<Credibility> found = Optional.ofNullable(day.learned().get(quantity));
            for (Credibility.Estimate estimate : found.map(Credibility::groups).orElse(List.of())) {
                rows.add(
                        List.of(
                                word(quantity),
                                estimate.group(),
                                Integer.toString(estimate.samples()),
                                ratio(estimate.ownRatio()),
                                ratio(estimate.credibilityFactor()),
                                ratio(estimate.believedRatio()),
                                ratio(Math.sqrt(found.orElseThrow().withinFactor()))));
            }
        }
        return rows;
    }

    private static String ratio(double value) {
        return Written.nearest(value, 3).toPlainString();
    }

    private static List<List<String>> unmatched(ClosedDay day) {
        List<List<String>> rows = new ArrayList<>();
        for (Visit visit : day.unmatched()) {
            rows.add(
                    List.of(
                            visit.place().value(),
                            Written.time(visit.from(), day.job().zone()),
                            Written.time(visit.until(), day.job().zone()),
                            visit.certain() ? "yes" : "no, the track has a hole"));
        }
        return rows;
    }

    private static List<List<String>> permit(ClosedDay day) {
        List<List<String>> rows = new ArrayList<>();
        Map<String, Integer> landings = new TreeMap<>();
        day.flown().taps().stream()
                .filter(tap -> tap.kind() == TapKind.LANDING)
                .map(tap -> tap.place().map(PlaceId::value).orElse("place not tapped"))
                .forEach(place -> landings.merge(place, 1, Integer::sum));
        landings.forEach(
                (place, times) ->
                        rows.add(List.of("landing", place, times.toString(), "", "tapped")));
        for (ClosedDay.ZoneLine zone : day.zones()) {
            rows.add(
                    List.of(
                            "over zone",
                            zone.zone(),
                            Integer.toString(zone.passes()),
                            Written.up(zone.insideS() / 60, 1).toPlainString(),
                            "by the track, holes not counted"));
        }
        if (day.zones().isEmpty() && !day.job().zones().isEmpty()) {
            rows.add(List.of("over zones", "", "", "", "not known: there is no track"));
        }
        return rows;
    }

    private static List<List<String>> findings(ClosedDay day) {
        List<List<String>> rows = new ArrayList<>();
        for (Finding finding : day.findings()) {
            rows.add(
                    List.of(
                            finding.code().name(),
                            finding.severity().name(),
                            finding.subject(),
                            finding.value(),
                            finding.message()));
        }
        return rows;
    }

    private static String time(Optional<Instant> at, ClosedDay day) {
        return at.map(instant -> Written.time(instant, day.job().zone())).orElse("");
    }

    private static String number(OptionalDouble value, int decimals) {
        if (value.isEmpty()) {
            return "";
        }
        BigDecimal written = Written.nearest(value.getAsDouble(), decimals);
        return written.toPlainString();
    }
}
