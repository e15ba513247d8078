package underhook.app.port;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import underhook.core.flown.MachineSums;

/** What the books of a machine want of a day, the same in the table and on paper. */
public final class DayCounts {
    /**
     * One figure.
     *
     * @param amount as written
     * @param unit of it; empty for a plain count
     * @param how it was counted or rounded
     */
    public record Row(String what, String amount, String unit, String how) {}

    private DayCounts() {}

    /** Hours and counts of the day, then the life of each part. */
    public static List<Row> of(ClosedDay day) {
        MachineSums sums = day.flown().sums();
        List<Row> rows = new ArrayList<>();
        rows.add(hours("engine on", sums.engineOnS(), "started minute counts"));
        rows.add(hours("flying, take-off to landing", sums.flyingS(), "started minute counts"));
        rows.add(count("flights", sums.flights(), "tapped, or shown by a load that was lifted"));
        rows.add(count("take-offs", sums.takeOffs(), "tapped"));
        rows.add(count("landings", sums.landings(), "tapped"));
        rows.add(count("loads lifted on the hook", sums.lifts(), "given up or not"));
        rows.add(count("snags and jerks", sums.snags(), "each asks for an inspection"));
        day.parts().forEach(part -> add(part, rows));
        return rows;
    }

    private static void add(ClosedDay.PartLine part, List<Row> rows) {
        String name = part.before().part();
        String rule = part.before().rule().name() + " (" + part.before().rule().source() + ")";
        rows.add(count(name + ": cycles of the day", part.after().dayCycles(), rule));
        rows.add(count(name + ": cycles in all", part.after().cycles(), rule));
        rows.add(hours(name + ": in use in all", part.after().usedS(), "started minute"));
        part.after()
                .leftCycles()
                .ifPresent(left -> rows.add(count(name + ": cycles left", left, rule)));
        part.after()
                .leftS()
                .ifPresent(
                        left ->
                                rows.add(
                                        new Row(
                                                name + ": time left",
                                                Written.down(left / 3600, 1).toPlainString(),
                                                "h",
                                                "rounded down")));
        rows.add(
                new Row(
                        name + ": due",
                        part.after().due() ? "yes" : "no",
                        "",
                        "at the limit that comes first; the maintenance manual decides"));
    }

    private static Row hours(String what, double s, String how) {
        long minutes = (long) Math.ceil(s / 60 - 1e-9);
        String amount = String.format(Locale.ROOT, "%d:%02d", minutes / 60, minutes % 60);
        return new Row(what, amount, "h:min", how);
    }

    private static Row count(String what, int count, String how) {
        return new Row(what, Integer.toString(count), "", how);
    }
}
