package underhook.cli;

import java.time.ZoneId;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.stream.Collectors;
import underhook.app.compare.Alternative;
import underhook.app.compare.Alternative.Kind;
import underhook.app.compare.CompareDays;
import underhook.app.compare.CompareDays.Rank;
import underhook.app.compare.CompareDays.Row;
import underhook.app.compare.DayFigures;
import underhook.app.port.Caution;
import underhook.app.port.Written;
import underhook.core.plan.DayPrice;
import underhook.core.unit.Units;

/** Days side by side as lines of text and as JSON. Times and minutes are rounded up. */
final class CompareWords {
    private CompareWords() {}

    /** A table, what is crossed, what was assumed, and the laydowns in both orders. */
    static List<String> of(List<Row> rows, ZoneId zone) {
        List<String> lines = new ArrayList<>();
        lines.add(cells("", "flying", "finish", "price", "out", "closed", "guarded", "on end"));
        rows.forEach(row -> lines.add(line(row, zone)));
        lines.add("");
        lines.add(
                "Closed: seconds with a load that may not be let go there; guarded: only while a"
                        + " guard keeps people away; on end: the longest of either.");
        for (Row row : rows) {
            lines.add(row.way().words() + ":");
            told(row).forEach(one -> lines.add("  " + one));
        }
        Map<Row, Rank> ranks = CompareDays.rankLaydowns(rows);
        if (rows.stream().anyMatch(row -> row.way().kind() == Kind.LAYDOWN)) {
            lines.add("");
            lines.add(
                    "Laydowns by minutes, and by what is flown over (loads left out come first):");
            ranks.entrySet().stream()
                    .sorted(
                            Comparator.comparingInt(
                                    (Map.Entry<Row, Rank> one) -> one.getValue().byMinutes()))
                    .forEach(one -> lines.add(ranked(one.getKey(), one.getValue())));
        }
        return lines;
    }

    /** What is said of how many days, of a comparison that somebody stopped. */
    static String stopped(List<Row> rows, int asked) {
        boolean isLastCut = rows.get(rows.size() - 1).isCutShort();
        if (rows.size() == asked && !isLastCut) {
            return "stopped when all days had been looked at: nothing of them is missing for that";
        }
        return "stopped: "
                + rows.size()
                + " of "
                + asked
                + " days were looked at"
                + (isLastCut ? ", the last one not to the end" : "")
                + (rows.size() < asked ? "; nothing is said of the others" : "");
    }

    private static String ranked(Row row, Rank rank) {
        return String.format(
                Locale.ROOT,
                "  %d, and %d over the ground: %s",
                rank.byMinutes(),
                rank.byGround(),
                row.way().words());
    }

    private static String line(Row row, ZoneId zone) {
        return row.figures()
                .map(
                        one ->
                                cells(
                                        row.way().words()
                                                + (row.isCutShort() ? " (cut short)" : ""),
                                        String.format(
                                                Locale.ROOT,
                                                "%.1f min",
                                                Math.ceil(Units.sToMinutes(one.flightS()) * 10)
                                                        / 10),
                                        Written.time(one.finishAt(), zone).substring(11, 16),
                                        price(one),
                                        Integer.toString(one.leftOut().size()),
                                        seconds(one.over().closedS()),
                                        seconds(one.over().guardedS()),
                                        seconds(one.over().longestS())))
                .orElse("  " + row.way().words() + ": " + row.why());
    }

    private static String price(DayFigures one) {
        return one.price()
                .map(price -> price.totalCents() / 100 + " " + price.currency())
                .orElse("-");
    }

    private static String comforts(DayPrice price) {
        return "of the price "
                + price.comfortsCents() / 100
                + " "
                + price.currency()
                + " for refused comforts";
    }

    private static String seconds(double s) {
        // As a whole number: a double could come out as "-0".
        return (long) Math.ceil(s) + " s";
    }

    private static List<String> told(Row row) {
        List<String> told = new ArrayList<>();
        row.figures()
                .ifPresent(
                        one -> {
                            told.add(
                                    Words.counts(
                                            one.rotations(), one.refuels(), one.lineChanges()));
                            one.price()
                                    .filter(price -> price.comfortsCents() > 0)
                                    .ifPresent(price -> told.add(comforts(price)));
                            told.add("left out: " + words(one.leftOut()));
                            told.add(
                                    "crossed with a load: "
                                            + words(
                                                    one.over().crossings().entrySet().stream()
                                                            .map(
                                                                    each ->
                                                                            each.getKey()
                                                                                    + " "
                                                                                    + each
                                                                                            .getValue()
                                                                                    + " times")
                                                            .toList()));
                        });
        if (!row.way().assumed().isEmpty()) {
            told.add("as if: " + String.join("; ", row.way().assumed()));
        }
        return told;
    }

    private static String words(List<String> all) {
        return all.isEmpty() ? "nothing" : String.join(", ", all);
    }

    private static String cells(String... cells) {
        return String.format(Locale.ROOT, "  %-44s %10s %7s %11s %4s %8s %8s %7s", (Object[]) cells)
                .stripTrailing();
    }

    /**
     * The same as one object.
     *
     * @param isStopped whether somebody stopped it
     * @param notLookedAt the days that it did not come to
     */
    static Map<String, Object> json(
            List<Row> rows, boolean isStopped, List<Alternative> notLookedAt, ZoneId zone) {
        Map<Row, Rank> ranks = CompareDays.rankLaydowns(rows);
        Map<String, Object> all = new LinkedHashMap<>();
        all.put("caution", Caution.TEXT);
        all.put("stopped", isStopped);
        all.put("notLookedAt", notLookedAt.stream().map(Alternative::words).toList());
        all.put(
                "days",
                rows.stream().map(row -> json(row, ranks, zone)).collect(Collectors.toList()));
        return all;
    }

    private static Map<String, Object> json(Row row, Map<Row, Rank> ranks, ZoneId zone) {
        Map<String, Object> node = new LinkedHashMap<>();
        node.put("kind", row.way().kind().name().toLowerCase(Locale.ROOT));
        node.put("words", row.way().words());
        node.put("asIf", row.way().assumed());
        node.put("why", row.why());
        node.put("cutShort", row.isCutShort());
        row.figures().ifPresent(one -> put(one, node, zone));
        Rank rank = ranks.get(row);
        if (rank != null) {
            node.put("rankByMinutes", rank.byMinutes());
            node.put("rankByGround", rank.byGround());
        }
        return node;
    }

    private static void put(DayFigures one, Map<String, Object> node, ZoneId zone) {
        node.put("flightMinutes", Units.sToMinutes(one.flightS()));
        node.put("finishAt", Written.time(one.finishAt(), zone));
        one.price()
                .ifPresent(
                        price -> {
                            node.put("totalCents", price.totalCents());
                            node.put("comfortsCents", price.comfortsCents());
                            node.put("currency", price.currency());
                        });
        node.put("rotations", one.rotations());
        node.put("refuels", one.refuels());
        node.put("lineChanges", one.lineChanges());
        node.put("leftOut", one.leftOut());
        node.put("closedSeconds", one.over().closedS());
        node.put("guardedSeconds", one.over().guardedS());
        node.put("longestSeconds", one.over().longestS());
        node.put("crossings", one.over().crossings());
    }
}
