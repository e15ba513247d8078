package underhook.web;

import java.net.URLEncoder;
import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import underhook.core.finding.Finding;
import underhook.core.finding.Severity;
import underhook.core.plan.Leg;
import underhook.core.plan.Limit;
import underhook.core.plan.Plan;
import underhook.core.plan.Rotation;
import underhook.core.plan.Step;
import underhook.core.plan.Summary;
import underhook.core.unit.Units;

/** The pages, as text. Numbers that somebody flies by are rounded to the safe side. */
final class Pages {
    private static final String CAUTION =
            "A planning aid. The pilot in command, the flight manual, the operator's manual and the line"
                    + " owner's rules decide.";

    private Pages() {}

    static String message(String sentence) {
        return page("Underhook", new Html().element("p", sentence));
    }

    static String list(List<Day> days) {
        Html body = new Html().element("h1", "Planned days");
        if (days.isEmpty()) {
            body.element("p", "Nothing has been planned yet.");
        }
        body.raw("<ul>\n");
        for (int i = 0; i < days.size(); i++) {
            Plan plan = days.get(i).plan();
            body.raw("<li>").link("/day/" + (i + 1) + "/", plan.job() + ", plan " + plan.id());
            body.raw("</li>\n");
        }
        return page("Planned days", body.raw("</ul>\n"));
    }

    static String day(Day day, List<String> files, String filesAt) {
        Plan plan = day.plan();
        Html body = new Html().element("h1", plan.job());
        body.raw("<p>");
        body.text("Plan " + plan.id() + ", made " + full(plan.plannedAt(), day.zone()));
        body.text(" by " + plan.program() + ", seed " + plan.seed() + ".").raw("</p>\n");
        summary(body, plan, day.zone());
        files(body, files, filesAt);
        leftOut(body, plan);
        findings(body, plan);
        steps(body, plan, day.zone());
        crews(body, plan, day.zone());
        if (!day.attributions().isEmpty()) {
            body.element("h2", "Where the data are from").raw("<ul>\n");
            day.attributions().forEach(line -> body.element("li", line).raw("\n"));
            body.raw("</ul>\n");
        }
        return page(plan.job(), body);
    }

    private static void summary(Html body, Plan plan, ZoneId zone) {
        Summary summary = plan.summary();
        body.element("h2", "The day in numbers").raw("<dl>\n");
        entry(body, "Finish", full(summary.finishAt(), zone));
        entry(body, "Flying", minutesUp(summary.flightS()) + " min");
        entry(body, "Rotations", Integer.toString(summary.rotations()));
        entry(body, "Fuel stops", Integer.toString(summary.refuels()));
        entry(body, "Line changes", Integer.toString(summary.lineChanges()));
        entry(body, "Left out", Integer.toString(plan.leftOut().size()));
        if (summary.lowerBoundFlightS().isPresent()) {
            double boundS = summary.lowerBoundFlightS().getAsDouble();
            entry(
                    body,
                    "Flying, proven least",
                    (long) Math.floor(Units.sToMinutes(boundS)) + " min");
        }
        summary.finishBoundAt()
                .ifPresent(at -> entry(body, "Finish, proven earliest", full(at, zone)));
        summary.provenFor().ifPresent(what -> entry(body, "Proven for", what));
        if (summary.cutShort()) {
            entry(body, "Search", "cut short by the time ceiling");
        }
        body.raw("</dl>\n");
    }

    private static void entry(Html body, String term, String value) {
        body.raw("<div>").element("dt", term).element("dd", value).raw("</div>\n");
    }

    private static void files(Html body, List<String> files, String filesAt) {
        body.element("h2", "Files").raw("<ul class=\"files\">\n");
        for (String name : files) {
            String address = filesAt + URLEncoder.encode(name, StandardCharsets.UTF_8);
            body.raw("<li>").link(address.replace("+", "%20"), name).raw("</li>\n");
        }
        body.raw("</ul>\n");
    }

    private static void leftOut(Html body, Plan plan) {
        body.element("h2", "Left out");
        if (plan.leftOut().isEmpty()) {
            body.element("p", "Nothing: every load is in the plan.");
            return;
        }
        table(body, List.of("Load", "Code", "Why"));
        plan.leftOut()
                .forEach(
                        out ->
                                body.row(
                                        List.of(
                                                out.load().value(),
                                                out.code().name(),
                                                out.message())));
        endTable(body);
    }

    private static void findings(Html body, Plan plan) {
        body.element("h2", "Findings");
        if (plan.findings().isEmpty()) {
            body.element("p", "None.");
            return;
        }
        table(body, List.of("", "About", "Code", "Found", "Limit", "What", "Source"));
        plan.findings().stream()
                .sorted(Comparator.comparing(Finding::severity).reversed())
                .forEach(finding -> finding(body, finding));
        endTable(body);
    }

    private static void finding(Html body, Finding finding) {
        body.raw("<tr><td>").raw(badge(finding.severity())).raw("</td>");
        Stream.of(
                        finding.subject(),
                        finding.code().name(),
                        withUnit(finding.value(), finding.unit()),
                        withUnit(finding.limit(), finding.unit()),
                        finding.message(),
                        finding.source())
                .forEach(cell -> body.element("td", cell));
        body.raw("</tr>\n");
    }

    /** Shape and word first; the fill only helps. */
    private static String badge(Severity severity) {
        return switch (severity) {
            case STOP -> "<span class=\"badge stop\">&#9632; STOP</span>";
            case CAUTION -> "<span class=\"badge caution\">&#9650; CAUTION</span>";
            case NOTE -> "<span class=\"badge note\">&#9675; NOTE</span>";
        };
    }

    private static void steps(Html body, Plan plan, ZoneId zone) {
        body.element("h2", "The day step by step");
        body.element("p", "Times in " + zone.getId() + ". Masses and fuel in kg, distances in m.");
        table(
                body,
                List.of(
                        "Start",
                        "End",
                        "What",
                        "From",
                        "To",
                        "Loads",
                        "On the hook",
                        "Fuel",
                        "Most fuel",
                        "Line",
                        "Least clearance",
                        "Stops first",
                        "Crosses",
                        "Because"));
        for (Step step : plan.steps()) {
            Optional<Rotation> rotation = step.rotation();
            List<Leg> legs = rotation.map(Rotation::legs).orElse(step.legs());
            body.row(
                    List.of(
                            clock(step.startAt(), zone),
                            clock(step.endAt(), zone),
                            words(step),
                            step.from().value(),
                            step.to().value(),
                            rotation.map(Pages::loads).orElse(""),
                            rotation.map(r -> up(r.massOnHookKg())).orElse(""),
                            down(step.fuelStartKg()),
                            rotation.map(r -> down(r.fuelMaxKg())).orElse(""),
                            step.lineLengthM() > 0 ? down(step.lineLengthM()) : "off",
                            leastClearance(legs),
                            rotation.map(Pages::governing).orElse(""),
                            crossings(legs),
                            step.because()));
        }
        endTable(body);
    }

    private static String words(Step step) {
        return step.kind().name().toLowerCase(Locale.ROOT).replace('_', ' ')
                + step.crew().map(crew -> " " + crew.value()).orElse("");
    }

    private static String loads(Rotation rotation) {
        return rotation.loads().stream().map(id -> id.value()).collect(Collectors.joining(", "));
    }

    private static String governing(Rotation rotation) {
        return rotation.limits().stream()
                .filter(Limit::governing)
                .map(limit -> limit.code() + ", " + down(limit.marginPercent()) + " % left")
                .collect(Collectors.joining("; "));
    }

    private static String leastClearance(List<Leg> legs) {
        return legs.stream()
                .map(Leg::leastClearanceM)
                .min(Comparator.naturalOrder())
                .map(Pages::down)
                .orElse("");
    }

    private static String crossings(List<Leg> legs) {
        return legs.stream()
                .flatMap(leg -> leg.crossings().stream())
                .map(crossing -> crossing.feature() + ": " + crossing.rule())
                .distinct()
                .collect(Collectors.joining("; "));
    }

    private static void crews(Html body, Plan plan, ZoneId zone) {
        if (plan.crews().isEmpty()) {
            return;
        }
        body.element("h2", "People");
        table(body, List.of("Crew", "From", "Until", "Place", "Doing"));
        plan.crews()
                .forEach(
                        stay ->
                                body.row(
                                        List.of(
                                                stay.crew().value(),
                                                clock(stay.fromAt(), zone),
                                                clock(stay.toAt(), zone),
                                                stay.place().value(),
                                                stay.doing())));
        endTable(body);
    }

    private static void table(Html body, List<String> columns) {
        body.raw("<div class=\"wide\" tabindex=\"0\"><table>\n").head(columns).raw("<tbody>\n");
    }

    private static void endTable(Html body) {
        body.raw("</tbody></table></div>\n");
    }

    private static String page(String title, Html body) {
        return new Html()
                .raw("<!doctype html>\n<html lang=\"en\">\n<head>\n<meta charset=\"utf-8\">\n")
                .raw("<meta name=\"viewport\" content=\"width=device-width, initial-scale=1\">\n")
                .element("title", title)
                .raw("\n<link rel=\"stylesheet\" href=\"/style.css\">\n</head>\n<body>\n<main>\n")
                .raw(body.toString())
                .raw("</main>\n<footer>")
                .element("p", CAUTION)
                .raw("</footer>\n</body>\n</html>\n")
                .toString();
    }

    private static String withUnit(String value, String unit) {
        return value.isEmpty() || unit.isEmpty() ? value : value + " " + unit;
    }

    private static String full(Instant at, ZoneId zone) {
        return DateTimeFormatter.ofPattern("uuuu-MM-dd HH:mm xxx", Locale.ROOT)
                .format(at.atZone(zone));
    }

    private static String clock(Instant at, ZoneId zone) {
        return DateTimeFormatter.ofPattern("HH:mm:ss", Locale.ROOT).format(at.atZone(zone));
    }

    private static String minutesUp(double durationS) {
        return Long.toString((long) Math.ceil(Units.sToMinutes(durationS)));
    }

    private static String up(double value) {
        return Long.toString((long) Math.ceil(value));
    }

    private static String down(double value) {
        return Long.toString((long) Math.floor(value));
    }
}
